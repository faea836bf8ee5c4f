namespace Spindlewright.Foundations.Reading;

/// <summary>Why a text is no value of the wanted kind.</summary>
/// <param name="Column">Where in the text, counted from 1 in characters as a reader counts them.</param>
/// <param name="Found">What stands there, made printable.</param>
/// <param name="What">What is wrong with it and what to write instead, one clause without a full stop.</param>
/// <param name="Accepted">What is accepted, such as "a power in W, kW, hp, PS".</param>
public sealed record QuantityFault(int Column, string Found, string What, string Accepted)
{
    /// <summary>What is wrong, and what is accepted.</summary>
    public string Message => $"{What}; accepted: {Accepted}";

    /// <inheritdoc/>
    public override string ToString() => $"column {Column}: {Message}";
}

/// <summary>Raised when a text is no value of the wanted kind.</summary>
public sealed class QuantityFormatException : FormatException
{
    /// <summary>Makes the error.</summary>
    /// <param name="text">The text that was read.</param>
    /// <param name="fault">What is wrong with it.</param>
    public QuantityFormatException(string? text, QuantityFault fault)
        : base($"'{Printable.Of(text)}' cannot be read: column {fault.Column}: {fault.Message}.") => Fault = fault;

    /// <summary>What is wrong, where, and what is accepted.</summary>
    public QuantityFault Fault { get; }
}
