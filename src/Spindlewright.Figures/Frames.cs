using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>What a figure shows at one value of its parameter.</summary>
/// <param name="Value">The parameter's value, in the unit of the <see cref="FrameSet"/>.</param>
/// <param name="Marks">The marks at that value.</param>
public sealed record Frame(double Value, ImmutableArray<Mark> Marks);

/// <summary>Frames over one parameter, such as boost or frequency, and the one shown when still.</summary>
public sealed record FrameSet
{
    /// <summary>Makes a set of frames.</summary>
    /// <param name="parameter">What is varied, such as "boost".</param>
    /// <param name="unit">Its unit as printed; may be empty.</param>
    /// <param name="frames">The frames, each with the same marks in the same order.</param>
    /// <param name="still">Index of the frame that print and the first view show.</param>
    /// <exception cref="PartException">No frame, unlike frames, a value twice, or no such index.</exception>
    public FrameSet(string parameter, string unit, ImmutableArray<Frame> frames, int still)
    {
        Parameter = Check.Words(parameter, "frames", "parameter");
        Unit = unit ?? "";
        Frames = Check.NotEmpty(frames, Part, "frames");
        Still = still >= 0 && still < frames.Length
            ? still
            : throw new PartException(Part, "still frame", $"index {still}", $"0 to {frames.Length - 1}");
        var values = new HashSet<double>();
        foreach (var frame in Frames)
        {
            if (!values.Add(Guard.Finite(frame.Value, Part, "value")))
                throw new PartException(
                    Part, "value", Wording.NumberText.Significant(frame.Value, 6) + " twice", "each value once");
            Check.NotEmpty(frame.Marks, Part, "marks");
            if (!frame.Marks.Select(Kind).SequenceEqual(Frames[0].Marks.Select(Kind)))
                throw new PartException(
                    Part, "marks", $"others at {NameOf(frame)} than at {NameOf(Frames[0])}",
                    "the same kinds, roles and series in the same order in every frame");
        }
    }

    /// <summary>What is varied.</summary>
    public string Parameter { get; }

    /// <summary>Its unit as printed; may be empty.</summary>
    public string Unit { get; }

    /// <summary>The frames in order.</summary>
    public ImmutableArray<Frame> Frames { get; }

    /// <summary>Index of the frame shown when still.</summary>
    public int Still { get; }

    /// <summary>The frame shown when still.</summary>
    [JsonIgnore]
    public Frame Shown => Frames[Still];

    /// <summary>A frame's name, such as "4 %".</summary>
    /// <param name="frame">One of the frames.</param>
    /// <returns>Value and unit.</returns>
    public string NameOf(Frame frame)
    {
        var value = Wording.NumberText.Significant(frame.Value, 5);
        return Unit.Length == 0 ? value : $"{value} {Unit}";
    }

    private string Part => $"frames over {Parameter}";

    private static (Type, Role, Side?, string, string) Kind(Mark mark) =>
        (mark.GetType(), mark.Role, mark.Side, mark.Series, mark.Legend);
}
