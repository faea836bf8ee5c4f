using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>What the owner wants on the sheets for the workshop wall.</summary>
/// <param name="PlateWidth">Width of the speed plate that is stuck on the machine, 60 mm to 260 mm.</param>
/// <param name="PlateHeight">Its height, 40 mm to 180 mm.</param>
/// <param name="Materials">Short names of the materials; empty for those of the owner's work and experience.</param>
/// <param name="Threads">Threads; empty for the coarse metric ones up to M12 and those of the owner's work.</param>
/// <param name="Drills">Drill diameters of the card, 1.6 mm to 76 mm; empty for usual ones.</param>
public sealed record SheetWishes(
    Length PlateWidth, Length PlateHeight, IReadOnlyList<string> Materials, IReadOnlyList<string> Threads,
    IReadOnlyList<Length> Drills)
{
    private const string Part = "sheets";

    /// <summary>What is printed where nothing is wished for; own choice.</summary>
    public static SheetWishes Usual { get; } =
        new(Length.FromMillimeters(140), Length.FromMillimeters(90), [], [], []);

    /// <summary>Width of the speed plate.</summary>
    public Length PlateWidth { get; } = Guard.Within(
        PlateWidth, Length.FromMillimeters(60), Length.FromMillimeters(260), Part, "width of the plate", "it is cut out of a sheet of A4");

    /// <summary>Height of the speed plate.</summary>
    public Length PlateHeight { get; } = Guard.Within(
        PlateHeight, Length.FromMillimeters(40), Length.FromMillimeters(180), Part, "height of the plate", "it is cut out of a sheet of A4");

    /// <summary>Drill diameters of the card, smallest first.</summary>
    public IReadOnlyList<Length> Drills { get; } =
        [.. Drills.Select(each => Guard.Within(
            each, Length.FromMillimeters(1.6), Length.FromMillimeters(76), Part, "drill", "the span of the handbook method")).Distinct().Order()];
}
