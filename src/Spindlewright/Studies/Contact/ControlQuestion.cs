using Spindlewright.Machines;

namespace Spindlewright.Studies.Contact;

/// <summary>One of the yes/no controls.</summary>
/// <param name="Key">Its key in [controls].</param>
/// <param name="Asked">What is asked.</param>
/// <param name="Reason">Why.</param>
/// <param name="Standard">What asks for it; recalled from memory unless said otherwise: read the standard itself.</param>
/// <param name="Answer">Yes, no, or null for not answered.</param>
public sealed record ControlQuestion(string Key, string Asked, string Reason, string Standard, bool? Answer)
{
    /// <summary>The answer in words; "not answered" is a state of its own.</summary>
    public string Words => Answer switch { true => "yes", false => "no", _ => "not answered" };

    /// <summary>All questions with a machine's answers, those not answered first.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Nine questions.</returns>
    public static IReadOnlyList<ControlQuestion> Of(DrillPress press)
    {
        var answers = press.ContactOrUsual.Controls;
        ControlQuestion Ask(string key, string asked, string reason, string standard) =>
            new(key, asked, reason, standard, answers.TryGetValue(key, out var answer) ? answer : null);
        ControlQuestion[] all =
        [
            Ask("chuck_guard", "Does a guard cover chuck and drill?", "most recorded accidents at drills touch the rotating drill or chuck", "ISO 14120 (guards); EN 12717 (drilling machines), from memory"),
            Ask("stop_in_reach", "Can the stop be reached with both hands caught?", "a hand that is wound in cannot let go to press a button", "ISO 13850 (emergency stop), second hand"),
            Ask("no_restart", "Does it stay off when the supply returns, until it is started on purpose?", "an inverter set to run from a switch starts when the supply returns", "EU 2023/1230 Annex III, published; IEC 60204-1, second hand"),
            Ask("no_switching_under_load", "Does nothing switch between inverter and motor while they run?", "opening the motor circuit under load destroys the inverter and leaves the stop without effect", "IEC 60204-1 and the inverter's manual, from memory"),
            Ask("reverse_from_standstill", "Can the direction be changed only at standstill?", "a chuck with a thread unscrews; what was caught is wound the other way", "IEC 60204-1, from memory"),
            Ask("work_clamped", "Is work clamped, or does it rest against a stop?", "at break-through the tool screws itself in and takes the work round", "EN 12717, from memory; common practice"),
            Ask("close_clothing", "Are sleeves, hair and neckwear close, and are there no gloves and no rings?", "no published criterion for a caught glove tearing free was found", "DGUV on gloves at rotating parts, published"),
            Ask("belt_cover_switch", "Does an open belt cover stop the motor and keep it from starting?", "belts are shifted by hand, with fingers in the nip", "ISO 14119 (interlocks), from memory"),
            Ask("chuck_key_out", "Can the chuck key not stay in the chuck?", "a key left in the chuck is thrown at the first start", "EN 12717, from memory; common practice"),
        ];
        return [.. all.OrderBy(question => question.Answer is null ? 0 : 1)];
    }
}
