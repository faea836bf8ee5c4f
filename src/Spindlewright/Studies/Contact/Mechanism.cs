using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>What a measure does.</summary>
public enum MeasureKind
{
    /// <summary>Keeps people and moving parts, or work and its freedom to turn, apart.</summary>
    PreventsContact,

    /// <summary>Makes the bound itself smaller or larger.</summary>
    ChangesTheBound,

    /// <summary>Changes the modelled figure only: not credited.</summary>
    NotCredited,
}

/// <summary>Something that can be done.</summary>
/// <param name="Words">What.</param>
/// <param name="Kind">What it does.</param>
public sealed record Measure(string Words, MeasureKind Kind)
{
    /// <summary>The tag in words.</summary>
    public string Tag => Kind switch
    {
        MeasureKind.PreventsContact => "prevents contact",
        MeasureKind.ChangesTheBound => "changes the bound",
        _ => "changes only the modelled figure: not credited",
    };
}

/// <summary>One computed figure against one published one.</summary>
/// <param name="Computed">What was computed, in words.</param>
/// <param name="Value">By the bound and the hazard side, in the published figure's unit.</param>
/// <param name="AsModelled">As modelled, hazard side; null where no torque is in it.</param>
/// <param name="Published">The published figure.</param>
/// <param name="FirstExceeded">
/// Lowest spindle speed of any belt position at which <paramref name="Value"/> first exceeds the figure; zero for standstill; null for never.
/// </param>
/// <param name="Dominates">What makes the figure large at its largest: torque, inertia, speed.</param>
public sealed record ContactComparison(
    string Computed, double Value, double? AsModelled, InjuryRow Published, RotationalSpeed? FirstExceeded, string Dominates)
{
    /// <summary>Lowest spindle speed at which the modelled figure first exceeds it; null for never. It permits nothing below.</summary>
    public RotationalSpeed? ModelledFirstExceeded { get; init; }

    /// <summary>The published figure in its own unit.</summary>
    public double Figure => (Published.Low ?? Published.Value ?? Published.High)!.Value;

    /// <summary>Computed over published.</summary>
    public double Ratio => Value / Figure;

    /// <summary>The same with the modelled torque; null where no torque is in it.</summary>
    public double? ModelledRatio => AsModelled / Figure;

    /// <summary>The verdict: that it exceeds the figure or does not, and nothing more.</summary>
    public string Words => Value > Figure
        ? $"exceeds the figure \"{Published.Figure}\" ({Published.Citation.Provenance.InWords()})"
        : $"does not exceed the figure \"{Published.Figure}\" ({Published.Citation.Provenance.InWords()})";
}

/// <summary>A way in which people are hurt at a drill.</summary>
/// <param name="Place">1 to 7, in the order that accidents have.</param>
/// <param name="Name">What happens.</param>
/// <param name="Comparisons">What could be compared, in any order.</param>
/// <param name="NotDetermined">What is not determined, and for want of which input.</param>
/// <param name="Measures">What can be done.</param>
public sealed record Mechanism(
    int Place, string Name, IReadOnlyList<ContactComparison> Comparisons, IReadOnlyList<string> NotDetermined, IReadOnlyList<Measure> Measures)
{
    /// <summary>True where nothing could be compared: a state of its own, into which nothing may be read.</summary>
    public bool IsNotDetermined => Comparisons.Count == 0;

    /// <summary>The comparison with the largest ratio; it does not depend on the order of the comparisons.</summary>
    public ContactComparison? Largest => Comparisons
        .OrderByDescending(each => each.Ratio).ThenBy(each => each.Published.Key, StringComparer.Ordinal)
        .ThenBy(each => each.Computed, StringComparer.Ordinal).FirstOrDefault();
}
