using System.Globalization;
using System.Text;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>One process as the system's table shows it.</summary>
/// <param name="Id">Process number.</param>
/// <param name="Parent">Its parent's number.</param>
/// <param name="Session">Its session's number.</param>
/// <param name="Started">Start, clock ticks since boot: tells a process from a later one with its number.</param>
/// <param name="ResidentBytes">Resident memory, bytes.</param>
/// <param name="IsDead">True for one that has ended and waits to be collected.</param>
internal readonly record struct ProcessEntry(
    int Id, int Parent, int Session, long Started, long ResidentBytes, bool IsDead);

/// <summary>Finds and ends a child with everything its cells started. Linux only.</summary>
/// <remarks>
/// A process belongs to the tree if it is the root, descends from it, is in the root's session, carries the root's
/// mark in its environment, or was seen in the tree before. Descent fails for orphans once the root is gone; the
/// session fails for a process that made its own; the mark fails for one with a cleaned environment: a process has
/// to evade all of these, and every look taken while the root lived, to get away.
/// </remarks>
internal sealed class ProcessTree(int root, string mark)
{
    /// <summary>The environment variable that carries the mark.</summary>
    internal const string MarkVariable = "SPINDLEWRIGHT_ENGINE";

    private readonly byte[] markBytes = Encoding.ASCII.GetBytes($"{MarkVariable}={mark}");
    private readonly Dictionary<int, long> seen = [];
    private readonly Lock looking = new();

    /// <summary>Lists the live processes of the tree.</summary>
    internal IReadOnlyList<ProcessEntry> Look()
    {
        lock (looking)
        {
            var table = ReadTable();
            var members = new Dictionary<int, ProcessEntry>();
            var byParent = table.Values.ToLookup(entry => entry.Parent);
            foreach (var entry in table.Values)
                if (IsMember(entry))
                    Add(entry, byParent, members);
            foreach (var entry in members.Values)
                seen[entry.Id] = entry.Started;
            return [.. members.Values.Where(entry => !entry.IsDead)];
        }
    }

    /// <summary>Sums the resident memory of the tree, bytes.</summary>
    internal long MeasureMemory() => Look().Sum(entry => entry.ResidentBytes);

    /// <summary>Ends the tree, the root first, so that it cannot start more; looks again until nothing is left.</summary>
    /// <param name="spareRoot">Leaves the root alive.</param>
    internal void Kill(bool spareRoot = false)
    {
        const int MostRounds = 50;
        if (!spareRoot)
            Look();
        for (var round = 0; round < MostRounds; round++)
        {
            if (!spareRoot && round == 0)
                _ = Native.Kill(root, Native.KillSignal);
            var left = Look().Where(entry => !(spareRoot && entry.Id == root)).ToList();
            if (left.Count == 0)
                return;
            foreach (var entry in left)
                _ = Native.Kill(entry.Id, Native.KillSignal);
            Thread.Sleep(5);
        }
    }

    /// <summary>Ends everything but this process, which is the root, and then this process.</summary>
    internal void KillFromWithin()
    {
        try
        {
            Kill(spareRoot: true);
        }
        finally
        {
            // Number 0 is the own group; the own number is for the case that no group could be made.
            _ = Native.Kill(0, Native.KillSignal);
            _ = Native.Kill(root, Native.KillSignal);
        }
    }

    private bool IsMember(ProcessEntry entry) =>
        entry.Id == root || entry.Session == root
        || (seen.TryGetValue(entry.Id, out var started) && started == entry.Started)
        || (!entry.IsDead && CarriesMark(entry.Id));

    private static void Add(
        ProcessEntry entry, ILookup<int, ProcessEntry> byParent, Dictionary<int, ProcessEntry> members)
    {
        if (!members.TryAdd(entry.Id, entry))
            return;
        foreach (var child in byParent[entry.Id])
            Add(child, byParent, members);
    }

    private bool CarriesMark(int id)
    {
        try
        {
            return File.ReadAllBytes(Invariant($"/proc/{id}/environ")).AsSpan().IndexOf(markBytes) >= 0;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false; // ended meanwhile, or somebody else's
        }
    }

    private static Dictionary<int, ProcessEntry> ReadTable()
    {
        var table = new Dictionary<int, ProcessEntry>();
        foreach (var folder in Directory.EnumerateDirectories("/proc"))
            if (int.TryParse(Path.GetFileName(folder.AsSpan()), NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                && ReadEntry(id) is { } entry)
                table[id] = entry;
        return table;
    }

    /// <summary>Reads one row of the table; null when there is no such process.</summary>
    internal static ProcessEntry? ReadEntry(int id)
    {
        try
        {
            // The name in parentheses may itself hold spaces and parentheses; the fields follow the last one.
            var text = File.ReadAllText(Invariant($"/proc/{id}/stat"));
            var fields = text[(text.LastIndexOf(')') + 2)..].Split(' ');
            return new ProcessEntry(id, Number(fields[1]), Number(fields[3]),
                long.Parse(fields[19], CultureInfo.InvariantCulture),
                long.Parse(fields[21], CultureInfo.InvariantCulture) * Environment.SystemPageSize,
                fields[0] is "Z" or "X");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
