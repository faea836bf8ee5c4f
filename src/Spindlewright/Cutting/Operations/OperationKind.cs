namespace Spindlewright.Cutting.Operations;

/// <summary>What is done at the spindle.</summary>
public enum OperationKind
{
    /// <summary>A hole into the full, up to three diameters deep.</summary>
    Drilling,

    /// <summary>A hole deeper than three diameters, with clearing of chips.</summary>
    DeepDrilling,

    /// <summary>Opening out a pilot hole with a larger drill.</summary>
    OpeningOut,

    /// <summary>Reaming a drilled hole to size.</summary>
    Reaming,

    /// <summary>A conical seat.</summary>
    Countersinking,

    /// <summary>A flat seat around a hole; spot facing is a shallow one.</summary>
    Counterboring,

    /// <summary>A ring cut with a hole saw.</summary>
    HoleSawing,

    /// <summary>A thread, with reversal at depth.</summary>
    Tapping,

    /// <summary>Rough-cutting a seat with a large cutter of one or two teeth.</summary>
    SeatCutting,

    /// <summary>Turning a mounted assembly at a set speed; the accuracy of the speed is the point.</summary>
    SpinTesting,
}

/// <summary>How the tool is cooled.</summary>
public enum Cooling
{
    /// <summary>As the tables have it: a stream of fluid, or dry where the material is drilled dry.</summary>
    AsPrinted,

    /// <summary>Oil put on by hand.</summary>
    ByHand,
}

/// <summary>Words for operations.</summary>
public static class OperationWords
{
    private static readonly (OperationKind Kind, string Words)[] Table =
    [
        (OperationKind.Drilling, "drilling"),
        (OperationKind.DeepDrilling, "deep drilling"),
        (OperationKind.OpeningOut, "opening out"),
        (OperationKind.Reaming, "reaming"),
        (OperationKind.Countersinking, "countersinking"),
        (OperationKind.Counterboring, "counterboring"),
        (OperationKind.HoleSawing, "hole saw"),
        (OperationKind.Tapping, "tapping"),
        (OperationKind.SeatCutting, "seat cutting"),
        (OperationKind.SpinTesting, "spin testing"),
    ];

    /// <summary>All operations with their words, in the order of the enumeration.</summary>
    public static IReadOnlyList<(OperationKind Kind, string Words)> All => Table;

    /// <summary>The words of an operation.</summary>
    /// <param name="kind">The operation.</param>
    /// <returns>Lower-case words.</returns>
    public static string InWords(this OperationKind kind) => Table.Single(row => row.Kind == kind).Words;
}
