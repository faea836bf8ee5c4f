namespace Spindlewright.Kernel.Engine.Child;

/// <summary>What cells call to show things; imported into every session.</summary>
public static class CellOutput
{
    private static Func<object?, string?, Shown>? shower;
    private static Action<bool>? clearer;

    /// <summary>Shows a value below the cell.</summary>
    /// <param name="value">The value.</param>
    /// <returns>What was shown, to be replaced later.</returns>
    public static Shown Show(object? value) => Shower(value, null);

    /// <summary>Shows text of a MIME type below the cell.</summary>
    /// <param name="mimeType">The MIME type, such as <c>text/html</c>, <c>image/svg+xml</c> or <c>text/markdown</c>.</param>
    /// <param name="text">The text.</param>
    /// <returns>What was shown, to be replaced later.</returns>
    public static Shown ShowAs(string mimeType, string text) => Shower(text, mimeType);

    /// <summary>Takes back what this cell has shown and written so far.</summary>
    /// <param name="whenNextIsShown">True to leave it until something else is shown, so that nothing flickers.</param>
    public static void ClearOutput(bool whenNextIsShown = false) =>
        (clearer ?? throw new InvalidOperationException("ClearOutput works in the cells of a notebook only."))(whenNextIsShown);

    internal static void Bind(Func<object?, string?, Shown> show, Action<bool> clear) => (shower, clearer) = (show, clear);

    private static Func<object?, string?, Shown> Shower =>
        shower ?? throw new InvalidOperationException("Show works in the cells of a notebook only.");
}

/// <summary>Something that was shown below a cell.</summary>
public sealed class Shown
{
    private readonly Action<object?> replace;

    internal Shown(Action<object?> replace) => this.replace = replace;

    /// <summary>Shows another value in its place.</summary>
    /// <param name="value">The value.</param>
    public void Replace(object? value) => replace(value);
}
