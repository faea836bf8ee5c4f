using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using Spindlewright.Motors.Heat;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[heat]</c>: what heats and cools the motor.</summary>
internal static class HeatSection
{
    private const string FromTable = "a pair of data/motor-facts.csv";

    private static readonly KeySpec<string> InsulationClass = Key.Optional(
        "insulation_class", Forms.Choice(("B", "B"), ("F", "F"), ("H", "H")), "Insulation class on the nameplate", "\"F\"", "F");

    private static readonly KeySpec<TemperatureDelta> Rise = Key.Optional(
        "rise_at_rated_load", Forms.Quantity(QuantityKinds.TemperatureRise), "Temperature rise of the winding at rated load", "\"80 K\"", FromTable);

    private static readonly KeySpec<Duration> TimeConstant = Key.Optional(
        "time_constant", Forms.Quantity(QuantityKinds.Duration), "Thermal time constant at rated speed", "\"15 min\"", FromTable);

    private static readonly KeySpec<double> Standstill = Key.Optional(
        "standstill_over_running", Forms.Quantity(QuantityKinds.Number), "Thermal time constant at standstill over that at rated speed", "2.5", FromTable);

    private static readonly KeySpec<Temperature> Air = Key.Optional(
        "air_temperature", Forms.Quantity(QuantityKinds.Temperature), "Air around the motor", "\"25 °C\"", FromTable);

    private static readonly KeySpec<Ratio> Waveform = Key.Optional(
        "waveform_loss", Forms.Quantity(QuantityKinds.Ratio), "Loss that the inverter's waveform adds, over the losses at rated load", "\"10 %\"", FromTable);

    private static readonly KeySpec<Ventilation> Fan = Key.Optional(
        "ventilation", Forms.Choice(("self", Ventilation.Self), ("separate", Ventilation.Separate)),
        "What moves the air: the motor's own fan, or one with its own motor", "\"self\"", "self");

    internal static SectionSpec Spec { get; } = new(
        "heat", "What heats and cools the motor", [InsulationClass, Rise, TimeConstant, Standstill, Air, Waveform, Fan]);

    /// <summary>The data of the section, each gap filled from the handbook and noted.</summary>
    internal static HeatingData? Read(Section? section, Handbook handbook, DefaultsTaken defaults)
    {
        var usual = HeatingData.Usual(handbook);
        if (section is null)
        {
            Note(usual, handbook, defaults, _ => false);
            return usual;
        }
        var read = section.Make(() => usual with
        {
            InsulationClass = section.Get(InsulationClass) ?? usual.InsulationClass,
            ClassLimit = HeatingData.LimitOf(section.Get(InsulationClass) ?? usual.InsulationClass, handbook),
            RatedRise = Given(section.Get(Rise), usual.RatedRise),
            RunningTimeConstant = Given(section.Get(TimeConstant), usual.RunningTimeConstant),
            StandstillOverRunning = Given(section.Get(Standstill), usual.StandstillOverRunning),
            Coolant = Given(section.Get(Air), usual.Coolant),
            WaveformLoss = Given(section.Get(Waveform)?.DecimalFractions, usual.WaveformLoss),
            Ventilation = section.Get(Fan) ?? usual.Ventilation,
        });
        if (read is not null) Note(usual, handbook, defaults, section.Has);
        return read;
    }

    private static Sided<T> Given<T>(T? own, Sided<T> usual) where T : struct => own is { } given ? Sided.Same(given) : usual;

    private static void Note(HeatingData usual, Handbook handbook, DefaultsTaken defaults, Func<KeySpec, bool> given)
    {
        void Add<T>(KeySpec key, string fact, Sided<T> pair, Func<T, string> write)
        {
            if (given(key)) return;
            var citation = handbook.MotorFacts[fact].Citation;
            defaults.Add(new(
                $"heat.{key.Name}", key.Meaning, write(pair.Capability), write(pair.Hazard), citation.Provenance,
                citation.Source, citation.Note));
        }

        Add(Rise, "rise-at-rated-load", usual.RatedRise, rise => QuantityWriter.Write(rise, QuantityKinds.TemperatureRise));
        Add(TimeConstant, "heating-time-constant", usual.RunningTimeConstant, time => QuantityWriter.Write(time, QuantityKinds.Duration));
        Add(Standstill, "standstill-over-running", usual.StandstillOverRunning, ratio => QuantityWriter.Number(ratio));
        Add(Air, "workshop-air", usual.Coolant, air => QuantityWriter.Write(air, QuantityKinds.Temperature));
        Add(Waveform, "inverter-waveform-loss", usual.WaveformLoss, share => FormattableString.Invariant($"{100 * share:0.#} %"));
        if (!given(InsulationClass))
            defaults.Add(new(
                "heat.insulation_class", InsulationClass.Meaning, usual.InsulationClass, usual.InsulationClass, Provenance.CommonPractice, "trade-practice",
                "small motors of today; an old one may be E or B"));
    }
}
