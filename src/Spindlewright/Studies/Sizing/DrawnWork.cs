using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Studies.Sizing;

/// <summary>Whether one candidate does all the work, sample by sample.</summary>
internal static class DrawnWork
{
    /// <summary>Torque margins, one array an operation with one number a sample; infinite where an operation needs no torque.</summary>
    internal static double[][] Margins(SizingRun run, Candidate candidate, DrillPress press, HandStrength strength, SamplingPlan plan)
    {
        var tried = TriedOf(run, candidate);
        var machine = candidate.Kind == CandidateKind.Converted ? candidate.Machine(press) : press;
        var inputs = UncertainMachine.Of(machine, strength);
        var rows = RowsOf(inputs, plan);
        var places = new DrawPlaces(inputs);
        var pullOutNm = candidate.Kind == CandidateKind.Converted ? PullOuts(machine, places, rows, tried) : null;
        var margins = run.Demands.Select(_ => new double[plan.Count]).ToArray();
        foreach (var each in margins) Array.Fill(each, double.PositiveInfinity);
        for (var place = 0; place < tried.Count; place++)
            for (var sample = 0; sample < plan.Count; sample++)
                margins[tried[place].Item][sample] = tried[place].MarginIn(machine, places, rows[sample], pullOutNm?[place * plan.Count + sample]);
        return margins;
    }

    /// <summary>The draws of every figure that is not fixed, with what it is.</summary>
    internal static IReadOnlyList<(string Meaning, double[] Draws)> Draws(DrillPress machine, HandStrength strength, SamplingPlan plan)
    {
        var inputs = UncertainMachine.Of(machine, strength);
        var rows = RowsOf(inputs, plan);
        return
        [
            .. inputs.Index().Where(each => each.Item.Name != UncertainFigures.HandTorque && each.Item.Distribution is not Distribution.Fixed)
                .Select(each => (each.Item.Meaning, rows.Select(row => row[each.Index]).ToArray())),
        ];
    }

    private static double[][] RowsOf(IReadOnlyList<VariedInput> inputs, SamplingPlan plan)
    {
        var drawn = new SampleRows(new UncertainInputs([.. inputs.Select(input => new UncertainInput(input.Name, input.Distribution))]), plan);
        var columns = inputs.Select(_ => new double[plan.Count]).ToArray();
        drawn.Fill(0, plan.Count, columns);
        return [.. Enumerable.Range(0, plan.Count).Select(sample => columns.Select(column => column[sample]).ToArray())];
    }

    private static List<TriedWork> TriedOf(SizingRun run, Candidate candidate)
    {
        List<TriedWork> tried = [];
        for (var item = 0; item < run.Demands.Count; item++)
        {
            var demand = run.Demands[item];
            if (!run.Counts(item) || demand.Torque <= UnitsNet.Torque.Zero) continue;
            var low = run.Parts.Evaluator.Of(candidate, item, Side.Capability);
            var found = low.Why == Shortfall.None ? low : run.Parts.Evaluator.Of(candidate, item, Side.Hazard);
            tried.Add(new(
                item, demand, candidate.Pulleys.Belts[found.Belt], found.Hertz, found.AvailableNm, SlipNm(run, demand, candidate.Pulleys.Belts[found.Belt]),
                candidate.Kind == CandidateKind.Converted ? run.Parts.Evaluator.Motor(candidate).FrictionNm(Side.Capability, found.Hertz) : 0));
        }
        return tried;
    }

    private static (double Least, double Most)? SlipNm(SizingRun run, WorkDemand demand, BeltPosition belt) =>
        run.Parts.Press.Belting?.SlipAtSpindle(belt, demand.Wanted * belt.Ratio) is { } slip ? (slip.Least.NewtonMeters, slip.Most.NewtonMeters) : null;

    /// <summary>Pull-out torques of every sample at the frequency of every operation, solved as one batch: operation by operation.</summary>
    private static double[] PullOuts(DrillPress machine, DrawPlaces places, double[][] rows, List<TriedWork> tried)
    {
        var drawn = new DrawnDrives(machine);
        var circuits = new CircuitColumns(rows.Length);
        double[] Room() => new double[Math.Max(1, tried.Count) * rows.Length];
        var (hertz, volts, drops, torques) = (Room(), Room(), Room(), Room());
        if (tried.Count == 0) return torques;
        for (var sample = 0; sample < rows.Length; sample++)
        {
            var drive = drawn.Make(places.Drive(rows[sample]));
            circuits.Set(sample, drive.Circuit);
            for (var item = 0; item < tried.Count; item++)
            {
                var place = item * rows.Length + sample;
                (hertz[place], volts[place], drops[place]) = (tried[item].Hertz, drive.PhaseV(tried[item].Hertz), drive.DropV);
            }
        }
        BatchSolver.PullOut(
            circuits, new(hertz, volts, drops), new(torques), drawn.Saturates ? CircuitForm.Saturated : CircuitForm.ConstantParameters, BatchRun.OneCore);
        return torques;
    }

    /// <summary>One operation at the belt position and frequency that suit it.</summary>
    private sealed record TriedWork(
        int Item, WorkDemand Demand, BeltPosition Belt, double Hertz, double AvailableNm, (double Least, double Most)? SlipNm, double MotorFrictionNm)
    {
        internal double MarginIn(DrillPress machine, DrawPlaces places, double[] row, double? pullOutNm)
        {
            var neededNm = Demand.Torque.NewtonMeters * row[places.CuttingTorque];
            var availableNm = pullOutNm is { } peak
                ? TorqueStudy.ShortTimeNm(machine.Motor.RatedTorque.NewtonMeters, peak, MotorFrictionNm) * Belt.Ratio * places.EfficiencyOf(Belt, row) - row[places.SpindleFriction]
                : AvailableNm;
            var margin = Math.Max(0, availableNm) / neededNm;
            // A belt that slips carries nothing of what the motor has left.
            return SlipNm is { } slip && neededNm > slip.Least + (slip.Most - slip.Least) * row[places.BeltTension] ? Math.Min(margin, 0.99) : margin;
        }
    }
}
