"""Measure the food catalogue: milliseconds until it stands, look-ups per second by how a name is found.

    python tests/bench/bench_foods.py

The catalogue is read in fresh processes, because the file, its types and the index are each kept once read. The
names looked up are those of the catalogue, then the longer ones with a letter doubled: spelling slips.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time

FRESH = """
import time
from rules import table
from rules.foods import Food, catalogue
start = time.process_time()
table.read("foods.csv", Food)
read = time.process_time()
catalogue()
print(1000 * (read - start), 1000 * (time.process_time() - read))
"""


def fresh(times: int = 7) -> tuple[float, float]:
    """Median CPU milliseconds to read the table and to build the index."""
    runs = [
        [
            float(word)
            for word in subprocess.run(
                [sys.executable, "-c", FRESH], capture_output=True, text=True, check=True
            ).stdout.split()
        ]
        for _ in range(times)
    ]
    reading, indexing = zip(*runs, strict=True)
    return statistics.median(reading), statistics.median(indexing)


def per_second(names: list[str]) -> float:
    """Look-ups per second, each name asked for once: what was found is kept."""
    from rules.foods import Catalogue, catalogue

    empty = Catalogue(catalogue())
    start = time.perf_counter()
    for name in names:
        empty.find(name)
    return len(names) / (time.perf_counter() - start)


def main() -> None:
    """Write the figures."""
    from rules.foods import catalogue

    names = [food.name for food in catalogue()]
    slips = [name[:3] + name[2:] for name in names if len(name) > 8]
    reading, indexing = fresh()
    out = sys.stdout.write
    out(
        f"{len(names)} foods, {len(catalogue().names())} names: read {reading:.0f} ms, indexed {indexing:.0f} ms\n"
    )
    out(f"names: {per_second(names):.0f} a second; with a slip: {per_second(slips):.0f} a second\n")


if __name__ == "__main__":
    main()
