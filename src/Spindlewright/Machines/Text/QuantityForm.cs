using System.Globalization;
using Spindlewright.Foundations.Reading;
using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>A value with its unit in quotes, such as <c>"0.75 kW"</c>.</summary>
internal sealed class QuantityForm<T>(QuantityKind<T> kind) : ValueForm<T> where T : struct
{
    public override string Name => kind.Name;

    public override string Accepted => kind.Units.All(unit => unit.Symbol.Length == 0) || kind.Bare is not null
        ? kind.Accepted : $"{kind.Accepted}, in quotes";

    public override string Write(T value)
    {
        var text = QuantityWriter.WriteExactly(value, kind);
        return char.IsAsciiDigit(text[^1]) ? text : $"\"{text}\"";
    }

    internal override bool TryRead(Node node, FaultSink faults, out T value)
    {
        value = default;
        if (node is not LeafNode leaf) return RefuseSort(node, faults);
        if (leaf.Text is { } text) return TryRead(leaf, text, faults, out value);
        var number = leaf.Syntax switch
        {
            IntegerValueSyntax whole => whole.Value,
            FloatValueSyntax real => real.Value,
            _ => (double?)null,
        };
        if (number is null) return RefuseSort(node, faults);
        if (kind.Bare is null) return Refuse(node, faults, NoUnit(leaf.Raw));
        return TryRead(leaf, number.Value.ToString("R", CultureInfo.InvariantCulture), faults, out value);
    }

    private bool TryRead(LeafNode leaf, string text, FaultSink faults, out T value)
    {
        if (QuantityReader.TryRead(text, kind, out value, out var fault)) return true;
        faults.Add(leaf.PlaceOf(fault.Column), leaf.Raw, Accepted, $"{Printable.Of(leaf.Raw)}: {fault.What}");
        return false;
    }

    private string NoUnit(string raw)
    {
        var examples = kind.Units.Take(2).Select(unit => $"\"{Printable.Of(raw)} {unit.Symbol}\"");
        return $"{Printable.Of(raw)} has no unit; write it with one and in quotes, {string.Join(" or ", examples)}";
    }
}
