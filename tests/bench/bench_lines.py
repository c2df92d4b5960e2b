"""Measure the line reader against the general quantity parser: share of main amounts right, and lines per second.

    python tests/bench/bench_lines.py

The lines are those of corpus/lines. A main amount is right where both ends and the unit are; a container's count counts,
not its size. The quantity parser gives the middle of a range and a half-width, from which both ends come back exactly;
what it calls a dimensionless unit counts as no unit. Its table of units belongs to the process, so each reading runs
in a process of its own, after one warming pass over the lines.
"""

from __future__ import annotations

import json
import subprocess
import sys
import time
import warnings
from collections.abc import Callable
from importlib import resources

import msgspec

PASSES = 3

Main = tuple[float, float, str | None] | None
Read = Callable[[str], Main]

#: Names of the quantity parser's stock units that mean one of ours.
STOCK = {
    "cubic centimetre": "milliliter", "millilitre": "milliliter", "centilitre": "centiliter", "decilitre": "deciliter", "litre": "liter",
    "pound-mass": "pound", "fluid ounce": "fluid ounce", "dimensionless": None, "percentage": "%", "table spoon": "tablespoon", "tea spoon": "teaspoon",
}  # fmt: skip


def lines() -> list[tuple[str, Main]]:
    """Every line of the corpus that states an amount, with its main one."""
    found: list[tuple[str, Main]] = []
    for file in sorted((resources.files("corpus") / "lines").iterdir(), key=str):
        for reading in msgspec.toml.decode(file.read_text(encoding="utf-8"))["reading"]:
            if reading["amounts"]:
                main = reading["amounts"][0]
                want = (main["low"], main.get("high", main["low"]), main.get("unit"))
                found += [(line, want) for line in reading["lines"]]
    return found


def general(parse: Callable[[str], list[object]]) -> Read:
    """The first quantity of the general parser."""

    def read(line: str) -> Main:
        try:
            quantities = parse(line)
        except (KeyError, ValueError, IndexError, AttributeError, ZeroDivisionError):
            return None
        if not quantities:
            return None
        first = quantities[0]
        half = first.uncertainty or 0  # type: ignore[attr-defined]
        unit = first.unit.name  # type: ignore[attr-defined]
        return first.value - half, first.value + half, STOCK.get(unit, unit)  # type: ignore[attr-defined]

    return read


def stock() -> Read:
    """The general parser as it comes."""
    from quantulum3 import parser

    return general(parser.parse)


def kitchen() -> Read:
    """The general parser with the kitchen's table of units, as the reader of steps asks it."""
    from assistant.reader import prose

    prose.quantities("1 cup")
    from quantulum3 import parser

    return general(parser.parse)


def ours() -> Read:
    """The line reader."""
    from assistant.reader.lines import read_line

    def read(line: str) -> Main:
        found = read_line(line, line=0)
        if not found or not found[0].amounts:
            return None
        main = found[0].amounts[0]
        return main.low, main.high, main.unit

    return read


READERS = {"stock": stock, "kitchen": kitchen, "ours": ours}


def same(got: Main, want: Main) -> bool:
    """Whether both ends and the unit agree; a third may be written with six digits."""
    if got is None or want is None:
        return got is want
    return abs(got[0] - want[0]) < 1e-4 and abs(got[1] - want[1]) < 1e-4 and got[2] == want[2]


def measure(name: str) -> dict[str, float]:
    """Share right and lines per second of one reader, in this process."""
    warnings.simplefilter("ignore")
    cases = lines()
    read = READERS[name]()
    right = sum(same(read(line), want) for line, want in cases)
    started = time.perf_counter()
    for _ in range(PASSES):
        for line, _want in cases:
            read(line)
    seconds = time.perf_counter() - started
    return {"lines": len(cases), "right": right, "per_second": PASSES * len(cases) / seconds}


def main() -> None:
    """Print the three of them."""
    if len(sys.argv) > 1:
        sys.stdout.write(json.dumps(measure(sys.argv[1])))
        return
    sys.stdout.write(f"{'reader':10}{'right':>8}{'of':>6}{'share':>9}{'lines/s':>10}\n")
    for name in READERS:
        done = subprocess.run([sys.executable, __file__, name], capture_output=True, text=True, check=True)
        row = json.loads(done.stdout.strip().splitlines()[-1])
        share = row["right"] / row["lines"]
        sys.stdout.write(
            f"{name:10}{row['right']:8d}{row['lines']:6d}{share:9.1%}{row['per_second']:10.0f}\n"
        )


if __name__ == "__main__":
    main()
