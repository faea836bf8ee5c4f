using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Tests.MachineText;

/// <summary>A small declaration that uses every form, for tests of the layer below the machine file.</summary>
internal static class BenchSpec
{
    public static readonly KeySpec<string> Title = Key.Required("title", Forms.Text(40), "Name of the bench", "\"bench\"");

    public static readonly KeySpec<Power> RatedPower = Key.Required(
        "rated_power", Forms.Quantity(QuantityKinds.Power), "Shaft power on the plate", "\"0.75 kW\"");

    public static readonly KeySpec<int> Poles = Key.Required("poles", Forms.WholeNumber(2, 12), "Number of poles", "4");

    public static readonly KeySpec<Ratio> Efficiency = Key.Optional(
        "efficiency", Forms.Quantity(QuantityKinds.Ratio), "Efficiency at rated load", "0.78", "left to the fit");

    public static readonly KeySpec<bool> Fan = Key.Optional("own_fan", Forms.TrueOrFalse, "Fan on the shaft", "true");

    public static readonly KeySpec<char> Connection = Key.Optional(
        "connection", Forms.Choice(("star", 'Y'), ("delta", 'D')), "Winding connection", "\"delta\"");

    public static readonly KeySpec<Torque> Friction = Key.WithDefault(
        "friction", Forms.Quantity(QuantityKinds.Torque), "Friction at the shaft", "\"0.05 N·m\"",
        new Sourced<Sided<Torque>>(
            new(Torque.FromNewtonMeters(0.2), Torque.FromNewtonMeters(0)), Provenance.OwnChoice, "", "wide on purpose"));

    public static readonly KeySpec<IReadOnlyList<Length>> Steps = Key.Required(
        "steps", Forms.List(Forms.Quantity(QuantityKinds.Length), 1, 6), "Pulley steps", "[\"60 mm\", \"90 mm\"]");

    public static readonly KeySpec<ElectricResistance> R1 = Key.Required(
        "r1", Forms.Quantity(QuantityKinds.Resistance), "Stator resistance", "\"9.5 ohm\"");

    public static readonly SectionSpec Circuit = new("circuit", "Equivalent circuit", [R1]);

    public static readonly SectionSpec Motor = new(
        "motor", "The motor", [RatedPower, Poles, Efficiency, Fan, Connection, Friction])
    { Required = true, Sections = [Circuit] };

    public static readonly SectionSpec Belt = new("belt", "A belt", [Steps]) { Repeats = true };

    public static readonly SectionSpec Root = new("", "A bench", [Title]) { Sections = [Motor, Belt] };

    public const string Sound = """
        title = "bench"

        [motor]
        rated_power = "0.75 kW"  # from the plate
        poles = 4
        efficiency = 0.78
        own_fan = true
        connection = "delta"

        [motor.circuit]
        r1 = "9.5 ohm"

        [[belt]]
        steps = ["60 mm", "2 1/2 in"]

        [[belt]]
        steps = ["90 mm"]

        """;

    public static Spindlewright.Machines.Text.MachineText Read(string text) =>
        MachineTextReader.Read(text, "bench.toml", Root);

    /// <summary>The sound text with one line replaced; the line is named by its beginning.</summary>
    public static string With(string line, string replacement)
    {
        var lines = Sound.Split('\n');
        var at = Array.FindIndex(lines, text => text.StartsWith(line, StringComparison.Ordinal));
        Assert.True(at >= 0);
        lines[at] = replacement;
        return string.Join('\n', lines);
    }
}
