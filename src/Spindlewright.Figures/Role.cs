using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>What a mark stands for. A figure names roles; <see cref="Looks.Look"/> decides how each is drawn.</summary>
/// <remarks>The order is the order of the legend: the bound comes first.</remarks>
public enum Role
{
    /// <summary>The no-credit bound; always the most prominent line of a torque figure.</summary>
    Bound,

    /// <summary>As modelled on the set V/f curve, with drops.</summary>
    AsModelled,

    /// <summary>With the resistance drop of the stator made good.</summary>
    IdealBoost,

    /// <summary>At the inverter's current limit; never credited.</summary>
    CurrentLimited,

    /// <summary>The envelope that heating allows.</summary>
    Continuous,

    /// <summary>The short-time envelope.</summary>
    ShortTime,

    /// <summary>The envelope at standstill.</summary>
    LockedRotor,

    /// <summary>What a cut asks for.</summary>
    Demand,

    /// <summary>A limit of a part: speed of a chuck, current of an inverter, slip of a belt.</summary>
    Limit,

    /// <summary>A figure of a hand, an arm or a reaction.</summary>
    Hand,

    /// <summary>Something that is set: a V/f curve, a range of frequency.</summary>
    SetCurve,

    /// <summary>The machine as found, before the conversion; a reference.</summary>
    AsFound,

    /// <summary>A reading.</summary>
    Measured,

    /// <summary>The owner's own experience.</summary>
    Experience,

    /// <summary>A handbook's line or band.</summary>
    Handbook,

    /// <summary>An interval of uncertainty.</summary>
    Uncertainty,

    /// <summary>A remark on the drawing; not data.</summary>
    Annotation,
}

/// <summary>The words in which roles are printed.</summary>
public static class RoleWords
{
    /// <summary>The words of a role, for legends and sentences.</summary>
    /// <param name="role">The role.</param>
    /// <param name="side">The side of a paired default that was used; null where there is one value only.</param>
    /// <returns>Lower-case words, such as "as modelled, hazard side".</returns>
    public static string InWords(this Role role, Side? side = null)
    {
        var words = role switch
        {
            Role.Bound => "bound",
            Role.AsModelled => "as modelled",
            Role.IdealBoost => "ideal boost",
            Role.CurrentLimited => "at the current limit, not credited",
            Role.Continuous => "continuous",
            Role.ShortTime => "short-time",
            Role.LockedRotor => "locked-rotor",
            Role.Demand => "asked for by the cut",
            Role.Limit => "limit",
            Role.Hand => "hand",
            Role.SetCurve => "as set",
            Role.AsFound => "as found",
            Role.Measured => "measured",
            Role.Experience => "own experience",
            Role.Handbook => "handbook",
            Role.Uncertainty => "interval",
            Role.Annotation => "remark",
            _ => throw new ArgumentOutOfRangeException(nameof(role), role, "no such role"),
        };
        return side switch
        {
            Side.Capability => words + ", capability side",
            Side.Hazard => words + ", hazard side",
            _ => words,
        };
    }
}
