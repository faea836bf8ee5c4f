using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Tests.Motors.Batches;

/// <summary>The scalar path is the reference: <see cref="CircuitSi.Solve"/>.</summary>
public class OperatingPointTests
{
    private const double Share = 1e-12;

    [Theory]
    [InlineData(CircuitForm.ConstantParameters, false)]
    [InlineData(CircuitForm.ConstantParameters, true)]
    [InlineData(CircuitForm.Saturated, false)]
    [InlineData(CircuitForm.Saturated, true)]
    public void Points_of_a_batch_are_those_of_the_scalar_path(CircuitForm form, bool withDrop) =>
        RandomBatch.Batches.Sample(batch =>
        {
            var (torque, current, factor) = Solve(batch, form, withDrop, BatchRun.OneCore);
            for (var i = 0; i < batch.Count; i++)
            {
                var state = batch.Scalar(i, form).Solve(batch.Hz[i], batch.PhaseV[i], batch.Drop(i, withDrop), batch.Slips[i]);
                Same(state.CurrentA, current[i], 0, $"current of {batch.Scalar(i, form)} at {batch.Hz[i]} Hz {batch.PhaseV[i]} V {batch.Drop(i, withDrop)} V slip {batch.Slips[i]}");
                Same(state.TorqueNm, torque[i], 0, "torque");
                // Where the machine begins to generate the power factor passes through 0: its own scale is 1.
                var impedance = Math.Sqrt(state.ROhm * state.ROhm + state.XOhm * state.XOhm);
                Same(state.ROhm / impedance, factor[i], Share, "power factor");
            }
        }, iter: 400);

    internal static (double[] TorqueNm, double[] CurrentA, double[] PowerFactor) Solve(
        RandomBatch batch, CircuitForm form, bool withDrop, BatchRun run)
    {
        var (torque, current, factor) = (new double[batch.Count], new double[batch.Count], new double[batch.Count]);
        BatchSolver.OperatingPoints(batch.Columns, batch.Feeds(withDrop), batch.Slips, new(torque, current, factor), form, run);
        return (torque, current, factor);
    }

    internal static void Same(double expected, double found, double scale, string what) =>
        Assert.True(
            Math.Abs(expected - found) <= Share * Math.Abs(expected) + scale,
            FormattableString.Invariant($"{what}: {expected:R} by the scalar path, {found:R} in the batch, {(found - expected) / expected:E2} apart"));
}
