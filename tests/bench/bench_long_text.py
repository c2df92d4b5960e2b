"""Measure a megabyte of text that no cook wrote: reading it takes seconds at most, and twice the text about twice the time.

python tests/bench/bench_long_text.py
"""

from __future__ import annotations

import random
import time

MEGABYTE = 1_000_000
ASKED_SECONDS = 3.0
_chance = random.Random(1)
#: What is repeated up to a megabyte.
KINDS = {
    "one long line": "flour ",
    "lines of an amount": "1 cup flour\n",
    "lines of ten letters": "salt egg!\n",
    "digits": "1",
    "lines of digits": "123456789\n",
    "open brackets": "(",
    "brackets": "()",
    "lines of brackets": "(1 cup (2 cups\n",
    "bullets": "- ",
    "lines of bullets": "- \n",
    "quotes": "\"'",
    "quotes in quotes": '"a "b ',
    "fractions": "1/2/3/4/",
    "ranges": "1-2-3-",
    "one word": "butter ",
    "one letter": "a ",
    "figures and units": "1 cup 2 tsp 3 oz ",
    "foods and": "salt and ",
    "foods or": "1 cup milk or ",
    "sentences": "Add the flour and bake for 20 minutes at 350 F. ",
    "lines of sentences": "Add the flour and bake for 20 minutes at 350 F until done.\n",
    "numbered steps": "1. Mix it\n",
    "headings": "FOR THE SAUCE:\n",
    "addresses": "http://river.example/c ",
    "page": "<li>1 cup flour</li>",
    "open tags": "<html><body><div>",
    "links": "[a](b) ",
    "tables": "| 1 cup | flour |\n",
    "marks on a letter": "e\u0301\u0301\u0301",
    "signs of direction": "\u202e",
    "terminal escapes": "\x1b[31m",
    "blanks": "\t",
    "empty lines": "\n",
    "chance": "".join(_chance.choices("abcdefghijklmnop 0123456789/-().,\n", k=100_000)),
}


def text(kind: str, size: int) -> str:
    """So many characters of a kind."""
    return (KINDS[kind] * (size // len(KINDS[kind]) + 1))[:size]


def seconds(written: str) -> float:
    """The time to read a text."""
    from assistant.reader.read import read

    began = time.perf_counter()
    read(written)
    return time.perf_counter() - began


def main() -> None:
    seconds("1 cup flour\n\nBake 30 minutes at 350 F.\n")
    for kind in KINDS:
        whole = seconds(text(kind, MEGABYTE))
        half = seconds(text(kind, MEGABYTE // 2))
        late = "MISSED" if whole > ASKED_SECONDS else ""
        print(f"{kind:22} {whole:5.2f} s, {whole / max(half, 1e-3):4.1f} x half the text {late}")
    print(f"asked: under {ASKED_SECONDS} s each")


if __name__ == "__main__":
    main()
