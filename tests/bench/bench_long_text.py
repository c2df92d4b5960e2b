"""Measure texts that no cook wrote: a megabyte is read in seconds at most, four times the text in about four times the time.

python tests/bench/bench_long_text.py [kind ...]

Every kind is repeated under no heading, as a list and as a method; the slowest counts. Growth is taken between
two texts that are read to their end (of longer ones the reader says that it left the rest unread), under a heading:
without one, a longer text may be taken for something else than a shorter one.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable

MEGABYTE = 1_000_000
ASKED_SECONDS = 3.0
#: Two texts below the reader's own bound, one four times the other; and the lines that one without ends is cut into.
SHORT, LONG, LINE = 18_000, 72_000, 9_000
#: Four times the text may take this many times as long before the line says so: clocks are not exact, and what grew with the square would take 16 times.
ASKED_GROWTH = 8.0
#: Under this the clock and the first look tell more than the text; a short text counts as no quicker.
LEAST_SECONDS = 0.02
_chance = random.Random(1)
_FOODS = (
    "flour, sugar, salt, butter, milk, eggs, onions, garlic, carrots, celery, beef, chicken, rice, beans, oil"
)
#: What is repeated.
KINDS = {
    "one long line": "flour ",
    "one enormous word": "flour",
    "lines of an amount": "1 cup flour\n",
    "lines of foods": "salt egg!\n",
    "lines of a food with all": "- 1 cup flour, sifted (about 4 oz), divided, plus 2 tbsp for dusting, optional\n",
    "digits": "1",
    "lines of digits": "123456789\n",
    "open brackets": "(",
    "brackets": "()",
    "lines of brackets": "(1 cup (2 cups\n",
    "brackets in brackets": "(((1 cup flour))) ",
    "bullets": "- ",
    "lines of bullets": "- \n",
    "quotes": "\"'",
    "quotes in quotes": '"a "b ',
    "quotes never closed": "\u201c",
    "commas": ",",
    "foods and commas": "salt, ",
    "fractions": "1/2/3/4/",
    "ranges": "1-2-3-",
    "hyphens": "a-b-c-",
    "one word": "butter ",
    "one letter": "a ",
    "figures and units": "1 cup 2 tsp 3 oz ",
    "units": "cup tsp tbsp oz lb kg g ml l pint quart gallon stick can jar ",
    "plus": "plus ",
    "amounts plus": "1 cup plus ",
    "amounts and slashes": "1 cup / ",
    "or": "or ",
    "foods and": "salt and ",
    "foods or": "1 cup milk or ",
    "sentences": "Add the flour and bake for 20 minutes at 350 F. ",
    "lines of sentences": "Add the flour and bake for 20 minutes at 350 F until done.\n",
    "numbered steps": "1. Mix it\n",
    "all foods in each step": f"1. Add the {_FOODS} to the large bowl and mix for 3 minutes until soft.\n",
    "verbs": "mix stir bake fry boil simmer chop fold whip pour ",
    "verbs and": "mix and stir and bake and fry, boil, simmer, chop the flour and ",
    "let it": "let it ",
    "until": "until golden, ",
    "times": "for another 10 minutes ",
    "degrees": "at 350F ",
    "vessels": "in a large bowl ",
    "the rest": "the remaining ingredients and ",
    "headings": "FOR THE SAUCE:\n",
    "recipes": "# Pan\n\n## Ingredients\n\n- 1 cup flour\n- 2 eggs\n\n## Method\n\n1. Mix all and bake 20 minutes.\n\n",
    "addresses": "http://river.example/c ",
    "page": "<li>1 cup flour</li>",
    "open tags": "<html><body><div>",
    "links": "[a](b) ",
    "stars": "*",
    "bars": "|",
    "tables": "| 1 cup | flour |\n",
    "written signs": "&amp;",
    "pictures": "\U0001f372",
    "marks on a letter": "e\u0301\u0301\u0301",
    "signs of direction": "\u202e",
    "terminal escapes": "\x1b[31m",
    "blanks": "\t",
    "empty lines": "\n",
    "chance": "".join(_chance.choices("abcdefghijklmnop 0123456789/-().,\n", k=100_000)),
}
#: What no repeating gives: every line another one, or set in more deeply than the one above.
GROWING: dict[str, Callable[[int], str]] = {
    "lines all different": lambda at: f"{at} cups zq{at}r flour\n",
    "words all different": lambda at: f"a{at} b{at * 7} c{at * 3} d\n",
    "items in items": lambda at: f"{'  ' * (at % 200)}- a thing\n",
}
PLACES = ("{}", "Ingredients\n\n{}", "Ingredients\n\n- 1 cup flour\n- 2 eggs\n\nMethod\n\n{}")


def text(kind: str, size: int) -> str:
    """So many characters of a kind, in lines that are read."""
    if kind in GROWING:
        return "".join(map(GROWING[kind], range(size // 8)))[:size]
    written = KINDS[kind]
    if "\n" not in written:
        written = written * (LINE // len(written)) + "\n"
    return (written * (size // len(written) + 1))[:size]


def seconds(written: str) -> float:
    """The processor time to read a text: what else the machine does counts for nothing."""
    from assistant.reader.read import read

    began = time.process_time()
    read(written)
    return time.process_time() - began


def growth(kind: str, place: str) -> float:
    """How many times as long four times the text takes; the best of three runs of each."""
    short, long = (min(seconds(place.format(text(kind, size))) for _ in range(3)) for size in (SHORT, LONG))
    return long / max(short, LEAST_SECONDS)


def main(wanted: list[str]) -> None:
    seconds("1 cup flour\n\nBake 30 minutes at 350 F.\n")
    seconds(text("open tags", SHORT))
    for kind in wanted or [*KINDS, *GROWING]:
        slowest = max(seconds(place.format(text(kind, MEGABYTE))) for place in PLACES)
        grown = max(growth(kind, place) for place in PLACES[1:])
        late = "MISSED" if slowest > ASKED_SECONDS or grown > ASKED_GROWTH else ""
        print(f"{kind:24} {slowest:5.2f} s a megabyte, {grown:4.1f} x for 4 x the text {late}", flush=True)
    print(f"asked: under {ASKED_SECONDS} s each, growth of about 4 where all is read")


if __name__ == "__main__":
    main(sys.argv[1:])
