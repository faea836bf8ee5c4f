using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>One line of numbers that bear a belief out or not.</summary>
/// <param name="Words">What was tried.</param>
/// <param name="Figures">Figures with their units, each beside what it is.</param>
public sealed record TradeLine(string Words, IReadOnlyList<(string What, string Figure)> Figures);

/// <summary>A belief of the trade (common practice, no source) and what the numbers of this machine say.</summary>
/// <param name="Said">The belief.</param>
/// <param name="Verdict">Whether it is borne out here.</param>
/// <param name="Words">Why, in a sentence with numbers.</param>
/// <param name="Lines">The numbers.</param>
public sealed record TradeFact(string Said, Belief Verdict, string Words, IReadOnlyList<TradeLine> Lines);

/// <summary>Tries beliefs of the trade on a machine.</summary>
internal static class TradeFacts
{
    /// <summary>Below this two torques count as alike. Own choice.</summary>
    private const double Alike = 0.05;

    /// <summary>Share of pull-out torque below which a current limit counts as taking anything off. Own choice.</summary>
    private const double ProtectsBelow = 0.8;

    /// <summary>Sizes of motor that are set side by side, from that of the choice up.</summary>
    private const int SizesTried = 4;

    /// <summary>Rated current of an inverter over that of its motor.</summary>
    private static readonly double[] InverterSizes = [1.0, 1.5, 2.5];

    internal static IReadOnlyList<TradeFact> Of(
        DrillPress press, SizingWishes wishes, CandidateResult choice, Handbook handbook, CancellationToken cancellation)
    {
        var listed = SizingWishes.Usual(handbook).Powers;
        var power = choice.Candidate.Motor?.Motor.RatedPower ?? press.Motor.RatedPower;
        var nearest = listed.Index().MinBy(each => Math.Abs(Math.Log((double)(each.Item / power)))).Index;
        return
        [
            SixAgainstFour(press, wishes, listed[nearest], handbook, cancellation), OneSizeUp(press, wishes, [.. listed.Skip(nearest).Take(SizesTried)], handbook, cancellation),
            LargeInverter(press, choice.Candidate.Kind == CandidateKind.Converted ? choice.Candidate.Machine(press) : press),
        ];
    }

    /// <summary>Motors of the table alone, at the settings described.</summary>
    private static (CandidateSpace Space, SizingParts Parts) Small(
        DrillPress press, SizingWishes wishes, IReadOnlyList<Power> powers, IReadOnlyList<int> poles, Handbook handbook, CancellationToken cancellation)
    {
        var few = wishes with
        {
            Powers = powers, Poles = poles, EfficiencyClasses = ["IE3"], RatingsTable = true, Motors = [],
            LowestFrequencies = [press.Inverter.LowestFrequency], HighestFrequencies = [press.Inverter.HighestFrequency], Boosts = [0],
        };
        var space = CandidateSpace.Of(press, few, handbook, cancellation);
        return (space, SizingParts.Of(press, few, space, handbook, cancellation));
    }

    private static TradeFact SixAgainstFour(DrillPress press, SizingWishes wishes, Power power, Handbook handbook, CancellationToken cancellation)
    {
        const string Said = "On the same pulleys a six-pole motor beats a four-pole of the same power at the slow end.";
        var (space, parts) = Small(press, wishes, [power], [4, 6], handbook, cancellation);
        Candidate Machine(int poles) => space.Candidates.First(
            each => each is { Motor.IsDescribed: false, Pulleys.Way: PulleyWay.AsTheyAre } && each.Motor!.Poles == poles && each.Law == space.Laws[0]);
        if (space.Motors.Count(motor => !motor.IsDescribed) < 2) return new(Said, Belief.InPart, "Not tried: one of the two cannot be fed from this socket.", []);
        var (four, six) = (Machine(4), Machine(6));
        // The four-pole motor with every ratio half as large again turns the spindle at the six-pole's speeds.
        var regeared = four with
        {
            Pulleys = new(PulleyWay.Regeared, [.. press.Belts.Select(belt => new BeltPosition(belt.Name, Math.Min(100, belt.Ratio * 6 / 4), belt.Efficiency))]),
        };
        Outcome At(Candidate candidate, int item) => parts.Evaluator.Of(candidate, item, Side.Capability);
        var tried = parts.Demands.Index().Where(each => each.Item.Torque > Torque.Zero && each.Item.Unmet is null)
            .OrderBy(each => each.Item.Wanted.RevolutionsPerMinute).Select(each => each.Index)
            .Where(item => new[] { four, six, regeared }.All(candidate => At(candidate, item).Rpm > 0)).ToList();
        if (tried.Count == 0) return new(Said, Belief.InPart, "Not tried: at none of the operations do both motors turn.", []);
        TradeLine Line(Candidate candidate, string words)
        {
            var at = At(candidate, tried[0]);
            return new(words,
            [
                ("short-time torque", Invariant($"{at.AvailableNm:0.0} N·m")), ("speed", Invariant($"{at.Rpm:0} r/min")), ("frequency", Invariant($"{at.Hertz:0.0} Hz")),
                ("bound", Invariant($"{parts.Bounds.AtSlowest(press, candidate).NewtonMeters:0.0} N·m")),
            ]);
        }

        var (demand, sixNm) = (parts.Demands[tried[0]], At(six, tried[0]).AvailableNm);
        var (same, geared) = (sixNm / At(four, tried[0]).AvailableNm, sixNm / At(regeared, tried[0]).AvailableNm);
        return new(
            Said, same < 1 + Alike ? Belief.NotBorneOut : Belief.BorneOut,
            Invariant($"For {demand.Item.Name} at {demand.Wanted.RevolutionsPerMinute:0} r/min the six-pole motor gives {same:0.00} times the four-pole's short-time torque on the same pulleys, and {geared:0.00} times once the four-pole has every ratio half as large again: then both turn as fast at every frequency, and poles and pulleys have done the same thing. The bounds go the same way, in the lines."),
            [Line(four, $"{four.Motor!.Name}, pulleys as they are"), Line(six, $"{six.Motor!.Name}, pulleys as they are"), Line(regeared, $"{four.Motor.Name}, every ratio half as large again")]);
    }

