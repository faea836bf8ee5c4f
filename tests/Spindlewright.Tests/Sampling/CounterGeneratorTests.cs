using CsCheck;
using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Tests.Sampling;

public sealed class CounterGeneratorTests
{
    /// <summary>
    /// Known answers of Philox4x32-10: file kat_vectors of the generator's makers (Random123, tests), which belongs to Salmon,
    /// Moraes, Dror, Shaw, SC11 (2011). Seen in a stored transcription.
    /// </summary>
    [Theory]
    [InlineData("00000000 00000000 00000000 00000000 00000000 00000000", "6627e8d5 e169c58d bc57ac4c 9b00dbd8")]
    [InlineData("ffffffff ffffffff ffffffff ffffffff ffffffff ffffffff", "408f276d 41c83b0e a20bc7c6 6d5451fd")]
    [InlineData("243f6a88 85a308d3 13198a2e 03707344 a4093822 299f31d0", "d16cfe09 94fdcceb 5001e420 24126ea1")]
    public void The_generator_gives_the_known_answers_of_its_makers(string given, string expected)
    {
        var w = given.Split(' ').Select(word => Convert.ToUInt32(word, 16)).ToArray();
        var (a, b, c, d) = CounterGenerator.Block((w[0], w[1], w[2], w[3]), (w[4], w[5]));
        Assert.Equal(expected, string.Join(' ', new[] { a, b, c, d }.Select(word => $"{word:x8}")));
    }

    [Fact]
    public void Uniform_numbers_lie_between_0_and_1_and_are_spread_evenly()
    {
        // Chi-squared over 100 classes: 99.99 % of true uniform samples stay below 161.3 (99 degrees of freedom; any table).
        const int Classes = 100, Count = 1_000_000;
        var generator = new CounterGenerator(2026);
        var hits = new int[Classes];
        for (ulong sample = 0; sample < Count; sample++)
        {
            var uniform = generator.Uniform(3, sample);
            Assert.True(uniform is > 0 and < 1);
            hits[(int)(uniform * Classes)]++;
        }

        const double Expected = (double)Count / Classes;
        Assert.InRange(hits.Sum(hit => (hit - Expected) * (hit - Expected) / Expected), 45, 161.3);
    }

    [Fact]
    public void Streams_seeds_and_samples_are_independent_of_each_other()
    {
        const int Count = 100_000;
        double[] Column(ulong seed, uint stream, ulong first) =>
            [.. Enumerable.Range(0, Count).Select(i => new CounterGenerator(seed).Uniform(stream, first + (ulong)i))];
        double[][] columns = [Column(1, 0, 0), Column(1, 1, 0), Column(2, 0, 0), Column(1, 0, 1), Column(1UL << 40, 0, 0), Column(1, 0, 1UL << 40)];
        for (var a = 0; a < columns.Length; a++)
            for (var b = 0; b < a; b++)
                // Five standard errors of a correlation of nothing, 1/√n.
                Assert.InRange(
                    MathNet.Numerics.Statistics.Correlation.Pearson(columns[a], columns[b]),
                    -5 / Math.Sqrt(Count), 5 / Math.Sqrt(Count));
    }

    [Fact]
    public void An_order_holds_every_number_once() => Gen.Select(Gen.ULong, Gen.UInt, Gen.Int[1, 3000]).Sample((seed, stream, count) =>
    {
        var order = new KeyedPermutation(seed, stream, count);
        var numbers = Enumerable.Range(0, count).Select(place => order.At((ulong)place)).Order();
        Assert.Equal(Enumerable.Range(0, count).Select(number => (ulong)number), numbers);
    });

    [Fact]
    public void An_order_of_a_million_is_no_straight_line()
    {
        const int Count = 1_000_000;
        var order = new KeyedPermutation(5, 0, Count);
        double[] places = [.. Enumerable.Range(0, Count).Select(place => (double)place)];
        double[] numbers = [.. Enumerable.Range(0, Count).Select(place => (double)order.At((ulong)place))];
        Assert.InRange(MathNet.Numerics.Statistics.Correlation.Pearson(places, numbers), -0.005, 0.005);
        Assert.InRange(MathNet.Numerics.Statistics.Correlation.Pearson(numbers[1..], numbers[..^1]), -0.005, 0.005);
    }
}
