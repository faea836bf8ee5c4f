using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Sizing;
using Spindlewright.Studies.SupplyAndBill;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Work;
using Spindlewright.Tests.Studies;

namespace Spindlewright.Tests.Sizing;

/// <summary>What is read from tables, against the studies that solve one machine exactly: a second solver of the same questions.</summary>
public sealed class SizingAgainstStudiesTests
{
    // Straight lines between some sixty frequencies and seventeen loads, where the studies solve every point: the model form differs, not the physics.
    private const double MarginWithin = 0.01;
    private const double HertzWithin = 0.005;
    private const double KelvinsWithin = 1.5;

    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<int> Machines => new(Enumerable.Range(0, Presses.Demo.Count));

    [Theory]
    [MemberData(nameof(Machines))]
    public void Margin_frequency_and_winding_are_those_of_the_work_study(int machine)
    {
        var press = Presses.Demo[machine];
        var run = RunOf(press);
        var compared = 0;
        foreach (var candidate in Sample(run))
        {
            var exact = candidate.Machine(press);
            var torques = TorqueStudy.Of(exact);
            var work = WorkStudy.Of(exact, torques, HeatStudy.Of(exact, torques, Handbook), Handbook);
            for (var item = 0; item < run.Demands.Count; item++)
                compared += Compare(run, candidate, item, work.Items[item].AtArmFeed ?? work.Items[item]);
        }
        Assert.InRange(compared, 6, int.MaxValue);
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Bounds_are_those_of_the_torque_study(int machine)
    {
        var press = Presses.Demo[machine];
        var run = RunOf(press);
        foreach (var candidate in Sample(run))
            Assert.Equal(
                TorqueBound.Of(candidate.Machine(press)).AtSpindle(candidate.Pulleys.Slowest).NewtonMeters,
                run.Parts.Bounds.AtSlowest(press, candidate).NewtonMeters, 1e-6 * run.Parts.Bounds.AtSlowest(press, candidate).NewtonMeters);
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Supply_current_of_the_motor_described_is_that_of_the_supply_study(int machine)
    {
        var press = Presses.Demo[machine];
        var motor = MotorsOnOffer.Of(press, press.Sizing!, Handbook, Stop).Motors.Single(each => each.IsDescribed);
        if (motor.Motor.RatedCurrent > press.Inverter.RatedCurrent) return;
        var levels = SupplyStudy.Of(press, Handbook).Levels;
        Assert.Equal(levels.Max(level => level.Name == "highest" ? 0 : level.State.Current.Amperes), motor.InputA.Most, 1e-9);
    }

    /// <summary>Compares where both found a speed on the same position and torque is needed; returns how many were compared.</summary>
    private static int Compare(SizingRun run, Candidate candidate, int item, WorkResult exact)
    {
        var demand = run.Demands[item];
        // A drill that is given a pilot for the arm's sake is another operation than the one that the work study looks at.
        if (demand.Piloted || demand.Unmet is not null || demand.Torque <= UnitsNet.Torque.Zero) return 0;
        var found = run.Parts.Evaluator.Of(candidate, item, Side.Capability);
        var at = exact.Belts[found.Belt];
        // The work study wants the very speed, the sizing study one near it: only what turns at the speed can be compared.
        if (at.Frequency is not { } frequency || Math.Abs(found.Rpm / demand.Wanted.RevolutionsPerMinute - 1) > 1e-3) return 0;
        Assert.Equal(frequency.Hertz, found.Hertz, HertzWithin * frequency.Hertz);
        Assert.Equal(at.Margin!.Value, found.Margin, MarginWithin * at.Margin.Value);
        if (at.Winding?.Capability is { } winding && !double.IsNaN(found.WindingC) && found.WindingC < 200)
            Assert.Equal(winding.DegreesCelsius, found.WindingC, KelvinsWithin);
        return 1;
    }

    private static SizingRun RunOf(DrillPress press) => SizingRun.Of(
        press, press.Sizing!, CandidateSpace.Of(press, press.Sizing!, Handbook, Stop), Handbook, true, null, Stop);

    /// <summary>The conversion described, and others spread over the whole list.</summary>
    private static IEnumerable<Candidate> Sample(SizingRun run) =>
        run.Space.Candidates.Where((each, place) => each.Kind == CandidateKind.Converted && (each.IsDescribed || place % 499 == 5));
}
