using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Spindlewright.Motors.Batches;

/// <summary>Two numbers at once: every processor that .NET runs on has vectors of 128 bits.</summary>
internal readonly struct Lanes2(Vector128<double> numbers) : ILanes<Lanes2>
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    private readonly Vector128<double> numbers = numbers;

    public static int Count => 2;

    [MethodImpl(Inline)]
    public static Lanes2 operator +(Lanes2 a, Lanes2 b) => new(a.numbers + b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator -(Lanes2 a, Lanes2 b) => new(a.numbers - b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator *(Lanes2 a, Lanes2 b) => new(a.numbers * b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator /(Lanes2 a, Lanes2 b) => new(a.numbers / b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator &(Lanes2 a, Lanes2 b) => new(a.numbers & b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator |(Lanes2 a, Lanes2 b) => new(a.numbers | b.numbers);

    [MethodImpl(Inline)]
    public static Lanes2 operator <(Lanes2 a, Lanes2 b) => new(Vector128.LessThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes2 operator >(Lanes2 a, Lanes2 b) => new(Vector128.GreaterThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes2 Same(Lanes2 a, Lanes2 b) => new(Vector128.Equals(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes2 Sqrt(Lanes2 a) => new(Vector128.Sqrt(a.numbers));

    [MethodImpl(Inline)]
    public static Lanes2 Choose(Lanes2 where, Lanes2 then, Lanes2 otherwise) =>
        new(Vector128.ConditionalSelect(where.numbers, then.numbers, otherwise.numbers));

    [MethodImpl(Inline)]
    public static ulong Bits(Lanes2 where) => Vector128.ExtractMostSignificantBits(where.numbers);

    [MethodImpl(Inline)]
    public static bool Any(Lanes2 where) => Bits(where) != 0;

    [MethodImpl(Inline)]
    public static Lanes2 Smaller(Lanes2 a, Lanes2 b) => Choose(b < a, b, a);

    [MethodImpl(Inline)]
    public static Lanes2 Larger(Lanes2 a, Lanes2 b) => Choose(b > a, b, a);

    [MethodImpl(Inline)]
    public static Lanes2 All(double number) => new(Vector128.Create(number));

    [MethodImpl(Inline)]
    public static Lanes2 Load(ReadOnlySpan<double> from, int start) =>
        new(Vector128.LoadUnsafe(ref MemoryMarshal.GetReference(from.Slice(start, Count))));

    [MethodImpl(Inline)]
    public static void Store(Lanes2 lanes, Span<double> to, int start) =>
        lanes.numbers.StoreUnsafe(ref MemoryMarshal.GetReference(to.Slice(start, Count)));
}
