using System.Globalization;
using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Tests.Motors.Plates;

/// <summary>A rating of the grid and what its fit reaches.</summary>
internal sealed record FittedRating(double Kilowatts, int Poles, string Class, double Hertz, Side Side, NameplateFit Fit);

/// <summary>Every usual rating of small motors, fitted from little more than its size, poles and efficiency class.</summary>
internal static class FitGrid
{
    private static readonly double[] Kilowatts = [0.12, 0.18, 0.25, 0.37, 0.55, 0.75, 1.1, 1.5, 2.2];
    private static readonly int[] Poles = [2, 4, 6, 8];
    private static readonly string[] Classes = ["IE1", "IE2", "IE3"];
    private static readonly double[] Hertz = [50, 60];
    private static readonly Side[] Sides = [Side.Capability, Side.Hazard];

    internal static IReadOnlyList<FittedRating> All(Handbook handbook) =>
    [
        .. from kilowatts in Kilowatts
           from poles in Poles
           from name in Classes
           where handbook.MotorEfficiency.Limits.Any(row => row.EfficiencyClass == name && row.Poles == poles && row.RatedPower.Kilowatts.Equals((decimal)kilowatts))
           from hertz in Hertz
           from side in Sides
           select Fit(kilowatts, poles, name, hertz, side, handbook),
    ];

    private static FittedRating Fit(double kilowatts, int poles, string name, double hertz, Side side, Handbook handbook)
    {
        var power = Power.FromKilowatts(kilowatts);
        var figures = new PlateFigures
        {
            Power = power,
            Poles = poles,
            LineVoltage = ElectricPotential.FromVolts(hertz == 50 ? 400 : 460),
            Connection = Connection.Star,
            Frequency = Frequency.FromHertz(hertz),
            Efficiency = handbook.MotorEfficiency.At(name, poles, power).Value,
            BreakdownTorque = handbook.MotorDefaults.On("breakdown torque", side, poles, power).Value,
            LockedRotorTorque = handbook.MotorDefaults.On("locked-rotor torque", side, poles, power).Value,
        };
        return new(kilowatts, poles, name, hertz, side, NameplateFit.Of(PlateCompletion.Of(figures, handbook).Nameplates.On(side), FitSettings.Usual(side, 2.5)));
    }

    internal static string Page(IReadOnlyList<FittedRating> ratings)
    {
        var page = new StringBuilder();
        var met = ratings.Count(rating => rating.Fit.Verdict.Length == 0);
        string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
        page.Append("# Fits over the grid of ratings\n\n");
        page.Append("Written by a test; renew it with `SPINDLEWRIGHT_WRITE_DOCS=1 dotnet test --project tests/Spindlewright.Tests`.\n\n");
        page.Append(Text($"Every rating from 0.12 to 2.2 kW with 2, 4, 6 and 8 poles, at the limits of the efficiency classes that are tabled, 50 Hz (400 V) and 60 Hz (460 V): {ratings.Count} fits. Given: power, poles, efficiency (limit of the class at 50 Hz), and breakdown and locked-rotor torque, on the capability side the least of the standard, on the hazard side upper catalogue practice. Defaults: speed and power factor, which may move. {met} fits meet all that is given within half a percent (breakdown and locked-rotor torque: within half of their last printed digit, 0.05); the others name what no circuit of the form can meet.\n\n"));
        page.Append("Residuals are reached over wanted, less one. The rated point (power, current, power factor at rated speed) is met exactly wherever it is given; where speed and power factor are defaults the column shows how far speed moved.\n\n");
        page.Append("| kW | poles | class | Hz | side | cage | speed moved | breakdown wanted | residual | locked-rotor wanted | residual |\n");
        page.Append("| ---: | ---: | --- | ---: | --- | --- | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (var rating in ratings)
        {
            var (breakdown, locked) = (Find(rating, "breakdown"), Find(rating, "locked-rotor torque"));
            var cage = rating.Fit.Circuit.Cage.IsDouble ? "double" : "single";
            var moved = rating.Fit.Circuit.Rotational.At / rating.Fit.Nameplate.Speed - 1;
            page.Append(Text($"| {rating.Kilowatts} | {rating.Poles} | {rating.Class} | {rating.Hertz} | {(rating.Side == Side.Capability ? "capability" : "hazard")} | {cage} | {Percent(moved)} | {breakdown.Wanted:0.0#} | {Percent(breakdown.Residual)} | {locked.Wanted:0.0#} | {Percent(locked.Residual)} |\n"));
        }
        return page.ToString();
    }

    private static FitTarget Find(FittedRating rating, string start) =>
        rating.Fit.Targets.First(target => target.Quantity.StartsWith(start, StringComparison.Ordinal));

    /// <summary>To a tenth of a percent, coarse enough for the last bits of a search to stay unseen.</summary>
    private static string Percent(double ratio) =>
        (Math.Round(100 * ratio, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
