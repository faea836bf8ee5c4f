using Spindlewright.Machines;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>Something that a candidate must do or must not exceed.</summary>
/// <param name="Words">In words, with its figures.</param>
/// <param name="Name">In a few words.</param>
public sealed record Requirement(string Words, string Name)
{
    /// <summary>The requirements of a machine: one an operation, in order, then the limits that were given.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="wishes">Limits.</param>
    /// <param name="demands">Operations.</param>
    /// <returns>The requirements.</returns>
    public static IReadOnlyList<Requirement> Of(DrillPress press, SizingWishes wishes, IReadOnlyList<WorkDemand> demands) =>
        [.. demands.Select(OfDemand), .. LimitsOf(press, wishes).Select(limit => limit.Requirement)];

    /// <summary>The limits of a machine, each with the test of a candidate; fixed speeds change neither motor nor supply.</summary>
    internal static IReadOnlyList<(Requirement Requirement, Func<Candidate, bool> Meets)> LimitsOf(DrillPress press, SizingWishes wishes)
    {
        List<(Requirement, Func<Candidate, bool>)> limits = [];
        if ((wishes.GreatestInput ?? press.Supply.Fuse) is { } input)
            limits.Add((
                new(Invariant($"at rated motor power and lowest supply the inverter takes no more than {input.Amperes:0.#} A"), "supply current"),
                candidate => candidate.Motor is not { } motor || motor.InputA.Most <= input.Amperes));
        if (wishes.GreatestFrame is { } frame)
            limits.Add((
                new(Invariant($"the motor's shaft height is no more than {frame.Millimeters:0} mm"), "frame"),
                candidate => candidate.Motor?.Build is not { } build || build.Frame <= frame));
        if (wishes.GreatestMass is { } mass)
            limits.Add((
                new(Invariant($"the motor weighs no more than {mass.Kilograms:0.#} kg"), "mass"),
                candidate => candidate.Motor?.Build is not { } build || UnitMath.Max(build.Mass.Capability, build.Mass.Hazard) <= mass));
        if (wishes.Budget is { } budget)
            limits.Add((
                new(Invariant($"it costs no more than {budget:0.##}{(wishes.Currency is { } currency ? " " + currency : "")}, where prices are given"), "budget"),
                candidate => candidate.Price is not { } price || price <= budget));
        return limits;
    }

    private static Requirement OfDemand(WorkDemand demand) => new(
        Invariant($"{demand.Item.Name}{(demand.Piloted ? " (with a pilot hole, since the arm does not push it into the full)" : "")}: {demand.Torque.NewtonMeters:0.0} N·m at {demand.Slowest.RevolutionsPerMinute:0} to {demand.Fastest.RevolutionsPerMinute:0} r/min, {demand.Holes} in a row"),
        demand.Item.Name);
}
