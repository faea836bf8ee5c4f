using System.Diagnostics;
using System.Globalization;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors.Spice;

/// <summary>
/// The same circuits by a general circuit simulator (ngspice) from generated netlists. The netlists and what the
/// simulator printed for them are kept beside this file, so that the comparison also runs where it is absent.
/// </summary>
public class SpiceTests
{
    // The simulator prints six to seven digits.
    private const double Agreement = 1e-4;

    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Spindlewright.Tests", "Motors", "Spice");

    public static TheoryData<string, double, double> Cases => new()
    {
        { "chapman-7-3", 60, 0.022 }, { "chapman-7-3", 60, 1 }, { "hubert-5-2", 60, 0.0125 }, { "hubert-5-2", 12, 0.2 },
        { "msl-18kw", 50, 0.025 }, { "msl-18kw", 7, 1 }, { "krause-3hp", 120, 0.3 }, { "krause-3hp", 60, -0.05 },
        { "krause-3hp", 60, 1.95 }, { "krause-3hp-double-cage", 60, 1 }, { "krause-3hp-double-cage", 20, 0.4 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_netlist_kept_is_the_one_that_is_generated(string circuit, double hertz, double slip)
    {
        var path = Stored(circuit, hertz, slip, ".cir");
        var netlist = Netlist(circuit, hertz, slip);
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 }) File.WriteAllText(path, netlist);
        Assert.Equal(File.ReadAllText(path), netlist);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Current_and_torque_agree_with_what_the_simulator_printed(string circuit, double hertz, double slip) =>
        Compare(File.ReadAllText(Stored(circuit, hertz, slip, ".out")), circuit, hertz, slip);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Current_and_torque_agree_with_what_the_simulator_prints_now(string circuit, double hertz, double slip)
    {
        var printed = RunSimulator(Stored(circuit, hertz, slip, ".cir"));
        Tool.Need("ngspice", printed is not null, "it cannot be started; the captured results are compared instead");
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 })
            File.WriteAllText(Stored(circuit, hertz, slip, ".out"), printed);
        Compare(printed!, circuit, hertz, slip);
    }

    private static void Compare(string printed, string name, double hertz, double slip)
    {
        var circuit = Circuit(name);
        var phase = PhaseVolts(circuit, hertz);
        var point = CircuitSolver.Solve(circuit, Frequency.FromHertz(hertz), ElectricPotential.FromVolts(phase), slip);
        double Read(string what) => double.Parse(
            printed.Split('\n').Single(line => line.StartsWith(what + " = ", StringComparison.Ordinal)).Split('=')[1],
            CultureInfo.InvariantCulture);
        Assert.Equal(1, point.Current.Amperes / Read("stator_current"), Agreement);
        Assert.Equal(1, (double)point.Input.Watts / (3 * Read("phase_power")), Agreement);
        var gapW = CircuitElements.Of(circuit, hertz, slip).Where(IsRotorResistance)
            .Sum(element => 3 * Math.Pow(Read("i_" + element.Name.ToLowerInvariant()), 2) * element.Ohms);
        Assert.Equal(1, (double)point.AirGapPower.Watts / gapW, 2 * Agreement);
    }

    private static string Netlist(string name, double hertz, double slip)
    {
        var circuit = Circuit(name);
        var elements = CircuitElements.Of(circuit, hertz, slip);
        string Text(double value) => value.ToString("G12", CultureInfo.InvariantCulture);
        List<string> lines = [$"one phase of {name} at {Text(hertz)} Hz and slip {Text(slip)}", $"V1 1 0 DC 0 AC {Text(PhaseVolts(circuit, hertz))}"];
        foreach (var element in elements)
        {
            // A reactance is an inductance; every rotor branch carries an ammeter, a source of no volts.
            var (to, ammeter) = IsRotorResistance(element) ? (element.Name, $"V{element.Name} {element.Name} {element.To} 0") : (Text(element.To), "");
            lines.Add(element.IsReactance
                ? $"L{element.Name} {element.From} {to} {Text(element.Ohms / (2 * Math.PI * hertz))}"
                : $"R{element.Name} {element.From} {to} {Text(element.Ohms)}");
            if (ammeter.Length > 0) lines.Add(ammeter);
        }
        lines.AddRange([".control", "set numdgt=9", $"ac lin 1 {Text(hertz)} {Text(hertz)}", "let stator_current = mag(i(V1))", "print stator_current",
            $"let phase_power = real(-i(V1)) * {Text(PhaseVolts(circuit, hertz))}", "print phase_power"]);
        foreach (var element in elements.Where(IsRotorResistance))
            lines.AddRange([$"let i_{element.Name.ToLowerInvariant()} = mag(i(V{element.Name}))", $"print i_{element.Name.ToLowerInvariant()}"]);
        lines.AddRange([".endc", ".end"]);
        return string.Join('\n', lines) + "\n";
    }

    private static bool IsRotorResistance(CircuitElement element) => element.Name.StartsWith("R2", StringComparison.Ordinal);

    private static double PhaseVolts(EquivalentCircuit circuit, double hertz) =>
        circuit.RatedLineVoltage.Volts / Math.Sqrt(3) * Math.Min(1, hertz / circuit.RatedFrequency.Hertz);

    /// <summary>A published circuit, or one of them with a rotor of two cages (our own).</summary>
    private static EquivalentCircuit Circuit(string name)
    {
        const string DoubleCage = "-double-cage";
        var row = Handbook.FromEmbedded().MotorCircuits[name.Replace(DoubleCage, "", StringComparison.Ordinal)];
        return new(row.R1, row.X1, row.R2, row.X2, row.Xm!.Value, row.LineVoltage, row.Frequency, row.Poles)
        {
            CoreLossResistance = row.Rfe,
            Cage = name.EndsWith(DoubleCage, StringComparison.Ordinal) ? new RotorCage(2.5, 0.4) : RotorCage.SingleCage,
        };
    }

    private static string Stored(string circuit, double hertz, double slip, string ending) => Path.Combine(
        Folder, FormattableString.Invariant($"{circuit}-{hertz:0}-hz-slip-{slip:0.####}{ending}"));

    private static string? RunSimulator(string netlist)
    {
        try
        {
            var start = new ProcessStartInfo("ngspice") { RedirectStandardOutput = true, RedirectStandardError = true };
            start.ArgumentList.Add("-b");
            start.ArgumentList.Add(netlist);
            using var process = Process.Start(start)!;
            _ = process.StandardError.ReadToEndAsync();
            var printed = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return string.Join('\n', printed.Split('\n').Where(line => line.Contains(" = ", StringComparison.Ordinal))) + "\n";
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
