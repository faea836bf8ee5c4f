using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Spindlewright.Motors.Fitting;

/// <summary>
/// Least squares (Levenberg–Marquardt) over the circuits that meet the rated point exactly, on the logarithms of
/// leakage, losses and cage: figures that are given count in full, defaults only where those leave room.
/// </summary>
internal sealed class CircuitSearch
{
    // Logarithmic deviations that weigh the same. Given figures so outweigh the rest that they are met or named.
    private const double Given = 1e-3;

    // Levenberg–Marquardt asks loosely: on the narrow floor that exact targets make its damped steps, and the squared
    // condition of its normal equations, leave it anywhere. From there the targets are tightened step by step.
    private const double Loose = 100 * Given;
    private static readonly double[] Tightened = [100 * Given, 30 * Given, 10 * Given, 3 * Given, Given];
    private const double Default = 0.15;
    private const double CagePull = 30;
    private const double RisePull = 300;
    private const int MostSteps = 150;
    private const int LooseSteps = 30;
    private const int StepsOnTheWay = 15;

    // Core loss and friction stay within this factor of their shares: a plate tells little about them, and a fit must
    // not buy a locked-rotor figure with a core that loses nothing.
    private const double MostLossFactor = 2;
    private const double NoCircuit = 1e4;
    private const int RatedTargets = 3;
    private const double Enough = 0.25;

    // Rise and corner to start from: bars of middling depth, a shallow one, starting cages.
    private static readonly (double Rise, double Corner)[] CageStarts = [(1, 1), (0.2, 1.5), (4, 0.8)];

    // Shares of the rated impedance.
    private static readonly double[] UsualLeakages = [0.2, 0.1, 0.3, 0.05];

    private readonly Nameplate nameplate;
    private readonly FitSettings settings;
    private readonly PowerBudget start;
    private readonly double breakdown;
    private readonly EquivalentCircuit single;
    private readonly PlateFigure[] free;
    private readonly int residualCount;

    private CircuitSearch(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double breakdown, EquivalentCircuit single)
    {
        (this.nameplate, this.settings, start, this.breakdown, this.single) = (nameplate, settings, budget, breakdown, single);
        free = [.. Enum.GetValues<PlateFigure>().Where(figure => figure != PlateFigure.None && nameplate.Assumed.HasFlag(figure))];
        // Every target but the three of the rated point, two loss factors, the cage's three and the assumed figures.
        residualCount = Reached.All(nameplate, single, breakdown, true).Count - RatedTargets + 2 + (HasCage ? 3 : 0) + free.Length;
    }

    private bool HasCage => nameplate.GivesLockedRotor;

    /// <summary>The circuit nearest to all figures of the plate.</summary>
    /// <param name="nameplate">The plate.</param>
    /// <param name="settings">What it does not give.</param>
    /// <param name="budget">Its power budget.</param>
    /// <param name="breakdown">Breakdown torque over rated.</param>
    /// <param name="single">The single-cage circuit to start from.</param>
    internal static EquivalentCircuit From(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double breakdown, EquivalentCircuit single)
    {
        var search = new CircuitSearch(nameplate, settings, budget, breakdown, single);
        var best = (Cost: search.Cost(search.SingleStart()), Circuit: single);
        foreach (var (rise, corner) in search.HasCage ? CageStarts : CageStarts[..1])
        {
            if (search.FirstCircuit(rise, corner) is not { } from) continue;
            var found = search.Minimise(from);
            var cost = search.Cost(found);
            if (cost < best.Cost && search.Circuit(found) is { } circuit) best = (cost, circuit);
            // Everything given is met and the loss shares stand: another start would only change the cage's looks.
            if (best.Cost < Enough) break;
        }
        return best.Circuit;
    }

    private double Cost(Vector<double> at, double given = Given) => Residuals(at, given) is var residuals ? residuals.DotProduct(residuals) : 0;

    private Vector<double> SingleStart() => Start(1e-6, 1.5);

    /// <summary>
    /// The first start with a circuit. The single cage may stand at the edge of what the rated point allows, where no
    /// double one has room: a leakage of usual size and a milder cage then have.
    /// </summary>
    private Vector<double>? FirstCircuit(double rise, double corner)
    {
        var impedanceOhm = start.Point.PhaseV / start.Point.CurrentA;
        foreach (var leakageOhm in (double[])[(single.X1 + single.X2).Ohms, .. UsualLeakages.Select(share => share * impedanceOhm)])
            for (var mild = rise; mild > rise / 100; mild /= 2)
            {
                var from = Start(mild, corner);
                from[0] = Math.Log(leakageOhm);
                if (Circuit(from) is not null) return from;
            }
        return null;
    }

