#!/usr/bin/env python3
"""The inductance of a rectangular loop by numpy and scipy: first that it agrees with the service, then how the speeds compare.

Every filament of every turn is taken against every other by the closed form of Neumann's integral for parallel wires; a wire
against itself by its geometric mean distance, with the skin effect from Bessel functions. All pairs at once, as one is used to
write such a sum with numpy: nothing is grouped by symmetry. Corners are sharp, as the sum has only parallel pairs then.

    python3 -m venv tests/load/.venv && tests/load/.venv/bin/pip install -r tests/load/requirements.txt
    tests/load/measure --quick          builds the programs
    tests/load/.venv/bin/python tests/load/inductance.py
"""

import json
import pathlib
import statistics
import subprocess
import tempfile
import time

import numpy
import scipy
from scipy.constants import mu_0
from scipy.special import jve

from programs import BUILT, SERVER_CORE, Server

FOOT, INCH = 0.3048, 0.0254
# Annealed copper at 20 °C (IACS), and the diameter of 14 AWG (ASTM B258).
RESISTIVITY, AWG_14 = 1.7241e-8, 0.005 * INCH * 92 ** (22 / 39)
PITCH, FREQUENCY = 0.150 * INCH, 50e3
# What the README lets the service differ from the reference value of three turns.
TOLERANCE = 0.005
NAME = "loop-characteristics"


def internal_factor(radius, frequency):
    """Y of a round wire: its internal inductance is μ0·Y/2π per metre."""
    wave = (1 - 1j) / numpy.sqrt(RESISTIVITY / (numpy.pi * frequency * mu_0))
    impedance = RESISTIVITY * wave / (2 * numpy.pi * radius) * jve(0, wave * radius) / jve(1, wave * radius)
    return impedance.imag / (frequency * mu_0)


def primitive(reach, distance):
    return reach * numpy.arcsinh(reach / distance) - numpy.hypot(reach, distance)


def inductance(along, across, turns, radius=AWG_14 / 2, pitch=PITCH, frequency=FREQUENCY):
    """Self-inductance in henry of a loop with sharp corners; sizes in metres, turns stacked at the pitch."""
    distance = radius * numpy.exp(-internal_factor(radius, frequency))
    depth = numpy.tile(numpy.arange(turns) * pitch, 2)
    total = 0.0
    for length, width in ((along, across), (across, along)):
        # The two sides of one direction: their places, and which way the current runs.
        place = numpy.repeat([0.0, width], turns)
        sense = numpy.repeat([1.0, -1.0], turns)
        apart = numpy.hypot(place[:, None] - place[None, :], depth[:, None] - depth[None, :])
        numpy.fill_diagonal(apart, distance)
        pairs = 2 * (primitive(length, apart) - primitive(0.0, apart))
        # A side of a closed turn has no free ends.
        pairs -= 2 * distance * numpy.eye(2 * turns)
        total += sense @ pairs @ sense
    return mu_0 / (4 * numpy.pi) * total


def request(along, across, turns):
    return json.dumps({"loop": {"along_travel": f"{along} ft", "across_lane": f"{across} ft", "turns": turns,
                                "wire": {"gauge": "14 AWG", "over_insulation": "0.150 in"}},
                       "lead_in": {"length": "100 ft"}})


def agree(folder):
    """Compares the two over sizes and turns, and gives the largest difference."""
    server, worst, count = Server.service(folder), 0.0, 0
    try:
        for along in (3, 4, 6, 8):
            for across in (3, 6, 12, 20, 36):
                for turns in (1, 2, 3, 5, 8):
                    status, answer = server.ask(f"/v1/{NAME}", request(along, across, turns))
                    if status != 200:
                        raise SystemExit(f"inductance: {along} x {across} ft, {turns} turns: {answer.decode()}")
                    theirs = json.loads(answer)["loop_inductance_uh"]
                    worst = max(worst, abs(inductance(along * FOOT, across * FOOT, turns) * 1e6 / theirs - 1))
                    count += 1
    finally:
        server.end()
    if not worst < TOLERANCE:
        raise SystemExit(f"inductance: numpy and the service differ by {worst:.3%}, more than {TOLERANCE:.1%}")
    return worst, count


def of_python(calls):
    before = time.process_time_ns()
    for _ in range(calls):
        inductance(6 * FOOT, 6 * FOOT, 3)
    return (time.process_time_ns() - before) / calls / 1e3


def of_service(file, calls):
    alone = [str(BUILT / "examples" / "floor"), "alone", NAME, str(file), "answer", str(calls)]
    return int(subprocess.run(["taskset", "-c", SERVER_CORE, *alone], check=True, capture_output=True).stdout) / 1e3


def main():
    with tempfile.TemporaryDirectory(prefix="loopwright-load-") as folder:
        worst, count = agree(folder)
        print(f"numpy {numpy.__version__}, scipy {scipy.__version__}: {count} loops agree within {worst:.4%}")
        file = pathlib.Path(folder) / "request.json"
        file.write_text(request(6, 6, 3))
        pairs = [(of_python(3000), of_service(file, 50_000)) for _ in range(7)]
    theirs, ours = (statistics.median(side) for side in zip(*pairs))
    ratios = [one / other for one, other in pairs]
    print(f"6 x 6 ft, three turns, processor time of one call: numpy {theirs:.1f} µs for the inductance alone, "
          f"the service {ours:.1f} µs for the whole report")
    print(f"the service computes {statistics.median(ratios):.1f} ({min(ratios):.1f}..{max(ratios):.1f}) reports for each inductance by numpy")


if __name__ == "__main__":
    main()
