using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Tests.Sizing;

/// <summary>What may be bought, altered and set: defaults, guards, and the sections [sizing] and [[motor_offer]].</summary>
public sealed class SizingWishesTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    /// <summary>A demo machine without what it wishes for itself.</summary>
    private static readonly string Bench =
        File.ReadAllText(TestSupport.Repository.File("data/machines/school-workshop.toml")).Split("[sizing]")[0];

    private const string Offer = """
        [[motor_offer]]
        name = "one"
        power = "0.55 kW"
        poles = 6

        """;

    [Fact]
    public void What_is_usual_are_the_preferred_outputs_from_0_12_to_2_2_kilowatts_and_all_poles()
    {
        var usual = SizingWishes.Usual(Handbook);
        // IEC 60072-1, from memory: the preferred outputs of that span.
        Assert.Equal([0.12, 0.18, 0.25, 0.37, 0.55, 0.75, 1.1, 1.5, 2.2], usual.Powers.Select(each => (double)each.Kilowatts));
        Assert.Equal([2, 4, 6, 8], usual.Poles);
        Assert.Equal(["IE2", "IE3"], usual.EfficiencyClasses);
        Assert.Equal([5, 7, 10], usual.LowestFrequencies.Select(each => each.Hertz));
        Assert.Equal([50, 75, 100], usual.HighestFrequencies.Select(each => each.Hertz));
        Assert.Equal([0, 0.04, 0.08], usual.Boosts);
        Assert.True(usual is { RatingsTable: true, SlowestShare: 0.7, TorqueMargin: 1, GreatestFrame: null, GreatestInput: null, Budget: null });
        Assert.Empty(usual.Motors);
    }

    [Fact]
    public void The_usual_limits_of_frequency_go_with_the_base_frequency()
    {
        Assert.Equal([60, 90, 120], SizingWishes.Usual(Handbook, Frequency.FromHertz(60)).HighestFrequencies.Select(each => each.Hertz));
        Assert.Equal([5, 6], SizingWishes.Usual(Handbook, Frequency.FromHertz(6)).LowestFrequencies.Select(each => each.Hertz));
        Assert.Equal([300, 400], SizingWishes.Usual(Handbook, Frequency.FromHertz(300)).HighestFrequencies.Select(each => each.Hertz));
    }

    [Fact]
    public void A_machine_without_the_section_has_what_is_usual_at_its_base_frequency_and_one_made_in_code_has_none()
    {
        var press = Read(Bench).Press!;
        Assert.Equal([60, 90, 120], press.Sizing!.HighestFrequencies.Select(each => each.Hertz));
        Assert.Null(Studies.Presses.Observed().Sizing);
    }

    [Fact]
    public void Every_key_arrives_and_lists_rise_without_doubles()
    {
        var press = Read(Bench + """
            [sizing]
            powers = ["1 hp", "0.37 kW", "370 W"]
            poles = [6, 4, 6]
            efficiency_classes = ["IE4", "IE1"]
            ratings_table = false
            lowest_frequencies = ["9 Hz", "4 Hz"]
            highest_frequencies = ["80 Hz", "60 Hz"]
            boosts = [0.05, "2 %"]
            slower = "20 %"
            torque_margin = 1.5
            greatest_frame = "80 mm"
            greatest_mass = "12 kg"
            greatest_input = "8 A"
            budget = 250
            currency = "EUR"
            inverter_price = 120
            pulley_price = 40.5
            intermediate_price = 0

            [[motor_offer]]
            name = "whole"
            power = "0.55 kW"
            poles = 6
            speed = "1095 r/min"
            current = "2.6 A"
            power_factor = 0.71
            breakdown_torque = "230 %"
            locked_rotor_torque = "190 %"
            locked_rotor_current = "410 %"
            frame_size = "80 mm"
            shaft_diameter = "19 mm"
            mass = "11 kg"
            price = 165
            """).Press!;
        var wishes = press.Sizing!;
        Assert.Equal([370, 745.7], wishes.Powers.Select(each => Math.Round((double)each.Watts, 1)));
        Assert.Equal([4, 6], wishes.Poles);
        Assert.Equal(["IE1", "IE4"], wishes.EfficiencyClasses);
        Assert.Equal([4, 9], wishes.LowestFrequencies.Select(each => each.Hertz));
        Assert.Equal([60, 80], wishes.HighestFrequencies.Select(each => each.Hertz));
        Assert.Equal([0.02, 0.05], wishes.Boosts);
        Assert.True(wishes is { RatingsTable: false, SlowestShare: 0.8, TorqueMargin: 1.5, Budget: 250, Currency: "EUR" });
        Assert.True(wishes is { InverterPrice: 120, PulleyPrice: 40.5, IntermediatePrice: 0 });
        Assert.Equal((80.0, 12.0, 8.0), ((double)wishes.GreatestFrame!.Value.Millimeters, wishes.GreatestMass!.Value.Kilograms, wishes.GreatestInput!.Value.Amperes));
        // What is wished for stays with a machine that is set or driven in another way.
        Assert.Same(wishes, press.WithCurve(new StraightCurve(ElectricPotential.FromVolts(230), Frequency.FromHertz(60), ElectricPotential.Zero)).Sizing);
        CheckOffer(Assert.Single(wishes.Motors));
    }

    /// <summary>The row is a plate at the voltage, connection and frequency of the machine's motor: 230 V in delta at 60 Hz.</summary>
    private static void CheckOffer(MotorOffer offer)
    {
        Assert.Equal(("whole", 165.0, 80.0, 19.0, 11.0), (offer.Name, offer.Price, (double)offer.Frame!.Value.Millimeters, (double)offer.Shaft!.Value.Millimeters, offer.Mass!.Value.Kilograms));
        var figures = offer.Figures;
        Assert.Equal((230, Connection.Delta, 60), (figures.LineVoltage.Volts, figures.Connection, figures.Frequency.Hertz));
        Assert.Equal((550, 6, 1095, 2.6), ((double)figures.Power!.Value.Watts, figures.Poles, figures.Speed!.Value.RevolutionsPerMinute, figures.Current!.Value.Amperes));
        Assert.True(figures is { PowerFactor: 0.71, Efficiency: null, BreakdownTorque: 2.3, LockedRotorTorque: 1.9, LockedRotorCurrent: 4.1 });
        Assert.True(PlateFit.Of(figures, Handbook).RatedTorque.NewtonMeters is > 4.79 and < 4.80); // 550 W over 1095 r/min is 4.796 N·m
    }

    [Theory]
    [InlineData("powers = [\"5 W\"]", "sizing.powers", "10 W to 100 kW")]
    [InlineData("powers = [\"0.37\"]", "sizing.powers", "kW")]
    [InlineData("powers = []", "sizing.powers", "1 to 20 values")]
    [InlineData("poles = [3]", "sizing.poles", "2, 4, 6 or 8")]
    [InlineData("poles = [10]", "sizing.poles", "2 to 8")]
    [InlineData("efficiency_classes = [\"IE5\"]", "sizing.efficiency_classes", "IE4")]
    [InlineData("ratings_table = 1", "sizing.ratings_table", "true or false")]
    [InlineData("lowest_frequencies = [\"61 Hz\"]", "sizing.lowest_frequencies", "0.5 Hz to 60 Hz, the base_frequency")]
    [InlineData("lowest_frequencies = [\"0.2 Hz\"]", "sizing.lowest_frequencies", "0.5 Hz to 400 Hz")]
    [InlineData("highest_frequencies = [\"500 Hz\"]", "sizing.highest_frequencies", "0.5 Hz to 400 Hz")]
    [InlineData("highest_frequencies = [\"8 Hz\"]", "sizing.highest_frequencies", "10 Hz to 400 Hz")]
    [InlineData("boosts = [0.3]", "sizing.boosts", "0 to 0.2")]
    [InlineData("slower = \"90 %\"", "sizing.slower", "0 % to 80 %")]
    [InlineData("slower = 30", "sizing.slower", "0 % to 80 %")]
    [InlineData("torque_margin = 0.5", "sizing.torque_margin", "1 to 5")]
    [InlineData("greatest_frame = \"9 mm\"", "sizing.greatest_frame", "40 mm to 400 mm")]
    [InlineData("greatest_mass = \"0 kg\"", "sizing.greatest_mass", "0.5 kg to 500 kg")]
    [InlineData("greatest_input = \"900 A\"", "sizing.greatest_input", "0.1 A to 200 A")]
    [InlineData("budget = 0", "sizing.budget", "above 0")]
    [InlineData("budget = inf", "sizing.budget", "plain number")]
    [InlineData("currency = \"\"", "sizing.currency", "1 to 12 characters")]
    [InlineData("inverter_price = -1", "sizing.inverter_price", "0 to 1E+09")]
    [InlineData("pulley_price = -1", "sizing.pulley_price", "0 to 1E+09")]
    [InlineData("intermediate_price = \"70 EUR\"", "sizing.intermediate_price", "plain number")]
    [InlineData("budgt = 3", "sizing.budgt", "did you mean budget?")]
    public void A_wish_that_cannot_be_is_told_at_its_key_with_what_is_accepted(string line, string key, string accepted) =>
        AssertOnlyFault($"{Bench}[sizing]\n{line}\n", key, accepted);

    [Theory]
    [InlineData("power = \"0.55 kW\"", "", "motor_offer[1].power", "the key is missing")]
    [InlineData("poles = 6", "poles = 5", "motor_offer[1].poles", "2, 4, 6 or 8")]
    [InlineData("poles = 6", "poles = 6\nspeed = \"1200 r/min\"", "motor_offer[1].speed", "below 1200 r/min")]
    [InlineData("poles = 6", "poles = 6\ncurrent = \"0 A\"", "motor_offer[1].current", "above 0")]
    [InlineData("poles = 6", "poles = 6\ncurrent = \"1 A\"\npower_factor = 0.7", "motor_offer[1].power", "√3 V I cosφ")]
    [InlineData("poles = 6", "poles = 6\npower_factor = 1.2", "motor_offer[1].power_factor", "0.2 to 0.99")]
    [InlineData("poles = 6", "poles = 6\nefficiency = \"120 %\"", "motor_offer[1].efficiency", "0.1 to 0.99")]
    [InlineData("poles = 6", "poles = 6\nframe_size = \"80 cm\"", "motor_offer[1].frame_size", "40 mm to 400 mm")]
    [InlineData("poles = 6", "poles = 6\nshaft_diameter = \"1 mm\"", "motor_offer[1].shaft_diameter", "5 mm to 100 mm")]
    [InlineData("poles = 6", "poles = 6\nmass = \"0.1 kg\"", "motor_offer[1].mass", "0.5 kg to 500 kg")]
    [InlineData("poles = 6", "poles = 6\nprice = -3", "motor_offer[1].price", "0 to 1E+09")]
    [InlineData("poles = 6", "poles = 6\n" + Offer, "motor_offer[2].name", "names that differ")]
    [InlineData("poles = 6", "poles = 6\nvoltage = \"230 V\"", "motor_offer[1].voltage", "not known in [[motor_offer]]")]
    public void An_offer_that_cannot_be_is_told_at_its_row(string old, string given, string key, string accepted) =>
        AssertOnlyFault(Bench + Offer.Replace(old, given, StringComparison.Ordinal), key, accepted);

    [Fact]
    public void Parts_made_in_code_are_guarded_like_those_of_a_file()
    {
        var usual = SizingWishes.Usual(Handbook);
        var offer = new MotorOffer("one", new PlateFigures { LineVoltage = ElectricPotential.FromVolts(230), Connection = Connection.Delta, Frequency = Frequency.FromHertz(50) });
        Assert.Throws<PartException>(() => usual with { Powers = [] });
        Assert.Throws<PartException>(() => usual with { EfficiencyClasses = ["ie3"] });
        Assert.Throws<PartException>(() => usual with { SlowestShare = 0.1 });
        Assert.Throws<PartException>(() => usual with { Boosts = [double.NaN] });
        Assert.Throws<PartException>(() => usual with { Motors = [offer, offer] });
        Assert.Throws<PartException>(() => offer with { Price = double.NaN });
        Assert.Equal([offer], (usual with { Motors = [offer] }).Motors);
    }

    [Fact]
    public void The_offers_of_the_demo_machines_fit_and_raise_no_question() => Assert.All(
        Studies.Presses.Demo.SelectMany(press => press.Sizing!.Motors), offer =>
        {
            Assert.Empty(PlateQuestions.Of(offer.Figures, Handbook));
            Assert.Equal("", PlateFit.Of(offer.Figures, Handbook).Fits.Hazard.Verdict);
        });

    private static void AssertOnlyFault(string text, string key, string words)
    {
        var read = Read(text);
        Assert.Null(read.Press);
        var fault = Assert.Single(read.Faults.InOrder);
        Assert.Equal(key, fault.Key);
        Assert.True(fault.Line > Bench.Count(character => character == '\n'), "the fault stands below the bench's own lines");
        Assert.Contains(words, fault.ToString(), StringComparison.Ordinal);
    }

    private static MachineReading Read(string text) => MachineFile.Read(Encoding.UTF8.GetBytes(text), "bench.toml", Handbook);
}
