using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Spindlewright.Notebooks.Parameters;

/// <summary>Writes a value, as typed by people, as the C# that takes the place of a parameter's own.</summary>
internal static partial class ParameterValue
{
    /// <summary>Writes the value.</summary>
    /// <param name="parameter">The parameter.</param>
    /// <param name="text">The value as typed.</param>
    /// <param name="quantities">Reads quantities.</param>
    /// <param name="fault">What is wrong and what is accepted, when null is returned.</param>
    /// <returns>C#; null when the text is not of the parameter's kind.</returns>
    internal static string? Write(Parameter parameter, string text, IQuantityReader? quantities, out string fault)
    {
        fault = $"\"{text}\" found; accepted: {parameter.Accepted()}.";
        return parameter.Kind switch
        {
            ParameterKind.Number => Number(parameter, text, ref fault),
            ParameterKind.WholeNumber => WholeNumber(parameter, text, ref fault),
            ParameterKind.TrueOrFalse => text is "true" or "false" ? text : null,
            ParameterKind.Text => Quote(text),
            ParameterKind.Quantity => Quantity(parameter, text, quantities, ref fault),
            _ => Refuse(out fault, $"its declaration is not a plain value ({parameter.Value.Split('\n')[0]}), so it cannot be set."),
        };
    }

    private static string? Number(Parameter parameter, string text, ref string fault)
    {
        if (text.Contains(','))
            return Refuse(out fault, $"\"{text}\" found; write the decimal mark as a point, {text.Replace(',', '.')}.");
        if (!Decimal().IsMatch(text) || !double.IsFinite(double.Parse(text, CultureInfo.InvariantCulture)))
            return null;
        return parameter.Type switch
        {
            "decimal" when !decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) => null,
            "decimal" => $"{text}m",
            "float" when !float.IsFinite(float.Parse(text, CultureInfo.InvariantCulture)) => null,
            "float" => $"{text}f",
            // A whole number in place of 50.0 must not turn "var" into a whole number.
            _ => text.AsSpan().ContainsAny('.', 'e', 'E') ? text : $"{text}.0",
        };
    }

    private static string? WholeNumber(Parameter parameter, string text, ref string fault)
    {
        if (Decimal().IsMatch(text) && !Whole().IsMatch(text))
            return Refuse(out fault,
                $"\"{text}\" found; accepted: {parameter.Accepted()} (the notebook declares {parameter.Type}).");
        if (!Whole().IsMatch(text))
            return null;
        var (least, most) = Range(parameter.Type);
        if (Int128.Parse(text, CultureInfo.InvariantCulture) is var value && (value < least || value > most))
            return Refuse(out fault, string.Create(CultureInfo.InvariantCulture,
                $"\"{text}\" found; accepted: {least} to {most} ({parameter.Type})."));
        return parameter.Type switch { "long" => $"{text}L", "ulong" => $"{text}UL", _ => text };
    }

    private static string? Quantity(Parameter parameter, string text, IQuantityReader? quantities, ref string fault)
    {
        if (quantities is null)
            return Refuse(out fault, "quantities cannot be set here.");
        var reading = quantities.Read(parameter.Type.Length == 0 ? null : parameter.Type, parameter.Example, text);
        if (reading.Expression is null)
            return Refuse(out fault, $"\"{text}\" found; {reading.Fault}");
        // Where the notebook reads the quantity from text, the text is replaced and the reading is left to it.
        return parameter.Example is null
            ? reading.Expression
            : $"{parameter.Value[..parameter.Value.IndexOf('(', StringComparison.Ordinal)]}({Quote(text)})";
    }

    private static (Int128 Least, Int128 Most) Range(string type) => type switch
    {
        "byte" => (byte.MinValue, byte.MaxValue),
        "sbyte" => (sbyte.MinValue, sbyte.MaxValue),
        "short" => (short.MinValue, short.MaxValue),
        "ushort" => (ushort.MinValue, ushort.MaxValue),
        "uint" or "nuint" => (uint.MinValue, uint.MaxValue),
        "long" => (long.MinValue, long.MaxValue),
        "ulong" => (ulong.MinValue, ulong.MaxValue),
        _ => (int.MinValue, int.MaxValue),
    };

    private static string Quote(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
            _ = c is '"' or '\\' ? quoted.Append('\\').Append(c)
                : char.IsControl(c) || c is '\u2028' or '\u2029' ? quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}")
                : quoted.Append(c);
        return quoted.Append('"').ToString();
    }

    private static string? Refuse(out string fault, string sentence)
    {
        fault = sentence;
        return null;
    }

    [GeneratedRegex(@"^[+-]?\d{1,400}(\.\d{1,400})?([eE][+-]?\d{1,4})?\z", RegexOptions.ECMAScript)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"^[+-]?\d{1,30}\z", RegexOptions.ECMAScript)]
    private static partial Regex Whole();
}
