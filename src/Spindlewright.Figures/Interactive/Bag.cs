using DynamicObj;

namespace Spindlewright.Figures.Interactive;

/// <summary>Fills the objects of Plotly.NET from C#, where their optional arguments cannot be named.</summary>
internal static class Bag
{
    /// <summary>Sets properties by their names in plotly.js; null leaves one out.</summary>
    public static T With<T>(this T bag, params ReadOnlySpan<(string Name, object? Value)> properties)
        where T : DynamicObj.DynamicObj
    {
        foreach (var (name, value) in properties)
            if (value is not null)
                bag.SetProperty(name, value);
        return bag;
    }
}
