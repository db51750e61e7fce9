"""The chain as one would write it in Python for speed: one pass with numba over plain int32 counts in memory.

Greatest, histogram of 64 bins of 512 counts, pulls, overload episodes, slack-to-snap, rainflow behind a gate of 512 counts.
Thresholds are those of FINDINGS.md at half a newton a count, 500 Hz, a limit of 8 kN and a rated pull of 12.8 kN. A snap here has no
settled level and rainflow goes over the whole trace: a little less, and a little more, than the tool does.

Usage: chain.py FILE SPLIT. FILE: int32, native order; SPLIT: where two threads part it. Then a line on stdin, 1 or 2 (threads), is
answered by a line: seconds, greatest, pulls, overloads, snaps, cycles, and the 64 bins.
"""

import sys
import time
from concurrent.futures import ThreadPoolExecutor

import numpy as np
from numba import njit

PULL_FROM, PULL_HALF, PULL_FOR, PULL_END = 3000, 1500, 150, 1500
LIMIT, CLEAR, QUIET = 16000, 15200, 250
SLACK_BELOW, SLACK_FOR, SNAP_WINDOW, SNAP_FROM = 1500, 50, 250, 3840
GATE = 512
STACK = 4096


@njit(nogil=True)
def chain(counts, bins):
    greatest = -(1 << 31)
    pulls = 0
    pull_open = False
    opening = 0
    below = 0
    overloads = 0
    overload_open = False
    clear = 0
    snaps = 0
    slack = 0
    window = 0
    peak = 0
    cycles = 0.0
    stack = np.empty(STACK, np.int64)
    depth = 0
    direction = 0
    low = counts[0]
    high = counts[0]
    stack[0] = counts[0]
    depth = 1
    for i in range(counts.shape[0]):
        c = counts[i]
        if c > greatest:
            greatest = c
        b = c >> 9
        bins[0 if b < 0 else (63 if b > 63 else b)] += 1

        if c >= PULL_FROM:
            below = 0
            if not pull_open:
                opening += 1
                if opening >= PULL_FOR:
                    pull_open = True
                    opening = 0
        else:
            opening = 0
            if pull_open:
                below = below + 1 if c < PULL_HALF else 0
                if below >= PULL_END:
                    pull_open = False
                    below = 0
                    pulls += 1

        if c > LIMIT:
            overload_open = True
            clear = 0
        elif overload_open:
            clear = clear + 1 if c <= CLEAR else 0
            if clear >= QUIET:
                overload_open = False
                overloads += 1

        if c < SLACK_BELOW:
            slack += 1
        else:
            if slack >= SLACK_FOR:
                window = SNAP_WINDOW
                peak = 0
            slack = 0
        if window > 0:
            if c > peak:
                peak = c
            window -= 1
            if window == 0 and peak >= SNAP_FROM:
                snaps += 1

        turned = False
        point = 0
        if direction > 0:
            if c > high:
                high = c
            elif high - c >= GATE:
                turned = True
                point = high
                low = c
                direction = -1
        elif direction < 0:
            if c < low:
                low = c
            elif c - low >= GATE:
                turned = True
                point = low
                high = c
                direction = 1
        else:
            if c - low >= GATE:
                turned = True
                point = low
                high = c
                direction = 1
            elif high - c >= GATE:
                turned = True
                point = high
                low = c
                direction = -1
            elif c < low:
                low = c
            elif c > high:
                high = c
        if turned:
            stack[depth] = point
            depth += 1
            while depth >= 3:
                x = abs(stack[depth - 1] - stack[depth - 2])
                y = abs(stack[depth - 2] - stack[depth - 3])
                if x < y:
                    break
                if depth == 3:
                    cycles += 0.5
                    stack[0] = stack[1]
                    stack[1] = stack[2]
                    depth = 2
                else:
                    cycles += 1.0
                    stack[depth - 3] = stack[depth - 1]
                    depth -= 2
    if pull_open:
        pulls += 1
    if overload_open:
        overloads += 1
    return greatest, pulls, overloads, snaps, cycles


def part(counts):
    bins = np.zeros(64, np.int64)
    return chain(counts, bins), bins


def answer(parts, pool):
    start = time.perf_counter()
    found = list(pool.map(part, parts))
    seconds = time.perf_counter() - start
    figures = np.array([one[0] for one in found])
    bins = sum(one[1] for one in found)
    sums = figures.sum(axis=0)
    words = [repr(seconds), int(figures[:, 0].max()), int(sums[1]), int(sums[2]), int(sums[3]), sums[4]]
    print(*words, *bins, flush=True)


def main():
    counts = np.fromfile(sys.argv[1], np.int32)
    split = int(sys.argv[2])
    part(counts[:1000])  # compiles
    print("ready", flush=True)
    with ThreadPoolExecutor(2) as pool:
        for line in sys.stdin:
            parts = [counts] if line.strip() == "1" else [counts[:split], counts[split:]]
            answer(parts, pool)


main()
