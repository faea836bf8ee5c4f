namespace Spindlewright.Mains;

/// <summary>A rectifier and its supply in plain SI. <c>PeakV</c> is the crest of the source, line to line for three phases.</summary>
internal readonly record struct RectifierCircuit(
    RectifierKind Kind, double PeakV, double OmegaRadPerS, double ROhm, double LHenry, double CFarad, double PowerW,
    double LoadS)
{
    /// <summary>A current driven by a constant voltage through resistance and inductance, exactly, and its charge.</summary>
    internal (double Amperes, double Coulombs) Moved(double amperes, double driveV, double timeS)
    {
        var (final, rate) = (driveV / ROhm, ROhm / LHenry);
        var decay = Math.Exp(-rate * timeS);
        return (final + (amperes - final) * decay, final * timeS + (amperes - final) * (1 - decay) / rate);
    }
}

/// <summary>Means over one period; the current is that of one conductor.</summary>
internal readonly record struct RectifierSums(
    double SquareA2, double SineA, double CosineA, double PeakA, double InputW, double LinkMeanV, double LinkLeastV,
    double LinkMostV);

/// <summary>Steps a rectifier through time. Allocates nothing.</summary>
/// <remarks>
/// Between two changes of the conducting diodes the circuit is linear but for the load. Each step moves the currents exactly
/// against the link as it stands in the middle of the step. A current that would change sign ends at zero within it.
/// </remarks>
internal static class RectifierStepper
{
    private const int StepsAPeriod = 8192;
    private const int MostPeriods = 600;
    private const double Settled = 1e-6;

    /// <summary>The settled period; null where the link collapses under its load, or swings and never settles.</summary>
    internal static RectifierSums? Settle(in RectifierCircuit circuit)
    {
        var state = State.Charged(circuit);
        for (var period = 0; period < MostPeriods; period++)
        {
            var before = state;
            var sums = Period(circuit, ref state);
            if (!(sums.LinkLeastV > 0.3 * sums.LinkMostV) && circuit.PowerW > 0) return null;
            if (state.IsNear(before, circuit)) return sums;
        }
        return null;
    }

    /// <summary>The highest current into an empty link switched on at the crest.</summary>
    internal static double ChargingPeakA(in RectifierCircuit circuit)
    {
        var state = default(State);
        var (dt, peak) = (StepS(circuit), 0.0);
        for (var step = 0; step < StepsAPeriod; step++)
        {
            // A quarter of a period ahead: the switch closes on the crest.
            state.Advance(circuit, circuit.OmegaRadPerS * dt * (step + StepsAPeriod / 4.0), dt);
            peak = Math.Max(peak, Math.Abs(state.LineA));
        }
        return peak;
    }

    private static double StepS(in RectifierCircuit circuit) => 2 * Math.PI / circuit.OmegaRadPerS / StepsAPeriod;

    private static RectifierSums Period(in RectifierCircuit circuit, ref State state)
    {
        var dt = StepS(circuit);
        var (square, sine, cosine, peak, input, mean) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        var (least, most) = (double.MaxValue, 0.0);
        for (var step = 0; step < StepsAPeriod; step++)
        {
            var angle = 2 * Math.PI * step / StepsAPeriod;
            var (sin, cos) = Math.SinCos(angle);
            var (amperes, link) = (state.LineA, state.LinkV(circuit));
            (square, sine, cosine) = (square + amperes * amperes, sine + amperes * sin, cosine + amperes * cos);
            (peak, input, mean) = (Math.Max(peak, Math.Abs(amperes)), input + state.SourceW(circuit, angle), mean + link);
            (least, most) = (Math.Min(least, link), Math.Max(most, link));
            state.Advance(circuit, angle, dt);
        }
        const double N = StepsAPeriod;
        return new(square / N, 2 * sine / N, 2 * cosine / N, peak, input / N, mean / N, least, most);
    }

