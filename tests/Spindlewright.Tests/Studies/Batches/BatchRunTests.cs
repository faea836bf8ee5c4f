using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Spindlewright.Hands;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using UnitsNet;

namespace Spindlewright.Tests.Studies.Batches;

/// <summary>What holds of every batch however it is run: bytes, allocations, progress, cancellation.</summary>
public class BatchRunTests
{
    private const int Count = 1501;
    private const string DigestVariable = "SPINDLEWRIGHT_BATCH_DIGEST";

    private static readonly Person Someone = new(5, 95, Duration.FromSeconds(1.5));

    public static TheoryData<CircuitForm, bool> Forms => new()
    {
        { CircuitForm.ConstantParameters, false }, { CircuitForm.ConstantParameters, true },
        { CircuitForm.Saturated, false }, { CircuitForm.Saturated, true },
    };

    [Theory]
    [MemberData(nameof(Forms))]
    public void Vectors_of_every_width_and_any_number_of_cores_give_the_same_bytes(CircuitForm form, bool withDrop)
    {
        var expected = All(form, withDrop, BatchRun.OneCore);
        Assert.Equal(expected, All(form, withDrop, new() { Cores = 2 }));
        Assert.Equal(expected, Wide<Lanes2>(form, withDrop));
        Assert.Equal(expected, Wide<Lanes4>(form, withDrop));
        Assert.Equal(expected, Wide<Lanes8>(form, withDrop));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void A_sample_does_not_hang_on_its_neighbours(CircuitForm form, bool withDrop)
    {
        var (drives, hands) = ManySamples.Of(Count, form, withDrop);
        var all = OverpoweringBatch.Of(drives, hands, Someone, BatchRun.OneCore);
        // Fewer samples end in other groups, and the last group is a part of one.
        var (fewer, fewerHands) = ManySamples.Of(Count - 600, form, withDrop);
        var some = OverpoweringBatch.Of(fewer, fewerHands, Someone, BatchRun.OneCore);
        Assert.True(all.Rpm.Span[..some.Count].SequenceEqual(some.Rpm.Span) && all.Outcome.Span[..some.Count].SequenceEqual(some.Outcome.Span));
    }

    [Fact]
    public void The_digest_of_all_batches_is_told_to_whoever_asks()
    {
        var digest = Digest();
        Assert.Equal(64, digest.Length);
        if (Environment.GetEnvironmentVariable(DigestVariable) is { } file)
            File.WriteAllText(file, digest);
    }

    [Fact]
    public void Bytes_are_the_same_in_a_process_on_one_core_without_wide_vectors_and_without_fused_operations()
    {
        var expected = Digest();
        Assert.Equal(expected, DigestOfChild(new KeyValuePair<string, string>("DOTNET_PROCESSOR_COUNT", "1")));
        Assert.Equal(expected, DigestOfChild(new("DOTNET_EnableAVX512", "0"), new("DOTNET_EnableAVX512F", "0")));
        Assert.Equal(expected, DigestOfChild(new("DOTNET_EnableAVX2", "0"), new("DOTNET_EnableFMA", "0")));
        Assert.Equal(expected, DigestOfChild(new KeyValuePair<string, string>("DOTNET_EnableHWIntrinsic", "0")));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void On_one_core_nothing_is_allocated(CircuitForm form, bool withDrop)
    {
        var batch = new Solved(form, withDrop);
        batch.Run(BatchRun.OneCore);
        var before = GC.GetAllocatedBytesForCurrentThread();
        batch.Run(BatchRun.OneCore);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void An_overpowering_speed_allocates_its_place_in_the_results_and_no_more(CircuitForm form, bool withDrop)
    {
        long Allocated(int count)
        {
            var (drives, hands) = ManySamples.Of(count, form, withDrop);
            OverpoweringBatch.Of(drives, hands, Someone, BatchRun.OneCore);
            var before = GC.GetAllocatedBytesForCurrentThread();
            OverpoweringBatch.Of(drives, hands, Someone, BatchRun.OneCore);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Assert.Equal(1000 * (sizeof(double) + sizeof(double) + sizeof(int)), Allocated(1800) - Allocated(800));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Progress_rises_to_one(int cores)
    {
        var told = new List<double>();
        var (drives, hands) = ManySamples.Of(5000, CircuitForm.ConstantParameters, false);
        OverpoweringBatch.Of(drives, hands, Someone, new() { Cores = cores, Progress = new Told(told.Add) });
        Assert.Equal(10, told.Count);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_cancelled_batch_leaves_nothing_half_written(int cores)
    {
        using var end = new CancellationTokenSource();
        var run = new BatchRun { Cores = cores, Progress = new Told(_ => end.Cancel()), Cancellation = end.Token };
        var batch = new Solved(CircuitForm.ConstantParameters, false, 60_000);
        Assert.ThrowsAny<OperationCanceledException>(() => batch.Run(run));
        Assert.All(batch.Points.TorqueNm.ToArray(), torque => Assert.Equal(double.NaN, torque));
        var (drives, hands) = ManySamples.Of(5000, CircuitForm.ConstantParameters, false);
        Assert.ThrowsAny<OperationCanceledException>(() => OverpoweringBatch.Of(drives, hands, Someone, run));
    }

    [Fact]
    public void A_sweep_hands_on_every_point_once_and_each_is_that_of_the_batch()
    {
        var batch = new Solved(CircuitForm.ConstantParameters, false, 3);
        double[] slips = [.. Enumerable.Range(0, 1300).Select(i => i / 1299.0)];
        var found = new double[3 * 2 * slips.Length];
        Array.Fill(found, double.NaN);
        double[] hz = [20, 50], volts = [90, 230];
        BatchSolver.Sweep(
            batch.Circuits, new FeedColumns(hz, volts), slips, new Kept(found, slips.Length), CircuitForm.ConstantParameters, new() { Cores = 2 });
        var expected = new double[3];
        for (var feed = 0; feed < 2; feed++)
            for (var slip = 0; slip < slips.Length; slip++)
            {
                double[] Repeat(double value) => [value, value, value];
                BatchSolver.OperatingPoints(
                    batch.Circuits, new(Repeat(hz[feed]), Repeat(volts[feed])), Repeat(slips[slip]), new(expected, new double[3], new double[3]),
                    CircuitForm.ConstantParameters, BatchRun.OneCore);
                for (var circuit = 0; circuit < 3; circuit++)
                    Assert.Equal(expected[circuit], found[(circuit * 2 + feed) * slips.Length + slip], 1e-12 * Math.Abs(expected[circuit]));
            }
    }

    private static byte[] All(CircuitForm form, bool withDrop, BatchRun run)
    {
        var batch = new Solved(form, withDrop);
        batch.Run(run);
        var (drives, hands) = ManySamples.Of(Count, form, withDrop);
        var speeds = OverpoweringBatch.Of(drives, hands, Someone, run);
        return [.. batch.Bytes(), .. MemoryMarshal.AsBytes(speeds.Rpm.Span), .. MemoryMarshal.AsBytes(speeds.Outcome.Span)];
    }

    private static byte[] Wide<L>(CircuitForm form, bool withDrop) where L : struct, ILanes<L>
    {
        var batch = new Solved(form, withDrop);
        batch.RunWide<L>();
        var (drives, hands) = ManySamples.Of(Count, form, withDrop);
        var into = new OverpoweringColumns(Count, Someone.LongestReaction);
        Blocks.Run<OverpoweringWork, L>(
            Count, BatchRun.OneCore,
            new(drives, hands, new FrequencyCells(drives.Inverter), Someone.OneTurnSpeed.RevolutionsPerMinute, into));
        return [.. batch.Bytes(), .. MemoryMarshal.AsBytes(into.Rpm.Span), .. MemoryMarshal.AsBytes(into.Outcome.Span)];
    }

    private static string Digest() => Convert.ToHexString(SHA256.HashData(
        [.. Forms.SelectMany(form => All(form.Data.Item1, form.Data.Item2, BatchRun.AllCores))]));

    /// <summary>Runs the fact that tells the digest in a process of its own.</summary>
    private static string DigestOfChild(params KeyValuePair<string, string>[] environment)
    {
        var file = Path.GetTempFileName();
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(typeof(BatchRunTests).Assembly.Location);
        start.ArgumentList.Add("--filter-method");
        start.ArgumentList.Add($"*.{nameof(The_digest_of_all_batches_is_told_to_whoever_asks)}");
        start.Environment[DigestVariable] = file;
        foreach (var (name, value) in environment) start.Environment[name] = value;
        try
        {
            using var child = Process.Start(start)!;
            var errors = child.StandardError.ReadToEndAsync();
            var output = child.StandardOutput.ReadToEnd();
            child.WaitForExit();
            Assert.True(child.ExitCode == 0, output + errors.Result);
            return File.ReadAllText(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }

    private readonly struct Kept(double[] into, int slips) : IPointConsumer
    {
        public void Take(
            int circuit, int feed, int firstSlip, ReadOnlySpan<double> torqueNm, ReadOnlySpan<double> currentA,
            ReadOnlySpan<double> powerFactor)
        {
            var places = into.AsSpan((circuit * 2 + feed) * slips + firstSlip, torqueNm.Length);
            Assert.All(places.ToArray(), place => Assert.Equal(double.NaN, place));
            torqueNm.CopyTo(places);
        }
    }

    /// <summary>Operating points and pull-out torques over the same samples.</summary>
    private sealed class Solved
    {
        private readonly CircuitForm form;
        private readonly DriveColumns drives;
        private readonly FeedColumns feeds;
        private readonly double[] slips;
        private readonly TorqueColumns torques;

        internal Solved(CircuitForm form, bool withDrop, int count = Count)
        {
            this.form = form;
            (drives, _) = ManySamples.Of(count, form, withDrop);
            var (hz, volts) = (new double[count], new double[count]);
            slips = new double[count];
            for (var i = 0; i < count; i++)
            {
                hz[i] = 5 + 90.0 * i / count;
                volts[i] = Math.Min(8 + 4.5 * hz[i], 230);
                slips[i] = i % 97 / 60.0 - 0.3;
            }
            feeds = new(hz, volts, withDrop ? drives.DropV : default);
            Points = new(new double[count], new double[count], new double[count]);
            torques = new(new double[count], new double[count]);
        }

        internal CircuitColumns Circuits => drives.Circuits[0];

        internal PointColumns Points { get; }

        internal void Run(BatchRun run)
        {
            BatchSolver.OperatingPoints(Circuits, feeds, slips, Points, form, run);
            BatchSolver.PullOut(Circuits, feeds, torques, form, run);
        }

        internal void RunWide<L>() where L : struct, ILanes<L>
        {
            Blocks.Run<PointWork, L>(feeds.Count, BatchRun.OneCore, new(Circuits, feeds, slips, Points, form));
            Blocks.Run<TorqueWork, L>(feeds.Count, BatchRun.OneCore, new(Circuits, feeds, torques, TorquePoint.PullOut, form));
        }

        internal byte[] Bytes() =>
        [
            .. MemoryMarshal.AsBytes(Points.TorqueNm.Span), .. MemoryMarshal.AsBytes(Points.CurrentA.Span),
            .. MemoryMarshal.AsBytes(Points.PowerFactor.Span), .. MemoryMarshal.AsBytes(torques.TorqueNm.Span),
            .. MemoryMarshal.AsBytes(torques.Slip.Span),
        ];
    }
}
