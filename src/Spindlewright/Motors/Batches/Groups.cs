using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Places that are worked on at once: they follow one another, at most as many as lanes, and never leave a layer, unless
/// one circuit serves them all.</summary>
/// <param name="Start">First point.</param>
/// <param name="Circuit">Its circuit; below 0 where one circuit serves all points.</param>
/// <param name="Length">How many; lanes beyond repeat the last.</param>
internal readonly record struct Group(int Start, int Circuit, int Length)
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal L Load<L>(ReadOnlySpan<double> points) where L : struct, ILanes<L> =>
        Length == L.Count ? L.Load(points, Start) : Part<L>(points, Start);

    /// <summary>Loads from a column of circuits rather than of points.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal L LoadCircuits<L>(ReadOnlySpan<double> column) where L : struct, ILanes<L> =>
        Length == L.Count && Circuit >= 0
            ? L.Load(column, Circuit)
            : Length == 1 || Circuit < 0 ? L.All(column[Math.Max(0, Circuit)]) : Part<L>(column, Circuit);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Store<L>(L lanes, Span<double> points) where L : struct, ILanes<L>
    {
        if (Length == L.Count) L.Store(lanes, points, Start);
        else StorePart(lanes, points);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private L Part<L>(ReadOnlySpan<double> from, int start) where L : struct, ILanes<L>
    {
        Span<double> whole = stackalloc double[L.Count];
        for (var lane = 0; lane < L.Count; lane++) whole[lane] = from[start + Math.Min(lane, Length - 1)];
        return L.Load(whole, 0);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void StorePart<L>(L lanes, Span<double> to) where L : struct, ILanes<L>
    {
        Span<double> whole = stackalloc double[L.Count];
        L.Store(lanes, whole, 0);
        whole[..Length].CopyTo(to[Start..]);
    }
}

/// <summary>Cuts a block of a layered batch into groups.</summary>
internal ref struct Groups(int start, int length, int circuits, int lanes)
{
    private readonly int end = start + length;
    private int next = start;

    public Group Current { get; private set; }

    public readonly Groups GetEnumerator() => this;

    public bool MoveNext()
    {
        if (next >= end) return false;
        var circuit = circuits == 1 ? -1 : next % circuits;
        var taken = Math.Min(lanes, Math.Min(circuit < 0 ? lanes : circuits - circuit, end - next));
        Current = new(next, circuit, taken);
        next += taken;
        return true;
    }
}
