using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;

namespace Spindlewright.Studies.Contact;

/// <summary>One of the yes/no controls.</summary>
/// <param name="Key">Its key in [controls].</param>
/// <param name="Asked">What is asked.</param>
/// <param name="Reason">Why.</param>
/// <param name="AskedBy">What asks for it; most are recalled from memory: read the standard itself.</param>
/// <param name="Standard">The same in words.</param>
/// <param name="Answer">Yes, no, or null for not answered.</param>
public sealed record ControlQuestion(
    string Key, string Asked, string Reason, IReadOnlyList<Citation> AskedBy, string Standard, bool? Answer)
{
    private static readonly Citation Guards = new("iso-14120", Provenance.FromMemory);
    private static readonly Citation Drills = new("en-12717", Provenance.FromMemory);
    private static readonly Citation Equipment = new("iec-60204-1", Provenance.SecondHand);
    private static readonly Citation EquipmentRecalled = new("iec-60204-1", Provenance.FromMemory);
    private static readonly Citation Trade = new("trade-practice", Provenance.CommonPractice);

    /// <summary>The answer in words; "not answered" is a state of its own.</summary>
    public string Words => Answer switch { true => "yes", false => "no", _ => "not answered" };

    /// <summary>All questions with a machine's answers, those not answered first.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="references">Titles of what asks for them.</param>
    /// <returns>Nine questions.</returns>
    public static IReadOnlyList<ControlQuestion> Of(DrillPress press, References references)
    {
        var answers = press.ContactOrUsual.Controls;
        ControlQuestion Ask(string key, string asked, string reason, params Citation[] askedBy) => new(
            key, asked, reason, askedBy,
            string.Join("; ", askedBy.Select(each => $"{references[each.Source].Title} ({each.Provenance.InWords()})")),
            answers.TryGetValue(key, out var answer) ? answer : null);
        ControlQuestion[] all =
        [
            Ask("chuck_guard", "Does a guard cover chuck and drill?", "most recorded accidents at drills touch the rotating drill or chuck", Guards, Drills),
            Ask("stop_in_reach", "Can the stop be reached with both hands caught?", "a hand that is wound in cannot let go to press a button", new Citation("iso-13850", Provenance.SecondHand)),
            Ask("no_restart", "Does it stay off when the supply returns, until it is started on purpose?", "an inverter set to run from a switch starts when the supply returns", new Citation("eu-2023-1230", Provenance.Published), Equipment),
            Ask("no_switching_under_load", "Does nothing switch between inverter and motor while they run?", "opening the motor circuit under load destroys the inverter and leaves the stop without effect", EquipmentRecalled, Trade),
            Ask("reverse_from_standstill", "Can the direction be changed only at standstill?", "a chuck with a thread unscrews; what was caught is wound the other way", EquipmentRecalled),
            Ask("work_clamped", "Is work clamped, or does it rest against a stop?", "at break-through the tool screws itself in and takes the work round", Drills, Trade),
            Ask("close_clothing", "Are sleeves, hair and neckwear close, and are there no gloves and no rings?", "no published criterion for a caught glove tearing free was found", new Citation("dguv-gloves", Provenance.Published)),
            Ask("belt_cover_switch", "Does an open belt cover stop the motor and keep it from starting?", "belts are shifted by hand, with fingers in the nip", new Citation("iso-14119", Provenance.FromMemory)),
            Ask("chuck_key_out", "Can the chuck key not stay in the chuck?", "a key left in the chuck is thrown at the first start", Drills, Trade),
        ];
        return [.. all.OrderBy(question => question.Answer is null ? 0 : 1)];
    }
}
