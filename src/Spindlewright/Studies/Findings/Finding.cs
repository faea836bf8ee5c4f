namespace Spindlewright.Studies.Findings;

/// <summary>One thing that the studies come to.</summary>
/// <param name="Title">A few words.</param>
/// <param name="Answer">
/// One sentence with the numbers that a reader looks for; a modelled torque never stands without its bound.
/// </param>
/// <param name="Detail">What the answer rests on, in a sentence or two; may be empty.</param>
public sealed record Finding(string Title, string Answer, string Detail = "")
{
    /// <summary>Answer and detail together.</summary>
    public string Text => Detail.Length == 0 ? Answer : $"{Answer} {Detail}";
}
