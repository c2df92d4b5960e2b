"""Measure warm speed: read, plan and write as a row, on one processor, against the blank tokenizer alone.

    python tests/bench/bench_warm.py [FOLDER]

The texts are those of the corpus, or the files of a folder. First and later passes are told apart: what is remembered
of names makes the later ones faster.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from importlib import resources
from pathlib import Path

PASSES = 5
ASKED_RATIO, ASKED_SPEED = 25, 120


def texts(folder: str | None) -> list[str]:
    """The recipes, line ends as they are."""
    where = Path(folder) if folder else Path(str(resources.files("corpus") / "recipes"))
    files = sorted(path for path in where.iterdir() if path.suffix in (".txt", ".md"))
    return [path.read_bytes().decode() for path in files]


def best(work: Callable[[str], object], given: list[str]) -> tuple[float, float]:
    """Seconds of the first pass and of the fastest of the later ones."""
    times = []
    for _ in range(PASSES + 1):
        began = time.perf_counter()
        for text in given:
            work(text)
        times.append(time.perf_counter() - began)
    return times[0], min(times[1:])


def main() -> None:
    given = texts(sys.argv[1] if len(sys.argv) > 1 else None)
    from assistant.batch.work import planner, reader
    from assistant.show.data import json_line
    from rules.circumstances import Day

    plan, read = planner(Day()), reader()
    plan("1 cup flour\n\nBake 30 minutes at 350 F.\n", "warm")  # the rooms and tables are loaded
    import spacy

    blank = spacy.blank("en").tokenizer
    blank("warm")
    first, later = best(lambda text: json_line(plan(text, "")), given)
    _, reading = best(lambda text: read(text, ""), given)
    _, tokens = best(blank, given)
    each = 1000 / len(given)
    print(f"{len(given)} texts; ms each: blank tokenizer {tokens * each:.2f}, read {reading * each:.2f}")
    print(
        f"read, plan and row: {later * each:.2f} ms, {len(given) / later:.0f} a second (asked: {ASKED_SPEED})"
    )
    print(f"first pass: {first * each:.2f} ms, {len(given) / first:.0f} a second")
    print(f"read, plan and row: {later / tokens:.1f} x the blank tokenizer (asked: under {ASKED_RATIO})")
    print(f"reading alone: {reading / tokens:.1f} x the blank tokenizer")


if __name__ == "__main__":
    main()
