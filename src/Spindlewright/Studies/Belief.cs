namespace Spindlewright.Studies;

/// <summary>Whether a belief of the trade is borne out.</summary>
public enum Belief
{
    /// <summary>No.</summary>
    NotBorneOut,

    /// <summary>For some loads, or on one side only.</summary>
    InPart,

    /// <summary>Yes.</summary>
    BorneOut,
}

/// <summary>The one place of its words.</summary>
public static class Beliefs
{
    /// <summary>"borne out", "borne out in part" or "not borne out".</summary>
    /// <param name="belief">The verdict.</param>
    public static string InWords(this Belief belief) => belief switch
    {
        Belief.BorneOut => "borne out",
        Belief.InPart => "borne out in part",
        _ => "not borne out",
    };
}
