using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>A work material as the handbook method and the cutting-speed tables know it.</summary>
/// <param name="Id">Short name used in machine files, such as "mild-steel".</param>
/// <param name="Name">Name shown to people.</param>
/// <param name="TorqueFactor">Kd for torque; the same number in inch and SI forms of the method.</param>
/// <param name="ThrustFactor">Kd for thrust.</param>
/// <param name="SlowestSpeed">Low end of the cutting speed of high-speed steel drills.</param>
/// <param name="FastestSpeed">High end of the cutting speed of high-speed steel drills.</param>
public sealed record CuttingMaterial(
    string Id, string Name, Sourced<double> TorqueFactor, Sourced<double> ThrustFactor,
    Sourced<Speed> SlowestSpeed, Sourced<Speed> FastestSpeed)
{
    /// <summary>Kd from which on a material counts as hard: it gets the lower feed of the table. Own choice: steel of 200 HB.</summary>
    private const double HardFromKd = 24000;

    /// <summary>Specific cutting force in N/mm² that stands for one of Kd where a material has none: steel of 200 HB. Own choice.</summary>
    private const double ForceOverKd = 0.11;

    /// <summary>Materials that a hardness chooses among; empty where unknown.</summary>
    public string Family { get; init; } = "";

    /// <summary>Brinell hardness for which it stands; null where it is not listed by hardness.</summary>
    public Interval? HardnessHb { get; init; }

    /// <summary>Specific cutting force, by group or from Kd.</summary>
    public Sourced<SpecificForce> SpecificForce { get; init; } = FromKd(TorqueFactor);

    /// <summary>Power laws of torque and thrust with the factor for this material's strength or hardness; null for none.</summary>
    public Sourced<ScaledPowerLaw>? PowerLaw { get; init; }

    /// <summary>Cutting speed of reamers of high-speed steel; null where the tables have none.</summary>
    public Sourced<Speed>? ReamSpeed { get; init; }

    /// <summary>Specific cutting force of tapping; null where unknown.</summary>
    public Sourced<Pressure>? TappingForce { get; init; }

    /// <summary>Cutting speed of hole saws of high-speed steel; null where only the drilling speed is known.</summary>
    public Sourced<Speed>? HoleSawSpeed { get; init; }

    /// <summary>True for a material that gets the lower feed of the handbook's table.</summary>
    public bool IsHard => ThrustFactor.Value >= HardFromKd;

    /// <summary>Middle of the cutting-speed range.</summary>
    public Speed MiddleSpeed => (SlowestSpeed.Value + FastestSpeed.Value) / 2;

    /// <summary>Gathers a material of the handbook from its tables.</summary>
    /// <param name="row">The material.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The material with its factors and cutting speeds.</returns>
    public static CuttingMaterial Of(MaterialRow row, Handbook handbook)
    {
        var (factors, speeds) = (handbook.DrillingFactorOf(row), handbook.SpeedOf(row));
        var material = new CuttingMaterial(
            row.Id, row.Name, factors.Citation.On(factors.TorqueKd), factors.Citation.On(factors.ThrustKd),
            speeds.Citation.On(speeds.DrillLow), speeds.Citation.On(speeds.DrillHigh));
        var group = handbook.KienzleOf(row);
        return material with
        {
            Family = row.Family,
            HardnessHb = row is { HardnessLowHb: { } low, HardnessHighHb: { } high } ? Interval.Of(low, high) : null,
            SpecificForce = group?.Citation.On(new SpecificForce(group.Kc11, group.ExponentMc)) ?? material.SpecificForce,
            PowerLaw = ScaledPowerLaw.Of(row, group, handbook),
            ReamSpeed = speeds.Ream is { } ream ? speeds.Citation.On(ream) : null,
            TappingForce = row.TappingForce.Length > 0 ? TappingForceOf(handbook.CuttingFacts[row.TappingForce]) : null,
            HoleSawSpeed = row.HoleSawSpeed.Length > 0 ? HoleSawSpeedOf(row.HoleSawSpeed, handbook) : null,
        };
    }

    /// <summary>The material of a name, looked up in the handbook.</summary>
    /// <param name="id">Such as "mild-steel".</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The material.</returns>
    /// <exception cref="UnknownRowException">No such material; the message names the nearest.</exception>
    public static CuttingMaterial Of(string id, Handbook handbook) => Of(handbook.Materials[id], handbook);

    private static Sourced<SpecificForce> FromKd(Sourced<double> kd) => new(
        new(Pressure.FromNewtonsPerSquareMillimeter(ForceOverKd * kd.Value), 0), Provenance.OwnChoice, "this-project",
        "scaled from steel of 200 HB by the factor Kd: no constants of this material were found");

    private static Sourced<Pressure> TappingForceOf(FactRow fact) =>
        fact.Citation.On(Pressure.FromNewtonsPerSquareMillimeter(fact.Required().Value));

    /// <summary>Surface speed from the printed product of spindle speed and diameter in mild steel and the share of it.</summary>
    private static Sourced<Speed> HoleSawSpeedOf(string key, Handbook handbook)
    {
        const string MildSteel = "hole-saw-mild-steel";
        var (mild, own) = (handbook.CuttingFacts[MildSteel], handbook.CuttingFacts[key]);
        var inchesPerMinute = Math.PI * (mild.Range().Value.Least + mild.Range().Value.Most) / 2;
        var share = key == MildSteel ? 1 : own.Required().Value;
        return own.Citation.On(Speed.FromFeetPerMinute(inchesPerMinute / 12 * share));
    }
}
