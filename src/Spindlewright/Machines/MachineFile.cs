using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Sections;
using Spindlewright.Machines.Text;

namespace Spindlewright.Machines;

/// <summary>A machine file that was read.</summary>
/// <param name="Press">The machine; null where there are faults.</param>
/// <param name="Faults">All faults, each with its place.</param>
public sealed record MachineReading(DrillPress? Press, FaultList Faults);

/// <summary>Turns a machine file into a machine, or into all of its faults at once.</summary>
public static class MachineFile
{
    private static readonly KeySpec<string> Title =
        Key.Required("title", Forms.Text(120), "What the owner calls the machine", "\"Boatyard fittings bench\"");

    private static readonly KeySpec<DisplayUnits> Units = Key.Optional(
        "display_units", Forms.Choice(("metric", DisplayUnits.Metric), ("inch", DisplayUnits.Inch)), "How quantities are shown", "\"metric\"", "metric");

    /// <summary>Every section and key that a machine file may hold.</summary>
    public static SectionSpec Spec { get; } = new("", "A machine", [Title, Units])
    {
        Sections =
        [
            SupplySection.Spec, InverterSection.Spec, MotorSection.Spec, HeatSection.Spec, AsFoundSection.Spec, BeltSection.Spec,
            SpindleSection.Spec, BeltingSection.Spec, QuillSection.Spec, MaterialSection.Spec, ExperienceSection.Spec, WorkSection.Spec,
            DaySection.Spec, PersonSection.Spec, ContactSection.Spec, LooseWorkSection.Spec, SpeedLimitSection.Spec, StallTestSection.Spec,
            ControlsSection.Spec, UncertainSection.Spec, SheetsSection.Spec, SizingSection.Spec, MotorOfferSection.Spec,
        ],
    };

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file as its user named it.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The machine, or the faults.</returns>
    public static MachineReading ReadFile(string path, Handbook handbook) =>
        Assemble(MachineTextReader.ReadFile(path, Spec), handbook);

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="bytes">UTF-8 text.</param>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The machine, or the faults.</returns>
    public static MachineReading Read(ReadOnlyMemory<byte> bytes, string file, Handbook handbook) =>
        Assemble(MachineTextReader.Read(bytes, file, Spec), handbook);

    private static MachineReading Assemble(MachineText text, Handbook handbook)
    {
        if (!text.SyntaxIsClean) return new(null, text.Faults);
        var (root, defaults) = (text.Root, new DefaultsTaken());
        Check(root);
        var supply = root.Only(SupplySection.Spec) is { } socket ? SupplySection.Read(socket, defaults) : null;
        var motorSection = root.Only(MotorSection.Spec);
        var motor = motorSection is null ? null : MotorSection.Read(motorSection, handbook, defaults);
        var inverter = supply is not null && motor is not null && root.Only(InverterSection.Spec) is { } unit
            ? InverterSection.Read(unit, supply, motor, defaults)
            : null;
        var belts = root.Each(BeltSection.Spec).Select(BeltSection.Read).OfType<BeltPosition>().ToList();
        var spindle = root.Only(SpindleSection.Spec) is { } spindleSection ? SpindleSection.Read(spindleSection) : null;
        var belting = BeltingSection.Read(root.Only(BeltingSection.Spec), handbook, belts);
        var quill = QuillSection.Read(root.Only(QuillSection.Spec), defaults);
        var own = root.Each(MaterialSection.Spec).Select(section => MaterialSection.Read(section, handbook)).OfType<CuttingMaterial>().ToList();
        string[] known = [.. own.Select(material => material.Id), .. handbook.Materials.Keys];
        var experience = root.Each(ExperienceSection.Spec).Select(section => ExperienceSection.Read(section, known)).OfType<Experience>().ToList();
        var work = root.Each(WorkSection.Spec).Select(section => WorkSection.Read(section, handbook, own)).OfType<WorkItem>().ToList();
        var found = root.Only(AsFoundSection.Spec) is { } before ? AsFoundSection.Read(before, belts) : null;
        var heating = HeatSection.Read(root.Only(HeatSection.Spec), handbook, defaults);
        var day = inverter is null ? null : DaySection.Read(root.Only(DaySection.Spec), inverter.Curve.BaseFrequency, defaults);
        var person = PersonSection.Read(root.Only(PersonSection.Spec));
        var sheets = SheetsSection.Read(root.Only(SheetsSection.Spec), known, handbook);
        var offers = motor is null ? [] : MotorOfferSection.Read(root.Each(MotorOfferSection.Spec), motorSection!, handbook);
        var sizing = SizingSection.Read(root.Only(SizingSection.Spec), offers, inverter?.Curve.BaseFrequency, handbook);
        if (root.Only(PersonSection.Spec) is null)
            foreach (var each in PersonSection.DefaultsOfAll()) defaults.Add(each);
        var contact = motor is null ? null : ContactSection.Read(root, motor, defaults);
        var uncertainty = UncertainSection.Read(root.Only(UncertainSection.Spec));
        if (text.Faults.Count > 0) return new(null, text.Faults);
        // What only the whole shows is reported at the motor's connection, where it is most often mended.
        var press = motorSection!.Make(() => new DrillPress(root.Get(Title)!, supply!, inverter!, motor!, belts, spindle!)
        {
            Work = work,
            OwnMaterials = own,
            Experience = experience,
            Quill = quill!,
            Belting = belting,
            AsFound = found,
            Person = person!,
            Contact = contact,
            Heating = heating,
            Day = day,
            Uncertainty = uncertainty!,
            Sheets = sheets,
            Sizing = sizing,
            DisplayUnits = root.Get(Units) ?? DisplayUnits.Metric,
            Defaults = defaults.With(text, MeaningOf),
        });
        return new(press, text.Faults);
    }

    private static void Check(Section root)
    {
        if (root.Only(InverterSection.Spec) is { } inverter) InverterSection.Check(inverter);
        if (root.Only(MotorSection.Spec) is { } motor) MotorSection.Check(motor);
        foreach (var belt in root.Each(BeltSection.Spec)) BeltSection.Check(belt);
        if (root.Only(AsFoundSection.Spec) is { } found)
            foreach (var belt in AsFoundSection.BeltsOf(found)) BeltSection.Check(belt);
    }

    /// <summary>What a key such as "belt[2].efficiency" means, from its declaration.</summary>
    private static string MeaningOf(string path)
    {
        var parts = path.Split('.').Select(part => part.Split('[')[0]).ToList();
        var section = Spec;
        foreach (var name in parts.SkipLast(1)) section = section.Sections.First(each => each.Name == name);
        return section.Keys.First(key => key.Name == parts[^1]).Meaning;
    }
}