    /// <summary>Logarithms of leakage, the two loss factors, the cage's rise and corner, and the assumed figures' factors.</summary>
    private Vector<double> Start(double rise, double corner)
    {
        List<double> values = [Math.Log((single.X1 + single.X2).Ohms), 0, 0];
        if (HasCage) values.AddRange([Math.Log(rise), Math.Log(corner)]);
        values.AddRange(free.Select(_ => 0.0));
        return Vector<double>.Build.DenseOfEnumerable(values);
    }

    private Vector<double> Minimise(Vector<double> from)
    {
        var nothing = Vector<double>.Build.Dense(residualCount);
        var model = ObjectiveFunction.NonlinearModel((at, _) => Residuals(at, Loose), nothing, nothing, accuracyOrder: 2);
        if (TryFindMinimum(model, from) is { } found && Cost(found, Loose) <= Cost(from, Loose)) from = found;
        foreach (var given in Tightened)
            from = FloorDescent.Find(each => Residuals(each, given), from, given > Given ? StepsOnTheWay : MostSteps);
        return from;
    }

    /// <summary>Where a pass ends; null where it fails, which leaves its start: the residuals then say so.</summary>
    private static Vector<double>? TryFindMinimum(IObjectiveModel model, Vector<double> from)
    {
        try
        {
            return new LevenbergMarquardtMinimizer(1e-3, 1e-14, 1e-12, 1e-18, LooseSteps).FindMinimum(model, from).MinimizingPoint;
        }
        catch (ArgumentException)
        {
            // The minimiser raises this, and nothing more telling, where every direction leads out of what a circuit can
            // be: its matrix is then singular and its step no number.
            return null;
        }
    }

    private Vector<double> Residuals(Vector<double> at, double given = Given)
    {
        if (Circuit(at) is not { } circuit)
            return Vector<double>.Build.Dense(residualCount, NoCircuit);
        // The rated point is met by construction, so its first three targets say nothing here.
        var residuals = Reached.All(Moved(at).Plate, circuit, breakdown, true).Skip(RatedTargets)
            .Select(target => Math.Log(Math.Max(1e-6, 1 + target.Residual)) / (target.Assumed ? Default : given)).ToList();
        residuals.Add(at[1]);
        residuals.Add(at[2]);
        if (HasCage)
        {
            // Of the cages that serve, the mildest: no more rise than asked for, and a corner near standstill.
            residuals.Add(Math.Log(circuit.Cage.Rise) / CagePull);
            residuals.Add(at[4] / CagePull);
            // Where the rise vanishes the first of these no longer holds it anywhere.
            residuals.Add(at[3] / RisePull);
        }
        residuals.AddRange(free.Select((_, i) => at[FirstFree + i] / Default));
        return Vector<double>.Build.DenseOfEnumerable(residuals);
    }

    private int FirstFree => HasCage ? 5 : 3;

    private EquivalentCircuit? Circuit(Vector<double> at)
    {
        var (point, plate) = Moved(at);
        if (point.PowerFactor > 0.99 || point.Slip is <= 0 or >= 0.5 || point.LossW <= 0) return null;
        var budget = PowerBudget.From(
            point, start.CoreW * LossFactor(at[1]), start.RotationalW * LossFactor(at[2]), start.StrayW);
        var (rise, corner) = HasCage ? (Math.Exp(at[3]), Math.Exp(at[4])) : (0, 1);
        if (rise > RotorCage.MostRise - 1 || 1 + rise == 1 && HasCage) return null;
        return RatedPointFit.At(plate, settings, budget, Math.Exp(at[0]), rise, corner);
    }

    /// <summary>The rated point with its assumed figures moved; the plate only carries the reference of torque and current.</summary>
    private (RatedPoint Point, Nameplate Plate) Moved(Vector<double> at)
    {
        var point = start.Point;
        if (free.Length == 0) return (point, nameplate);
        double Factor(PlateFigure figure) => Array.IndexOf(free, figure) is >= 0 and var i ? Math.Exp(at[FirstFree + i]) : 1;
        point = point with
        {
            PowerW = point.PowerW * Factor(PlateFigure.Power),
            CurrentA = point.CurrentA * Factor(PlateFigure.Current),
            PowerFactor = point.PowerFactor * Factor(PlateFigure.PowerFactor),
            Slip = point.Slip * Factor(PlateFigure.Speed),
        };
        return (point, nameplate);
    }

    private static double LossFactor(double logarithm) => Math.Pow(MostLossFactor, Math.Tanh(logarithm));
}
