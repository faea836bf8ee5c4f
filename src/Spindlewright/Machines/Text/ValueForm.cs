using Spindlewright.Foundations.Reading;

namespace Spindlewright.Machines.Text;

/// <summary>How a value is written after a key.</summary>
public abstract class ValueForm
{
    /// <summary>What it is, for the reference page: "power", "text", "whole number".</summary>
    public abstract string Name { get; }

    /// <summary>What is accepted, for messages.</summary>
    public abstract string Accepted { get; }

    internal abstract object? ReadBoxed(Node node, FaultSink faults);
}

/// <summary>How a value of one type is written after a key.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public abstract class ValueForm<T> : ValueForm where T : notnull
{
    /// <summary>The value as it is written in a file, quotes included.</summary>
    /// <param name="value">The value.</param>
    /// <returns>Text that reads back as the value.</returns>
    public abstract string Write(T value);

    internal abstract bool TryRead(Node node, FaultSink faults, out T? value);

    internal sealed override object? ReadBoxed(Node node, FaultSink faults) =>
        TryRead(node, faults, out var value) ? value : null;

    /// <summary>Reports that the node is of another sort than the form.</summary>
    private protected bool Refuse(Node node, FaultSink faults, string message)
    {
        faults.Add(node.Place, node.Described, Accepted, message);
        return false;
    }

    private protected bool RefuseSort(Node node, FaultSink faults) =>
        Refuse(node, faults, $"{Printable.Of(node.Described)} cannot stand here");
}

/// <summary>Takes the faults of one key.</summary>
/// <param name="faults">The list of the text.</param>
/// <param name="key">The key's path.</param>
internal sealed class FaultSink(FaultList faults, string key)
{
    /// <summary>Adds a fault of this key.</summary>
    public void Add(TextPlace place, string found, string accepted, string message) =>
        faults.Add(place, key, found, accepted, message);
}
