using System.Globalization;
using UnitsNet;

namespace Spindlewright.Studies.Overpowering;

/// <summary>Which condition of an overpowering speed decides.</summary>
public enum OverpoweringOutcome
{
    /// <summary>Below base frequency the modelled torque does not pass the hand's.</summary>
    NeverPassed,

    /// <summary>It passes already at the lowest frequency of the settings.</summary>
    AlreadyAtStandstill,

    /// <summary>Locked-rotor torque falls with frequency somewhere before it passes.</summary>
    LockedRotorFallsBefore,

    /// <summary>Where it passes, the spindle turns once or more in the longest reaction time.</summary>
    PastOneTurn,

    /// <summary>It passes at a speed that may be named.</summary>
    At,
}

/// <summary>Turns what decides into an answer: the one place of its words.</summary>
internal static class OverpoweringAnswer
{
    internal static OverpoweringSpeed Speed(OverpoweringOutcome outcome, RotationalSpeed crossing, Duration longestReaction) =>
        outcome switch
        {
            OverpoweringOutcome.NeverPassed => new OverpoweringSpeed.NoSpeed(
                "below base frequency the modelled torque does not pass this hand's, and the model alone may not be relied on; see the bound"),
            OverpoweringOutcome.AlreadyAtStandstill => new OverpoweringSpeed.AlreadyAtStandstill(crossing),
            OverpoweringOutcome.LockedRotorFallsBefore => new OverpoweringSpeed.NoSpeed(
                "locked-rotor torque falls with frequency somewhere before this hand is passed"),
            OverpoweringOutcome.PastOneTurn => new OverpoweringSpeed.NoSpeed(string.Create(
                CultureInfo.InvariantCulture,
                $"the crossing stands at {crossing.RevolutionsPerMinute:0} r/min, where the spindle turns {crossing.RevolutionsPerSecond * longestReaction.Seconds:0.0} times in the longest reaction time of {longestReaction.Seconds:0.##} s")),
            _ => new OverpoweringSpeed.At(crossing),
        };
}
