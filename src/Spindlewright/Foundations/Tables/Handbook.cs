namespace Spindlewright.Foundations.Tables;

/// <summary>All sourced tables: what a study may look up. Immutable, and handed to whoever needs it.</summary>
/// <remarks>
/// To add the user's rows or to try another value, make a changed copy:
/// <c>handbook with { Materials = handbook.Materials.With(row) }</c>.
/// </remarks>
public sealed record Handbook
{
    private Handbook(Func<string, string> read, References references)
    {
        References = references;
        MotorCircuits = Load(MotorCircuitRow.Definition);
        LoadTests = Load(LoadTestRow.Definition);
        Trajectory = Load(TrajectoryRow.Definition);
        MotorDefaults = new(Load(MotorDefaultRow.Definition));
        MotorEfficiency = new(Load(EfficiencyRow.Definition), Load(EfficiencyCurveRow.Definition));
        MotorDerating = new(Load(DeratingRow.Definition));
        FullLoadCurrents = Load(FullLoadCurrentRow.Definition);
        MotorFacts = Load(FactRow.Define("motor-facts"));
        SupplyFacts = Load(FactRow.Define("supply-facts"));
        BeltFacts = Load(FactRow.Define("belt-facts"));
        CuttingFacts = Load(FactRow.Define("cutting-facts"));
        Drilling = new(
            Load(DrillingFactors.ChiselDefinition), Load(DrillingFactors.FeedMetricDefinition),
            Load(DrillingFactors.FeedInchDefinition), Load(DrillingFactors.DiameterMetricDefinition),
            Load(DrillingFactors.DiameterInchDefinition));
        DrillingMaterials = Load(DrillingMaterialRow.Definition);
        Wear = Load(WearRow.Definition);
        MachineEfficiency = Load(MachineEfficiencyRow.Definition);
        CuttingSpeeds = Load(CuttingSpeedRow.Definition);
        DrillFeeds = Load(DrillFeedRow.Definition);
        Kienzle = Load(KienzleRow.Definition);
        Materials = Load(MaterialRow.Definition);
        PowerLaws = Load(PowerLawRow.Definition);
        ToolMaterials = Load(ToolMaterialRow.Definition);
        DrillPoints = Load(DrillPointRow.Definition);
        DrillSizes = Load(DrillSizeRow.Definition);
        Threads = Load(ThreadRow.Definition);
        ClearanceHoles = Load(ClearanceHoleRow.Definition);
        BeltProfiles = Load(BeltProfileRow.Definition);
        PulleyDiameters = Load(PulleyDiameterRow.Definition);
        Hand = Load(HandRow.Definition);
        Injury = Load(InjuryRow.Definition);
        Requirements = Load(RequirementRow.Definition);

        Table<TRow> Load<TRow>(TableDefinition<TRow> definition) where TRow : ITableRow =>
            TableReader.Read(definition, read(definition.File), references);
    }

    /// <summary>The bibliography that every row cites.</summary>
    public References References { get; }

    /// <summary>Equivalent circuits of published examples.</summary>
    public Table<MotorCircuitRow> MotorCircuits { get; init; }

    /// <summary>Measured load tests.</summary>
    public Table<LoadTestRow> LoadTests { get; init; }

    /// <summary>Reference trajectory of a start under volts per hertz.</summary>
    public Table<TrajectoryRow> Trajectory { get; init; }

    /// <summary>Defaults as capability and hazard pairs.</summary>
    public MotorDefaults MotorDefaults { get; init; }

    /// <summary>Efficiency limits by class, poles and power.</summary>
    public MotorEfficiency MotorEfficiency { get; init; }

    /// <summary>Continuous torque of a self-ventilated motor against frequency.</summary>
    public MotorDerating MotorDerating { get; init; }

    /// <summary>Average full-load currents.</summary>
    public Table<FullLoadCurrentRow> FullLoadCurrents { get; init; }

    /// <summary>Facts about small motors: temperature classes, tolerances, preferred outputs.</summary>
    public Table<FactRow> MotorFacts { get; init; }

    /// <summary>Facts about supply, rectifier and protection.</summary>
    public Table<FactRow> SupplyFacts { get; init; }

    /// <summary>Facts about V-belts.</summary>
    public Table<FactRow> BeltFacts { get; init; }

    /// <summary>Rules for tapping, reaming, countersinking, hole saws and tools.</summary>
    public Table<FactRow> CuttingFacts { get; init; }

    /// <summary>Factors of the handbook method for drilling.</summary>
    public DrillingFactors Drilling { get; init; }

    /// <summary>Work material factors Kd.</summary>
    public Table<DrillingMaterialRow> DrillingMaterials { get; init; }

    /// <summary>Tool wear factors W.</summary>
    public Table<WearRow> Wear { get; init; }

    /// <summary>Machine tool efficiencies E.</summary>
    public Table<MachineEfficiencyRow> MachineEfficiency { get; init; }

    /// <summary>Cutting speeds of HSS drills and reamers.</summary>
    public Table<CuttingSpeedRow> CuttingSpeeds { get; init; }

    /// <summary>Feeds of HSS drills by diameter.</summary>
    public Table<DrillFeedRow> DrillFeeds { get; init; }

