using System.Security.Cryptography;
using System.Text;

namespace Spindlewright.Kernel.Jupyter.Wire;

/// <summary>Signs messages and checks signatures; a signature counts once.</summary>
/// <param name="key">The secret; empty for messages without signatures.</param>
internal sealed class Signer(string key)
{
    private const int MostRemembered = 1 << 16;

    private readonly byte[] keyBytes = Encoding.UTF8.GetBytes(key);
    private readonly HashSet<string> seen = [];
    private readonly Queue<string> order = [];

    /// <summary>Computes the signature of the four parts of a message, in lower-case hexadecimal digits.</summary>
    internal byte[] Sign(IEnumerable<byte[]> parts)
    {
        if (keyBytes.Length == 0)
            return [];
        using var hash = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, keyBytes);
        foreach (var part in parts)
            hash.AppendData(part);
        return Encoding.ASCII.GetBytes(Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>Says whether a message is from somebody who knows the key, and new. Called from one thread.</summary>
    /// <param name="signature">The signature it carries.</param>
    /// <param name="parts">Its four parts.</param>
    internal bool Accepts(byte[] signature, IEnumerable<byte[]> parts)
    {
        if (keyBytes.Length == 0)
            return true;
        if (!CryptographicOperations.FixedTimeEquals(signature, Sign(parts)))
            return false;
        var text = Encoding.ASCII.GetString(signature);
        if (!seen.Add(text))
            return false;
        order.Enqueue(text);
        if (order.Count > MostRemembered)
            seen.Remove(order.Dequeue());
        return true;
    }
}
