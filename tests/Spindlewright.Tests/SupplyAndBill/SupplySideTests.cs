using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.SupplyAndBill;
using UnitsNet;

namespace Spindlewright.Tests.SupplyAndBill;

public class SupplySideTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    [Fact]
    public void The_loaded_link_follows_from_the_rectifier_and_the_hazard_side_stays_unloaded()
    {
        var link = Boatyard().Inverter.Link;
        Assert.InRange(link.LoadedFraction.Capability, 0.9, 0.99);
        Assert.Equal(1, link.LoadedFraction.Hazard);
        var small = Boatyard("boost = \"0 V\"", "boost = \"0 V\"\nlink_capacitance = \"330 µF\"").Inverter.Link;
        Assert.True(small.LoadedFraction.Capability < link.LoadedFraction.Capability);
        var own = Boatyard("boost = \"0 V\"", "boost = \"0 V\"\nloaded_link = \"93 %\"").Inverter.Link;
        Assert.Equal(0.93, own.LoadedFraction.Capability, 1e-12);
    }

    [Fact]
    public void A_lower_supply_takes_more_current_and_gives_a_lower_ceiling()
    {
        var levels = Study(Boatyard()).Levels;
        Assert.Equal(["lowest", "nominal", "highest"], levels.Select(level => level.Name));
        Assert.True(levels[0].State.Current > levels[1].State.Current && levels[1].State.Current > levels[2].State.Current);
        Assert.True(levels.All(level => level.Ceiling < level.UnloadedCeiling));
        Assert.True(levels[0].Ceiling < levels[1].Ceiling);
    }

    [Fact]
    public void A_fuse_is_compared_by_its_rated_current_and_not_where_none_is_given()
    {
        Assert.Null(Study(Boatyard()).Fuse.Share);
        var given = Study(Boatyard("phases = 1", "phases = 1\nfuse = \"6 A\"")).Fuse;
        Assert.True(given.Share > 1);
        Assert.Contains("exceeds the rated 6 A", given.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Direct_on_line_draws_many_times_what_a_ramp_draws()
    {
        var on = Study(Boatyard()).SwitchingOn;
        Assert.True(on.LockedRotor > on.RampMotor.Capability!.Value * 4);
        Assert.True(on.FirstPeak.Least > on.LockedRotor.Amperes);
    }

    [Fact]
    public void Twice_the_frequency_is_four_times_the_energy_of_rotation()
    {
        var down = Study(Boatyard()).SlowingDown;
        Assert.Equal(4, down[1].Energy.Hazard / down[0].Energy.Hazard, 1e-9);
        Assert.True(down[1].AllIntoLink.Capability > down[0].AllIntoLink.Capability);
    }

    [Fact]
    public void The_energy_of_a_day_is_the_sum_of_its_tasks_and_never_below_the_work_done()
    {
        var day = Study(Boatyard()).Day;
        Assert.Equal(
            day.WithInverter!.Value.WattHours, day.Tasks.Sum(row => row.WithInverter!.Value.WattHours) + day.Standby.WattHours, 1e-9);
        foreach (var row in day.Tasks)
        {
            Assert.True(row.AtDrill < row.WithInverter!.Value);
            Assert.True(row.AtDrill < row.DirectOnLine!.Value);
        }
    }

    [Fact]
    public void At_base_frequency_an_inverter_saves_nothing()
    {
        var day = Study(Boatyard()).Day;
        Assert.True(day.Saving < 0);
        Assert.Contains("more", day.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("phases = 1", "phases = 1\nloop_resistance = \"0 ohm\"", "loop resistance")]
    [InlineData("phases = 1", "phases = 1\nfuse = \"500 A\"", "fuse")]
    [InlineData("boost = \"0 V\"", "boost = \"0 V\"\nlink_capacitance = \"0 µF\"", "link capacitance")]
    [InlineData("boost = \"0 V\"", "boost = \"0 V\"\nslip_compensation = \"300 %\"", "slip compensation")]
    [InlineData("boost = \"0 V\"", "boost = \"0 V\"\ndead_time_compensation = \"120 %\"", "dead time compensation")]
    [InlineData("boost = \"0 V\"", "boost = \"0 V\"\nacceleration_time = \"0 s\"", "acceleration time")]
    [InlineData("boost = \"0 V\"", "boost = \"0 V\"\nstandby_power = \"2 kW\"", "standby power")]
    [InlineData("curve = \"straight\"", "curve = \"multi-point\"", "needs the key point_frequencies")]
    [InlineData("curve = \"straight\"", "curve = \"multi-point\"\npoint_frequencies = [\"10 Hz\"]\npoint_voltages = [\"30 V\", \"60 V\"]", "2 voltages stand beside 1 frequencies")]
    [InlineData("curve = \"straight\"", "curve = \"multi-point\"\npoint_frequencies = [\"20 Hz\", \"10 Hz\"]\npoint_voltages = [\"30 V\", \"60 V\"]", "points of the V/f law")]
    [InlineData("[spindle]", "[heat]\ntime_constant = \"0 min\"\n\n[spindle]", "time constant")]
    [InlineData("[spindle]", "[heat]\nair_temperature = \"90 °C\"\n\n[spindle]", "air temperature")]
    [InlineData("[spindle]", "[heat]\ninsulation_class = \"Z\"\n\n[spindle]", "insulation_class")]
    [InlineData("[spindle]", "[day]\nswitched_on = \"30 h\"\n[[day.task]]\nname = \"a\"\nfrequency = \"50 Hz\"\nload = \"50 %\"\nloaded = \"30 s\"\nrepeats = 5\n\n[spindle]", "switched on")]
    [InlineData("[spindle]", "[day]\nswitched_on = \"8 h\"\n\n[spindle]", "tasks")]
    [InlineData("[spindle]", "[day]\nswitched_on = \"1 h\"\n[[day.task]]\nname = \"a\"\nfrequency = \"50 Hz\"\nload = \"50 %\"\nloaded = \"30 min\"\nrepeats = 5\n\n[spindle]", "switched on")]
    public void A_wrong_value_is_a_fault_that_names_it(string from, string to, string named)
    {
        var reading = Read(from, to);
        Assert.Null(reading.Press);
        Assert.Contains(reading.Faults.Lines(), line => line.Contains(named, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_described_day_and_heat_data_are_read()
    {
        var press = Boatyard("[spindle]", "[heat]\ninsulation_class = \"B\"\nventilation = \"separate\"\n\n[day]\nswitched_on = \"2 h\"\n[[day.task]]\nname = \"holes\"\nfrequency = \"30 Hz\"\nload = \"40 %\"\nloaded = \"20 s\"\noff = \"40 s\"\nrepeats = 50\n\n[spindle]");
        Assert.Equal(120, press.Heating!.ClassLimit.DegreesCelsius, 1e-9);
        Assert.Equal(50, press.Day!.Tasks[0].Repeats);
        Assert.Equal(0.4, press.Day.Tasks[0].Load, 1e-12);
    }

    [Fact]
    public void A_dead_time_that_was_given_is_still_not_credited_in_a_hazard()
    {
        var press = Boatyard("boost = \"0 V\"", "boost = \"0 V\"\ndead_time = \"4 us\"\ndead_time_compensation = \"50 %\"");
        Assert.Equal(0, press.Inverter.PhaseDrop.Hazard.Volts);
        // (4/π)·Vdc·td·fsw/√2 of half of 4 µs at 8 kHz and the loaded link, and 1 V.
        var link = press.Inverter.Link.Voltage(press.Supply.Lowest, Side.Capability).Volts;
        Assert.Equal(1 + 0.9003163 * link * 2e-6 * 8000, press.Inverter.PhaseDrop.Capability.Volts, 1e-6);
    }

    private static SupplyStudy Study(DrillPress press) => SupplyStudy.Of(press, Handbook);

    private static DrillPress Boatyard(string from = "", string to = "") =>
        Read(from, to) is { Press: { } press } ? press : throw new InvalidOperationException(string.Join('\n', Read(from, to).Faults.Lines()));

    private static MachineReading Read(string from, string to)
    {
        var text = EmbeddedTables.Read("data/machines/boatyard-fittings-bench.toml");
        // The plain bench: no fuse, and the usual day.
        text = text.Replace("fuse = \"13 A\"\n", "", StringComparison.Ordinal);
        var day = text.IndexOf("[day]", StringComparison.Ordinal);
        text = text[..day] + text[text.IndexOf("[spindle]", StringComparison.Ordinal)..];
        if (from.Length > 0) text = text.Replace(from, to, StringComparison.Ordinal);
        return MachineFile.Read(Encoding.UTF8.GetBytes(text), "boatyard.toml", Handbook);
    }
}