    /// <summary>Currents of three conductors (one for a single phase) and the capacitors' voltages.</summary>
    private struct State
    {
        private const double ThirdOfATurn = 2 * Math.PI / 3;

        private double a;
        private double b;
        private double c;
        private double upperV;
        private double lowerV;

        internal readonly double LineA => a;

        internal static State Charged(in RectifierCircuit circuit) => new()
        {
            upperV = 0.97 * circuit.PeakV,
            lowerV = circuit.Kind == RectifierKind.Doubler ? 0.97 * circuit.PeakV : 0,
        };

        /// <summary>
        /// Whether a period ended as it began, capacitor by capacitor: means alone stand still now and then while a weakly
        /// damped link swings.
        /// </summary>
        internal readonly bool IsNear(in State other, in RectifierCircuit circuit) =>
            Math.Abs(upperV - other.upperV) < Settled * circuit.PeakV
            && Math.Abs(lowerV - other.lowerV) < Settled * circuit.PeakV
            && Math.Abs(a - other.a) * circuit.LHenry * circuit.OmegaRadPerS < Settled * circuit.PeakV;

        internal readonly double LinkV(in RectifierCircuit circuit) =>
            circuit.Kind == RectifierKind.Doubler ? upperV + lowerV : upperV;

        internal readonly double SourceW(in RectifierCircuit circuit, double angle)
        {
            if (circuit.Kind != RectifierKind.ThreePhase) return circuit.PeakV * Math.Sin(angle) * a;
            var phaseV = circuit.PeakV / Math.Sqrt(3);
            return phaseV * (Math.Sin(angle) * a + Math.Sin(angle - ThirdOfATurn) * b + Math.Sin(angle + ThirdOfATurn) * c);
        }

        internal void Advance(in RectifierCircuit circuit, double angle, double dt)
        {
            if (circuit.Kind == RectifierKind.ThreePhase) AdvanceThree(circuit, angle, dt);
            else AdvanceOne(circuit, angle, dt);
        }

        private void AdvanceOne(in RectifierCircuit circuit, double angle, double dt)
        {
            var doubler = circuit.Kind == RectifierKind.Doubler;
            var middleV = circuit.PeakV * Math.Sin(angle + circuit.OmegaRadPerS * dt / 2);
            var way = a != 0 ? Math.Sign(a) : Math.Sign(middleV);
            var againstV = doubler && way < 0 ? lowerV : upperV;
            var current = Math.Abs(a);
            var driveV = way * middleV - againstV;
            if (current > 0 || driveV > 0)
            {
                // The capacitor in the middle of the step first, then the whole step against it.
                var half = Math.Max(0, circuit.Moved(current, driveV, dt / 2).Amperes);
                var middleCapV = againstV + dt / 2 * ((current + half) / 2 - LoadA(circuit)) / circuit.CFarad;
                var (next, charge) = circuit.Moved(current, way * middleV - middleCapV, dt);
                // A current that dies within the step flows for the share of it that it lives.
                if (next < 0) charge = current * dt * current / (current - next) / 2;
                Charge(circuit, way, charge, dt);
                a = way * Math.Max(0, next);
            }
            else
            {
                Charge(circuit, 1, 0, dt);
                a = 0;
            }
        }

        private void Charge(in RectifierCircuit circuit, int way, double coulombs, double dt)
        {
            var drain = LoadA(circuit) * dt / circuit.CFarad;
            upperV = Math.Max(0, upperV - drain);
            if (circuit.Kind == RectifierKind.Doubler)
            {
                lowerV = Math.Max(0, lowerV - drain);
                if (way < 0) lowerV += coulombs / circuit.CFarad;
                else upperV += coulombs / circuit.CFarad;
            }
            else
            {
                upperV += coulombs / circuit.CFarad;
            }
        }

