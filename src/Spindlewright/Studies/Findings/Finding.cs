namespace Spindlewright.Studies.Findings;

/// <summary>One thing that the studies come to.</summary>
/// <param name="Title">A few words.</param>
/// <param name="Text">A sentence or two with numbers and units; a modelled torque never stands without its bound.</param>
public sealed record Finding(string Title, string Text);
