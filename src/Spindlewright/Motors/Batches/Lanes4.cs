using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Spindlewright.Motors.Batches;

/// <summary>Four numbers at once, where the hardware has vectors of 256 bits.</summary>
internal readonly struct Lanes4(Vector256<double> numbers) : ILanes<Lanes4>
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    private readonly Vector256<double> numbers = numbers;

    public static int Count => 4;

    [MethodImpl(Inline)]
    public static Lanes4 operator +(Lanes4 a, Lanes4 b) => new(a.numbers + b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator -(Lanes4 a, Lanes4 b) => new(a.numbers - b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator *(Lanes4 a, Lanes4 b) => new(a.numbers * b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator /(Lanes4 a, Lanes4 b) => new(a.numbers / b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator &(Lanes4 a, Lanes4 b) => new(a.numbers & b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator |(Lanes4 a, Lanes4 b) => new(a.numbers | b.numbers);

    [MethodImpl(Inline)]
    public static Lanes4 operator <(Lanes4 a, Lanes4 b) => new(Vector256.LessThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes4 operator >(Lanes4 a, Lanes4 b) => new(Vector256.GreaterThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes4 Same(Lanes4 a, Lanes4 b) => new(Vector256.Equals(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes4 Sqrt(Lanes4 a) => new(Vector256.Sqrt(a.numbers));

    [MethodImpl(Inline)]
    public static Lanes4 Choose(Lanes4 where, Lanes4 then, Lanes4 otherwise) =>
        new(Vector256.ConditionalSelect(where.numbers, then.numbers, otherwise.numbers));

    [MethodImpl(Inline)]
    public static ulong Bits(Lanes4 where) => Vector256.ExtractMostSignificantBits(where.numbers);

    [MethodImpl(Inline)]
    public static bool Any(Lanes4 where) => Bits(where) != 0;

    [MethodImpl(Inline)]
    public static Lanes4 Smaller(Lanes4 a, Lanes4 b) => Choose(b < a, b, a);

    [MethodImpl(Inline)]
    public static Lanes4 Larger(Lanes4 a, Lanes4 b) => Choose(b > a, b, a);

    [MethodImpl(Inline)]
    public static Lanes4 All(double number) => new(Vector256.Create(number));

    [MethodImpl(Inline)]
    public static Lanes4 Load(ReadOnlySpan<double> from, int start) =>
        new(Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(from.Slice(start, Count))));

    [MethodImpl(Inline)]
    public static void Store(Lanes4 lanes, Span<double> to, int start) =>
        lanes.numbers.StoreUnsafe(ref MemoryMarshal.GetReference(to.Slice(start, Count)));
}
