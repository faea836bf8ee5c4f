namespace Spindlewright.Foundations.Sampling;

/// <summary>The samples of a plan; any of them can be drawn without the others.</summary>
internal sealed class SampleRows
{
    private readonly UncertainInputs inputs;
    private readonly SamplingPlan plan;
    private readonly CounterGenerator generator;
    private readonly uint firstStream;
    private readonly KeyedPermutation[] orders;

    /// <summary>Makes the samples of a plan.</summary>
    /// <param name="inputs">What is uncertain.</param>
    /// <param name="plan">How many samples, and which.</param>
    /// <param name="firstStream">Stream of the first input; the others follow.</param>
    internal SampleRows(UncertainInputs inputs, SamplingPlan plan, uint firstStream = 0)
    {
        (this.inputs, this.plan, this.firstStream) = (inputs, plan, firstStream);
        generator = new CounterGenerator(plan.Seed);
        orders = plan.Design == SamplingDesign.LatinHypercube
            ? [.. inputs.Inputs.Select((_, place) => new KeyedPermutation(plan.Seed, firstStream + (uint)place, plan.Count))]
            : [];
    }

    /// <summary>Draws samples that follow one another.</summary>
    /// <param name="start">The first.</param>
    /// <param name="length">How many.</param>
    /// <param name="columns">One array an input; receives the draws at the samples' own places.</param>
    internal void Fill(int start, int length, double[][] columns)
    {
        Span<double> row = stackalloc double[columns.Length];
        for (var sample = start; sample < start + length; sample++)
        {
            for (var place = 0; place < row.Length; place++)
                row[place] = Share(place, sample);
            inputs.FromUniform(row);
            for (var place = 0; place < row.Length; place++)
                columns[place][sample] = row[place];
        }
    }

    private double Share(int place, int sample)
    {
        var uniform = generator.Uniform(firstStream + (uint)place, (ulong)sample);
        return orders.Length == 0
            ? uniform
            // Held inside its share, since the sum can round up to the next one's edge.
            : Math.Min((orders[place].At((ulong)sample) + uniform) / plan.Count, 1 - 1e-16);
    }
}
