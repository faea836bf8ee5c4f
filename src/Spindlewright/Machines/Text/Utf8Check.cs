using System.Buffers;
using System.Globalization;
using System.Text;

namespace Spindlewright.Machines.Text;

/// <summary>Finds the first byte that is no UTF-8.</summary>
internal static class Utf8Check
{
    /// <summary>The place and a message; null for sound UTF-8.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <returns>The first fault.</returns>
    public static (TextPlace Place, string Message)? FirstFault(ReadOnlySpan<byte> bytes)
    {
        if (System.Text.Unicode.Utf8.IsValid(bytes)) return null;
        var (line, column, at) = (1, 1, 0);
        while (Rune.DecodeFromUtf8(bytes[at..], out var rune, out var length) == OperationStatus.Done)
        {
            at += length;
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + 1);
        }
        return (new(line, column), string.Create(
            CultureInfo.InvariantCulture, $"the byte 0x{bytes[at]:X2} is no UTF-8; save the file as UTF-8"));
    }
}
