namespace Spindlewright.Machines.Text;

/// <summary>A place in a text.</summary>
/// <param name="Line">Line, counted from 1; 0 for the file as a whole.</param>
/// <param name="Column">Column in characters as a reader counts them, from 1; 0 for the line as a whole.</param>
public readonly record struct TextPlace(int Line, int Column)
{
    /// <summary>The file as a whole.</summary>
    public static TextPlace WholeFile => default;
}
