#!/usr/bin/env python3
"""Prints how long Jupyter kernels take to start and to answer on this machine. Not a test: it judges nothing.

    /usr/bin/python3 tests/jupyter_times.py [KERNEL ...]

KERNEL is a name that Jupyter knows; left out, this project's kernel and the Python one. Install this project's kernel
first: dotnet run --project src/Spindlewright.Kernel -c Release -- jupyter install

For each kernel, in turn and five rounds over, from the start of its process: to the first reply (kernel_info), and to
the reply to a first cell "1 + 1" that was sent at once; then the time from a later cell's sending to its reply (median of 20 different
sums) and to the reply after a function of 15 lines (median of 10). Needs python3-jupyter-client.
"""
import os
import platform
import statistics
import sys
import time

from jupyter_client.manager import KernelManager

PATIENCE_S = 120
ROUNDS = 5


def function_of_15_lines(language, number):
    body = "\n".join(f"    total = total + {number} * {k}" + (";" if language == "csharp" else "") for k in range(12))
    if language == "csharp":
        return f"double Sum{number}()\n{{\n    var total = 0.0;\n{body}\n    return total;\n}}\nSum{number}()"
    return f"def sum{number}():\n    total = 0.0\n{body}\n    return total\n\nsum{number}()"


def answered(client, code):
    start = time.monotonic()
    asked = client.execute(code)
    while True:
        reply = client.get_shell_msg(timeout=PATIENCE_S)
        if reply["parent_header"].get("msg_id") == asked:
            if reply["content"]["status"] != "ok":
                sys.exit(f"{code!r} failed: {reply['content'].get('evalue')}")
            return time.monotonic() - start


def measure(name):
    manager = KernelManager(kernel_name=name)
    start = time.monotonic()
    manager.start_kernel()
    client = manager.client()
    client.start_channels()
    try:
        client.wait_for_ready(timeout=PATIENCE_S)
        first_reply = time.monotonic() - start
        answered(client, "1 + 1")
        first_cell = time.monotonic() - start
        language = "csharp" if manager.kernel_spec.language.lower() in ("csharp", "c#") else "python"
        later = statistics.median(answered(client, f"{n} + 1") for n in range(20))
        longer = statistics.median(answered(client, function_of_15_lines(language, n)) for n in range(10))
        return first_reply, first_cell, later, longer
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


def machine():
    with open("/proc/cpuinfo", encoding="utf-8") as info:
        model = next((line.split(":")[1].strip() for line in info if line.startswith("model name")), platform.machine())
    return f"{model}, {os.cpu_count()} cores, load over one minute {os.getloadavg()[0]:.1f}"


def main():
    kernels = sys.argv[1:] or ["spindlewright", "python3"]
    print(machine())
    rounds = {name: [] for name in kernels}
    for _ in range(ROUNDS):
        for name in kernels:
            rounds[name].append(measure(name))
    print(f"{'median of ' + str(ROUNDS) + ' starts':<20}{'first reply':>14}{'first cell':>14}{'later cell':>14}{'15 lines':>14}")
    for name in kernels:
        first_reply, first_cell, later, longer = (statistics.median(column) for column in zip(*rounds[name]))
        print(f"{name:<20}{first_reply:>12.2f} s{first_cell:>12.2f} s{later * 1e3:>11.1f} ms{longer * 1e3:>11.1f} ms")
    print(f"load over one minute, after: {os.getloadavg()[0]:.1f}")


if __name__ == "__main__":
    main()
