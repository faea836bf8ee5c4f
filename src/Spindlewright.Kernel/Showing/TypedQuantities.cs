using Spindlewright.Foundations.Reading;
using Spindlewright.Notebooks.Parameters;
using UnitsNet;

namespace Spindlewright.Kernel.Showing;

/// <summary>Reads the quantities that people type for a notebook's parameters, by the library's own strict reader.</summary>
internal sealed class TypedQuantities : IQuantityReader
{
    private static readonly Dictionary<string, (string Kind, Func<string, QuantityFault?> Fault)> Known = new(StringComparer.Ordinal)
    {
        [nameof(Power)] = (nameof(QuantityKinds.Power), Try(QuantityKinds.Power)),
        [nameof(Energy)] = (nameof(QuantityKinds.Energy), Try(QuantityKinds.Energy)),
        [nameof(ElectricPotential)] = (nameof(QuantityKinds.Voltage), Try(QuantityKinds.Voltage)),
        [nameof(ElectricCurrent)] = (nameof(QuantityKinds.Current), Try(QuantityKinds.Current)),
        [nameof(Frequency)] = (nameof(QuantityKinds.Frequency), Try(QuantityKinds.Frequency)),
        [nameof(ElectricResistance)] = (nameof(QuantityKinds.Resistance), Try(QuantityKinds.Resistance)),
        [nameof(RotationalSpeed)] = (nameof(QuantityKinds.RotationalSpeed), Try(QuantityKinds.RotationalSpeed)),
        [nameof(Torque)] = (nameof(QuantityKinds.Torque), Try(QuantityKinds.Torque)),
        [nameof(MassMomentOfInertia)] = (nameof(QuantityKinds.MomentOfInertia), Try(QuantityKinds.MomentOfInertia)),
        [nameof(Force)] = (nameof(QuantityKinds.Force), Try(QuantityKinds.Force)),
        [nameof(Mass)] = (nameof(QuantityKinds.Mass), Try(QuantityKinds.Mass)),
        [nameof(Length)] = (nameof(QuantityKinds.Length), Try(QuantityKinds.Length)),
        [nameof(Angle)] = (nameof(QuantityKinds.Angle), Try(QuantityKinds.Angle)),
        [nameof(Speed)] = (nameof(QuantityKinds.Speed), Try(QuantityKinds.Speed)),
        [nameof(Temperature)] = (nameof(QuantityKinds.Temperature), Try(QuantityKinds.Temperature)),
        [nameof(Duration)] = (nameof(QuantityKinds.Duration), Try(QuantityKinds.Duration)),
        [nameof(Ratio)] = (nameof(QuantityKinds.Ratio), Try(QuantityKinds.Ratio)),
    };

    /// <inheritdoc/>
    public QuantityReading Read(string? quantity, string? example, string text)
    {
        // Where the notebook reads a text, the kind is the one that reads the text that stands there.
        var name = quantity ?? Known.FirstOrDefault(each => example is not null && each.Value.Fault(example) is null).Key;
        if (name is null || !Known.TryGetValue(name.Split('.')[^1], out var known))
            return QuantityReading.Refused($"a {quantity ?? "quantity"} cannot be set from outside");
        if (known.Fault(text) is { } fault)
            return QuantityReading.Refused($"{fault.What}; accepted: {fault.Accepted}");
        var quoted = text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);
        return QuantityReading.As(
            $"{typeof(QuantityReader).FullName}.Read(\"{quoted}\", {typeof(QuantityKinds).FullName}.{known.Kind})");
    }

    private static Func<string, QuantityFault?> Try<T>(QuantityKind<T> kind) where T : struct =>
        text => QuantityReader.TryRead(text, kind, out _, out var fault) ? null : fault;
}
