using System.Globalization;
using MathNet.Numerics.Distributions;

namespace Spindlewright.Foundations.Sampling;

/// <summary>How one uncertain number is spread. Its unit is that of whoever holds it.</summary>
/// <remarks>Draws go by the inverse of the distribution function, so that one uniform number gives one draw.</remarks>
public abstract record Distribution
{
    private const string Part = "distribution";

    private Distribution() { }

    /// <summary>The value below which a share of all draws lies.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <returns>The value.</returns>
    /// <exception cref="PartException">The share is not between 0 and 1.</exception>
    public double Quantile(double share) => share is > 0 and < 1
        ? Inverse(share)
        : throw new PartException(Part, "share", Text(share), "above 0 and below 1");

    /// <summary>The share of all draws that lies at or below a value.</summary>
    /// <param name="value">The value, finite.</param>
    /// <returns>0 to 1.</returns>
    public double ShareBelow(double value) => Cumulative(Guard.Finite(value, Part, "value"));

    /// <summary>The middle of the draws.</summary>
    public double Median => Inverse(0.5);

    /// <summary>Kind and numbers, such as "normal, mean 230, standard deviation 4".</summary>
    public abstract string Words { get; }

    private protected abstract double Inverse(double share);

    private protected abstract double Cumulative(double value);

    /// <summary>Always the same number.</summary>
    public sealed record Fixed : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="value">The number, finite.</param>
        public Fixed(double value) => Value = Guard.Finite(value, Part, "fixed value");

        /// <summary>The number.</summary>
        public double Value { get; }

        /// <inheritdoc/>
        public override string Words => $"always {Text(Value)}";

        private protected override double Inverse(double share) => Value;

