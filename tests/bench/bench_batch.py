"""Measure runs over many recipes: two processes against one, and the room that more recipes take.

    python tests/bench/bench_batch.py [RECIPES]

The recipes are made: the corpus with words exchanged, so that no two are alike and new words never end.
"""

from __future__ import annotations

import json
import random
import subprocess
import sys
import tempfile
import time
from importlib import resources
from pathlib import Path

COALSIDE = "from assistant.cli import main; main()"
FEW = 500
SYLLABLES = [first + last for first in "bdfgklmnprstvz" for last in "aeiou"]
#: Runs a command and says how much room it took at most [KB on Linux].
WATCHED = (
    "import resource, subprocess, sys; done = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL); "
    "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss); sys.exit(done.returncode)"
)


def make(path: Path, count: int) -> None:
    """Write so many recipes as rows, the same ones every time."""
    chance = random.Random(7)
    files = sorted((resources.files("corpus") / "recipes").iterdir(), key=str)
    texts = [file.read_text(encoding="utf-8") for file in files if file.name.endswith(".txt")]
    with path.open("w", encoding="utf-8") as stream:
        for number in range(count):
            lines = chance.choice(texts).split("\n")
            for _ in range(4):
                at = chance.randrange(len(lines))
                words = lines[at].split(" ")
                words.insert(chance.randrange(len(words) + 1), "".join(chance.choices(SYLLABLES, k=3)))
                lines[at] = " ".join(words)
            stream.write(json.dumps({"id": number, "text": "\n".join(lines)}) + "\n")


def run(path: Path, *more: str) -> tuple[float, float]:
    """Seconds and megabytes of one run."""
    command = [sys.executable, "-c", COALSIDE, "camp", str(path), "--as", "jsonl", *more]
    began = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", WATCHED, *command], capture_output=True, text=True, check=True
    )
    return time.perf_counter() - began, int(done.stdout) / 1024


def main() -> None:
    many = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    with tempfile.TemporaryDirectory() as folder:
        few_rows, many_rows = Path(folder, "few.jsonl"), Path(folder, "many.jsonl")
        make(few_rows, FEW)
        make(many_rows, many)
        few_s, few_mb = run(few_rows)
        one_s, one_mb = run(many_rows)
        two_s, two_mb = run(many_rows, "--jobs", "2")
    each = (one_s - few_s) / (many - FEW)
    print(f"{many} recipes: one process {one_s:.1f} s, two {two_s:.1f} s: {one_s / two_s:.2f} times as fast")
    print(f"room: {few_mb:.0f} MB for {FEW}, {one_mb:.0f} MB for {many}: {one_mb / few_mb:.2f} times as much")
    print(f"with two workers the largest process took {two_mb:.0f} MB")
    print(f"each recipe {each * 1000:.1f} ms; a million on one processor {each * 1e6 / 3600:.1f} h")


if __name__ == "__main__":
    main()
