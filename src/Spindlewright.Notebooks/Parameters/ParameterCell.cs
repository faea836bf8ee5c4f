using Spindlewright.Notebooks.Format;

namespace Spindlewright.Notebooks.Parameters;

/// <summary>Finds the parameters of a notebook and sets them.</summary>
/// <remarks>
/// The values are rewritten where they stand, instead of in a cell put in behind: declarations further down in the
/// same cell see the new value, cells keep their numbers, and since a new value takes as many lines as the old one,
/// lines keep theirs.
/// </remarks>
public static class ParameterCell
{
    /// <summary>The tag of the cell.</summary>
    public const string Tag = "parameters";

    /// <summary>Lists the parameters of a notebook.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <returns>The parameters; empty when no code cell is tagged.</returns>
    public static IReadOnlyList<Parameter> Find(Notebook notebook) =>
        Cell(notebook) is { } cell ? DeclarationScanner.Scan(cell.Source) : [];

    /// <summary>Sets parameters in a notebook.</summary>
    /// <param name="notebook">The notebook; its parameters cell is changed, or nothing when a fault is found.</param>
    /// <param name="settings">The values.</param>
    /// <param name="quantities">Reads quantities; null when there is no such reader, and none can be set.</param>
    /// <exception cref="ParameterException">A name is unknown, set twice, or a value is not of its kind.</exception>
    public static void Set(Notebook notebook, IReadOnlyList<ParameterSetting> settings, IQuantityReader? quantities = null)
    {
        if (settings.Count == 0)
            return;
        var faults = new List<string>();
        var changes = new List<(Parameter Parameter, string Value)>();
        var known = Find(notebook);
        foreach (var setting in settings)
        {
            // A name declared twice in the cell means its last declaration, as it does when the cell runs.
            var parameter = known.LastOrDefault(each => each.Name == setting.Name);
            if (parameter is null)
                faults.Add(Unknown(notebook.Name, setting.Name, Cell(notebook) is null, known));
            else if (changes.Exists(each => each.Parameter.Name == setting.Name))
                faults.Add($"{notebook.Name}: parameter \"{setting.Name}\" is set twice; accepted: once.");
            else if (ParameterValue.Write(parameter, setting.Text, quantities, out var fault) is { } value)
                changes.Add((parameter, value));
            else
                faults.Add($"{notebook.Name}: parameter \"{setting.Name}\": {fault}");
        }

        if (faults.Count > 0)
            throw new ParameterException(faults);
        Rewrite(Cell(notebook)!, changes);
    }

    /// <summary>The sentence for a name that is not known.</summary>
    /// <param name="where">The notebook or notebooks, for the message.</param>
    /// <param name="name">The name.</param>
    /// <param name="hasNoCell">True when no cell is tagged at all.</param>
    /// <param name="known">The names that are known.</param>
    /// <returns>The sentence.</returns>
    internal static string Unknown(string where, string name, bool hasNoCell, IReadOnlyList<Parameter> known)
    {
        if (hasNoCell)
            return $"{where}: there is no parameter \"{name}\", since no code cell is tagged \"{Tag}\".";
        var names = known.Where(each => each.Kind != ParameterKind.Other).Select(each => each.Describe()).ToList();
        return $"{where}: there is no parameter \"{name}\"; known: {(names.Count == 0 ? "none" : string.Join(", ", names))}.";
    }

    private static Cell? Cell(Notebook notebook) =>
        notebook.Cells.FirstOrDefault(cell => cell.Kind == CellKind.Code && cell.Tags.Contains(Tag));

    private static void Rewrite(Cell cell, List<(Parameter Parameter, string Value)> changes)
    {
        var source = cell.Source;
        foreach (var (parameter, value) in changes.OrderByDescending(each => each.Parameter.Start))
        {
            var lineEnds = new string('\n', parameter.Value.Count(c => c == '\n'));
            source = $"{source[..parameter.Start]}{value}{lineEnds}{source[(parameter.Start + parameter.Value.Length)..]}";
        }

        cell.Source = source;
    }
}
