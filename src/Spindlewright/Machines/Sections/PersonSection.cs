using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Hands;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[person]</c>: the hands and the reaction to compare with.</summary>
internal static class PersonSection
{
    private static readonly KeySpec<double> Weak = Percentile("weak_percentile", 5, "weak", "percentile of the weak hand");
    private static readonly KeySpec<double> Strong = Percentile("strong_percentile", 95, "strong", "percentile of the strong hand");

    private static readonly KeySpec<Duration> Reaction = Key.WithDefault(
        "longest_reaction", Forms.Quantity(QuantityKinds.Duration), "The longest reaction time considered", "\"1.5 s\"",
        new(Sided.Same(Duration.FromSeconds(1.5)), Provenance.OwnChoice, "this-project", "a startled reaction with a stop that must be found")) with
    { Quantity = "longest reaction time" };

    internal static SectionSpec Spec { get; } =
        new("person", "The hands and the reaction that the study compares with", [Weak, Strong, Reaction]);

    /// <summary>The person of the section, or of the declared defaults where the section is left out.</summary>
    internal static Person? Read(Section? section) => section is null
        ? new(Weak.Default!.Value.Hazard, Strong.Default!.Value.Hazard, Reaction.Default!.Value.Hazard)
        : section.Make(() => new Person(
            section.Sided(Weak).Value.Hazard, section.Sided(Strong).Value.Hazard, section.Sided(Reaction).Value.Hazard));

    /// <summary>The defaults of the whole section, for a file that leaves it out.</summary>
    internal static IEnumerable<AppliedDefault> DefaultsOfAll() => Spec.Keys.Select(key => new AppliedDefault(
        $"person.{key.Name}", key.Meaning, key.DefaultText!.Capability, key.DefaultText.Hazard, key.DefaultText.Provenance,
        key.DefaultText.Source, key.DefaultText.Note));

    private static KeySpec<double> Percentile(string name, double value, string which, string quantity) => Key.WithDefault(
        name, Forms.Quantity(QuantityKinds.Number), $"Percentile of the {which} hand", QuantityWriter.Number(value),
        new Sourced<Sided<double>>(Sided.Same(value), Provenance.OwnChoice, "this-project", "5 and 95 bracket the sample")) with
    { Quantity = quantity };
}
