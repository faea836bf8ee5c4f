using System.Diagnostics.CodeAnalysis;
using System.Text;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>What a cell writes to the console, sent on as events. Closing it does nothing.</summary>
/// <remarks>
/// The general console capture of the kernel package keeps every piece in memory until the cell ends; this one keeps
/// a buffer. At the start of a cell each line is sent at once, so that what a crashing cell wrote last is not lost;
/// after that, buffers are.
/// </remarks>
/// <param name="stream">Which stream it stands for.</param>
/// <param name="send">Sends a piece of text.</param>
internal sealed class CellConsole(StreamName stream, Action<StreamName, string> send) : TextWriter
{
    private const int BufferChars = 8192;
    private const int LineByLineChars = 64 * 1024;

    private readonly Lock guard = new();
    private readonly StringBuilder buffer = new();
    private long sentChars;

    /// <inheritdoc/>
    public override Encoding Encoding => Encoding.UTF8;

    /// <summary>Line feeds alone, on every system, so that outputs have the same bytes.</summary>
    [AllowNull]
    public override string NewLine { get => "\n"; set { } }

    /// <inheritdoc/>
    public override void Write(char value) => Write([value]);

    /// <inheritdoc/>
    public override void Write(string? value) => Write(value.AsSpan());

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    /// <inheritdoc/>
    public override void WriteLine(string? value) => Write($"{value}\n".AsSpan());

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<char> text)
    {
        while (text.Length > 0)
        {
            var piece = text[..Math.Min(text.Length, BufferChars)];
            text = text[piece.Length..];
            // Stopping a cell aborts its thread anywhere but in a finally block: none may be left half done.
            try
            {
            }
            finally
            {
                Take(piece);
            }
        }
    }

    /// <inheritdoc/>
    public override void Flush()
    {
        lock (guard)
            SendBuffer();
    }

    /// <summary>Sends what is left and begins anew.</summary>
    internal void BeginCell()
    {
        lock (guard)
        {
            SendBuffer();
            sentChars = 0;
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        Flush();
        base.Dispose(disposing);
    }

    private void Take(ReadOnlySpan<char> piece)
    {
        lock (guard)
        {
            buffer.Append(piece);
            if (buffer.Length >= BufferChars || (sentChars < LineByLineChars && piece.Contains('\n')))
                SendBuffer();
        }
    }

    private void SendBuffer()
    {
        if (buffer.Length == 0)
            return;
        // Half of a surrogate pair waits for its other half.
        var held = char.IsHighSurrogate(buffer[^1]) ? 1 : 0;
        var text = buffer.ToString(0, buffer.Length - held);
        buffer.Remove(0, text.Length);
        if (text.Length == 0)
            return;
        sentChars += text.Length;
        send(stream, text);
    }
}
