using System.Text.RegularExpressions;
using Spindlewright.Checks;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Tests.Tables;

public sealed partial class HandbookTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly IReadOnlyList<ITableRow> AllRows =
    [
        .. Handbook.MotorCircuits, .. Handbook.LoadTests, .. Handbook.Trajectory, .. Handbook.MotorDefaults.Rows,
        .. Handbook.MotorEfficiency.Limits, .. Handbook.MotorEfficiency.Curves, .. Handbook.MotorDerating.Pieces,
        .. Handbook.FullLoadCurrents, .. Handbook.MotorFacts, .. Handbook.SupplyFacts, .. Handbook.BeltFacts,
        .. Handbook.CuttingFacts, .. Handbook.Drilling.Printed.SelectMany(table => table),
        .. Handbook.DrillingMaterials,
        .. Handbook.Wear, .. Handbook.MachineEfficiency, .. Handbook.CuttingSpeeds, .. Handbook.DrillFeeds,
        .. Handbook.Kienzle, .. Handbook.Materials, .. Handbook.PowerLaws, .. Handbook.ToolMaterials,
        .. Handbook.DrillPoints, .. Handbook.DrillSizes, .. Handbook.Threads, .. Handbook.ClearanceHoles, .. Handbook.BeltProfiles,
        .. Handbook.PulleyDiameters, .. Handbook.Hand, .. Handbook.Injury, .. Handbook.Requirements,
        .. Check.FromEmbedded(Handbook.References),
    ];

    [Fact]
    public void Every_file_of_the_data_folder_is_loaded_whole()
    {
        var lines = Repository.DataFiles.Sum(file => File.ReadLines(file).Count(line => line[0] != '#') - 1);
        Assert.Equal(lines, AllRows.Count);
    }

    [Fact]
    public void Every_row_cites_a_known_source_and_claims_no_more_than_its_reading_allows()
    {
        foreach (var row in AllRows)
        {
            var reading = Handbook.References[row.Citation.Source].Read;
            var allowed = row.Citation.Provenance switch
            {
                Provenance.Published => reading is HowRead.Seen,
                Provenance.SecondHand => reading is HowRead.Seen or HowRead.SecondHand,
                Provenance.FromMemory => reading is HowRead.FromMemory or HowRead.SecondHand or HowRead.Seen,
                _ => reading is HowRead.NotApplicable,
            };
            Assert.True(allowed, $"{row.Key}: {row.Citation.Provenance}, but {row.Citation.Source} is {reading}");
        }
    }

    [Fact]
    public void No_reference_is_unused()
    {
        var cited = AllRows.Select(row => row.Citation.Source).ToHashSet(StringComparer.Ordinal);
        var code = Directory.GetFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => QuotedKey().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value));
        cited.UnionWith(code);
        Assert.All(Handbook.References.All, entry => Assert.Contains(entry.Key, cited));
    }

    [Fact]
    public void Workshop_materials_point_at_rows_that_exist()
    {
        foreach (var material in Handbook.Materials)
        {
            Assert.True(Handbook.SpeedOf(material).DrillLow > Speed.Zero);
            Assert.True(Handbook.DrillingFactorOf(material).TorqueKd > 0);
            Assert.Equal(material.KienzleGroup is null, Handbook.KienzleOf(material) is null);
        }
    }

    [Fact]
    public void A_missing_name_suggests_the_nearest_known_one()
    {
        var error = Assert.Throws<UnknownRowException>(() => Handbook.Materials["mild-stel"]);
        Assert.Equal("mild-steel", error.Nearest);
        Assert.Contains("did you mean 'mild-steel'?", error.Message, StringComparison.Ordinal);
        Assert.Null(Assert.Throws<UnknownRowException>(() => Handbook.Wear["unobtainium"]).Nearest);
    }

    [Fact]
    public void A_users_row_extends_or_replaces_a_row_in_a_copy()
    {
        var mine = new WearRow("sharp", 1.1, Citation.Yours("measured on my drill"));
        var other = new WearRow("ground by hand", 1.2, Citation.Yours());
        var extended = Handbook with { Wear = Handbook.Wear.With(mine, other) };

        Assert.Equal(1.1, extended.Wear["sharp"].Factor);
        Assert.Equal(Provenance.Yours, extended.Wear["sharp"].Citation.On(1.1).Provenance);
        Assert.Equal(Handbook.Wear.Count + 1, extended.Wear.Count);
        Assert.Equal(1.0, Handbook.Wear["sharp"].Factor);
    }

    [Theory] // Printed limits of Regulation (EU) 2019/1781 Annex I, tables 1 to 3.
    [InlineData("IE3", 4, 0.75, 0.825)]
    [InlineData("IE2", 2, 0.37, 0.695)]
    [InlineData("IE4", 8, 2.2, 0.845)]
    public void A_printed_power_gives_the_printed_efficiency(
        string efficiencyClass, int poles, double kilowatts, double limit)
    {
        var found = Handbook.MotorEfficiency.At(efficiencyClass, poles, Power.FromKilowatts(kilowatts));
        Assert.Equal(limit, found.Value);
        Assert.Equal(Provenance.Published, found.Provenance);
    }

    [Fact] // The printed limits have one decimal; the cubics are said to reproduce them within 0.05.
    public void The_cubics_reproduce_the_printed_limits_within_the_last_digit()
    {
        var compared = 0;
        foreach (var curve in Handbook.MotorEfficiency.Curves)
            foreach (var row in Handbook.MotorEfficiency.Limits)
                if (row.EfficiencyClass == curve.EfficiencyClass && row.Poles == curve.Poles
                    && row.RatedPower >= curve.PowerLow && row.RatedPower <= curve.PowerHigh)
                {
                    Assert.InRange(curve.At(row.RatedPower) - row.Efficiency, -0.000505, 0.000505);
                    compared++;
                }
        Assert.Equal(88, compared);
    }

    [Fact]
    public void A_power_between_two_limits_lies_between_them()
    {
        foreach (var (name, kilowatts) in new[] { ("IE3", 0.3), ("IE3", 0.65), ("IE4", 1.3), ("IE1", 0.45) })
        {
            var found = Handbook.MotorEfficiency.At(name, 4, Power.FromKilowatts(kilowatts));
            var limits = Handbook.MotorEfficiency.Limits
                .Where(row => row.EfficiencyClass == name && row.Poles == 4).ToArray();
            var below = limits.Last(row => (double)row.RatedPower.Kilowatts < kilowatts);
            var above = limits.First(row => (double)row.RatedPower.Kilowatts > kilowatts);
            Assert.InRange(found.Value, below.Efficiency, above.Efficiency);
            Assert.NotEqual(Provenance.Published, found.Provenance);
        }
        Assert.Throws<PartException>(() => Handbook.MotorEfficiency.At("IE3", 4, Power.FromKilowatts(30)));
        Assert.Throws<UnknownRowException>(() => Handbook.MotorEfficiency.At("IE7", 4, Power.FromKilowatts(1)));
    }

    [Fact] // IEC 60034-12 design N minima, from memory; upper catalogue practice, common practice, no source.
    public void Defaults_come_as_pairs_by_poles_and_power()
    {
        var pair = Handbook.MotorDefaults.Pair("breakdown torque", 8, Power.FromKilowatts(0.75));
        Assert.Equal(1.7, pair.Capability.Value);
        Assert.Equal(3.5, pair.Hazard.Value);
        Assert.Equal("pu", Handbook.MotorDefaults.UnitOf("breakdown torque"));
        Assert.Equal(2.0, LockedRotorMinimum(0.63));
        Assert.Equal(1.9, LockedRotorMinimum(0.64));
        Assert.Throws<PartException>(() => Handbook.MotorDefaults.Pair("breakdown torque", 4, Power.FromKilowatts(45)));
        Assert.Throws<UnknownRowException>(() => Handbook.MotorDefaults.Pair("break down torque"));

        static double LockedRotorMinimum(double kilowatts) => Handbook.MotorDefaults
            .On("locked-rotor torque", Side.Capability, 4, Power.FromKilowatts(kilowatts)).Value;
    }

    [Theory] // The rule's own corners, general guidance from memory: pieces meet within its uncertainty of 0.1.
    [InlineData(0.25, 0.75)]
    [InlineData(1.0, 0.95)]
    [InlineData(2.0, 0.475)]
    public void Derating_follows_its_pieces(double ratio, double torque) =>
        Assert.Equal(torque, Handbook.MotorDerating.At(ratio).Value, 12);

    [Fact] // 1 ft = 0.3048 m, exact.
    public void Printed_feet_per_minute_are_kept_and_converted_by_the_quantity()
    {
        var row = Handbook.CuttingSpeeds[CuttingSpeedRow.KeyOf("navy", "low carbon steel", null)];
        Assert.Equal(80, row.DrillLow.FeetPerMinute, 10);
        Assert.Equal(24.384, row.DrillLow.MetersPerMinutes, 10);
    }

    [GeneratedRegex("[`\"]([a-z0-9.-]+)[`\"]")]
    private static partial Regex QuotedKey();
}
