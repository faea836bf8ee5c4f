using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;

namespace Spindlewright.Notebooks.Running;

/// <summary>Gives each setting to the notebooks that declare its name.</summary>
internal static class Settings
{
    internal static void Distribute(IReadOnlyList<Notebook> notebooks, RunOptions options)
    {
        if (options.Settings.Count == 0)
            return;
        var known = notebooks.ToDictionary(notebook => notebook, ParameterCell.Find);
        var all = known.Values.SelectMany(parameters => parameters).DistinctBy(parameter => parameter.Name).ToList();
        var where = notebooks.Count == 1 ? notebooks[0].Name : "the notebooks of this run";
        var faults = options.Settings
            .Where(setting => all.TrueForAll(parameter => parameter.Name != setting.Name))
            .Select(setting => ParameterCell.Unknown(where, setting.Name, all.Count == 0, all)).ToList();
        foreach (var (notebook, parameters) in known)
            Set(notebook, parameters, options, faults);
        if (faults.Count > 0)
            throw new ParameterException(faults);
    }

    private static void Set(
        Notebook notebook, IReadOnlyList<Parameter> parameters, RunOptions options, List<string> faults)
    {
        try
        {
            var own = options.Settings.Where(setting => parameters.Any(parameter => parameter.Name == setting.Name));
            ParameterCell.Set(notebook, [.. own], options.Quantities);
        }
        catch (ParameterException fault)
        {
            faults.AddRange(fault.Faults);
        }
    }
}