    private static TradeFact OneSizeUp(DrillPress press, SizingWishes wishes, IReadOnlyList<Power> powers, Handbook handbook, CancellationToken cancellation)
    {
        const string Said = "One size up is worth it, and more is wasted on a light column.";
        var (space, parts) = Small(press, wishes, powers, [press.Motor.Circuit.Capability.Poles is var poles and (2 or 4 or 6 or 8) ? poles : 4], handbook, cancellation);
        var rows = space.Candidates.Where(each => each is { Motor.IsDescribed: false, Pulleys.Way: PulleyWay.AsTheyAre } && each.Law == space.Laws[0])
            .OrderBy(each => each.Motor!.Motor.RatedPower.Watts).Select(candidate =>
            {
                var drills = parts.Builder.Ladders.Where(ladder => ladder.Piloted)
                    .Select(ladder => (Turned: parts.Evaluator.LargestOf(candidate, ladder, Side.Capability)?.Millimeters ?? 0, Pushed: ladder.Pushed?.Millimeters ?? 0, ladder.Material)).ToList();
                return (Mean: drills.Average(each => each.Turned), Pushed: drills.Average(each => each.Pushed), Line: new TradeLine(candidate.Motor!.Name,
                [
                    .. drills.Select(each => ($"{each.Material.Name}, piloted", each.Turned > 0 ? Invariant($"{each.Turned:0.#} mm of {each.Pushed:0.#} mm that can be pushed") : Invariant($"none of the sizes, of {each.Pushed:0.#} mm that can be pushed"))),
                    ("bound", Invariant($"{parts.Bounds.AtSlowest(press, candidate).NewtonMeters:0.0} N·m")),
                ]));
            }).ToList();
        if (rows.Count < 3) return new(Said, Belief.InPart, "Not tried: fewer than three sizes can be fed from this socket.", [.. rows.Select(row => row.Line)]);
        var (gain, further) = (rows[1].Mean - rows[0].Mean, rows[^1].Mean - rows[1].Mean);
        var verdict = gain <= 0.5 ? Belief.NotBorneOut : further < gain * (rows.Count - 2) / 2 ? Belief.BorneOut : Belief.InPart;
        return new(
            Said, verdict,
            Invariant($"From {rows[0].Line.Words} one size up adds {gain:0.0} mm to the largest drill, as a mean over materials; {rows.Count - 2} sizes more add {further:0.0} mm. Arm and column push {rows[0].Pushed:0.0} mm at most, whatever the motor, and the bound grows with every size (in the lines)."),
            [.. rows.Select(row => row.Line)]);
    }

    private static TradeFact LargeInverter(DrillPress press, DrillPress machine)
    {
        const string Said = "An inverter rated well above the motor protects nothing.";
        var rated = machine.Motor.RatedCurrent;
        var hertz = Math.Min(machine.Inverter.Curve.BaseFrequency.Hertz, machine.Inverter.HighestFrequency.Hertz);
        var bound = TorqueBound.Of(machine).Motor.NewtonMeters;
        var rows = InverterSizes.Select(times =>
        {
            var larger = machine.With(machine.Inverter.OfSize(rated * times, machine.Inverter.Link), machine.Motor, machine.Belts);
            var drive = new Drive(larger, Side.Hazard);
            var (atLimit, pullOut) = (TorqueStudy.AtCurrentLimitNm(larger, drive, hertz), drive.PullOutNm(hertz));
            return (Share: atLimit / pullOut, Line: new TradeLine(Invariant($"inverter of {times:0.0} times the motor's {rated.Amperes:0.0} A, limit {100 * larger.Inverter.CurrentLimit:0} %"),
            [
                ("limit over motor current", Invariant($"{larger.Inverter.LimitingCurrent / rated:0.00}")),
                ("torque at the limit", Invariant($"{atLimit:0.0} N·m")), ("pull-out torque", Invariant($"{pullOut:0.0} N·m")), ("bound", Invariant($"{bound:0.0} N·m")),
            ]));
        }).ToList();
        return new(
            Said, rows[^1].Share < ProtectsBelow ? Belief.NotBorneOut : rows[0].Share < ProtectsBelow ? Belief.BorneOut : Belief.InPart,
            Invariant($"At {hertz:0.#} Hz an inverter of the motor's own size holds it to {100 * rows[0].Share:0} % of the modelled pull-out torque, one of two and a half times its size to {100 * rows[^1].Share:0} %. The machine's own {press.Inverter.RatedCurrent.Amperes:0.#} A unit limits at {machine.Inverter.LimitingCurrent / rated:0.0} times the motor's current. No current limit is credited: the bound of {bound:0.0} N·m at the motor stands whatever its size."),
            [.. rows.Select(row => row.Line)]);
    }
}
