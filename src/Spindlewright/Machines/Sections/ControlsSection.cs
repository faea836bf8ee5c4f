using Spindlewright.Machines.Text;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[controls]</c>: what is in place, yes or no. Nothing is assumed.</summary>
internal static class ControlsSection
{
    private static readonly KeySpec<bool>[] Keys =
    [
        Ask("chuck_guard", "A guard covers chuck and drill"),
        Ask("stop_in_reach", "The stop can be reached with both hands caught: by foot, knee or body"),
        Ask("no_restart", "The machine stays off when the supply returns, until it is started on purpose"),
        Ask("no_switching_under_load", "Nothing switches between inverter and motor while they run"),
        Ask("reverse_from_standstill", "The direction can be changed only at standstill"),
        Ask("work_clamped", "Work and vice are clamped or rest against a stop"),
        Ask("close_clothing", "Sleeves, hair and neckwear are close; no gloves and no rings at the spindle"),
        Ask("belt_cover_switch", "An open belt cover stops the motor and keeps it from starting"),
        Ask("chuck_key_out", "The chuck key cannot stay in the chuck"),
    ];

    internal static SectionSpec Spec { get; } = new("controls", "What is in place; a question left out stands as not answered", Keys);

    internal static IReadOnlyDictionary<string, bool> Read(Section root)
    {
        var answers = new SortedDictionary<string, bool>(StringComparer.Ordinal);
        if (root.Only(Spec) is { } section)
            foreach (var key in Keys)
                if (section.TryGet(key, out var answer)) answers[key.Name] = answer;
        return answers;
    }

    private static KeySpec<bool> Ask(string name, string meaning) =>
        Key.Optional(name, Forms.TrueOrFalse, meaning, "true", "not answered");
}
