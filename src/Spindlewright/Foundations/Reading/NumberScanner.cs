using System.Globalization;

namespace Spindlewright.Foundations.Reading;

/// <summary>Reads the number at the head of a text: decimal point only, no thousands marks, fractions allowed.</summary>
/// <remarks>
/// One reading or none: whatever two countries read as different numbers is refused. The grammar is
/// <c>[+-] (digits [. digits] [e [+-] digits] | [digits (space | -)] digits / digits)</c>, the leading digits of a
/// decimal being optional (.250 is usual on inch drawings).
/// </remarks>
internal ref struct NumberScanner(string text, int start)
{
    private const double Largest = 1e15;
    private const double Smallest = 1e-15;
    private const string ThousandsMarks = "'’_\u00A0\u202F\u2009 ";

    private int _at = start;
    private NumberFault? _fault;

    /// <summary>Reads one number.</summary>
    /// <param name="text">The text.</param>
    /// <param name="start">Index of its first character that is no space.</param>
    /// <param name="number">The number.</param>
    /// <param name="fault">What is wrong; null where the number was read.</param>
    /// <returns>True where a number was read.</returns>
    public static bool TryScan(string text, int start, out TypedNumber number, out NumberFault? fault)
    {
        var scanner = new NumberScanner(text, start);
        var read = scanner.Number();
        (number, fault) = (read ?? default, scanner._fault);
        return read is not null;
    }

    private TypedNumber? Number()
    {
        var sign = Sign();
        var first = _at;
        var whole = Digits();
        if (whole.Length > 0 && MixedPart() is { } mixed)
        {
            if (mixed < 0) return null;
            var value = (mixed == 1 ? 0 : Whole(whole)) + (mixed == 1 ? Fraction(whole) : Fraction(Digits()));
            return Finish(sign * value, isFraction: true, first);
        }
        if (!Decimals(first, whole)) return null;
        var significant = text.AsSpan(first, _at - first).ContainsAnyInRange('1', '9');
        if (!Exponent(first) || !Follows(first)) return null;
        var number = double.Parse(text.AsSpan(first, _at - first), NumberStyles.Float, CultureInfo.InvariantCulture);
        return number == 0 && significant ? OutOfRange(first) : Finish(sign * number, isFraction: false, first);
    }

    /// <summary>Passes over the point and its digits; refuses a number without digits and a point without decimals.</summary>
    private bool Decimals(int first, ReadOnlySpan<char> whole)
    {
        if (Peek() == '.' && IsDigit(_at + 1))
        {
            _at++;
            Digits();
        }
        else if (whole.Length == 0) Refuse(first, NoNumber(first));
        else if (Peek() == '.' && CharAt(_at + 1) != '.') Refuse(_at, $"a point stands without decimals; write {whole}");
        return _fault is null;
    }

    private int Sign()
    {
        var sign = Peek();
        if (sign is '+' or '-' or '\u2212') _at++;
        return sign is '-' or '\u2212' ? -1 : 1;
    }

    /// <summary>1 at the slash of a fraction, 2 after the space of a mixed number, below 0 on a fault, else null.</summary>
    private int? MixedPart()
    {
        if (Peek() == '/' && IsDigit(_at + 1)) return 1;
        if (!IsMixedJoint(_at)) return null;
        var numerator = _at + 1;
        while (IsDigit(numerator)) numerator++;
        if (numerator == _at + 1 || CharAt(numerator) != '/' || !IsDigit(numerator + 1)) return null;
        _at++;
        return 2;
    }

    private readonly bool IsMixedJoint(int at) => CharAt(at) is ' ' or '-' or '\u00A0' or '\u202F' && IsDigit(at + 1);

    private double Fraction(ReadOnlySpan<char> numerator)
    {
        var slash = _at++;
        var denominator = Whole(Digits());
        if (denominator != 0) return Whole(numerator) / denominator;
        Refuse(slash + 1, "a fraction has a lower number above 0");
        return double.NaN;
    }

    /// <summary>Passes over an exponent; an 'e' that no digit follows belongs to the unit.</summary>
    private bool Exponent(int first)
    {
        if (Peek() is not ('e' or 'E')) return true;
        var digits = CharAt(_at + 1) is '+' or '-' ? _at + 2 : _at + 1;
        if (!IsDigit(digits)) return true;
        _at = digits;
        Digits();
        if (Peek() is not ('.' or '/')) return true;
        Refuse(_at, $"an exponent is a whole number, as in {text[first.._at]}");
        return false;
    }

    /// <summary>Refuses what would make another number of the digits just read.</summary>
    private bool Follows(int first)
    {
        var next = Peek();
        var what = next switch
        {
            ',' => WithoutMarks(first),
            '.' => CharAt(_at + 1) == '.' ? "one value is wanted, not a range" : WithoutMarks(first),
            '-' or '–' or '—' when IsDigit(_at + 1) => "one value is wanted, not a range",
            '/' when IsDigit(_at + 1) => "a fraction is made of whole numbers, as in 7/8 in",
            '×' or 'x' or '*' when CharAt(_at + 1) is '1' or ' ' => "a power of ten is written with e, as in 1.5e3",
            _ when ThousandsMarks.Contains(next, StringComparison.Ordinal) && NumberGoesOn() => WithoutMarks(first),
            _ when char.GetUnicodeCategory(next) == UnicodeCategory.OtherNumber && next is not ('²' or '³' or '¹') =>
                "a fraction is written with a slash, as in 1 1/4 in",
            _ when char.IsDigit(next) => "digits are 0 to 9",
            _ => null,
        };
        if (what is null) return true;
        Refuse(_at, what);
        return false;
    }

    /// <summary>True where digits follow a gap and are no unit such as 1/min.</summary>
    private readonly bool NumberGoesOn()
    {
        var digits = _at + 1;
        while (IsDigit(digits)) digits++;
        if (digits == _at + 1) return false;
        return !(digits == _at + 2 && CharAt(_at + 1) == '1' && CharAt(digits) is '/' or ' ' && text.AsSpan(digits).TrimStart().StartsWith("/"));
    }

    /// <summary>"write 1.5" for 1,5; "write 1500" for 1 500; "write 1234.5" for 1.234,5.</summary>
    private readonly string WithoutMarks(int first)
    {
        var end = _at;
        while (IsDigit(end) || (IsMark(CharAt(end)) && IsDigit(end + 1))) end++;
        var run = text[first..end];
        var marks = run.Where(character => !char.IsAsciiDigit(character)).ToList();
        if (marks.Count == 0) return "a decimal mark is a point, as in 1.5";
        var digits = string.Concat(run.Where(char.IsAsciiDigit));
        var last = run.LastIndexOf(marks[^1]);
        var tail = run[(last + 1)..];
        var asDecimal = $"{string.Concat(run[..last].Where(char.IsAsciiDigit))}.{tail}";
        var oneSort = marks.Distinct().Count() == 1;
        if (marks[^1] is not (',' or '.')) return $"thousands are not set apart; write {digits}";
        if (!oneSort) return $"thousands are not set apart and the decimal mark is a point; write {asDecimal}";
        if (marks.Count > 1) return $"thousands are not set apart; write {digits}";
        return tail.Length == 3
            ? $"the decimal mark is a point and thousands are not set apart; write {asDecimal} or {digits}"
            : $"the decimal mark is a point; write {asDecimal}";
    }

    private static bool IsMark(char character) =>
        character is ',' or '.' || ThousandsMarks.Contains(character, StringComparison.Ordinal);

    private readonly string NoNumber(int first)
    {
        var rest = text[first..];
        if (rest.Length > 0 && (rest[0] == '∞' || StartsWithWord(rest, "nan", "inf", "infinity")))
            return "a finite number is wanted";
        if (rest.Length > 1 && rest[0] == ',' && char.IsAsciiDigit(rest[1]))
            return $"the decimal mark is a point; write 0.{string.Concat(rest.Skip(1).TakeWhile(char.IsAsciiDigit))}";
        if (rest.Length > 0 && char.GetUnicodeCategory(rest[0]) == UnicodeCategory.OtherNumber)
            return "a fraction is written with a slash, as in 1/2 in";
        if (rest.Length > 0 && char.IsDigit(rest[0])) return "digits are 0 to 9";
        return rest.Length == 0 ? "a number is missing" : $"a number comes first, and '{Printable.Of(rest)}' is none";
    }

    private static bool StartsWithWord(string text, params ReadOnlySpan<string> words)
    {
        var letters = string.Concat(text.TakeWhile(char.IsAsciiLetter));
        foreach (var word in words)
            if (letters.Equals(word, StringComparison.OrdinalIgnoreCase))
                return true;
        return false;
    }

    private TypedNumber? Finish(double value, bool isFraction, int first)
    {
        if (_fault is not null) return null;
        if (isFraction && !Follows(first)) return null;
        var size = Math.Abs(value);
        return double.IsFinite(value) && (size == 0 || size is >= Smallest and <= Largest)
            ? new TypedNumber(value, isFraction, _at)
            : OutOfRange(first);
    }

    private TypedNumber? OutOfRange(int first) =>
        Refuse(first, "the number is too large or too small; 1e-15 to 1e15 are read");

    private TypedNumber? Refuse(int at, string what)
    {
        _fault ??= new NumberFault(at, what);
        return null;
    }

    private ReadOnlySpan<char> Digits()
    {
        var first = _at;
        while (IsDigit(_at)) _at++;
        return text.AsSpan(first, _at - first);
    }

    private static double Whole(ReadOnlySpan<char> digits) =>
        digits.IsEmpty ? 0 : double.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    private readonly char Peek() => CharAt(_at);

    private readonly char CharAt(int at) => at < text.Length ? text[at] : '\0';

    private readonly bool IsDigit(int at) => char.IsAsciiDigit(CharAt(at));
}
