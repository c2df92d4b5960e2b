"""Under which spellings a line's name is looked up, surest first (handbook chapter 2).

The other words of the line decide between two foods with one name: "1 can corn" is canned, "1 tsp thyme" dried,
"ginger, grated" fresh.
"""

from __future__ import annotations

from collections.abc import Iterator

from rules.foods.names import plain, words_of
from rules.recipe import Struct

CANNED_UNITS = frozenset({"can", "tin", "jar"})
FRESH_UNITS = frozenset(
    {
        "sprig",
        "twig",
        "bunch",
        "handful",
        "leaf",
        "stalk",
        "stem",
        "knob",
        "inch",
        "thumb",
        "piece",
        "centimeter",
    }
)
#: So little of a herb is dried, unless it is said to be cut.
DRIED_UNITS = frozenset({"teaspoon", "pinch", "dash"})
SOAKED = frozenset({"soaked", "soak", "overnight"})
OUT_OF_A_CAN = frozenset({"drained", "rinsed", "undrained"})
CUT_FRESH = frozenset(
    {
        "chopped",
        "minced",
        "grated",
        "peeled",
        "sliced",
        "torn",
        "picked",
        "shredded",
        "julienned",
        "stripped",
        "bruised",
    }
)


class Asked(Struct, frozen=True, kw_only=True):
    """The other words of a line: its unit, state words and preparation."""

    unit: str | None = None
    state: tuple[str, ...] = ()
    prep: str | None = None


class Spelling(Struct, frozen=True, kw_only=True):
    """A plain name to look up.

    `only_herbs`: it proves nothing about other foods. `part`: the unit that was put behind the name, which has to be a
    part and no measure ("2 cinnamon sticks", but a cup of peanut butter is no sweet).
    """

    name: str
    only_herbs: bool = False
    part: str | None = None


def spellings(name: str, asked: Asked) -> Iterator[Spelling]:
    """The spellings of a name, surest first: with what the line says besides, as it stands, turned, without states."""
    said = plain(name)
    if not said:
        return
    for hint in _hints(asked):
        yield Spelling(name=f"{hint} {said}")
    if asked.unit in DRIED_UNITS:
        yield Spelling(name=f"dried {said}", only_herbs=True)
    if asked.unit:
        yield Spelling(name=f"{said} {asked.unit}", part=asked.unit)
    yield Spelling(name=said)
    head, comma, rest = name.partition(",")
    if comma:
        yield Spelling(name=plain(f"{rest} {head}"))
    part, of, whole = said.partition(" of ")
    if of:
        yield Spelling(name=f"{whole} {part}")
    yield from _barer(said)
    # What stands behind a comma is done to the food, what stands behind "or" may take its place.
    if comma:
        yield from _barer(plain(head))
    first, either, _ = said.partition(" or ")
    if either:
        yield from _barer(first)


def _hints(asked: Asked) -> Iterator[str]:
    """What the other words of the line put before the name, strongest first."""
    yield from (plain(word) for word in asked.state)
    done = set(plain(asked.prep or "").split())
    if done & SOAKED:
        yield from ("dry", "dried")
    if asked.unit in CANNED_UNITS or done & OUT_OF_A_CAN:
        yield "canned"
    if asked.unit in FRESH_UNITS or done & CUT_FRESH:
        yield "fresh"


def _barer(said: str) -> Iterator[Spelling]:
    """A plain name with ever fewer words of state: from the front, from the back, then everywhere.

    A word of state may be part of the name ("large active dry yeast").
    """
    states = words_of("state")
    words = said.split()
    yield Spelling(name=said)
    while len(words) > 1 and (words[0] in states or words[0][0].isdigit()):
        words = words[1:]
        yield Spelling(name=" ".join(words))
    while len(words) > 1 and words[-1] in states:
        words = words[:-1]
        yield Spelling(name=" ".join(words))
    yield Spelling(name=" ".join(without_states(words)))


def without_states(words: list[str]) -> list[str]:
    """The words of a plain name that may name a food."""
    states = words_of("state")
    return [word for word in words if word not in states and not word[0].isdigit()]


def before_join(words: list[str]) -> list[str]:
    """The words before a "with" or "in", unless the name begins with it."""
    joins = words_of("joins")
    return next((words[:place] for place, word in enumerate(words) if place and word in joins), words)


def makes_another(words: list[str]) -> bool:
    """Whether a word makes another food of the name ("vegan cheese", "sugar-free jam"): nothing may be guessed then."""
    if words_of("changes") & set(words):
        return True
    after = dict(zip(words, [*words[1:], ""], strict=False))
    return "free" in after and after["free"] not in ("range", "run")