    /// <summary>Specific cutting force by material group.</summary>
    public Table<KienzleRow> Kienzle { get; init; }

    /// <summary>Workshop materials and the rows that stand for them.</summary>
    public Table<MaterialRow> Materials { get; init; }

    /// <summary>Drilling torque and thrust as power laws.</summary>
    public Table<PowerLawRow> PowerLaws { get; init; }

    /// <summary>Tool materials.</summary>
    public Table<ToolMaterialRow> ToolMaterials { get; init; }

    /// <summary>Points of drills.</summary>
    public Table<DrillPointRow> DrillPoints { get; init; }

    /// <summary>Drill sizes: metric, fractional, number and letter.</summary>
    public Table<DrillSizeRow> DrillSizes { get; init; }

    /// <summary>Threads and the drills before tapping.</summary>
    public Table<ThreadRow> Threads { get; init; }

    /// <summary>Clearance holes for bolts.</summary>
    public Table<ClearanceHoleRow> ClearanceHoles { get; init; }

    /// <summary>Sections of V-belts.</summary>
    public Table<BeltProfileRow> BeltProfiles { get; init; }

    /// <summary>Datum diameters in which pulleys are sold.</summary>
    public Table<PulleyDiameterRow> PulleyDiameters { get; init; }

    /// <summary>Hand and wrist strength, friction, reaction time.</summary>
    public Table<HandRow> Hand { get; init; }

    /// <summary>Published figures that computed ones are compared with.</summary>
    public Table<InjuryRow> Injury { get; init; }

    /// <summary>Requirements and laws in words.</summary>
    public Table<RequirementRow> Requirements { get; init; }

    /// <summary>Loads the library's own tables.</summary>
    /// <returns>The handbook.</returns>
    public static Handbook FromEmbedded() => From(EmbeddedTables.Read, References.FromEmbedded());

    /// <summary>Loads tables from texts given by file name.</summary>
    /// <param name="read">Gives the text of a file such as "data/kienzle.csv".</param>
    /// <param name="references">The bibliography that the rows cite.</param>
    /// <returns>The handbook.</returns>
    /// <exception cref="TableException">A table does not hold what it must.</exception>
    public static Handbook From(Func<string, string> read, References references) => new(read, references);

    /// <summary>The cutting speed of a workshop material.</summary>
    /// <param name="material">Row of <see cref="Materials"/>.</param>
    /// <returns>The row of the cutting speeds that stands for it.</returns>
    public CuttingSpeedRow SpeedOf(MaterialRow material) => CuttingSpeeds[material.SpeedKey];

    /// <summary>The work material factors of a workshop material.</summary>
    /// <param name="material">Row of <see cref="Materials"/>.</param>
    /// <returns>The row of the factors that stands for it.</returns>
    public DrillingMaterialRow DrillingFactorOf(MaterialRow material) => DrillingMaterials[material.DrillingMaterial];

    /// <summary>The power laws of a workshop material.</summary>
    /// <param name="material">Row of <see cref="Materials"/>.</param>
    /// <returns>The row that stands for it; null where none does.</returns>
    public PowerLawRow? PowerLawOf(MaterialRow material) =>
        material.PowerLaw.Length > 0 ? PowerLaws[material.PowerLaw] : null;

    /// <summary>The material of a family that is listed at a hardness.</summary>
    /// <param name="family">Such as "iron, grey".</param>
    /// <param name="hardnessHb">Brinell hardness.</param>
    /// <returns>The first material of the family whose span holds the hardness.</returns>
    /// <exception cref="UnknownRowException">No such family.</exception>
    /// <exception cref="PartException">The hardness is off the family's span; the message names the nearest material.</exception>
    public MaterialRow MaterialAt(string family, double hardnessHb)
    {
        var rows = Materials.Where(row => row.Family == family).ToList();
        if (rows.Count == 0)
            throw new UnknownRowException("families of materials", family, [.. Materials.Select(row => row.Family).Distinct()]);
        if (rows.FirstOrDefault(row => row.Covers(hardnessHb)) is { } found) return found;
        var listed = rows.Where(row => row.HardnessLowHb is not null).ToList();
        if (listed.Count == 0)
            throw new PartException("material", "hardness", $"given for {family}", "none", "this family is not listed by hardness");
        double Distance(MaterialRow row) => Math.Max(row.HardnessLowHb!.Value - hardnessHb, hardnessHb - row.HardnessHighHb!.Value);
        var nearest = listed.MinBy(Distance)!;
        throw new PartException(
            "material", $"hardness of {family}", FormattableString.Invariant($"{hardnessHb:0.#} HB"),
            string.Join(", ", listed.Select(row => FormattableString.Invariant($"{row.HardnessLowHb:0} to {row.HardnessHighHb:0} HB ({row.Id})"))),
            $"the nearest known material is {nearest.Id}");
    }

    /// <summary>The specific cutting force of a workshop material.</summary>
    /// <param name="material">Row of <see cref="Materials"/>.</param>
    /// <returns>The row that stands for it; null where none does.</returns>
    public KienzleRow? KienzleOf(MaterialRow material) =>
        material.KienzleGroup is { } group ? Kienzle[FormattableString.Invariant($"{group}")] : null;
}
