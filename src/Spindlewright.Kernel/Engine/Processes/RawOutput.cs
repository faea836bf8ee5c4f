using System.Diagnostics;
using System.IO.Pipes;
using System.Text;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>What a child and the processes it started write to one of their standard streams, past the protocol.</summary>
/// <remarks>
/// Bytes are taken as UTF-8; what is not becomes the replacement character. <see cref="Drain"/> makes sure that what
/// was written before some moment is handed on before it returns, whichever thread comes first to read it.
/// </remarks>
internal sealed class RawOutput
{
    private readonly Stream stream;
    private readonly int descriptor;
    private readonly Action<string> receive;
    private readonly Lock reading = new();
    private readonly byte[] bytes = new byte[64 * 1024];
    private readonly char[] chars = new char[64 * 1024 + 4];
    private readonly Decoder decoder = Encoding.UTF8.GetDecoder();
    private bool ended;

    /// <summary>Begins to read.</summary>
    /// <param name="stream">The parent's end of the pipe.</param>
    /// <param name="name">Name of the reading thread.</param>
    /// <param name="receive">Receives text, on one thread at a time.</param>
    internal RawOutput(Stream stream, string name, Action<string> receive)
    {
        (this.stream, this.receive) = (stream, receive);
        descriptor = stream is AnonymousPipeClientStream pipe ? (int)pipe.SafePipeHandle.DangerousGetHandle() : -1;
        new Thread(ReadAll) { IsBackground = true, Name = name }.Start();
    }

    /// <summary>Hands on what the pipe holds now.</summary>
    internal void Drain()
    {
        if (!OperatingSystem.IsLinux() || descriptor < 0)
        {
            Thread.Sleep(50);
            return;
        }

        // A process left behind may write for ever, so time bounds this as well as emptiness.
        var clock = Stopwatch.StartNew();
        lock (reading)
            while (!ended && clock.ElapsedMilliseconds < 2000 && Native.CountReadable(descriptor) > 0)
                ReadOnce();
    }

    /// <summary>Stops reading, though processes that got away may still hold the other end.</summary>
    internal void Stop()
    {
        lock (reading)
            ended = true;
        if (!OperatingSystem.IsLinux())
            stream.Dispose();
    }

    private void ReadAll()
    {
        try
        {
            while (!Volatile.Read(ref ended))
            {
                if (OperatingSystem.IsLinux() && descriptor >= 0)
                {
                    if (!Native.WaitReadable(descriptor, 200))
                        continue;
                    lock (reading)
                        if (!ended && (Native.CountReadable(descriptor) > 0 || Native.WaitReadable(descriptor, 0)))
                            ReadOnce();
                }
                else
                {
                    ReadOnce();
                }
            }
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException)
        {
            // The pipe is closed: nothing more can come.
        }
    }

    private void ReadOnce()
    {
        var count = stream.Read(bytes);
        var length = decoder.GetChars(bytes, 0, count, chars, 0, flush: count == 0);
        if (length > 0)
            receive(new string(chars, 0, length));
        if (count == 0)
            ended = true;
    }
}
