namespace Spindlewright.Foundations.Sampling;

/// <summary>A random order of the numbers 0 to count − 1, of which any one can be had without the others.</summary>
/// <remarks>
/// Six rounds of a Feistel network over the next even number of bits, repeated until the number is in range (cycle
/// walking): a bijection by its form, whatever its rounds do. It needs no memory and no order of asking.
/// </remarks>
internal readonly struct KeyedPermutation
{
    private const int Rounds = 6;

    private readonly ulong count;
    private readonly int halfBits;
    private readonly uint halfMask;
    private readonly (uint, uint, uint, uint, uint, uint) keys;

    /// <summary>Makes the order of a seed and a stream.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="stream">Stream.</param>
    /// <param name="count">How many numbers, above 0.</param>
    internal KeyedPermutation(ulong seed, uint stream, long count)
    {
        this.count = (ulong)count;
        var bits = 64 - System.Numerics.BitOperations.LeadingZeroCount((ulong)count - 1);
        halfBits = Math.Max(1, (bits + 1) / 2);
        halfMask = (uint)((1UL << halfBits) - 1);
        // The last word of the counter keeps these keys apart from the draws of the same stream.
        var key = ((uint)seed, (uint)(seed >> 32));
        var (a, b, c, d) = CounterGenerator.Block((0, 0, stream, 1), key);
        var (e, f, _, _) = CounterGenerator.Block((1, 0, stream, 1), key);
        keys = (a, b, c, d, e, f);
    }

    /// <summary>The number at a place.</summary>
    /// <param name="place">0 to count − 1.</param>
    /// <returns>0 to count − 1, each once over all places.</returns>
    internal ulong At(ulong place)
    {
        var number = place;
        do number = Shuffled(number);
        while (number >= count);
        return number;
    }

    private ulong Shuffled(ulong number)
    {
        var (left, right) = ((uint)(number >> halfBits), (uint)number & halfMask);
        for (var round = 0; round < Rounds; round++)
            (left, right) = (right, left ^ (Mixed(right ^ Key(round)) & halfMask));
        return ((ulong)left << halfBits) | right;
    }

    private uint Key(int round) => round switch
    {
        0 => keys.Item1,
        1 => keys.Item2,
        2 => keys.Item3,
        3 => keys.Item4,
        4 => keys.Item5,
        _ => keys.Item6,
    };

    /// <summary>The finishing step of the MurmurHash3 hash, which is in the public domain.</summary>
    private static uint Mixed(uint word)
    {
        unchecked
        {
            word = (word ^ (word >> 16)) * 0x85EBCA6B;
            word = (word ^ (word >> 13)) * 0xC2B2AE35;
            return word ^ (word >> 16);
        }
    }
}