        private protected override double Cumulative(double value) => value >= Value ? 1 : 0;
    }

    /// <summary>The normal distribution.</summary>
    public sealed record Normal : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="mean">Finite.</param>
        /// <param name="standardDeviation">Above 0.</param>
        /// <exception cref="PartException">A value is out of range.</exception>
        public Normal(double mean, double standardDeviation) =>
            (Mean, StandardDeviation) =
                (Guard.Finite(mean, Part, "mean"), Guard.Positive(standardDeviation, Part, "standard deviation"));

        /// <summary>Mean.</summary>
        public double Mean { get; }

        /// <summary>Standard deviation.</summary>
        public double StandardDeviation { get; }

        /// <inheritdoc/>
        public override string Words => $"normal, mean {Text(Mean)}, standard deviation {Text(StandardDeviation)}";

        private protected override double Inverse(double share) =>
            MathNet.Numerics.Distributions.Normal.InvCDF(Mean, StandardDeviation, share);

        private protected override double Cumulative(double value) =>
            MathNet.Numerics.Distributions.Normal.CDF(Mean, StandardDeviation, value);
    }

    /// <summary>The lognormal distribution, by its median and the factor of one standard deviation.</summary>
    public sealed record Lognormal : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="median">Above 0.</param>
        /// <param name="factor">Above 1: about 68 of 100 draws lie between median / factor and median × factor.</param>
        /// <exception cref="PartException">A value is out of range.</exception>
        public Lognormal(double median, double factor)
        {
            MiddleValue = Guard.Positive(median, Part, "median");
            Factor = Guard.Finite(factor, Part, "factor") > 1
                ? factor
                : throw new PartException(Part, "factor", Text(factor), "above 1");
        }

        /// <summary>Median.</summary>
        public double MiddleValue { get; }

        /// <summary>Geometric standard deviation.</summary>
        public double Factor { get; }

        /// <inheritdoc/>
        public override string Words => $"lognormal, median {Text(MiddleValue)}, factor {Text(Factor)}";

        private protected override double Inverse(double share) =>
            LogNormal.InvCDF(Math.Log(MiddleValue), Math.Log(Factor), share);

        private protected override double Cumulative(double value) =>
            value <= 0 ? 0 : LogNormal.CDF(Math.Log(MiddleValue), Math.Log(Factor), value);
    }

    /// <summary>The triangular distribution.</summary>
    public sealed record Triangular : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="least">Finite.</param>
        /// <param name="likeliest">From <paramref name="least"/> to <paramref name="most"/>.</param>
        /// <param name="most">Above <paramref name="least"/>.</param>
        /// <exception cref="PartException">A value is not finite, or they are out of order.</exception>
        public Triangular(double least, double likeliest, double most)
        {
            (Least, Most) = Ordered(least, most);
            Likeliest = Guard.Within(likeliest, least, most, Part, "likeliest value");
        }

        /// <summary>Lower end.</summary>
        public double Least { get; }

        /// <summary>The value where draws are densest.</summary>
        public double Likeliest { get; }

        /// <summary>Upper end.</summary>
        public double Most { get; }

        /// <inheritdoc/>
        public override string Words => $"triangular, {Text(Least)} to {Text(Most)}, likeliest {Text(Likeliest)}";

        private protected override double Inverse(double share) =>
            MathNet.Numerics.Distributions.Triangular.InvCDF(Least, Most, Likeliest, share);

        private protected override double Cumulative(double value) =>
            MathNet.Numerics.Distributions.Triangular.CDF(Least, Most, Likeliest, value);
    }

    /// <summary>The uniform distribution.</summary>
    public sealed record Uniform : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="least">Finite.</param>
        /// <param name="most">Above <paramref name="least"/>.</param>
        /// <exception cref="PartException">A value is not finite, or they are out of order.</exception>
        public Uniform(double least, double most) => (Least, Most) = Ordered(least, most);

        /// <summary>Lower end.</summary>
        public double Least { get; }

        /// <summary>Upper end.</summary>
        public double Most { get; }

        /// <inheritdoc/>
        public override string Words => $"uniform, {Text(Least)} to {Text(Most)}";

        private protected override double Inverse(double share) => ContinuousUniform.InvCDF(Least, Most, share);

        private protected override double Cumulative(double value) => ContinuousUniform.CDF(Least, Most, value);
    }

    /// <summary>Another distribution, of which only the part between two ends is drawn.</summary>
    public sealed record Truncated : Distribution
    {
        private readonly double belowLeast, belowMost;

        /// <summary>Makes it.</summary>
        /// <param name="whole">The distribution that is cut.</param>
        /// <param name="least">Lower end, finite.</param>
        /// <param name="most">Upper end, above <paramref name="least"/>.</param>
        /// <exception cref="PartException">The ends are out of order, or nothing of the whole lies between them.</exception>
        public Truncated(Distribution whole, double least, double most)
        {
            ArgumentNullException.ThrowIfNull(whole);
            Whole = whole;
            (Least, Most) = Ordered(least, most);
            (belowLeast, belowMost) = (whole.Cumulative(least), whole.Cumulative(most));
            if (!(belowMost > belowLeast))
                throw new PartException(
                    Part, "truncation", $"{Text(least)} to {Text(most)}", "ends between which draws lie", whole.Words);
        }

        /// <summary>The distribution that is cut.</summary>
        public Distribution Whole { get; }

        /// <summary>Lower end.</summary>
        public double Least { get; }

        /// <summary>Upper end.</summary>
        public double Most { get; }

        /// <inheritdoc/>
        public override string Words => $"{Whole.Words}, only {Text(Least)} to {Text(Most)}";

        private protected override double Inverse(double share)
        {
            var within = belowLeast + share * (belowMost - belowLeast);
            // So near to an end that the share has rounded to it, the end itself is the answer.
            return within is > 0 and < 1 ? Math.Clamp(Whole.Inverse(within), Least, Most) : within <= 0 ? Least : Most;
        }

        private protected override double Cumulative(double value) => value <= Least ? 0 : value >= Most
            ? 1
            : Math.Clamp((Whole.Cumulative(value) - belowLeast) / (belowMost - belowLeast), 0, 1);
    }

    /// <summary>A distribution known by some of its percentiles, with straight lines between.</summary>
    public sealed record Percentiles : Distribution
    {
        /// <summary>Makes it.</summary>
        /// <param name="points">
        /// Percentile, rising from 0 to 100, and value, never falling; two or more. The 0th and the 100th are the ends and
        /// have to be given: what lies beyond the outermost known percentile is a choice, and whoever makes it states it.
        /// </param>
        /// <exception cref="PartException">Too few points, an end is missing, or they are out of order.</exception>
        public Percentiles(params IReadOnlyList<(double Percentile, double Value)> points)
        {
            ArgumentNullException.ThrowIfNull(points);
            if (points.Count < 2 || points[0].Percentile != 0 || points[^1].Percentile != 100)
                throw new PartException(
                    Part, "percentiles", string.Join(", ", points.Select(each => Text(each.Percentile))),
                    "two or more, the first 0 and the last 100");
            foreach (var (percentile, value) in points)
            {
                Guard.Finite(percentile, Part, "percentile");
                Guard.Finite(value, Part, "value of a percentile");
            }

            foreach (var (before, after) in points.Zip(points.Skip(1)))
                if (!(after.Percentile > before.Percentile) || after.Value < before.Value)
                    throw new PartException(
                        Part, "percentile", $"{Text(after.Percentile)} with {Text(after.Value)}",
                        $"a percentile above {Text(before.Percentile)} with a value of {Text(before.Value)} or more");
            Points = [.. points];
        }

        /// <summary>Percentile and value, rising.</summary>
        public IReadOnlyList<(double Percentile, double Value)> Points { get; }

        /// <inheritdoc/>
        public override string Words =>
            $"percentiles {string.Join(", ", Points.Select(each => $"{Text(each.Percentile)}: {Text(each.Value)}"))}";

        /// <inheritdoc/>
        public bool Equals(Percentiles? other) => other is not null && Points.SequenceEqual(other.Points);

        /// <inheritdoc/>
        public override int GetHashCode() => Points.Aggregate(0, HashCode.Combine);

        private protected override double Inverse(double share)
        {
            var percentile = 100 * share;
            var after = 1;
            while (Points[after].Percentile < percentile)
                after++;
            var (from, to) = (Points[after - 1], Points[after]);
            return from.Value + (to.Value - from.Value) * (percentile - from.Percentile) / (to.Percentile - from.Percentile);
        }

        private protected override double Cumulative(double value)
        {
            if (value < Points[0].Value) return 0;
            var after = 1;
            while (after < Points.Count && Points[after].Value <= value)
                after++;
            if (after == Points.Count) return 1;
            var (from, to) = (Points[after - 1], Points[after]);
            return (from.Percentile + (to.Percentile - from.Percentile) * (value - from.Value) / (to.Value - from.Value)) / 100;
        }
    }

    private static (double Least, double Most) Ordered(double least, double most)
    {
        Guard.Finite(least, Part, "lower end");
        Guard.Finite(most, Part, "upper end");
        return most > least
            ? (least, most)
            : throw new PartException(Part, "upper end", Text(most), $"above the lower end, {Text(least)}");
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
