using Spindlewright.Foundations;

namespace Spindlewright.Motors.Fitting;

/// <summary>A circuit fitted to a nameplate, with what it reaches.</summary>
/// <param name="Nameplate">The nameplate.</param>
/// <param name="Settings">What was assumed beside it.</param>
/// <param name="Circuit">The circuit, for the nameplate's connection.</param>
/// <param name="Targets">Each target with what was reached.</param>
/// <param name="Verdict">Empty, or what no circuit of this form can meet.</param>
public sealed record NameplateFit(
    Nameplate Nameplate, FitSettings Settings, EquivalentCircuit Circuit, IReadOnlyList<FitTarget> Targets,
    string Verdict)
{
    // Far inside what counts as met: the single cage then needs no second one, nor any search.
    private const double Exact = 1e-5;

    /// <summary>Fits a circuit to a nameplate.</summary>
    /// <param name="nameplate">The nameplate.</param>
    /// <param name="settings">What it does not give.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="PartException">The losses that the nameplate implies are smaller than its slip asks for.</exception>
    /// <remarks>
    /// Rated speed, current, power factor and breakdown torque fix a single-cage circuit in closed form but for one
    /// bracketed root. Where the plate gives more (locked-rotor figures, no-load current, winding resistance), that
    /// circuit is the start of a least-squares search; where it gives locked-rotor figures, the rotor becomes a double
    /// cage. Figures that are defaults give way to figures that are given.
    /// </remarks>
    public static NameplateFit Of(Nameplate nameplate, FitSettings settings)
    {
        var wanted = nameplate.BreakdownTorque ?? settings.DefaultBreakdownTorque;
        var budget = PowerBudget.Of(nameplate, settings.Shares);
        var (circuit, verdict) = RatedPointFit.Of(nameplate, settings, budget, wanted);
        if (!nameplate.GivesMoreThanRatedPoint)
            return new(nameplate, settings, circuit, Reached.All(nameplate, circuit, wanted, false), verdict);

        var targets = Reached.All(nameplate, circuit, wanted, true);
        if (targets.Any(target => Math.Abs(target.Residual) > Exact))
        {
            circuit = CircuitSearch.From(nameplate, settings, budget, wanted, circuit);
            targets = Reached.All(nameplate, circuit, wanted, true);
        }
        return new(nameplate, settings, circuit, targets, WhatIsMissed(targets));
    }

    private static string WhatIsMissed(IReadOnlyList<FitTarget> targets)
    {
        var missed = targets.Where(target => target is { Met: false, Assumed: false }).Select(target => target.Words).ToList();
        return missed.Count == 0
            ? ""
            : $"No circuit of this form meets all figures of the plate together; what it misses: {string.Join("; ", missed)}.";
    }
}
