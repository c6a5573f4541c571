"""Calculations alone, in builds of `floor` side by side: processor time and instructions of one answer.

On a machine with other work, a build is compared with another only within a run: they take turns, one pass of all after another, and
the order turns round each time.
"""

import dataclasses
import pathlib
import statistics
import subprocess

import counting
from programs import BUILT

DEFAULT = BUILT / "examples" / "floor"


@dataclasses.dataclass(frozen=True)
class Build:
    """A built `floor`, and what it is called in tables."""

    label: str
    program: pathlib.Path

    def nanoseconds(self, name, request, count):
        """Processor time of one answer, as the mean of so many. A request that is refused ends the measurement."""
        command = [str(self.program), "alone", name, str(request), "answer", str(count)]
        ran = subprocess.run(command, capture_output=True, text=True)
        if ran.returncode:
            raise SystemExit(f"load: {self.label}: {name} {request}: {ran.stderr.strip()[:500]}")
        return int(ran.stdout)

    def instructions(self, name, request, folder, micros):
        """Instructions of one answer that takes so long; of several where it is short beside the start of the program.

        The program answers once before it begins, so what is made once and kept is left out.
        """
        count = min(max(1, int(20e3 / micros)), 500)
        return counting.of_stage(name, request, "answer", (0, count), folder, self.program)


def builds(named):
    """The builds of arguments like `LABEL=PROGRAM` or `PROGRAM`; that of this tree where there are none."""
    found = []
    for text in named or [f"now={DEFAULT}"]:
        label, _, program = text.rpartition("=")
        program = pathlib.Path(program).resolve()
        if not program.is_file():
            raise SystemExit(f"load: {program} is not there: cargo build --profile bench --example floor")
        found.append(Build(label or program.name, program))
    if len({build.label for build in found}) < len(found):
        raise SystemExit("load: two builds have the same label: name them LABEL=PROGRAM")
    return found


def times(of, cases, rounds, seconds):
    """Microseconds of one answer for each case and build, one for each round: {(case, label): [...]}."""
    # The first tells how many answers make up the time.
    counts = {case: max(1, int(seconds * 1e9 / max(of[0].nanoseconds(*asked, 2), 100))) for case, asked in cases.items()}
    found = {(case, build.label): [] for case in cases for build in of}
    for round_ in range(rounds):
        for case, asked in cases.items():
            for build in of if round_ % 2 == 0 else reversed(of):
                found[case, build.label].append(build.nanoseconds(*asked, counts[case]) / 1e3)
    return found


def spread(values):
    """Median and range, in few digits."""
    return f"{short(statistics.median(values))} ({short(min(values))}..{short(max(values))})"


def short(value):
    """A figure with three digits that count."""
    return f"{value:,.0f}" if value >= 100 else f"{value:.1f}" if value >= 10 else f"{value:.2f}"
