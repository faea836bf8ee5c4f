namespace Spindlewright.Foundations.Sampling;

/// <summary>Random numbers by counter: a number depends on its seed, stream and sample, and on nothing before it.</summary>
/// <remarks>
/// Philox4x32 with ten rounds: Salmon, Moraes, Dror, Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11 (2011),
/// doi 10.1145/2063384.2063405. The key is the seed; the counter is the sample and the stream. Any sample can be drawn
/// alone, so that the same numbers come out on one core or many. Not for secrets.
/// </remarks>
public readonly record struct CounterGenerator
{
    private const int Rounds = 10;
    private const uint MultiplierA = 0xD2511F53, MultiplierB = 0xCD9E8D57;
    private const uint WeylA = 0x9E3779B9, WeylB = 0xBB67AE85;
    private const double Spacing = 1.0 / (1L << 52);

    /// <summary>Makes the generator of a seed.</summary>
    /// <param name="seed">Any number; the same seed gives the same numbers.</param>
    public CounterGenerator(ulong seed) => Seed = seed;

    /// <summary>The seed.</summary>
    public ulong Seed { get; }

    /// <summary>A number between 0 and 1, neither included.</summary>
    /// <param name="stream">Which of the independent streams, such as the number of an input.</param>
    /// <param name="sample">Which number of the stream.</param>
    /// <returns>One of 2⁵² equally spaced numbers, (k + ½) / 2⁵².</returns>
    public double Uniform(uint stream, ulong sample) => ((Bits(stream, sample) >> 12) + 0.5) * Spacing;

    /// <summary>64 random bits.</summary>
    /// <inheritdoc cref="Uniform"/>
    /// <returns>The bits.</returns>
    public ulong Bits(uint stream, ulong sample)
    {
        var (low, high, _, _) = Block(
            ((uint)sample, (uint)(sample >> 32), stream, 0), ((uint)Seed, (uint)(Seed >> 32)));
        return ((ulong)high << 32) | low;
    }

    /// <summary>The function itself: four words from a counter of four and a key of two.</summary>
    internal static (uint, uint, uint, uint) Block((uint C0, uint C1, uint C2, uint C3) counter, (uint K0, uint K1) key)
    {
        var (c0, c1, c2, c3) = counter;
        var (k0, k1) = key;
        for (var round = 0; round < Rounds; round++)
        {
            var (a, b) = ((ulong)MultiplierA * c0, (ulong)MultiplierB * c2);
            (c0, c1, c2, c3) = ((uint)(b >> 32) ^ c1 ^ k0, (uint)b, (uint)(a >> 32) ^ c3 ^ k1, (uint)a);
            (k0, k1) = unchecked((k0 + WeylA, k1 + WeylB));
        }

        return (c0, c1, c2, c3);
    }
}
