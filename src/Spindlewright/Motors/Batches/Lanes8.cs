using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Spindlewright.Motors.Batches;

/// <summary>Eight numbers at once, where the hardware has vectors of 512 bits.</summary>
internal readonly struct Lanes8(Vector512<double> numbers) : ILanes<Lanes8>
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    private readonly Vector512<double> numbers = numbers;

    public static int Count => 8;

    [MethodImpl(Inline)]
    public static Lanes8 operator +(Lanes8 a, Lanes8 b) => new(a.numbers + b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator -(Lanes8 a, Lanes8 b) => new(a.numbers - b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator *(Lanes8 a, Lanes8 b) => new(a.numbers * b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator /(Lanes8 a, Lanes8 b) => new(a.numbers / b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator &(Lanes8 a, Lanes8 b) => new(a.numbers & b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator |(Lanes8 a, Lanes8 b) => new(a.numbers | b.numbers);

    [MethodImpl(Inline)]
    public static Lanes8 operator <(Lanes8 a, Lanes8 b) => new(Vector512.LessThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes8 operator >(Lanes8 a, Lanes8 b) => new(Vector512.GreaterThan(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes8 Same(Lanes8 a, Lanes8 b) => new(Vector512.Equals(a.numbers, b.numbers));

    [MethodImpl(Inline)]
    public static Lanes8 Sqrt(Lanes8 a) => new(Vector512.Sqrt(a.numbers));

    [MethodImpl(Inline)]
    public static Lanes8 Choose(Lanes8 where, Lanes8 then, Lanes8 otherwise) =>
        new(Vector512.ConditionalSelect(where.numbers, then.numbers, otherwise.numbers));

    [MethodImpl(Inline)]
    public static ulong Bits(Lanes8 where) => Vector512.ExtractMostSignificantBits(where.numbers);

    [MethodImpl(Inline)]
    public static bool Any(Lanes8 where) => Bits(where) != 0;

    [MethodImpl(Inline)]
    public static Lanes8 Smaller(Lanes8 a, Lanes8 b) => Choose(b < a, b, a);

    [MethodImpl(Inline)]
    public static Lanes8 Larger(Lanes8 a, Lanes8 b) => Choose(b > a, b, a);

    [MethodImpl(Inline)]
    public static Lanes8 All(double number) => new(Vector512.Create(number));

    [MethodImpl(Inline)]
    public static Lanes8 Load(ReadOnlySpan<double> from, int start) =>
        new(Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(from.Slice(start, Count))));

    [MethodImpl(Inline)]
    public static void Store(Lanes8 lanes, Span<double> to, int start) =>
        lanes.numbers.StoreUnsafe(ref MemoryMarshal.GetReference(to.Slice(start, Count)));
}
