using System.Globalization;
using System.Text.RegularExpressions;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>Why a child ended, from what the runtime wrote last and from the exit code.</summary>
internal static partial class CrashReport
{
    /// <summary>Looks for the runtime's last words in standard error.</summary>
    /// <param name="text">Standard error since the request began.</param>
    /// <returns>The cause and where the last words begin; null when there are none.</returns>
    internal static (EngineLoss Loss, int Start)? Read(string text)
    {
        var match = LastWords().Match(text);
        if (!match.Success)
            return null;
        var loss = match.Groups["what"].Value switch
        {
            "Stack overflow." => new EngineLoss(
                "StackOverflow", "The code called itself too deeply (stack overflow); its process ended."),
            "Out of memory." => new EngineLoss("OutOfMemory", "The process ran out of memory and ended."),
            "Process terminated." => new EngineLoss(
                "ProcessEnded", $"The code ended its own process: {match.Groups["rest"].Value.Trim()}"),
            _ => new EngineLoss("UnhandledException",
                $"An exception on a thread of its own ended the process: {match.Groups["rest"].Value.Trim()}"),
        };
        return (loss, match.Index);
    }

    /// <summary>Tells the end of a process that left no last words.</summary>
    internal static EngineLoss Of(int? exitCode, ProtocolException? broken)
    {
        if (broken is not null)
            return new EngineLoss("ConnectionBroken", $"The connection to the process broke: {broken.Message}");
        const int SignalBase = 128;
        return exitCode switch
        {
            null => new EngineLoss("ConnectionBroken", "The process closed its connection and was ended."),
            > SignalBase and < SignalBase + 65 => new EngineLoss("ProcessKilled", string.Create(
                CultureInfo.InvariantCulture, $"The process was ended by signal {exitCode - SignalBase}.")),
            _ => new EngineLoss("ProcessEnded", string.Create(
                CultureInfo.InvariantCulture, $"The code ended its own process (exit code {exitCode}).")),
        };
    }

    [GeneratedRegex(@"^(?<what>Stack overflow\.|Out of memory\.|Unhandled exception\.|Process terminated\.)(?<rest>.*(?:\n(?!   at).+)?)",
        RegexOptions.Multiline)]
    private static partial Regex LastWords();
}
