using Spindlewright.Foundations.Tables;
using Spindlewright.Motors.Heat;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of heating: what a motor may give for a time, and conductors that keep their heat.</summary>
internal sealed class HeatEvaluator : ICheckEvaluator
{
    private const string ShortTime = "short-time power";
    private const string Intermittent = "intermittent power";
    private const string Adiabatic = "adiabatic factor";

    public string Area => "heat";

    public IReadOnlyCollection<string> Quantities { get; } = [ShortTime, Intermittent, Adiabatic];

    public Evaluation Evaluate(Check check, Handbook handbook) => check.Quantity == Adiabatic
        ? new(InUnit.Plain(FactorOf(check.Inputs), check.Unit), check.Unit, check.Method)
        : new(PowerOf(check) / UnitOf(check.Unit), check.Unit, check.Method);

    private static double PowerOf(Check check)
    {
        var inputs = check.Inputs;
        var (running, on) = (Duration.FromMinutes(inputs.Number("running_min")), Duration.FromMinutes(inputs.Number("on_min")));
        var ratio = inputs.NumberOrNull("standstill_min") is { } standstill ? standstill / running.Minutes : 1;
        // Loss, rise and speed cancel out; any will do.
        var body = new ThermalBody(
            Power.FromWatts(1000), TemperatureDelta.FromKelvins(80), running, ratio,
            RotationalSpeed.FromRevolutionsPerMinute(1450));
        var alpha = inputs.Number("constant_over_variable_loss");
        var times = check.Quantity == ShortTime
            ? LoadRating.ShortTime(body, on, alpha)
            : LoadRating.Intermittent(body, on, Duration.FromMinutes(inputs.Number("off_min")), alpha);
        return times * inputs.Number("rated_power_kw") * 1000;
    }

    private static double FactorOf(CheckInputs inputs) => WindingAlone.AdiabaticFactor(
        Temperature.FromDegreesCelsius(inputs.Number("from_degc")), Temperature.FromDegreesCelsius(inputs.Number("to_degc")));

    private static double UnitOf(string unit) => unit switch
    {
        "W" => 1,
        "kW" => 1000,
        _ => throw new ArgumentException($"'{unit}' is no unit of power here; accepted: W, kW."),
    };
}
