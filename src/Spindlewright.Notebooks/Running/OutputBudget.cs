using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>How much of what one cell shows is kept; what is cut is only counted.</summary>
/// <param name="mostBytes">How much is kept, bytes of UTF-8.</param>
public sealed class OutputBudget(long mostBytes)
{
    private long seenBytes;
    private long keptBytes;

    /// <summary>Says what was cut; null when nothing was.</summary>
    public string? Note => seenBytes == keptBytes ? null : string.Create(CultureInfo.InvariantCulture,
        $"Output cut: the cell wrote {seenBytes} bytes, {keptBytes} of them are kept.\n");

    /// <summary>Takes text; once something was cut, nothing more is kept: text with holes misleads.</summary>
    /// <param name="piece">The text.</param>
    /// <returns>The part that is kept.</returns>
    public string Keep(string piece)
    {
        var bytes = Encoding.UTF8.GetByteCount(piece);
        var room = seenBytes > keptBytes ? 0 : mostBytes - keptBytes;
        seenBytes += bytes;
        if (bytes > room)
        {
            piece = Cut(piece, room);
            bytes = Encoding.UTF8.GetByteCount(piece);
        }

        keptBytes += bytes;
        return piece;
    }

    /// <summary>Takes a bundle whole or not at all, since half a picture is none.</summary>
    /// <param name="bundle">The bundle.</param>
    /// <param name="kept">The same bundle.</param>
    /// <returns>True when it is kept.</returns>
    public bool TryTake(MimeBundle bundle, [NotNullWhen(true)] out MimeBundle? kept)
    {
        var bytes = bundle.Data.Values.Sum(value => (long)Encoding.UTF8.GetByteCount(value));
        seenBytes += bytes;
        kept = keptBytes + bytes <= mostBytes ? bundle : null;
        keptBytes += kept is null ? 0 : bytes;
        return kept is not null;
    }

    /// <summary>The error of a cell that shows what cannot be drawn.</summary>
    /// <param name="fault">What went wrong in drawing.</param>
    /// <param name="cell">The cell's number.</param>
    /// <returns>The error.</returns>
    public static ErrorEvent CannotDraw(Exception fault, int cell)
    {
        var told = $"What the cell shows cannot be drawn: {fault.Message}";
        return new ErrorEvent(0, fault.GetType().Name, told, [told], cell, null);
    }

    private static string Cut(string piece, long room)
    {
        var kept = 0;
        foreach (var rune in piece.EnumerateRunes())
        {
            room -= rune.Utf8SequenceLength;
            if (room < 0)
                break;
            kept += rune.Utf16SequenceLength;
        }

        return piece[..kept];
    }
}
