namespace Spindlewright.Foundations.Reading;

/// <summary>A number as typed.</summary>
/// <param name="Value">Its value, finite.</param>
/// <param name="IsFraction">True for fractions and mixed numbers.</param>
/// <param name="End">Index after its last character.</param>
internal readonly record struct TypedNumber(double Value, bool IsFraction, int End);

/// <summary>What is wrong with a number.</summary>
/// <param name="At">Index of the first wrong character.</param>
/// <param name="What">What is wrong and what to write instead.</param>
internal readonly record struct NumberFault(int At, string What);
