using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Gathers what one cell shows, up to a number of bytes.</summary>
/// <remarks>
/// Pieces of one stream that follow each other become one output. What was written past the console comes last, since
/// the moment of its arrival differs from run to run. Memory stays bounded: what is cut is only counted.
/// </remarks>
/// <param name="executionCount">The cell's number.</param>
/// <param name="mostBytes">How much is kept, bytes of UTF-8.</param>
/// <param name="transformer">Changes bundles; may be null.</param>
/// <param name="displays">The notebook's outputs that can still be replaced, by their name.</param>
internal sealed class OutputCollector(
    int executionCount, long mostBytes, IOutputTransformer? transformer, Dictionary<string, JsonObject> displays)
{
    private readonly Lock guard = new();
    private readonly List<JsonObject> outputs = [];
    private readonly StringBuilder text = new();
    private readonly StringBuilder rawOutput = new();
    private readonly StringBuilder rawError = new();
    private readonly OutputBudget budget = new(mostBytes);
    private StreamName textStream;
    private bool clearsNext;

    /// <summary>The error of the cell; null when there is none.</summary>
    internal ErrorEvent? Error { get; private set; }

    /// <summary>Takes an event.</summary>
    internal void Add(EngineEvent happened)
    {
        lock (guard)
        {
            switch (happened)
            {
                case StreamEvent stream:
                    AddText(stream);
                    break;
                case DisplayEvent display:
                    AddBundle(display.Data, display.DisplayId, OutputNodes.Display);
                    break;
                case DisplayUpdateEvent update:
                    Replace(update);
                    break;
                case ReturnEvent value:
                    AddBundle(value.Data, null, data => OutputNodes.Result(data, executionCount));
                    break;
                case ErrorEvent error:
                    Error ??= error;
                    break;
                case ClearEvent clear:
                    Clear(clear);
                    break;
            }
        }
    }

    /// <summary>Gives the outputs as they are stored.</summary>
    internal JsonArray Finish()
    {
        lock (guard)
        {
            EndText();
            if (rawOutput.Length > 0)
                outputs.Add(OutputNodes.Stream(StreamName.Stdout, rawOutput.ToString()));
            if (rawError.Length > 0)
                outputs.Add(OutputNodes.Stream(StreamName.Stderr, rawError.ToString()));
            if (budget.Note is { } note)
                outputs.Add(OutputNodes.Stream(StreamName.Stderr, note));
            if (Error is { } error)
                outputs.Add(OutputNodes.Error(error.Name, error.Message, error.Traceback));
            return new JsonArray([.. outputs]);
        }
    }

    private void AddText(StreamEvent stream)
    {
        var kept = budget.Keep(stream.Text);
        if (kept.Length == 0)
            return;
        if (stream.IsRaw)
        {
            (stream.Stream == StreamName.Stdout ? rawOutput : rawError).Append(kept);
            return;
        }

        ClearIfAsked();
        if (text.Length > 0 && textStream != stream.Stream)
            EndText();
        textStream = stream.Stream;
        text.Append(kept);
    }

    private void EndText()
    {
        if (text.Length > 0)
            outputs.Add(OutputNodes.Stream(textStream, text.ToString()));
        text.Clear();
    }

    private void AddBundle(MimeBundle bundle, string? displayId, Func<MimeBundle, JsonObject> store)
    {
        ClearIfAsked();
        EndText();
        if (Transform(bundle) is not { } kept)
            return;
        var node = store(kept);
        outputs.Add(node);
        if (displayId is not null)
            displays[displayId] = node;
    }

    private void Replace(DisplayUpdateEvent update)
    {
        if (displays.TryGetValue(update.DisplayId, out var node) && Transform(update.Data) is { } kept)
            node["data"] = OutputNodes.Data(kept);
    }

    /// <summary>Null when the bundle is too large.</summary>
    private MimeBundle? Transform(MimeBundle bundle)
    {
        try
        {
            bundle = transformer?.Transform(bundle) ?? bundle;
        }
#pragma warning disable CA1031 // Whatever goes wrong in drawing fails the cell with its reason, and the run goes on.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Error ??= OutputBudget.CannotDraw(fault, executionCount);
        }

        return budget.TryTake(bundle, out var kept) ? kept : null;
    }

    /// <summary>Takes back what was shown so far; what was seen still counts.</summary>
    private void Clear(ClearEvent clear)
    {
        clearsNext = clear.WhenNextIsShown;
        if (clearsNext)
            return;
        text.Clear();
        outputs.Clear();
    }

    private void ClearIfAsked()
    {
        if (clearsNext)
            Clear(new ClearEvent(0));
    }
}
