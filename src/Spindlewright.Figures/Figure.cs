using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>A figure as a record: what is shown, not how.</summary>
/// <remarks>
/// Writers turn it into SVG, an interactive chart or words. Not to be confused with a picture: nothing here knows a
/// colour or a millimetre. It holds one rule of the house: a modelled torque never stands without its bound.
/// </remarks>
public sealed record Figure
{
    private static readonly ImmutableArray<string> TorqueUnits =
        ["N m", "Nm", "N·m", "mN m", "cN m", "kN m", "lbf in", "lbf ft", "lbf·in", "lbf·ft", "ozf in"];

    private static readonly ImmutableArray<Role> NeedsBound =
        [Role.AsModelled, Role.IdealBoost, Role.CurrentLimited, Role.Continuous, Role.ShortTime, Role.LockedRotor];

    /// <summary>Makes a figure and checks it.</summary>
    /// <param name="id">Unique, lower-case words joined by hyphens.</param>
    /// <param name="title">What it shows, as a heading.</param>
    /// <param name="x">The level axis.</param>
    /// <param name="y">The upright axis.</param>
    /// <param name="marks">What is drawn in every frame.</param>
    /// <param name="frames">What changes with a parameter; null for a figure that stands still.</param>
    /// <param name="sources">Where its data came from.</param>
    /// <param name="notes">What the reader must know to read it.</param>
    /// <param name="cautions">What could hurt somebody who acts on it.</param>
    /// <param name="altText">Alternative text; written from the marks where null or empty.</param>
    /// <exception cref="PartException">Anything that cannot be drawn truthfully; the message names it.</exception>
    public Figure(
        string id, string title, Axis x, Axis y, ImmutableArray<Mark> marks, FrameSet? frames = null,
        ImmutableArray<SourceNote> sources = default, ImmutableArray<string> notes = default,
        ImmutableArray<string> cautions = default, string? altText = null)
    {
        Id = Check.Id(id, "figure");
        Title = Check.Words(title, Part, "title");
        (X, Y, Frames) = (x, y, frames);
        Marks = Check.OrEmpty(marks);
        (Sources, Notes, Cautions) = (Check.OrEmpty(sources), Check.OrEmpty(notes), Check.OrEmpty(cautions));
        AcceptMarks();
        AcceptBound();
        AltText = string.IsNullOrWhiteSpace(altText) ? Wording.FigureText.Describe(this) : altText;
    }

    /// <summary>Unique, lower-case words joined by hyphens.</summary>
    public string Id { get; }

    /// <summary>What it shows, as a heading.</summary>
    public string Title { get; }

    /// <summary>The level axis.</summary>
    public Axis X { get; }

    /// <summary>The upright axis.</summary>
    public Axis Y { get; }

    /// <summary>What is drawn in every frame.</summary>
    public ImmutableArray<Mark> Marks { get; }

    /// <summary>What changes with a parameter; null for a figure that stands still.</summary>
    public FrameSet? Frames { get; }

    /// <summary>Where its data came from.</summary>
    public ImmutableArray<SourceNote> Sources { get; }

    /// <summary>What the reader must know to read it.</summary>
    public ImmutableArray<string> Notes { get; }

    /// <summary>What could hurt somebody who acts on it.</summary>
    public ImmutableArray<string> Cautions { get; }

    /// <summary>What it shows, in sentences with numbers.</summary>
    public string AltText { get; }

    /// <summary>The marks of the still form: those of every frame, then those of the frame shown when still.</summary>
    [JsonIgnore]
    public ImmutableArray<Mark> StillMarks => Frames is null ? Marks : Marks.AddRange(Frames.Shown.Marks);

    /// <summary>The marks of all frames.</summary>
    [JsonIgnore]
    internal IEnumerable<Mark> AllMarks =>
        Frames is null ? Marks : Marks.Concat(Frames.Frames.SelectMany(f => f.Marks));

    private string Part => $"figure {Id}";

    /// <summary>The same figure with more marks; its alternative text is written anew.</summary>
    /// <param name="marks">Marks to add to every frame.</param>
    /// <returns>A new figure, checked as any other.</returns>
    public Figure Adding(params ImmutableArray<Mark> marks) =>
        new(Id, Title, X, Y, Marks.AddRange(marks), Frames, Sources, Notes, Cautions);

    private void AcceptMarks()
    {
        var anything = false;
        foreach (var mark in AllMarks)
            foreach (var (x, y) in mark.Extent)
            {
                anything |= double.IsFinite(x) && double.IsFinite(y);
                Accept(X, x, mark);
                Accept(Y, y, mark);
            }
        if (!anything)
            throw new PartException(Part, "marks", "nothing that can be drawn", "at least one finite point");
    }

    private void Accept(Axis axis, double value, Mark mark)
    {
        try
        {
            axis.Accept(value, $"a value of '{mark.FullName}'");
        }
        catch (PartException fault)
        {
            throw new PartException($"{Part}, {fault.Part}", fault.Quantity, fault.Found, fault.Accepted, fault.Why);
        }
    }

    private void AcceptBound()
    {
        if (!TorqueUnits.Contains(X.Unit) && !TorqueUnits.Contains(Y.Unit))
            return;
        var frames = Frames is null ? [[]] : Frames.Frames.Select(f => f.Marks);
        foreach (var marks in frames.Select(m => Marks.AddRange(m)))
            if (marks.Any(m => NeedsBound.Contains(m.Role)) && !marks.Any(m => m.Role == Role.Bound))
                throw new PartException(
                    Part, "torque", $"shown {marks.First(m => NeedsBound.Contains(m.Role)).Role.InWords()} alone",
                    "a modelled torque together with its bound");
    }
}
