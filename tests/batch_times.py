#!/usr/bin/python3
"""Times the batches beside NumPy and SciPy, on the same points in one run. Not a test: it judges no time.

    /usr/bin/python3 tests/batch_times.py [PROGRAM]

PROGRAM is the built Spindlewright.Benchmarks.dll; left out, the one of a Release build of this checkout.

It prints the machine and its load; the batches' time a point from a thousand to ten million points; the same points in NumPy,
written three ways; the distance to what the machine can do at most; and a million overpowering speeds beside NumPy's.
The results of both are set against each other, and a difference ends the script with an error: two programs that compute
different things are not compared.

Needs Debian's python3-numpy and python3-scipy and the .NET runtime. Writes into a temporary folder alone.
"""
import math
import os
import pathlib
import subprocess
import sys
import tempfile
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ[name] = "1"  # NumPy's elementwise functions use one core; keep the rest from using more.

import numpy as np
import scipy
from scipy.optimize import brentq

ROOT = pathlib.Path(__file__).resolve().parent.parent
STEPS = [(1 / 1.0757660660868371) ** power for power in range(1, 9)]
RATED_PHASE_V, RATED_HZ, POLES = 230.94010767585033, 50.0, 6
SLIPS_A_ROW, BLOCK, COMPARED, SAMPLES, CELLS = 1000, 4096, 100_000, 1_000_000, 256
SHARE = 1e-12


def say(what, told):
    print(f"{what:<74} {told}")


def shortest(run, least=5, enough=0.6):
    best, spent, count = math.inf, 0.0, 0
    while count < least or spent < enough:
        start = time.perf_counter()
        run()
        took = time.perf_counter() - start
        best, spent, count = min(best, took), spent + took, count + 1
        if spent > 5 * enough and count >= 2:
            break
    return best


def uniform(samples, place):
    at = 0.5 + (samples + 1) * STEPS[place]
    return at - np.floor(at)


def circuits(count, warmer=1.0):
    samples = np.arange(count)
    spread = lambda middle, place: middle * (0.8 + 0.4 * uniform(samples, place))
    return (spread(19, 0) * warmer, spread(14.3, 1), spread(15.6, 2) * warmer, spread(14.3, 3), spread(154, 4),
            2500 * (0.7 + 0.6 * uniform(samples, 5)))


def complex_points(circuit, hz, volts, slip):
    """The circuit as a textbook writes it, in complex numbers."""
    r1, x1, r2, x2, xm, rfe = circuit
    a = hz / RATED_HZ
    shunt = a ** -0.5 / rfe + 1 / (1j * a * xm)
    rotor = slip / (r2 + 1j * slip * a * x2)
    behind = 1 / (shunt + rotor)
    impedance = r1 + 1j * a * x1 + behind
    current = volts / impedance
    emf = current * behind
    torque = 3 * np.abs(emf * rotor) ** 2 * r2 / slip / (4 * math.pi * hz / POLES)
    return torque, np.abs(current), impedance.real / np.abs(impedance)


def real_points(circuit, hz, volts, slip):
    """The batches' own formulas: one root and one quotient a point, real numbers."""
    r1, x1, r2, x2, xm, rfe = circuit
    a = hz / RATED_HZ
    x1, x2 = a * x1, a * x2
    slip_x2, slip_r2 = slip * x2, slip * r2
    d = r2 * r2 + slip_x2 * slip_x2
    g = a ** -0.5 / rfe * d + slip_r2
    b = -1 / (a * xm) * d - slip * slip_x2
    q = g * g + b * b
    u, v = r1 * g - x1 * b + d, r1 * b + x1 * g
    inverse = 1 / np.sqrt(q * (u * u + v * v))
    per_volt = q * inverse
    torque = 3 / (4 * math.pi * hz / POLES) * volts * volts * (d * slip_r2) * (per_volt * inverse)
    return torque, volts * per_volt, (r1 * q + d * g) * inverse


