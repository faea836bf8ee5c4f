using MathNet.Numerics.LinearAlgebra;

namespace Spindlewright.Motors.Fitting;

/// <summary>Gauss–Newton with orthogonal factors and a halved step: goes to the bottom of a narrow floor.</summary>
/// <remarks>
/// The residuals of a fit weigh some thousands to one. Normal equations square that ratio and lose the weak directions in
/// rounding, so that the end of a search hangs on the last bit of its input; the QR factors of the stacked matrix do not.
/// </remarks>
internal static class FloorDescent
{
    private const int MostHalvings = 10;
    private const double Difference = 1e-5;
    private const double LongestStep = 0.5;
    private const double Still = 1e-10;

    /// <summary>The bottom near a start.</summary>
    internal static Vector<double> Find(
        Func<Vector<double>, Vector<double>> residuals, Vector<double> from, int mostSteps)
    {
        var (at, here) = (from, residuals(from));
        for (var step = 0; step < mostSteps; step++)
        {
            var direction = Jacobian(residuals, at, here.Count).QR().Solve(-here);
            if (!direction.All(double.IsFinite)) return at;
            direction *= Math.Min(1, LongestStep / direction.L2Norm());
            if (TryDescend(residuals, at, here, direction) is not { } next) return at;
            (at, here) = next;
            if (direction.L2Norm() < Still) return at;
        }
        return at;
    }

    private static (Vector<double> At, Vector<double> Residuals)? TryDescend(
        Func<Vector<double>, Vector<double>> residuals, Vector<double> at, Vector<double> here, Vector<double> direction)
    {
        var cost = here.DotProduct(here);
        for (var (halving, share) = (0, 1.0); halving < MostHalvings; halving++, share /= 2)
        {
            var there = at + share * direction;
            var found = residuals(there);
            if (found.DotProduct(found) < cost) return (there, found);
        }
        return null;
    }

    /// <summary>Central differences.</summary>
    private static Matrix<double> Jacobian(Func<Vector<double>, Vector<double>> residuals, Vector<double> at, int count)
    {
        var jacobian = Matrix<double>.Build.Dense(count, at.Count);
        for (var column = 0; column < at.Count; column++)
        {
            var (ahead, behind) = (at.Clone(), at.Clone());
            ahead[column] += Difference;
            behind[column] -= Difference;
            jacobian.SetColumn(column, (residuals(ahead) - residuals(behind)) / (2 * Difference));
        }
        return jacobian;
    }
}
