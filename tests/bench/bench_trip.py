"""Measure a trip planned cold, in a process of its own, against the library that it cannot start without.

    python tests/bench/bench_trip.py

The river weekend: six meals, nine people, two avoidances, two pots, one cooler. Medians of wall time and of processor
time; the ratio to spaCy's blank tokenizer in the same run cancels the machine. Bytecode is kept in a folder of this run,
as an installed package keeps its own: the first round, which is not counted, writes it.
"""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from importlib import resources

RUNS = 7
TRIP = str(resources.files("corpus") / "river-weekend.toml")
COALSIDE = "from assistant.cli import main; main()"
BLANK = "import spacy; spacy.blank('en')"
CODES: dict[str, list[str]] = {
    "blank tokenizer": [BLANK],
    "one camp plan": [COALSIDE, "camp", str(resources.files("corpus") / "recipes" / "river-can-chili.txt")],
    "the trip": [COALSIDE, "trip", TRIP],
    "the trip's booklet": [COALSIDE, "trip", TRIP, "--as", "html"],
    "the trip's JSON": [COALSIDE, "trip", TRIP, "--as", "json"],
}
#: A whole trip is planned cold in less than this [s].
ASKED_S = 2.0


def taken(words: list[str], bytecode: str) -> tuple[float, float]:
    """Wall and processor seconds of one process."""
    world = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    world["PYTHONPYCACHEPREFIX"] = bytecode
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", *words], capture_output=True, check=True, env=world)
    wall = time.perf_counter() - began
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    walls: dict[str, list[float]] = {name: [] for name in CODES}
    works: dict[str, list[float]] = {name: [] for name in CODES}
    with tempfile.TemporaryDirectory() as bytecode:
        for number in range(RUNS + 1):
            for name, words in CODES.items():
                wall, work = taken(words, bytecode)
                if number:
                    walls[name].append(wall)
                    works[name].append(work)
    base = statistics.median(works["blank tokenizer"])
    print(f"{'':20} {'wall':>8} {'least':>8} {'cpu':>8}  to spaCy blank (cpu)")
    for name in CODES:
        wall, work = statistics.median(walls[name]), statistics.median(works[name])
        ratio = work / base
        print(
            f"{name:20} {wall * 1000:5.0f} ms {min(walls[name]) * 1000:5.0f} ms {work * 1000:5.0f} ms  {ratio:5.2f} x"
        )
    slow = statistics.median(works["the trip"]) >= ASKED_S
    print(f"asked: the trip cold under {ASKED_S:g} s  {'MISSED' if slow else ''}")


if __name__ == "__main__":
    main()
