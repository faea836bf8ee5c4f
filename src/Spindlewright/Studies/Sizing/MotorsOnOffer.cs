using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Mains;
using Spindlewright.Motors;
using Spindlewright.Motors.Plates;
using Spindlewright.Studies.SupplyAndBill;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>The motors that are looked at: the one described, the owner's rows, and the table of ratings.</summary>
/// <param name="Motors">Those that can be fed from the socket, in a fixed order: described, own rows, then table by power, poles and class.</param>
/// <param name="Refused">Those that cannot be, with the reason.</param>
/// <remarks>
/// A motor of the table is a plate with power, poles and the efficiency that its class asks for; the rest are the paired defaults of a
/// plate that is silent. Rated voltage, frequency and connection are those of the motor described. Its inverter is the machine's,
/// or one of that make that carries its rated current; the link sags under the motor's own rated power.
/// </remarks>
public sealed record MotorsOnOffer(IReadOnlyList<MotorChoice> Motors, IReadOnlyList<string> Refused)
{
    /// <summary>Finds them.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="wishes">What may be bought.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>The motors.</returns>
    public static MotorsOnOffer Of(DrillPress press, SizingWishes wishes, Handbook handbook, CancellationToken cancellation = default)
    {
        List<Func<MotorChoice>> made =
        [
            () => Fed(
                press, Invariant($"{press.Motor.RatedPower.Kilowatts:0.##} kW {press.Motor.Circuit.Capability.Poles}-pole as described"), press.Motor,
                isDescribed: true) with { Build = BuildOf(press.Motor, handbook) },
            .. wishes.Motors.Select(offer => (Func<MotorChoice>)(() => OfOffer(press, offer, handbook))),
        ];
        if (wishes.RatingsTable)
            made.AddRange(
                from power in wishes.Powers
                from poles in wishes.Poles
                from efficiencyClass in wishes.EfficiencyClasses
                select (Func<MotorChoice>)(() => OfTable(press, power, poles, efficiencyClass, handbook)));
        var found = new (MotorChoice? Motor, string? Refused)[made.Count];
        Parallel.For(0, made.Count, new ParallelOptions { CancellationToken = cancellation }, place =>
        {
            try
            {
                found[place] = (made[place](), null);
            }
            catch (PartException refused)
            {
                found[place] = (null, refused.Message);
            }
        });
        return new(
            [.. found.Select(each => each.Motor).OfType<MotorChoice>()], [.. found.Select(each => each.Refused).OfType<string>().Distinct()]);
    }

    private static MotorChoice OfTable(DrillPress press, Power power, int poles, string efficiencyClass, Handbook handbook)
    {
        var figures = Plate(press) with
        {
            Power = power, Poles = poles, Efficiency = handbook.MotorEfficiency.At(efficiencyClass, poles, power).Value,
        };
        var name = Invariant($"{(double)power.Kilowatts:0.##} kW {poles}-pole {efficiencyClass}");
        return Fed(press, name, MotorOf(press, figures, handbook)) with
        {
            Build = MotorBuild.Of(power, poles, handbook), Highest = HighestOf(poles, handbook),
        };
    }

    private static MotorChoice OfOffer(DrillPress press, MotorOffer offer, Handbook handbook)
    {
        var plate = Plate(press);
        var motor = MotorOf(press, offer.Figures with
        {
            LineVoltage = plate.LineVoltage, Connection = plate.Connection, Frequency = plate.Frequency,
        }, handbook);
        var usual = BuildOf(motor, handbook);
        return Fed(press, offer.Name, motor) with
        {
            Price = offer.Price,
            Build = usual is null ? null : usual with
            {
                Frame = offer.Frame ?? usual.Frame,
                Shaft = offer.Shaft ?? usual.Shaft,
                Mass = offer.Mass is { } mass ? Sided.Same(mass) : usual.Mass,
            },
            Highest = HighestOf(motor.Circuit.Capability.Poles, handbook),
        };
    }

    private static PlateFigures Plate(DrillPress press) => new()
    {
        LineVoltage = press.Motor.Circuit.Capability.RatedLineVoltage,
        Connection = press.Motor.Connection,
        Frequency = press.Motor.Circuit.Capability.RatedFrequency,
    };

    private static MachineMotor MotorOf(DrillPress press, PlateFigures figures, Handbook handbook) =>
        MachineMotor.Of(PlateFit.Of(figures, handbook), press.Motor.Connection, press.Motor.Winding);

    private static MotorBuild? BuildOf(MachineMotor motor, Handbook handbook)
    {
        try
        {
            return MotorBuild.Of(motor.RatedPower, motor.Circuit.Capability.Poles, handbook);
        }
        catch (PartException)
        {
            // Beyond the table of frames: nothing is known, and nothing is compared.
            return null;
        }
    }

    /// <summary>The standard's limit of speed, where there is one for the number of poles.</summary>
    private static Frequency? HighestOf(int poles, Handbook handbook) =>
        handbook.MotorFacts.TryFind(Invariant($"greatest-speed-{poles}-pole"), out var row)
            ? Frequency.FromHertz(row.Required().Value * poles / 120)
            : null;

    /// <summary>A motor on an inverter that carries it, on a link that sags under that motor's own rated power.</summary>
    private static MotorChoice Fed(DrillPress press, string name, MachineMotor motor, bool isDescribed = false)
    {
        var size = UnitMath.Max(press.Inverter.RatedCurrent, motor.RatedCurrent);
        var link = press.Inverter.Link;
        var feed = new MotorFeed(press.With(press.Inverter.OfSize(size, link), motor, press.Belts));
        RectifierState At(ElectricPotential voltage) => feed.Rectifier.UnderPower(voltage, press.Supply.Frequency, feed.RatedLinkPower);
        var (lowest, nominal) = (At(press.Supply.Lowest), At(press.Supply.Nominal));
        // The link of the motor described may have been given.
        var loaded = isDescribed ? link.LoadedFraction.Capability : LinkSize.LoadedFraction(lowest, press.Supply.Lowest, link.Doubler);
        return new()
        {
            Name = name,
            Motor = motor,
            IsDescribed = isDescribed,
            Inverter = press.Inverter.OfSize(size, link with { LoadedFraction = link.LoadedFraction with { Capability = loaded } }),
            InputA = Interval.Of(
                Math.Min(nominal.Current.Amperes, lowest.Current.Amperes), Math.Max(nominal.Current.Amperes, lowest.Current.Amperes)),
        };
    }
}
