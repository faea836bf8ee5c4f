using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Publishes what one cell shows, as it comes.</summary>
/// <remarks>
/// Text is gathered for a moment, since a loop that writes line by line would otherwise send a message a line. The
/// names by which outputs can be changed are made unique, since a page may show outputs of more than one session.
/// </remarks>
internal sealed class OutputRelay : IDisposable
{
    private const int MostGatheredChars = 1 << 16;
    private static readonly TimeSpan GatherTime = TimeSpan.FromMilliseconds(40);

    private readonly Exchange exchange;
    private readonly IOutputTransformer drawing;
    private readonly string namePrefix;
    private readonly int number;
    private readonly OutputBudget budget = new(RunLimits.Default.OutputBytes);
    private readonly Lock guard = new();
    private readonly StringBuilder text = new();
    private readonly Timer timer;
    private StreamName stream;
    private ErrorEvent? drawingError;

    /// <summary>Begins.</summary>
    /// <param name="exchange">The request that runs the cell.</param>
    /// <param name="number">The cell's number.</param>
    /// <param name="drawing">Draws figures.</param>
    /// <param name="namePrefix">Set before the names of outputs.</param>
    internal OutputRelay(Exchange exchange, int number, IOutputTransformer drawing, string namePrefix)
    {
        (this.exchange, this.number, this.drawing, this.namePrefix) = (exchange, number, drawing, namePrefix);
        timer = new Timer(_ => Flush(), null, Timeout.Infinite, Timeout.Infinite);
    }

    /// <summary>The value of the last expression in plain text; null for none.</summary>
    internal string? Result { get; private set; }

    /// <summary>Takes an event.</summary>
    internal void Take(EngineEvent happened)
    {
        lock (guard)
        {
            switch (happened)
            {
                case StreamEvent written:
                    AddText(written);
                    break;
                case DisplayEvent display:
                    Show("display_data", display.Data, display.DisplayId);
                    break;
                case DisplayUpdateEvent update:
                    Show("update_display_data", update.Data, update.DisplayId);
                    break;
                case ReturnEvent value:
                    Result = value.Data.Find(MimeBundle.PlainText);
                    Show("execute_result", value.Data, null);
                    break;
                case ClearEvent clear:
                    EndText();
                    exchange.Publish("clear_output", new JsonObject { ["wait"] = clear.WhenNextIsShown });
                    break;
            }
        }
    }

    /// <summary>Publishes what is left, then the one error of the cell, if it failed.</summary>
    /// <param name="error">What the session said.</param>
    /// <returns>The error; null when there is none.</returns>
    internal ErrorEvent? Finish(ErrorEvent? error)
    {
        lock (guard)
        {
            EndText();
            if (budget.Note is { } note)
                PublishText(StreamName.Stderr, note);
            if ((error ?? drawingError) is not { } failed)
                return null;
            var content = Exchange.Refusal(failed.Name, failed.Message, failed.Traceback);
            content.Remove("status");
            exchange.Publish("error", content);
            return failed;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => timer.Dispose();

    private void AddText(StreamEvent written)
    {
        var kept = budget.Keep(written.Text);
        if (kept.Length == 0)
            return;
        if (text.Length > 0 && stream != written.Stream)
            EndText();
        if (text.Length == 0)
            timer.Change(GatherTime, Timeout.InfiniteTimeSpan);
        stream = written.Stream;
        text.Append(kept);
        if (text.Length > MostGatheredChars)
            EndText();
    }

    private void Flush()
    {
        lock (guard)
            EndText();
    }

    private void EndText()
    {
        if (text.Length > 0)
            PublishText(stream, text.ToString());
        text.Clear();
    }

    private void PublishText(StreamName name, string written) => exchange.Publish("stream", new JsonObject
    {
        ["name"] = name == StreamName.Stdout ? "stdout" : "stderr",
        ["text"] = written,
    });

    private void Show(string type, MimeBundle bundle, string? name)
    {
        EndText();
        if (!budget.TryTake(Drawn(bundle), out var kept))
            return;
        var content = new JsonObject { ["data"] = OutputNodes.Data(kept, inLines: false), ["metadata"] = new JsonObject() };
        if (name is null)
            content["execution_count"] = number;
        else
            content["transient"] = new JsonObject { ["display_id"] = namePrefix + name };
        exchange.Publish(type, content);
    }

    private MimeBundle Drawn(MimeBundle bundle)
    {
        try
        {
            return drawing.Transform(bundle);
        }
#pragma warning disable CA1031 // Whatever goes wrong in drawing fails the cell with its reason, and the kernel goes on.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            drawingError ??= OutputBudget.CannotDraw(fault, number);
            return bundle;
        }
    }
}
