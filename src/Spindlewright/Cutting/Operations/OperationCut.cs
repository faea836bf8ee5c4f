using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>What an operation asks of the spindle: speed, feed, torque, thrust, power and time.</summary>
public sealed record OperationCut
{
    /// <summary>The operation.</summary>
    public required Operation Operation { get; init; }

    /// <summary>Cutting speeds; null for spin testing.</summary>
    public required OperationSpeeds? Speeds { get; init; }

    /// <summary>Feeds of the tables; null for spin testing.</summary>
    public required OperationFeeds? Feeds { get; init; }

    /// <summary>Spindle speed: the one asked for, or that of the middle of the cutting speeds.</summary>
    public required RotationalSpeed Speed { get; init; }

    /// <summary>Feed a revolution: the one asked for, or that of the tables; null for spin testing.</summary>
    public required Length? Feed { get; init; }

    /// <summary>Torque and thrust by every method; null where there is none.</summary>
    public required OperationLoad? Load { get; init; }

    /// <summary>Time of one hole; null for spin testing.</summary>
    public required OperationTime? Time { get; init; }

    /// <summary>Power at the tool; zero where there is no load.</summary>
    public Power Power => Load?.Power(Speed) ?? UnitsNet.Power.Zero;

    /// <summary>Computes an operation.</summary>
    /// <param name="operation">What is done.</param>
    /// <param name="factors">The handbook's factors.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="speed">Spindle speed asked for; null for the middle of the cutting speeds.</param>
    /// <returns>What it asks.</returns>
    /// <exception cref="Foundations.PartException">A value is off the tables; spin testing without a speed; tapping without a thread.</exception>
    public static OperationCut Of(
        Operation operation, IDrillFactors factors, Handbook handbook, RotationalSpeed? speed = null)
    {
        if (operation is { Kind: OperationKind.Tapping, Tap: null })
            throw new Foundations.PartException("tapping", "thread", "not given", "a thread, or its hole and pitch");
        var speeds = OperationSpeeds.Of(operation.Kind, operation.Material, handbook, operation.Tool, operation.Cooling);
        var spindle = speed ?? speeds?.Spindle(operation.Diameter)
            ?? throw new Foundations.PartException("spin testing", "spindle speed", "not given", "a speed", "no table has one");
        var feeds = OperationFeeds.Of(operation, handbook);
        var feed = feeds is null ? (Length?)null : operation.Feed ?? feeds.Used;
        return new()
        {
            Operation = operation,
            Speeds = speeds,
            Feeds = feeds,
            Speed = spindle,
            Feed = feed,
            Load = feed is { } each ? OperationLoad.Of(operation, each, factors, handbook) : null,
            Time = feed is { } step ? OperationTime.Of(operation, step, spindle, handbook) : null,
        };
    }
}
