"""Measure a cold start: each command in a process of its own, against the library that it cannot start without.

    python tests/bench/bench_start.py

Medians of wall time; every figure that matters is a ratio within this run, so the machine cancels out. Bytecode is
kept in a folder of this run, as an installed package keeps its own: the first round, which is not counted, writes it.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from importlib import resources

RUNS = 7
PIE = str(resources.files("corpus") / "recipes" / "river-peach-cobbler.txt")
COALSIDE = "from assistant.cli import main; main()"
CODES: dict[str, list[str]] = {
    "python": ["pass"],
    "import typer": ["import typer"],
    "blank tokenizer": ["import spacy; spacy.blank('en')"],
    "coalside --help": [COALSIDE, "--help"],
    "coalside coals": [COALSIDE, "coals", "--oven", "12", "--temp", "350F"],
    "coalside read FILE": [COALSIDE, "read", PIE],
    "coalside camp FILE": [COALSIDE, "camp", PIE],
}
#: What is asked of the start: the command, what it is measured by, the ratio that it has to stay under.
ASKED = (
    ("coalside --help", "import typer", 1.5),
    ("coalside read FILE", "blank tokenizer", 1.2),
    ("coalside camp FILE", "blank tokenizer", 1.2),
)


def seconds(words: list[str], bytecode: str) -> float:
    """The time of one process."""
    world = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    world["PYTHONPYCACHEPREFIX"] = bytecode
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", *words], capture_output=True, check=True, env=world)
    return time.perf_counter() - began


def main() -> None:
    taken: dict[str, list[float]] = {name: [] for name in CODES}
    with tempfile.TemporaryDirectory() as bytecode:
        for number in range(RUNS + 1):
            for name, words in CODES.items():
                one = seconds(words, bytecode)
                if number:
                    taken[name].append(one)
    middle = {name: statistics.median(times) for name, times in taken.items()}
    for name, value in middle.items():
        print(f"{name:20} {value * 1000:6.0f} ms")
    for name, base, most in ASKED:
        ratio = middle[name] / middle[base]
        print(f"{name:20} {ratio:6.2f} x {base}; asked: under {most}  {'' if ratio < most else 'MISSED'}")


if __name__ == "__main__":
    main()
