using Spindlewright.Foundations;

namespace Spindlewright.Machines;

/// <summary>A figure that the machine file did not give, as it was put in.</summary>
/// <param name="Key">Section and key, such as "motor.breakdown_torque".</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Capability">The value, with unit, that serves "will it drill".</param>
/// <param name="Hazard">The value, with unit, that serves "what could a hand meet".</param>
/// <param name="Provenance">How the pair reached us.</param>
/// <param name="Source">Reference key; empty for own choice.</param>
/// <param name="Reason">Why this pair.</param>
public sealed record AppliedDefault(
    string Key, string Meaning, string Capability, string Hazard, Provenance Provenance, string Source, string Reason);
