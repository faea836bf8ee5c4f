using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Spindlewright.Benchmarks;

/// <summary>What this machine can do at most, measured where the batches are.</summary>
internal static class Limits
{
    // Small enough for the nearest cache; large enough to leave every cache.
    private const int Near = 1024, Far = 1 << 25;

    /// <summary>One root and one quotient a point from the nearest cache: an operating point needs both and cannot be quicker.</summary>
    internal static double RootAndQuotientNs()
    {
        var numbers = new double[Near];
        Array.Fill(numbers, 1.7);
        double sink = 0;
        return Shortest.Ns(
            () =>
            {
                for (var again = 0; again < 100; again++)
                    sink += Vector512.IsHardwareAccelerated ? In512(numbers) : In256(numbers);
            },
            100 * Near) + 0 * sink;
    }

    /// <summary>Reading numbers that lie in memory.</summary>
    internal static double ReadNs()
    {
        var numbers = new double[Far];
        Array.Fill(numbers, 1.7);
        double sink = 0;
        return Shortest.Ns(() => sink += Total(numbers), Far) + 0 * sink;
    }

    /// <summary>Writing numbers to memory.</summary>
    internal static double WriteNs()
    {
        var numbers = new double[Far];
        var value = 0.0;
        return Shortest.Ns(() => Array.Fill(numbers, value++), Far);
    }

    private static double In512(double[] numbers)
    {
        var (one, most) = (Vector512<double>.One, Vector512<double>.Zero);
        foreach (var each in MemoryMarshal.Cast<double, Vector512<double>>(numbers))
            most = Vector512.Max(most, one / Vector512.Sqrt(each));
        return most[0];
    }

    private static double In256(double[] numbers)
    {
        var (one, most) = (Vector256<double>.One, Vector256<double>.Zero);
        foreach (var each in MemoryMarshal.Cast<double, Vector256<double>>(numbers))
            most = Vector256.Max(most, one / Vector256.Sqrt(each));
        return most[0];
    }

    private static double Total(double[] numbers)
    {
        var vectors = MemoryMarshal.Cast<double, Vector256<double>>(numbers);
        var (a, b, c, d) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
        for (var i = 0; i < vectors.Length; i += 4)
            (a, b, c, d) = (a + vectors[i], b + vectors[i + 1], c + vectors[i + 2], d + vectors[i + 3]);
        return (a + b + c + d)[0];
    }
}
