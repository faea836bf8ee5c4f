#!/bin/sh
# Prints how long running notebooks takes on this machine. Not a test: it judges nothing.
#
#   sh tests/times.sh [PROGRAM]
#
# PROGRAM is the built Spindlewright.Kernel.dll; left out, the one of a Release build of this checkout.
#
# It prints the machine and its load, and then in seconds of wall-clock time
#   - from the start of the program to the start of a first cell, and to the end of a run of one cell "1 + 1";
#   - the whole workbook with its report, cold (the first run, into a new folder; the system's file cache is as
#     it happens to be) and again into the same folder;
#   - beside them, nbconvert with a Python kernel executing a notebook without cells, and one with the cell "1 + 1",
#     where Debian's packages jupyter-nbconvert and python3-ipykernel are installed; else it says that they are absent.
#
# Needs a shell, GNU date (nanoseconds), awk, and the .NET runtime. Writes into a temporary folder alone.
set -eu
LC_ALL=C
export LC_ALL

root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
program=${1:-$root/src/Spindlewright.Kernel/bin/Release/net10.0/Spindlewright.Kernel.dll}
if [ ! -f "$program" ]; then
    echo "No program at $program. Build first: dotnet build -c Release" >&2
    exit 2
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 130' INT TERM

now() { date +%s%N; }
seconds() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.1f s", (b - a) / 1e9 }'; }
say() { printf '%-58s %s\n' "$1" "$2"; }

# Runs a command whose output goes to a log, and prints how long it took.
timed() {
    what=$1
    shift
    from=$(now)
    if "$@" >"$work/log" 2>&1; then
        say "$what" "$(seconds "$from" "$(now)")"
    else
        say "$what" "failed:"
        tail -n 5 "$work/log"
    fi
}

notebook() {
    printf '{"cells": [%s], "metadata": {"kernelspec": {"name": "%s", "display_name": "%s", "language": "%s"}}, "nbformat": 4, "nbformat_minor": 5}\n' \
        "$1" "$2" "$2" "$3"
}
cell='{"cell_type": "code", "id": "a", "metadata": {}, "execution_count": null, "outputs": [], "source": "1 + 1"}'
notebook "$cell" spindlewright csharp >"$work/one.ipynb"
notebook "" python3 python >"$work/empty-python.ipynb"
notebook "$cell" python3 python >"$work/one-python.ipynb"

say "cores" "$(getconf _NPROCESSORS_ONLN)"
say "processor" "$(awk -F': *' '/^model name/ { print $2; exit }' /proc/cpuinfo 2>/dev/null || uname -m)"
say "memory" "$(awk '/^MemTotal/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo 2>/dev/null || echo unknown)"
say ".NET runtime" "$(dotnet --list-runtimes | awk '/^Microsoft.NETCore.App / { last = $2 } END { print last }')"
say "load over one minute, before" "$(cut -d' ' -f1 /proc/loadavg 2>/dev/null || echo unknown)"
echo

from=$(now)
dotnet "$program" run "$work/one.ipynb" --out "$work/one" 2>&1 | while IFS= read -r line; do
    case $line in *"cell 1/1"*) say "start of the program to start of the first cell" "$(seconds "$from" "$(now)")" ;; esac
done
timed "one cell, start to end" dotnet "$program" run "$work/one.ipynb" --out "$work/one"
timed "whole workbook with its report, cold" dotnet "$program" run --content "$root" --out "$work/out"
timed "whole workbook with its report, again" dotnet "$program" run --content "$root" --out "$work/out"

if command -v jupyter-nbconvert >/dev/null 2>&1; then
    timed "nbconvert, Python kernel, no cell" jupyter-nbconvert --to notebook --execute "$work/empty-python.ipynb" --output-dir "$work"
    timed "nbconvert, Python kernel, one cell" jupyter-nbconvert --to notebook --execute "$work/one-python.ipynb" --output-dir "$work"
else
    say "nbconvert, Python kernel" "absent (Debian: jupyter-nbconvert python3-ipykernel)"
fi
say "load over one minute, after" "$(cut -d' ' -f1 /proc/loadavg 2>/dev/null || echo unknown)"
