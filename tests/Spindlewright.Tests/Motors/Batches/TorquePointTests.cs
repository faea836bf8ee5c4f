using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using static Spindlewright.Tests.Motors.Batches.OperatingPointTests;

namespace Spindlewright.Tests.Motors.Batches;

/// <summary>The scalar path is the reference: <see cref="CircuitSolver.PullOutSi"/> and its neighbours.</summary>
public class TorquePointTests
{
    // The scalar path closes in on a drop's or saturation's peak by torque alone, to 1e-9 of the range; torque is flat there and, where the drop nearly
    // equals the voltage, known to fewer digits, so that its slip is known to the root of those.
    private const double SlipShare = 1e-5, SlipResolution = 2e-9;

    [Theory]
    [InlineData(CircuitForm.ConstantParameters, false)]
    [InlineData(CircuitForm.ConstantParameters, true)]
    [InlineData(CircuitForm.Saturated, false)]
    [InlineData(CircuitForm.Saturated, true)]
    public void Pull_out_torques_of_a_batch_are_those_of_the_scalar_path(CircuitForm form, bool withDrop) =>
        RandomBatch.Batches.Sample(batch =>
        {
            var (torque, slip) = (new double[batch.Count], new double[batch.Count]);
            BatchSolver.PullOut(batch.Columns, batch.Feeds(withDrop), new(torque, slip), form, BatchRun.OneCore);
            for (var i = 0; i < batch.Count; i++)
            {
                var (circuit, dropV) = (batch.Scalar(i, form), batch.Drop(i, withDrop));
                var (torqueNm, at) = CircuitSolver.PullOutSi(circuit, batch.Hz[i], batch.PhaseV[i], dropV);
                Same(torqueNm, torque[i], 0, $"pull-out torque of {circuit} at {batch.Hz[i]:R} Hz {batch.PhaseV[i]:R} V {dropV:R} V, slips {at:R} {slip[i]:R}");
                if (torqueNm > 0) Assert.Equal(at, slip[i], SlipShare * at + SlipResolution);
            }
        }, iter: 100);

    [Theory]
    [InlineData(CircuitForm.ConstantParameters)]
    [InlineData(CircuitForm.Saturated)]
    public void Locked_rotor_torques_of_a_batch_are_those_of_the_scalar_path(CircuitForm form) =>
        RandomBatch.Batches.Sample(batch =>
        {
            var torque = new double[batch.Count];
            BatchSolver.LockedRotor(batch.Columns, batch.Feeds(true), new(torque), form, BatchRun.OneCore);
            for (var i = 0; i < batch.Count; i++)
                Same(batch.Scalar(i, form).Solve(batch.Hz[i], batch.PhaseV[i], batch.DropV[i], 1).TorqueNm, torque[i], 0, "locked-rotor torque");
        }, iter: 100);

    [Fact]
    public void Breakdown_torques_of_a_batch_are_those_of_the_scalar_path() =>
        RandomBatch.Batches.Sample(batch =>
        {
            var (torque, slip) = (new double[batch.Count], new double[batch.Count]);
            BatchSolver.Breakdown(batch.Columns, batch.Feeds(false), new(torque, slip), BatchRun.OneCore);
            for (var i = 0; i < batch.Count; i++)
            {
                var circuit = batch.Circuits[i % batch.Circuits.Length];
                var (torqueNm, at) = circuit.Breakdown(batch.Hz[i], batch.PhaseV[i], circuit.XmOhm);
                Same(torqueNm, torque[i], 0, "breakdown torque");
                if (circuit.CageRise == 0) Same(at, slip[i], 0, "breakdown slip");
                else Assert.Equal(at, slip[i], SlipShare * at + SlipResolution);
            }
        }, iter: 400);

    [Theory]
    [InlineData(CircuitForm.ConstantParameters, false)]
    [InlineData(CircuitForm.Saturated, false)]
    [InlineData(CircuitForm.Saturated, true)]
    public void A_number_that_is_none_spoils_its_own_place_alone(CircuitForm form, bool withDrop) =>
        RandomBatch.Batches.Sample(batch =>
        {
            var (whole, spoilt) = (new double[batch.Count], new double[batch.Count]);
            BatchSolver.PullOut(batch.Columns, batch.Feeds(withDrop), new(whole), form, BatchRun.OneCore);
            var place = batch.Count / 2;
            batch.Hz[place] = double.NaN;
            BatchSolver.PullOut(batch.Columns, batch.Feeds(withDrop), new(spoilt), form, BatchRun.OneCore);
            // Without more volts than the drop there is no torque at any frequency; the closed form of a single cage does not ask.
            var closed = form == CircuitForm.ConstantParameters && !withDrop && batch.Circuits[place % batch.Circuits.Length].CageRise == 0;
            whole[place] = batch.PhaseV[place] > batch.Drop(place, withDrop) || closed ? double.NaN : 0;
            Assert.Equal(whole, spoilt);
        }, iter: 100, threads: 1);

    [Fact]
    public void Columns_of_unequal_length_are_refused_by_name()
    {
        var circuits = new CircuitColumns(2);
        double[] two = [50, 50], three = [50, 50, 50];
        void Refused(string words, FeedColumns feeds, double[] room) => Assert.Contains(
            words, Assert.Throws<PartException>(() => BatchSolver.LockedRotor(
                circuits, feeds, new(room), CircuitForm.ConstantParameters, BatchRun.OneCore)).Message, StringComparison.Ordinal);
        Refused("number of frequencies is 3; accepted: a multiple of the number of circuits, 2", new(three, three), three);
        Refused("number of phase voltages is 3; accepted: 2", new(two, three), two);
        Refused("number of phase drops is 3; accepted: 2", new(two, two, three), two);
        Refused("room for torques is 3; accepted: 2", new(two, two), three);
        Assert.Throws<PartException>(() => BatchSolver.Breakdown(circuits, new(two, two, two), new(two), BatchRun.OneCore));
        Assert.Throws<PartException>(() => new CircuitColumns(0));
    }
}
