using System.Globalization;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>A whole number without quotes.</summary>
internal sealed class WholeNumberForm(int least, int most) : ValueForm<int>
{
    public override string Name => "whole number";

    public override string Accepted => string.Create(
        CultureInfo.InvariantCulture, $"a whole number from {least} to {most}, without quotes");

    public override string Write(int value) => value.ToString(CultureInfo.InvariantCulture);

    internal override bool TryRead(Node node, FaultSink faults, out int value)
    {
        value = 0;
        if ((node as LeafNode)?.Syntax is not IntegerValueSyntax whole) return RefuseSort(node, faults);
        if (whole.Value < least || whole.Value > most)
            return Refuse(node, faults, string.Create(
                CultureInfo.InvariantCulture, $"{whole.Value} lies outside {least} to {most}"));
        value = (int)whole.Value;
        return true;
    }
}

/// <summary>true or false.</summary>
internal sealed class TrueOrFalseForm : ValueForm<bool>
{
    public override string Name => "true or false";

    public override string Accepted => "true or false, without quotes";

    public override string Write(bool value) => value ? "true" : "false";

    internal override bool TryRead(Node node, FaultSink faults, out bool value)
    {
        var given = (node as LeafNode)?.Syntax as BooleanValueSyntax;
        value = given?.Value ?? false;
        return given is not null || RefuseSort(node, faults);
    }
}

/// <summary>A line of text in quotes.</summary>
internal sealed class TextForm(int longest) : ValueForm<string>
{
    public override string Name => "text";

    public override string Accepted => string.Create(
        CultureInfo.InvariantCulture, $"a line of text of 1 to {longest} characters, in quotes");

    public override string Write(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Quoted(value);
    }

    internal static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    internal override bool TryRead(Node node, FaultSink faults, out string? value)
    {
        value = (node as LeafNode)?.Text;
        if (value is null) return RefuseSort(node, faults);
        value = value.Trim();
        if (value.Length == 0) return Refuse(node, faults, "the text is empty");
        if (value.Length > longest)
            return Refuse(node, faults, string.Create(
                CultureInfo.InvariantCulture, $"the text has {value.Length} characters"));
        return !value.Any(char.IsControl) || Refuse(node, faults, "the text has line ends or control characters");
    }
}

/// <summary>One of a few words, in quotes.</summary>
internal sealed class ChoiceForm<T>((string Word, T Value)[] words) : ValueForm<T> where T : notnull
{
    public override string Name => string.Join(" or ", words.Select(pair => $"\"{pair.Word}\""));

    public override string Accepted => Name;

    public override string Write(T value) =>
        TextForm.Quoted(words.First(pair => EqualityComparer<T>.Default.Equals(pair.Value, value)).Word);

    internal override bool TryRead(Node node, FaultSink faults, out T? value)
    {
        value = default;
        if ((node as LeafNode)?.Text is not { } text) return RefuseSort(node, faults);
        foreach (var (word, meaning) in words)
            if (string.Equals(word, text, StringComparison.Ordinal))
            {
                value = meaning;
                return true;
            }
        var near = NearestName.Of(text, words.Select(pair => pair.Word));
        return Refuse(node, faults, near is null ? $"{Printable.Of(((LeafNode)node).Raw)} is not one of the words"
            : $"{Printable.Of(((LeafNode)node).Raw)} is not one of the words; did you mean \"{near}\"?");
    }
}

/// <summary>Several values in square brackets.</summary>
internal sealed class ListForm<T>(ValueForm<T> each, int least, int most) : ValueForm<IReadOnlyList<T>>
    where T : notnull
{
    public override string Name => $"list of {each.Name}";

    public override string Accepted => string.Create(
        CultureInfo.InvariantCulture, $"{least} to {most} values in square brackets, each {each.Accepted}");

    public override string Write(IReadOnlyList<T> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return $"[{string.Join(", ", value.Select(each.Write))}]";
    }

    internal override bool TryRead(Node node, FaultSink faults, out IReadOnlyList<T>? value)
    {
        value = null;
        if (node is not ListNode list) return RefuseSort(node, faults);
        if (list.Items.Count < least || list.Items.Count > most)
            return Refuse(node, faults, string.Create(
                CultureInfo.InvariantCulture, $"the list has {list.Items.Count} values"));
        var read = new List<T>();
        foreach (var item in list.Items)
            if (each.TryRead(item, faults, out var one))
                read.Add(one!);
        value = read;
        return read.Count == list.Items.Count;
    }
}
