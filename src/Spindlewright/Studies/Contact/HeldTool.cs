using Spindlewright.Belts;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Work;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>What must hold the work against one tool of the machine file.</summary>
/// <param name="Item">The operation.</param>
/// <param name="Cutting">Torque that it needs; zero where it has none to speak of.</param>
/// <param name="Belt">Of the belt positions that turn it at its speed, the one with the largest bound; of all where none does.</param>
/// <param name="Bound">No-credit bound there.</param>
/// <param name="Distance">From the axis: your clamp distance, or <see cref="UsualDistance"/>.</param>
/// <param name="Pin">Force of the bound on a stop pin at that distance.</param>
/// <param name="Clamps">Clamping force, all clamps together, by friction alone at that distance.</param>
/// <param name="PinDistance">Least distance at which a stop bears no more than <see cref="PinBears"/>.</param>
public sealed record HeldTool(
    WorkItem Item, Torque Cutting, BeltPosition Belt, Torque Bound, Length Distance, Force Pin, Force Clamps, Length PinDistance)
{
    /// <summary>Distance where no clamp distance is given: own choice.</summary>
    public static Length UsualDistance { get; } = Length.FromMillimeters(150);

    /// <summary>Force that a stop is wanted to bear at most: own choice, what a small pin in a slot of the table takes with room to spare.</summary>
    public static Force PinBears { get; } = Force.FromNewtons(500);

    /// <summary>Every operation that turns work or cuts, largest tool first.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="work">Its operations.</param>
    /// <returns>One an operation.</returns>
    internal static IReadOnlyList<HeldTool> Of(DrillPress press, TorqueStudy torques, WorkStudy work) =>
        [.. work.Items.OrderByDescending(item => item.Item.Diameter).Select(item => Of(press.ContactOrUsual, torques, item))];

    private static HeldTool Of(ContactInputs contact, TorqueStudy torques, WorkResult item)
    {
        // Whichever position is taken, the bound is no larger than this; a drill that grabs knows no cutting torque.
        var reaching = item.Belts.Where(belt => belt.Frequency is not null).Select(belt => belt.Belt.Name).ToHashSet();
        var spindle = torques.Spindle.Where(each => reaching.Count == 0 || reaching.Contains(each.Belt.Name)).MaxBy(each => each.Bound)!;
        var distance = contact.ClampDistance ?? UsualDistance;
        return new(
            item.Item, item.Torque, spindle.Belt, spindle.Bound, distance, Holding.AtPin(spindle.Bound, distance),
            Holding.ByFriction(spindle.Bound, distance, contact.ClampFriction.Hazard), Holding.PinDistance(spindle.Bound, PinBears));
    }
}
