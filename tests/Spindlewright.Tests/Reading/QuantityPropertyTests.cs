using System.Text;
using CsCheck;
using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>What holds for every kind and any text.</summary>
public class QuantityPropertyTests
{
    private static readonly Gen<double> Magnitudes =
        Gen.Select(Gen.Double[1, 10], Gen.Int[-6, 6], Gen.Bool, (mantissa, power, negative) =>
            (negative ? -mantissa : mantissa) * Math.Pow(10, power));

    public static TheoryData<string> KindNames => [.. QuantityKinds.All.Select(kind => kind.Name)];

    [Theory]
    [MemberData(nameof(KindNames))]
    public void What_is_written_exactly_reads_back_as_the_same_value(string name)
    {
        var kind = AnyKind.Named(name);
        Gen.Select(Magnitudes, Gen.Enum<MeasureSystem>()).Sample((value, system) =>
        {
            var back = kind.BaseValue(kind.WriteExactly(value, system));
            // A temperature is written from another zero, so 500 K stand for both zeros; the rest only rounds twice.
            var size = Math.Abs(value) + (name == "temperature" ? 500 : 0);
            return Math.Abs(back - value) <= size * 1e-14;
        }, iter: 2000, threads: 1);
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void What_is_displayed_reads_back_to_the_displayed_digits(string name)
    {
        var kind = AnyKind.Named(name);
        Gen.Select(Magnitudes, Gen.Enum<MeasureSystem>()).Sample((value, system) =>
        {
            var back = kind.BaseValue(kind.Write(value, system));
            var size = Math.Abs(value) + (name == "temperature" ? 500 : 0);
            // Half a unit of the fourth digit, at worst of a mantissa of 1.
            return Math.Abs(back - value) <= size * 0.000501;
        }, iter: 1000, threads: 1);
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Every_spelling_reads_back_as_its_unit_attached_and_set_apart(string name)
    {
        var kind = AnyKind.Named(name);
        foreach (var unit in kind.Kind.Units)
            foreach (var spelling in unit.Spellings)
            {
                var wanted = unit.ToBase(3);
                Assert.Equal(wanted, kind.BaseValue($"3 {spelling}"), wanted * 4e-15);
                // "31/min" is 31 per minute: a unit that begins with a digit can only be set apart.
                if (spelling.Length > 0 && char.IsDigit(spelling[0])) continue;
                Assert.Equal(wanted, kind.BaseValue($"3{spelling}"), wanted * 4e-15);
            }
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void A_refused_word_is_refused_and_answered_with_its_unit(string name)
    {
        var kind = AnyKind.Named(name);
        foreach (var unit in kind.Kind.Units)
            foreach (var word in unit.Mistaken)
                Assert.Contains($"write {unit.Symbol}", kind.Fault($"3 {word}")!.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hundred_thousand_random_texts_are_read_or_refused_and_never_crash()
    {
        var kinds = AnyKind.All.ToArray();
        var pieces = QuantityKinds.All.SelectMany(kind => kind.Units).SelectMany(unit => unit.Spellings)
            .Concat("0 1 9 12 1.5 ,5 . , / - + e E e5 ' _ nan inf 1/4 \u00A0 ½ 😀 \uD800 \0 \n ² × – ( )".Split(' '))
            .Append(" ").ToArray();
        var noise = Gen.Char.Array[0, 30].Select(characters => new string(characters));
        var likely = Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]).Array[0, 8].Select(string.Concat);
        Gen.Select(Gen.OneOf(noise, likely, likely), Gen.Int[0, kinds.Length - 1]).Sample((text, index) =>
        {
            var fault = kinds[index].Fault(text);
            if (fault is null) return double.IsFinite(kinds[index].BaseValue(text));
            return fault.Column >= 1 && fault.Column <= text.Length + 1 && fault.What.Length is > 0 and < 400
                && !fault.ToString().Any(char.IsControl);
        }, iter: 100_000, threads: 1);
    }

    [Fact]
    public void The_same_text_has_at_most_one_reading_whatever_spaces_surround_it()
    {
        var kinds = AnyKind.All.ToArray();
        var gen = Gen.Select(Gen.Double[0.001, 1000], Gen.Int[0, kinds.Length - 1], Gen.Int[0, 6]);
        gen.Sample((value, index, spaces) =>
        {
            var text = kinds[index].WriteExactly(value, MeasureSystem.Metric);
            var gap = new string(' ', spaces);
            return kinds[index].BaseValue(gap + text + gap) == kinds[index].BaseValue(text);
        }, iter: 2000, threads: 1);
    }
}