        private readonly double LoadA(in RectifierCircuit circuit)
        {
            var link = LinkV(circuit);
            return circuit.PowerW > 0 ? circuit.PowerW / Math.Max(link, 1) : circuit.LoadS * link;
        }

        private void AdvanceThree(in RectifierCircuit circuit, double angle, double dt)
        {
            var (phaseV, at) = (circuit.PeakV / Math.Sqrt(3), angle + circuit.OmegaRadPerS * dt / 2);
            var (ea, eb, ec) = (
                phaseV * Math.Sin(at), phaseV * Math.Sin(at - ThirdOfATurn), phaseV * Math.Sin(at + ThirdOfATurn));
            var (sa, sb, sc) = (Math.Sign(a), Math.Sign(b), Math.Sign(c));
            OpenDiodes(ea, eb, ec, ref sa, ref sb, ref sc);
            var conducting = Math.Abs(sa) + Math.Abs(sb) + Math.Abs(sc);
            if (conducting >= 2)
            {
                var neutralV = NeutralV(ea, eb, ec, sa, sb, sc, conducting);
                Move(ref a, ea, sa, neutralV, circuit, dt);
                Move(ref b, eb, sb, neutralV, circuit, dt);
                Move(ref c, ec, sc, neutralV, circuit, dt);
                Balance();
            }
            var into = Math.Max(0, a) + Math.Max(0, b) + Math.Max(0, c);
            upperV = Math.Max(0, upperV + (into - LoadA(circuit)) * dt / circuit.CFarad);
        }

        /// <summary>Lets a phase without current conduct where its diode is driven, to the upper rail (1) or the lower (−1).</summary>
        private readonly void OpenDiodes(double ea, double eb, double ec, ref int sa, ref int sb, ref int sc)
        {
            var conducting = Math.Abs(sa) + Math.Abs(sb) + Math.Abs(sc);
            if (conducting == 0)
            {
                var (highest, lowest) = (Math.Max(ea, Math.Max(eb, ec)), Math.Min(ea, Math.Min(eb, ec)));
                if (highest - lowest <= upperV) return;
                (sa, sb, sc) = (Way(ea), Way(eb), Way(ec));
                return;
                int Way(double e) => e == highest ? 1 : e == lowest ? -1 : 0;
            }
            if (conducting != 2) return;
            var neutralV = NeutralV(ea, eb, ec, sa, sb, sc, conducting);
            if (sa == 0) sa = Driven(ea + neutralV);
            else if (sb == 0) sb = Driven(eb + neutralV);
            else sc = Driven(ec + neutralV);
        }

        private readonly int Driven(double terminalV) => terminalV > upperV ? 1 : terminalV < 0 ? -1 : 0;

        /// <summary>Voltage of the source's star point above the lower rail: what keeps the sum of the currents at zero.</summary>
        private readonly double NeutralV(double ea, double eb, double ec, int sa, int sb, int sc, int conducting)
        {
            var sum = 0.0;
            if (sa != 0) sum += (sa > 0 ? upperV : 0) - ea;
            if (sb != 0) sum += (sb > 0 ? upperV : 0) - eb;
            if (sc != 0) sum += (sc > 0 ? upperV : 0) - ec;
            return sum / conducting;
        }

        private readonly void Move(ref double current, double e, int way, double neutralV, in RectifierCircuit circuit, double dt)
        {
            if (way == 0) return;
            var drive = e + neutralV - (way > 0 ? upperV : 0);
            current = circuit.Moved(current, drive, dt).Amperes;
            if (current * way < 0) current = 0;
        }

        /// <summary>A current cut at zero leaves a rest, which the larger of the other two takes.</summary>
        private void Balance()
        {
            var rest = a + b + c;
            if (rest == 0) return;
            if (Math.Abs(a) >= Math.Abs(b) && Math.Abs(a) >= Math.Abs(c)) a -= rest;
            else if (Math.Abs(b) >= Math.Abs(c)) b -= rest;
            else c -= rest;
        }
    }
}
