using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Tests.Motors.Plates;

public class PlateTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly string Boatyard =
        File.ReadAllText(TestSupport.Repository.File("data/machines/boatyard-fittings-bench.toml"));

    private static readonly PlateFigures Small = new()
    {
        Power = Power.FromKilowatts(0.75),
        LineVoltage = ElectricPotential.FromVolts(230),
        Connection = Connection.Delta,
        Frequency = Frequency.FromHertz(50),
        Poles = 4,
        Speed = RotationalSpeed.FromRevolutionsPerMinute(1430),
        Current = ElectricCurrent.FromAmperes(3.2),
        PowerFactor = 0.76,
    };

    [Fact]
    public void A_plate_whose_figures_go_together_is_asked_nothing() =>
        Assert.Empty(PlateQuestions.Of(Small with { Efficiency = 0.774 }, Handbook));

    [Theory]
    [InlineData(4, 950, "950 r/min at 50 Hz belongs to 6 poles")]
    [InlineData(4, 1000, "1000 r/min is all but the 1000 r/min")] // common practice: 1000 is synchronous for six poles
    [InlineData(6, 995, "loaded, small motors of 6 poles run at about 860 to 930")]
    [InlineData(4, 1499, "Is this the synchronous speed")]
    [InlineData(4, 1200, "Does the motor really slip")]
    public void A_speed_that_does_not_go_with_the_poles_is_questioned(int poles, double rpm, string words) =>
        Assert.Contains(
            PlateQuestions.Of(Small with { Poles = poles, Speed = RotationalSpeed.FromRevolutionsPerMinute(rpm) }, Handbook),
            question => question.Words.Contains(words, StringComparison.Ordinal));

    [Theory]
    [InlineData(0.774, 1.85, "is 3.2 A, but 1.85 A is given in delta")] // the star current beside the delta voltage
    [InlineData(0.85, 3.2, "Does the current belong")]
    [InlineData(null, 1.85, "imply an efficiency of 134 %")]
    [InlineData(null, 5.5, "imply an efficiency of 45 %")]
    public void A_current_that_disagrees_with_power_and_voltage_is_questioned(double? efficiency, double amperes, string words) =>
        Assert.Contains(
            PlateQuestions.Of(Small with { Efficiency = efficiency, Current = ElectricCurrent.FromAmperes(amperes) }, Handbook),
            question => question.Words.Contains(words, StringComparison.Ordinal));

    [Fact]
    public void Locked_rotor_torque_above_breakdown_odd_no_load_current_and_resistance_are_questioned()
    {
        var asked = PlateQuestions.Of(
            Small with
            {
                LockedRotorTorque = 3,
                BreakdownTorque = 2.5,
                NoLoadCurrent = ElectricCurrent.FromAmperes(3.15),
                WindingResistance = ElectricResistance.FromOhms(30),
            }, Handbook);
        Assert.Equal(3, asked.Count);
        Assert.Contains(asked, question => question.Asked.StartsWith("Are locked-rotor", StringComparison.Ordinal));
        Assert.Contains(asked, question => question.Asked.StartsWith("Was the no-load current", StringComparison.Ordinal));
        Assert.Contains(asked, question => question.Asked.StartsWith("Was the resistance", StringComparison.Ordinal));
    }

    [Fact]
    public void The_third_of_current_efficiency_and_power_factor_follows_from_two()
    {
        var fromCurrent = PlateCompletion.Of(Small with { PowerFactor = null, Efficiency = 0.774 }, Handbook);
        Assert.Empty(fromCurrent.Defaults);
        // 750 W / (√3 · 230 V · 3.2 A · 0.774) = 0.7601, by hand.
        Assert.Equal(0.7601, fromCurrent.Nameplates.Capability.PowerFactor, 1e-4);
        var fromFactor = PlateCompletion.Of(Small with { Current = null, Efficiency = 0.774 }, Handbook);
        // 750 W / (√3 · 230 V · 0.774 · 0.76) = 3.2005 A.
        Assert.Equal(3.2005, fromFactor.Nameplates.Hazard.Current.Amperes, 1e-3);
    }

    [Fact]
    public void What_is_missing_enters_as_a_pair_with_its_provenance()
    {
        var thin = PlateCompletion.Of(Small with { Speed = null, Current = null, PowerFactor = null }, Handbook);
        Assert.Equal(["speed", "efficiency", "power_factor"], thin.Defaults.Select(each => each.Figure));
        Assert.True(thin.Nameplates.Capability.Speed < thin.Nameplates.Hazard.Speed);
        Assert.Equal(PlateFigure.Speed | PlateFigure.Current | PlateFigure.PowerFactor, thin.Nameplates.Hazard.Assumed);
    }

    [Fact]
    public void A_motor_without_a_readable_plate_is_described_by_what_can_be_measured()
    {
        var text = MotorText("""
            frequency = "50 Hz"
            voltage_delta = "230 V"
            connection = "delta"
            frame_size = "80 mm"
            no_load_speed = "1496 r/min"
            no_load_current = "2.1 A"
            winding_resistance = "6.8 ohm"
            """);
        var reading = MachineFile.Read(Encoding.UTF8.GetBytes(text), "plateless.toml", Handbook);
        Assert.True(reading.Press is not null, string.Join('\n', reading.Faults.Lines()));
        var motor = reading.Press.Motor;
        Assert.Equal(4, motor.Circuit.Hazard.Poles);
        Assert.Equal(550, (double)motor.RatedPower.Watts, 1e-6);
        // Both fits carry what was measured: twice R1, and the current at no load.
        foreach (var fit in new[] { motor.Fit!.Capability, motor.Fit.Hazard })
        {
            Assert.Equal("", fit.Verdict);
            Assert.Equal(6.8, fit.Circuit.AtTemperature(Temperature.FromDegreesCelsius(20)).TerminalResistance.Ohms, 0.04);
            Assert.Equal(2.1, fit.Targets.Single(target => target.Quantity == "no-load current").Reached, 0.02);
        }
        Assert.Contains(reading.Press.Defaults, each => each.Key == "motor.power" && each.Provenance == Provenance.FromMemory);
    }

    [Fact]
    public void Questions_stand_among_the_warnings_of_the_machine()
    {
        var text = Boatyard.Replace("poles = 4", "poles = 4\nefficiency = \"60 %\"", StringComparison.Ordinal);
        var press = MachineFile.Read(Encoding.UTF8.GetBytes(text), "asked.toml", Handbook).Press!;
        Assert.Contains(press.Warnings, warning => warning.StartsWith("Does the current belong", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("poles = 4", "poles = 5", "an even number from 2 to 24")]
    [InlineData("poles = 4", "poles = 0", "poles")]
    [InlineData("frequency = \"50 Hz\"\nvoltage_delta", "frequency = \"0 Hz\"\nvoltage_delta", "rated frequency")]
    [InlineData("speed = \"1430 r/min\"", "speed = \"1500 r/min\"", "1500 r/min synchronous")]
    [InlineData("speed = \"1430 r/min\"", "speed = \"1500 r/min\"", "1350 to 1445")]
    [InlineData("speed = \"1430 r/min\"", "speed = \"1100 r/min\"", "rotor alone loses")]
    [InlineData("power_factor = 0.76", "power_factor = 1.2", "power factor")]
    [InlineData("power_factor = 0.76", "power_factor = inf", "motor.power_factor")]
    [InlineData("current_delta = \"3.2 A\"", "current_delta = \"1e400 A\"", "motor.current_delta")]
    [InlineData("current_delta = \"3.2 A\"", "current_delta = \"1.2 A\"", "√3 V I cosφ")]
    [InlineData("current_delta = \"3.2 A\"", "current_delta = \"0 A\"", "rated current")]
    [InlineData("power_factor = 0.76", "power_factor = 0.76\nwinding_resistance = \"0 ohm\"", "winding resistance between terminals")]
    [InlineData("power_factor = 0.76", "power_factor = 0.76\nno_load_current = \"9 A\"", "no-load current")]
    [InlineData("power = \"0.75 kW\"\npoles", "poles", "frame_size or shaft_diameter")]
    [InlineData("power = \"0.75 kW\"\npoles", "frame_size = \"75 mm\"\npoles", "frame size")]
    [InlineData("poles = 4\n", "", "")]
    public void A_plate_that_cannot_be_is_refused_at_its_line_with_what_is_accepted(string old, string mended, string words)
    {
        var text = Boatyard.Replace(old, mended, StringComparison.Ordinal);
        Assert.NotEqual(Boatyard, text);
        var faults = MachineFile.Read(Encoding.UTF8.GetBytes(text), "bad.toml", Handbook).Faults.Lines().ToList();
        if (words.Length == 0) Assert.Empty(faults); // poles follow from the speed
        else Assert.Contains(faults, line => line.Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, 1, 1, 50)]
    [InlineData(1, 1, -1, 50)]
    [InlineData(1, 1, 1, 0)]
    public void A_circuit_that_cannot_be_is_refused_with_the_range(double r1, double x1, double r2, double hertz)
    {
        var error = Assert.Throws<PartException>(() => new EquivalentCircuit(
            RandomMotors.Ohms(r1), RandomMotors.Ohms(x1), RandomMotors.Ohms(r2), RandomMotors.Ohms(1), RandomMotors.Ohms(30),
            ElectricPotential.FromVolts(400), Frequency.FromHertz(hertz), 4));
        Assert.Contains("accepted:", error.Message, StringComparison.Ordinal);
    }

    /// <summary>The boatyard bench with another [motor].</summary>
    private static string MotorText(string motor)
    {
        var (start, end) = (Boatyard.IndexOf("[motor]", StringComparison.Ordinal), Boatyard.IndexOf("[as_found]", StringComparison.Ordinal));
        return $"{Boatyard[..start]}[motor]\n{motor}\n\n{Boatyard[end..]}";
    }
}
