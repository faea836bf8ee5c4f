using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>One thing drawn in a figure: a role and a shape, never a colour.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Curve), "curve")]
[JsonDerivedType(typeof(Points), "points")]
[JsonDerivedType(typeof(Band), "band")]
[JsonDerivedType(typeof(RangeBar), "range-bar")]
[JsonDerivedType(typeof(Rule), "rule")]
[JsonDerivedType(typeof(TextMark), "text")]
public abstract record Mark
{
    private protected Mark(Role role, Side? side, string? series, string? label, string? legend)
    {
        if (!Enum.IsDefined(role))
            throw new PartException("mark", "role", $"{role}", "one of the roles");
        (Role, Side, Series, Label) = (role, side, series ?? "", label ?? "");
        Legend = string.IsNullOrEmpty(legend) ? role.InWords(side) : legend;
    }

    /// <summary>What the mark stands for.</summary>
    public Role Role { get; }

    /// <summary>Which side of a paired default it uses; null where there is one value only.</summary>
    public Side? Side { get; }

    /// <summary>What it belongs to, such as "belt position 3"; may be empty.</summary>
    public string Series { get; }

    /// <summary>What is written beside it in the drawing; may be empty.</summary>
    public string Label { get; }

    /// <summary>What its legend entry says; marks that say the same share an entry.</summary>
    public string Legend { get; }

    /// <summary>Series and legend in one, such as "belt position 3, bound".</summary>
    [JsonIgnore]
    public string FullName => Series.Length == 0 ? Legend : $"{Series}, {Legend}";

    /// <summary>All points the axes must reach; NaN where there is a gap or no say.</summary>
    [JsonIgnore]
    internal abstract IEnumerable<(double X, double Y)> Extent { get; }

    private protected string Part => $"{GetType().Name.ToLowerInvariant()} '{FullName}'";
}
