using static System.FormattableString;

namespace Spindlewright.Motors.Fitting;

/// <summary>One thing that a fit was asked to reach.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Unit">Its unit; "1" for a ratio.</param>
/// <param name="Wanted">The value wanted.</param>
/// <param name="Reached">What the fitted circuit gives.</param>
/// <param name="Fitted">True where the fit aims at it; false where it is only compared.</param>
public sealed record FitTarget(string Quantity, string Unit, double Wanted, double Reached, bool Fitted)
{
    /// <summary>Share of the wanted value within which a target counts as met, at least.</summary>
    public const double MetWithin = 0.005;

    /// <summary>
    /// Half of the last digit of the starting ratios as catalogues print them, 2.8 times; no circuit is held to more than
    /// is printed.
    /// </summary>
    public const double HalfLastDigitOfRatios = 0.05;

    /// <summary>True where the wanted value is a default, which gives way to what was given.</summary>
    public bool Assumed { get; init; }

    /// <summary>Reached over wanted, less 1.</summary>
    public double Residual => Reached / Wanted - 1;

    /// <summary>True within half a percent, or within half of the last digit that is printed where that is more.</summary>
    public bool Met => Math.Abs(Residual) <= Math.Max(MetWithin, HalfLastDigit / Math.Abs(Wanted));

    /// <summary>Half of the last digit to which plates and catalogues print the figure; zero where they print more.</summary>
    internal double HalfLastDigit { get; init; }

    internal string Words => Invariant(
        $"{Quantity} {Wanted:0.###}{UnitWords} (the nearest is {Reached:0.###}{UnitWords})");

    private string UnitWords => Unit == "1" ? "" : $" {Unit}";
}
