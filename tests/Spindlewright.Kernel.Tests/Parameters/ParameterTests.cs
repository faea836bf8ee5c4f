using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;

namespace Spindlewright.Kernel.Tests.Parameters;

public sealed class ParameterTests
{
    private const string Declared = """
        // What this notebook starts from; double hidden = 1;
        double boost = 0; /* volts: int n = 2; */
        var f = 50.0;  // Hz
        int poles = 4;
        var belts = 2;
        bool braking = true;
        string machine = "bench \"A\"; int inText = 1;";
        var power = Power.FromKilowatts(0.75);
        Length arm = UnitsNet.Length.FromMillimeters(
            150);
        var torque = Read<Torque>("5 N m");
        var speed = Read("1500 r/min");
        const double margin = 1.5, other = 2;
        float ratio = 2f;
        decimal price = 1m;
        long count = 3;
        var steps = new[] { 1, 2, 3 };
        double Twice(double x) { double inside = x; return 2 * inside; }
        var twice = boost * 2;
        """;

    private static Notebook Make(string code = Declared) => NotebookText.Read(NotebookText.Of("1", $"#tag parameters\n{code}"));

    private static string Set(string name, string text, string code = Declared)
    {
        var notebook = Make(code);
        ParameterCell.Set(notebook, [new ParameterSetting(name, text)], new Reader());
        return notebook.Cells[1].Source;
    }

    [Fact]
    public void Simple_declarations_are_found_with_their_kinds()
    {
        var found = ParameterCell.Find(Make());
        Assert.Equal(
            """
            boost Number double, f Number double, poles WholeNumber int, belts WholeNumber int, braking TrueOrFalse bool,
            machine Text string, power Quantity Power, arm Quantity Length, torque Quantity Torque, speed Quantity ,
            margin Number double, other Number double, ratio Number float, price Number decimal, count WholeNumber long,
            steps Other var, twice Other var
            """.ReplaceLineEndings(" "),
            string.Join(", ", found.Select(each => $"{each.Name} {each.Kind} {each.Type}")));
    }

    [Theory]
    [InlineData("boost", "2.5", "double boost = 2.5; /* volts")]
    [InlineData("boost", "-3", "double boost = -3.0; /* volts")]
    [InlineData("f", "13", "var f = 13.0;  // Hz")]
    [InlineData("f", "1e2", "var f = 1e2;  // Hz")]
    [InlineData("poles", "6", "int poles = 6;")]
    [InlineData("braking", "false", "bool braking = false;")]
    [InlineData("machine", "a \"b\"\\c", "string machine = \"a \\\"b\\\"\\\\c\";")]
    [InlineData("power", "1.1 kW", "var power = UnitsNet.Power.FromKilowatts(1.1);")]
    [InlineData("torque", "7 N m", "var torque = Read<Torque>(\"7 N m\");")]
    [InlineData("speed", "900 r/min", "var speed = Read(\"900 r/min\");")]
    [InlineData("margin", "2", "const double margin = 2.0, other = 2;")]
    [InlineData("other", "3", "const double margin = 1.5, other = 3.0;")]
    [InlineData("ratio", "3", "float ratio = 3f;")]
    [InlineData("price", "3.10", "decimal price = 3.10m;")]
    [InlineData("count", "9999999999", "long count = 9999999999L;")]
    public void A_value_is_rewritten_where_it_stands(string name, string text, string line) =>
        Assert.Contains(line, Set(name, text));

    [Fact]
    public void Lines_keep_their_numbers()
    {
        var after = Set("arm", "200 mm").Split('\n');
        Assert.Equal(Declared.Split('\n').Length, after.Length);
        Assert.Equal(Array.FindIndex(Declared.Split('\n'), line => line.StartsWith("var torque")),
            Array.FindIndex(after, line => line.StartsWith("var torque")));
    }

    [Theory]
    [InlineData("bost", "1", "there is no parameter \"bost\"; known: boost (a number such as 1.5), f (a number")]
    [InlineData("boost", "lots", "\"lots\" found; accepted: a number such as 1.5")]
    [InlineData("boost", "1,5", "write the decimal mark as a point, 1.5")]
    [InlineData("boost", "1e400", "\"1e400\" found; accepted: a number")]
    [InlineData("boost", "NaN", "\"NaN\" found; accepted: a number")]
    [InlineData("boost", "1; System.Environment.Exit(1)", "accepted: a number")]
    [InlineData("poles", "4.5", "accepted: a whole number such as 3 (the notebook declares int)")]
    [InlineData("poles", "9999999999", "accepted: -2147483648 to 2147483647 (int)")]
    [InlineData("braking", "yes", "accepted: true or false")]
    [InlineData("power", "1.1", "a Power such as 1.1 kW")]
    [InlineData("steps", "1", "its declaration is not a plain value (new[] { 1, 2, 3 }), so it cannot be set")]
    public void What_does_not_fit_is_refused_with_what_does(string name, string text, string part)
    {
        var notebook = Make();
        var before = notebook.ToBytes();
        var fault = Assert.Throws<ParameterException>(
            () => ParameterCell.Set(notebook, [new ParameterSetting(name, text)], new Reader()));
        Assert.Contains(part, fault.Message);
        Assert.Equal(before, notebook.ToBytes());
    }

    [Fact]
    public void All_faults_are_told_at_once_and_a_notebook_without_parameters_says_so()
    {
        List<ParameterSetting> settings = [new("a", "1"), new("poles", "x"), new("poles", "2"), new("boost", "1")];
        Assert.Equal(2, Assert.Throws<ParameterException>(() => ParameterCell.Set(Make(), settings)).Faults.Count);
        var plain = NotebookText.Read(NotebookText.Of("1"));
        Assert.Contains("no code cell is tagged \"parameters\"",
            Assert.Throws<ParameterException>(() => ParameterCell.Set(plain, settings)).Message);
    }

    [Theory]
    [InlineData("boost")]
    [InlineData("=3")]
    [InlineData("1a=3")]
    [InlineData("a b=3")]
    public void A_setting_needs_a_name_and_an_equals_sign(string text) =>
        Assert.Contains("accepted: NAME=VALUE", Assert.Throws<ParameterException>(() => ParameterSetting.Parse(text)).Message);

    [Fact]
    public void A_setting_may_hold_equals_signs() =>
        Assert.Equal(new ParameterSetting("a", "b=c"), ParameterSetting.Parse("a = b=c"));

    [Fact]
    public void The_scanner_takes_any_text()
    {
        var random = new Random(5);
        for (var round = 0; round < 20_000; round++)
        {
            var code = Declared.ToCharArray();
            for (var count = random.Next(6); count > 0; count--)
                code[random.Next(code.Length)] = "\"'$@{}();=/*\n\\#<>"[random.Next(17)];
            var text = new string(code)[..random.Next(code.Length)];
            foreach (var each in DeclarationScanner.Scan(text))
                Assert.Equal(each.Value, text.Substring(each.Start, each.Value.Length));
        }
    }

    /// <summary>Stands in for the library's reader: a number, a space, a unit.</summary>
    private sealed class Reader : IQuantityReader
    {
        public QuantityReading Read(string? quantity, string? example, string text) =>
            text.Split(' ') is [var number, "kW"] ? QuantityReading.As($"UnitsNet.Power.FromKilowatts({number})")
            : text.Split(' ') is [var length, "mm"] ? QuantityReading.As($"UnitsNet.Length.FromMillimeters({length})")
            : text.Contains(' ') && example is not null ? QuantityReading.As("unused")
            : QuantityReading.Refused($"accepted: a {quantity} such as 1.1 kW.");
    }
}
