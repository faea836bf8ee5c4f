using Spectre.Console;

namespace Spindlewright.Kernel.Commands;

/// <summary>What the program says: to a person at a terminal with emphasis, to a file or a pipe in plain lines.</summary>
internal sealed class Voice
{
    private readonly IAnsiConsole output;
    private readonly IAnsiConsole errors;

    internal Voice()
    {
        output = Console(System.Console.Out, System.Console.IsOutputRedirected);
        errors = Console(System.Console.Error, System.Console.IsErrorRedirected);
    }

    /// <summary>One line.</summary>
    internal void Say(string line) => output.WriteLine(line);

    /// <summary>One line that stands out.</summary>
    internal void Stress(string line) => output.MarkupLineInterpolated($"[bold]{line}[/]");

    /// <summary>One line on the error stream.</summary>
    internal void Complain(string line) => errors.WriteLine(line);

    /// <summary>Runs work in named steps and shows which one it is at.</summary>
    /// <typeparam name="T">What the work gives.</typeparam>
    /// <param name="what">What is being done, such as "Studies".</param>
    /// <param name="steps">How many steps there are.</param>
    /// <param name="work">The work; it calls back with the name of each step as it begins.</param>
    /// <returns>The work's result.</returns>
    internal T InSteps<T>(string what, int steps, Func<Action<string>, T> work)
    {
        if (!output.Profile.Capabilities.Interactive)
        {
            var step = 0;
            return work(name => Say(FormattableString.Invariant($"{what} {++step}/{steps}: {name}")));
        }

        return output.Progress().AutoClear(true).Start(context =>
        {
            var task = context.AddTask(Markup.Escape(what), maxValue: steps);
            var begun = false;
            var result = work(name =>
            {
                if (begun) task.Increment(1);
                begun = true;
                task.Description = Markup.Escape($"{what}: {name}");
            });
            task.Value = steps;
            return result;
        });
    }

    // Plain lines are not folded at a terminal width that is not there.
    private static IAnsiConsole Console(TextWriter writer, bool redirected)
    {
        var console = AnsiConsole.Create(new()
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = redirected ? AnsiSupport.No : AnsiSupport.Detect,
            Interactive = redirected ? InteractionSupport.No : InteractionSupport.Detect,
        });
        if (redirected) console.Profile.Width = int.MaxValue;
        return console;
    }
}
