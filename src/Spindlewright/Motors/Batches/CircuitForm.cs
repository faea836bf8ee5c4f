namespace Spindlewright.Motors.Batches;

/// <summary>Which form of the circuit a batch solves.</summary>
public enum CircuitForm
{
    /// <summary>Constant parameters: the magnetising reactance stands as at rated flux, whatever the saturation given.</summary>
    ConstantParameters,

    /// <summary>Saturated: the magnetising reactance falls with air-gap flux, as the circuit's saturation says.</summary>
    Saturated,
}
