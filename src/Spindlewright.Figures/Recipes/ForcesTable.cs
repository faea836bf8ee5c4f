using System.Collections.Immutable;
using Spindlewright.Studies.Contact;
using UnitsNet;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Force at each surface of each belt position: from standstill, and at the fastest speed with inertia.</summary>
internal static class ForcesTable
{
    internal static Table Of(ContactStudy study) => new(
        "contact-forces", "Force at the surface",
        [
            Name("belt position"), Name("surface"), new("diameter", "mm", Format: Whole), new("steady, bound", "N", Format: Whole),
            new("steady, ideal boost", "N", Format: Whole), new("steady, as modelled, lowest frequency", "N", Format: Whole),
            new("steady, as modelled, largest", "N", Format: Whole), new("at the current limit, not credited", "N", Format: Whole),
            new("from rest, bound", "N", Format: Whole), new("hand carried along, fastest, bound", "N", Format: Whole),
            new("hand held fast, fastest, bound", "N", Format: Whole),
        ],
        [.. study.Forces.Belts.SelectMany(belt => belt.Points[0].Surfaces.Select((_, surface) => Cells(belt, surface)))],
        caption: "Steady: 2 T/d, at any speed by the bound. From rest: what gives like a hand is loaded at once, twice the steady force. Fastest: with the moving mass of motor, pulleys and spindle, from the highest speed.",
        footnotes:
        [
            .. study.Forces.Belts.Where(belt => belt.Belt.MeasuredSlip is not null).Select(belt => Invariant(
                $"The belt was seen to slip on position {belt.Belt.Name} at {belt.Belt.MeasuredSlip!.Value.NewtonMeters:0.0} N·m (bound {belt.Bound.NewtonMeters:0.0} N·m): it holds for that position at the tension of that day, and is not credited.")),
            Invariant($"What gives is {study.Forces.Body.Mass.Kilograms:0.0} kg behind {study.Forces.Body.NewtonsPerMetre / 1000:0} N/mm, figures of blunt contact with robots, not of rotating tools."),
        ],
        sources: [new SourceNote(study.Forces.Body.Source, "mass and spring of a hand", study.Forces.Body.Provenance)]);

    private static ImmutableArray<Cell> Cells(ForcesAtBelt belt, int surface)
    {
        ForcesAtSurface At(ForcePoint point) => point.Surfaces[surface];
        double Largest(Func<SideBySide<Force>, Force> which) => belt.Points.Max(point => which(At(point).Steady).Newtons);
        var (slowest, fastest) = (At(belt.Points[0]), At(belt.Points[^1]));
        return
        [
            belt.Belt.Name, slowest.Surface.Name, slowest.Surface.Diameter.Millimeters, slowest.Steady.Bound.Newtons, Largest(each => each.IdealBoost),
            slowest.Steady.AsModelled.Newtons, Largest(each => each.AsModelled), Largest(each => each.CurrentLimited), slowest.FromRest.Bound.Newtons,
            fastest.FreeHand.Bound.Newtons, fastest.HeldFast.Bound.Newtons,
        ];
    }
}
