using Spindlewright.Foundations;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>A motor on offer: a row of the owner's own.</summary>
/// <param name="Name">What the owner calls it.</param>
/// <param name="Figures">Its plate at the voltage, connection and frequency of the machine's motor.</param>
/// <remarks>Dimensions and price that are null were not given; a usual build stands in for the first, and the last is not compared.</remarks>
public sealed record MotorOffer(string Name, PlateFigures Figures)
{
    private const string Part = "motor offer";

    /// <summary>Shaft height, foot to shaft axis, 40 mm to 400 mm; null where not given.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public Length? Frame
    {
        get;
        init => field = value is { } height
            ? Guard.Within(height, Length.FromMillimeters(40), Length.FromMillimeters(400), Part, "frame size", "shaft height, foot to shaft axis")
            : null;
    }

    /// <summary>Shaft diameter, 5 mm to 100 mm; null where not given.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public Length? Shaft
    {
        get;
        init => field = value is { } diameter
            ? Guard.Within(diameter, Length.FromMillimeters(5), Length.FromMillimeters(100), Part, "shaft diameter")
            : null;
    }

    /// <summary>Mass, 0.5 kg to 500 kg; null where not given.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public Mass? Mass
    {
        get;
        init => field = value is { } mass
            ? Guard.Within(mass, UnitsNet.Mass.FromKilograms(0.5), UnitsNet.Mass.FromKilograms(500), Part, "mass")
            : null;
    }

    /// <summary>Price in the owner's currency, 0 or more; null where not given.</summary>
    /// <exception cref="PartException">Negative, NaN or out of range.</exception>
    public double? Price { get; init => field = SizingWishes.Price(value, Part, "price"); }
}
