namespace Spindlewright.Motors;

/// <summary>How the three windings are joined.</summary>
public enum Connection
{
    /// <summary>Star: each winding sees the line voltage over √3.</summary>
    Star,

    /// <summary>Delta: each winding sees the line voltage.</summary>
    Delta,
}
