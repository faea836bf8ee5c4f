using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace Spindlewright.Foundations.Sampling;

/// <summary>One uncertain input of a study.</summary>
/// <param name="Name">Its name, unique among the inputs.</param>
/// <param name="Distribution">How it is spread.</param>
public sealed record UncertainInput(string Name, Distribution Distribution);

/// <summary>Two inputs that go together.</summary>
/// <param name="First">Name of an input.</param>
/// <param name="Second">Name of another.</param>
/// <param name="Coefficient">Correlation of their normal scores, above −1 and below 1.</param>
public sealed record InputCorrelation(string First, string Second, double Coefficient);

/// <summary>The uncertain inputs of a study, and how they go together.</summary>
/// <remarks>
/// Correlation is that of the normal scores (a Gaussian copula): each input keeps its own distribution whatever the
/// others do. The rank correlation of two inputs with coefficient r is (6/π) asin(r/2).
/// </remarks>
public sealed class UncertainInputs
{
    private const string Part = "uncertain inputs";
    private readonly int[] correlated;
    private readonly double[,] factor;

    /// <summary>Makes the set.</summary>
    /// <param name="inputs">One or more, each name once.</param>
    /// <param name="correlations">Pairs that go together; every other pair is independent.</param>
    /// <exception cref="PartException">A name is unknown or stands twice, or no inputs can be correlated like this.</exception>
    public UncertainInputs(IReadOnlyList<UncertainInput> inputs, IReadOnlyList<InputCorrelation>? correlations = null)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs.Count == 0) throw new PartException(Part, "number of inputs", "0", "1 or more");
        if (inputs.GroupBy(input => input.Name).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new PartException(Part, "name", $"\"{twice.Key}\" twice", "each name once");
        Inputs = [.. inputs];
        Correlations = [.. correlations ?? []];
        var pairs = Correlations.Select(each => (A: Place(each.First), B: Place(each.Second), Given: each)).ToList();
        correlated = [.. pairs.SelectMany(pair => new[] { pair.A, pair.B }).Distinct().Order()];
        factor = correlated.Length == 0 ? new double[0, 0] : Factor(pairs);
    }

    /// <summary>The inputs.</summary>
    public IReadOnlyList<UncertainInput> Inputs { get; }

    /// <summary>The pairs that go together.</summary>
    public IReadOnlyList<InputCorrelation> Correlations { get; }

    /// <summary>The place of an input.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>0 to the number of inputs less one.</returns>
    /// <exception cref="PartException">The name is unknown.</exception>
    public int Place(string name)
    {
        for (var place = 0; place < Inputs.Count; place++)
            if (Inputs[place].Name == name)
                return place;
        var nearest = NearestName.Of(name, Inputs.Select(input => input.Name));
        throw new PartException(
            Part, "name of an input", $"\"{name}\"", string.Join(", ", Inputs.Select(input => $"\"{input.Name}\"")),
            nearest is null ? "" : $"nearest: \"{nearest}\"");
    }

    /// <summary>Turns one row of independent uniform numbers into one row of inputs, in place.</summary>
    /// <param name="row">One number a input, each above 0 and below 1.</param>
    internal void FromUniform(Span<double> row)
    {
        if (correlated.Length > 0) Correlate(row);
        for (var place = 0; place < row.Length; place++)
            row[place] = Inputs[place].Distribution.Quantile(row[place]);
    }

    private void Correlate(Span<double> row)
    {
        Span<double> scores = stackalloc double[correlated.Length];
        for (var i = 0; i < scores.Length; i++)
            scores[i] = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, row[correlated[i]]);
        for (var i = 0; i < scores.Length; i++)
        {
            var score = 0.0;
            for (var j = 0; j <= i; j++)
                score += factor[i, j] * scores[j];
            var share = MathNet.Numerics.Distributions.Normal.CDF(0, 1, score);
            row[correlated[i]] = Math.Clamp(share, double.Epsilon, 1 - 1e-16);
        }
    }

    private double[,] Factor(IReadOnlyList<(int A, int B, InputCorrelation Given)> pairs)
    {
        var matrix = Matrix<double>.Build.DenseIdentity(correlated.Length);
        foreach (var (a, b, given) in pairs)
        {
            if (a == b) throw new PartException(Part, "correlation", $"\"{given.First}\" with itself", "two inputs");
            if (!(Math.Abs(given.Coefficient) < 1))
                throw new PartException(
                    Part, $"correlation of \"{given.First}\" and \"{given.Second}\"",
                    given.Coefficient.ToString("G6", CultureInfo.InvariantCulture), "above -1 and below 1");
            var (i, j) = (Array.IndexOf(correlated, a), Array.IndexOf(correlated, b));
            if (matrix[i, j] != 0)
                throw new PartException(Part, "correlation", $"\"{given.First}\" and \"{given.Second}\" twice", "each pair once");
            matrix[i, j] = matrix[j, i] = given.Coefficient;
        }

        try
        {
            return matrix.Cholesky().Factor.ToArray();
        }
        catch (ArgumentException)
        {
            throw new PartException(
                Part, "correlations", string.Join(", ", pairs.Select(pair => string.Create(
                    CultureInfo.InvariantCulture, $"{pair.Given.First}/{pair.Given.Second} {pair.Given.Coefficient:G6}"))),
                "coefficients that can hold together (a positive definite matrix)");
        }
    }
}