def pull_out(circuit, hz, volts):
    r1, x1, r2, x2, xm, rfe = circuit
    a = hz / RATED_HZ
    core, b = a ** -0.5 / rfe, -1 / (a * xm)
    stator = r1 * r1 + (a * x1) ** 2
    m = (1 + r1 * core - a * x1 * b) ** 2 + (r1 * b + a * x1 * core) ** 2
    resistance = (r1 + core * stator) / m
    impedance = np.sqrt(resistance ** 2 + ((a * x1 - b * stator) / m + a * x2) ** 2)
    omega = 4 * math.pi * hz / POLES
    peak = 3 * volts ** 2 / m / (2 * omega * (resistance + impedance))
    standstill = real_points(circuit, hz, volts, 1.0)[0]
    return np.where(r2 > impedance, standstill, peak)


def overpowering_rpm(count):
    """First of 256 cells at whose end the larger pull-out torque of cold and hot passes the hand; the root in it by bisection."""
    samples = np.arange(count)
    cold, hot = circuits(count), circuits(count, 1.3)
    link, hand = 0.9 + 0.2 * uniform(samples, 6), 4 + 20 * uniform(samples, 7)
    limit = (hand + 0.2) / 4

    def excess(hz, at):
        volts = 400 * hz / 50 / math.sqrt(3) * link[at]
        return np.maximum(*(pull_out(tuple(each[at] for each in side), hz, volts) for side in (cold, hot))) - limit[at]

    found = np.full(count, np.nan)
    left = samples
    low = 3.0
    passed = excess(low, left) >= 0
    found[left[passed]] = low
    left = left[~passed]
    for cell in range(1, CELLS + 1):
        high = 3 + 47 * cell / CELLS
        passed = excess(high, left) >= 0
        inside = left[passed]
        if inside.size:
            a, b = np.full(inside.size, low), np.full(inside.size, high)
            for _ in range(42):
                middle = (a + b) / 2
                above = excess(middle, inside) >= 0
                a, b = np.where(above, a, middle), np.where(above, middle, b)
            found[inside] = (a + b) / 2
        left, low = left[~passed], high
    return 120 * found / POLES / 4, lambda at, hz: float(excess(hz, np.array([at]))[0])


def in_blocks(function, circuit, slips):
    """NumPy at its best: pieces that stay in the cache."""
    for start in range(0, len(slips), BLOCK):
        function(circuit, RATED_HZ, RATED_PHASE_V, slips[start:start + BLOCK])


def agree(what, ours, theirs, share=SHARE):
    apart = np.nanmax(np.abs(ours - theirs) / np.abs(theirs))
    say(f"largest difference of {what}", f"{apart:.1e} of the value")
    if not (apart <= share) or not np.array_equal(np.isnan(ours), np.isnan(theirs)):
        sys.exit(f"{what} differs by more than {share:g}: the times are not comparable")


def main():
    program = sys.argv[1] if len(sys.argv) > 1 else ROOT / "tests/Spindlewright.Benchmarks/bin/Release/net10.0/Spindlewright.Benchmarks.dll"
    if not pathlib.Path(program).is_file():
        sys.exit(f"No program at {program}. Build first: dotnet build tests/Spindlewright.Benchmarks -c Release")
    cpu = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "unknown")
    say("cores", os.cpu_count())
    say("processor", cpu)
    say("NumPy, SciPy", f"{np.__version__}, {scipy.__version__}")
    say("load over one minute, before", f"{os.getloadavg()[0]:.1f}")
    with tempfile.TemporaryDirectory() as folder:
        compare(pathlib.Path(folder), program)
    say("load over one minute, after", f"{os.getloadavg()[0]:.1f}")


