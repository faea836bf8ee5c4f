using Spindlewright.Foundations.Tables;
using static System.FormattableString;

namespace Spindlewright.Motors;

/// <summary>The facts of <c>motor-facts</c> that go with a frame.</summary>
internal static class FrameFacts
{
    /// <summary>Shaft heights of small motors, mm, smallest first (IEC 60072-1, from memory).</summary>
    internal static IReadOnlyList<int> ShaftHeightsMm { get; } = [56, 63, 71, 80, 90, 100, 112, 132];

    /// <summary>Diameters of their shafts, mm (IEC 60072-1, from memory).</summary>
    private static readonly int[] ShaftDiametersMm = [9, 11, 14, 19, 24, 28, 38];

    /// <summary>Usual outputs of a frame, a range in kW; null where the frame is not usual for the poles.</summary>
    internal static FactRow? Outputs(Handbook handbook, double frameMm, int poles) => Find(handbook, Invariant($"frame-{frameMm:0}-{poles}-pole"));

    /// <summary>The smallest frame that has a shaft, mm; null for a shaft that no frame has.</summary>
    internal static FactRow? SmallestOfShaft(Handbook handbook, double shaftMm) => Find(handbook, Invariant($"shaft-{shaftMm:0.#}-mm"));

    /// <summary>Mass of a motor in a frame, a range in kg.</summary>
    internal static FactRow Mass(Handbook handbook, double frameMm) => handbook.MotorFacts[Invariant($"mass-frame-{frameMm:0}")];

    /// <summary>The shaft of a frame, mm, with the row that gives it.</summary>
    /// <remarks>A row names the smallest frame of its shaft: 112 has the shaft of 100.</remarks>
    internal static (int DiameterMm, FactRow Row) ShaftOf(Handbook handbook, double frameMm) => ShaftDiametersMm
        .Select(diameter => (diameter, Row: SmallestOfShaft(handbook, diameter)!)).Last(each => each.Row.Required().Value <= frameMm);

    private static FactRow? Find(Handbook handbook, string key) => handbook.MotorFacts.TryFind(key, out var row) ? row : null;
}