def compare(folder, program):
    subprocess.run(["dotnet", str(program), "compare", str(folder)], check=True, stderr=subprocess.DEVNULL)
    times = {name: float(value) for name, value in (line.split() for line in open(folder / "times.txt"))}
    stored = lambda name: np.fromfile(folder / f"{name}.f8")
    say("width of the vectors", f"{times['vector_bits']:.0f} bits")
    print("\nExact circuit with core loss, torque, current and power factor, constant parameters, one core")
    for points in (10 ** power for power in range(3, 8)):
        say(f"  batch, {points} points", f"{times[f'sweep_{points}_ns']:.2f} ns a point, {times[f'sweep_{points}_bytes']:.0f} bytes allocated")
    ours = times["sweep_1000000_ns"]
    one = tuple(each[0] for each in circuits(1))
    slips = np.arange(1, 1_000_001) / 1_000_000
    for what, run in (
            ("NumPy, complex numbers", lambda: complex_points(one, RATED_HZ, RATED_PHASE_V, slips)),
            (f"NumPy, complex numbers, pieces of {BLOCK}", lambda: in_blocks(complex_points, one, slips)),
            (f"NumPy, the batch's own formulas, pieces of {BLOCK}", lambda: in_blocks(real_points, one, slips))):
        theirs = shortest(run) / len(slips) * 1e9
        say(f"  {what}", f"{theirs:.1f} ns a point, {theirs / ours:.1f} times the batch's")
    limit, read, write = (times[f"limit_{name}"] for name in ("arithmetic_ns", "read_ns_a_number", "write_ns_a_number"))
    say("  limit: one root and one quotient a point, from the nearest cache", f"{limit:.2f} ns a point; the batch takes {ours / limit:.2f} times that")
    say("  limit: reading a slip and writing three results in memory", f"{read + 3 * write:.2f} ns a point; the batch takes {ours / (read + 3 * write):.2f} times that")

    print("\nEvery point with its own circuit, frequency and voltage, one core")
    hz = 5 + 45.0 * np.arange(COMPARED) / COMPARED
    volts, slips, many = RATED_PHASE_V * hz / 50, np.arange(1, COMPARED + 1) / COMPARED, circuits(COMPARED)
    points = complex_points(many, hz, volts, slips)
    for name, theirs in zip(("torque", "current", "power-factor"), points):
        agree(name, stored(name), theirs)
    agree("pull-out", stored("pull-out"), pull_out(many, hz, volts))
    for name, run in (("layered", lambda: complex_points(many, hz, volts, slips)), ("pull_out", lambda: pull_out(many, hz, volts))):
        theirs = shortest(run) / COMPARED * 1e9
        mine = times[f"{name}_ns"]
        say(f"  {name.replace('_', '-')}: batch and NumPy", f"{mine:.1f} and {theirs:.1f} ns a point, ratio {theirs / mine:.1f}")

    print(f"\nOverpowering speed, cold and hot circuit of each sample, {SAMPLES} samples")
    start = time.perf_counter()
    rpm, excess = overpowering_rpm(COMPARED)
    theirs = (time.perf_counter() - start) * SAMPLES / COMPARED
    agree("overpowering speed", stored("rpm"), rpm, 1e-10)
    start = time.perf_counter()
    some = [at for at in range(2000) if rpm[at] * POLES * 4 / 120 > 3][:200]
    roots = [brentq(lambda at_hz: excess(at, at_hz), max(3, rpm[at] * 0.2 - 0.1), rpm[at] * 0.2 + 0.1, xtol=1e-12) * 5 for at in some]
    by_scipy = (time.perf_counter() - start) / len(some) * SAMPLES
    agree("overpowering speed, roots by SciPy", stored("rpm")[some], np.array(roots), 1e-10)
    for form in ("constant", "saturated"):
        say(f"  batch, {form} parameters, all cores", f"{times[f'overpowering_{form}_s']:.2f} s")
    constant = times["overpowering_constant_s"]
    say(f"  NumPy, constant parameters ({COMPARED} samples, times {SAMPLES // COMPARED})", f"{theirs:.0f} s, {theirs / constant:.0f} times the batch's")
    say("  SciPy's root alone, sample by sample (200 samples, scaled)", f"{by_scipy:.0f} s, {by_scipy / constant:.0f} times the batch's")


main()
