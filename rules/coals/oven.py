"""The temperature that a recipe's oven means: a figure, a word, a gas mark, a fan oven, or the family's usual one.

Handbook chapters 5 and 7: words and marks take their temperature from a table and are said to be a guess.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.coals.drafts import family_heat, heat_figure
from rules.coals.pieces import Piece
from rules.dish import Dish
from rules.recipe import Oven, Recipe, Struct
from rules.table import Row, read

FIGURE = Rule(
    id="oven.figure",
    because="the recipe's oven stands at {temp:.0f} °F, so the pot does; for a covered dish too the chart gives the count",
    source="the recipe",
)
ASKED = Rule(id="oven.asked", because="{temp:.0f} °F is what you asked for", source="the cook")
FAN = Rule(
    id="oven.fan",
    because="the figure is for a fan oven; a pot is a still one and stands {more:.0f} °F hotter, at {temp:.0f} °F",
)
WORD = Rule(
    id="oven.word",
    because='"{word}" is taken for {temp:.0f} °F, a guess: the word is used for {low:.0f} to {high:.0f} °F',
)
HOTTEST = Rule(
    id="oven.hottest",
    because="an oven at its hottest is taken for {temp:.0f} °F, beyond what is sure over coals: look early",
)
USUAL = Rule(
    id="oven.usual",
    because="the text gives no temperature: a {family} usually takes {temp:.0f} °F",
)
HIGH_OVEN = Rule(
    id="oven.high-ground",
    because="at {feet:,.0f} ft {more:.0f} to {most:.0f} °F more sets a batter before it rises too far; say so and the"
    " count follows",
)

_HOTTEST = re.compile(r"\b(?:max(?:imum)?|hottest|highest|as hot as)\b", re.IGNORECASE)
_MARK = re.compile(r"\bgas(?:\s*mark)?\s*([0-9]{1,2}|1/4|1/2|¼|½)\b|\bmark\s*([0-9]{1,2})\b", re.IGNORECASE)
_FRACTIONS = {"¼": "1/4", "½": "1/2"}


class OvenWord(Row, frozen=True, kw_only=True):
    """A word for an oven's heat, or a gas mark, with its range and the figure that is taken [°F]."""

    id: str
    low_f: float
    high_f: float
    temp_f: float


class Aim(Struct, frozen=True, kw_only=True):
    """The temperature of the oven [°F]; `more_f` was added for a fan oven; `is_asked` when the cook set it."""

    temp_f: float
    more_f: float = 0.0
    is_asked: bool = False


@cache
def oven_words() -> dict[str, OvenWord]:
    """Every word and gas mark of the table."""
    return {row.id: row for row in read("oven_words.csv", OvenWord)}


@cache
def _words() -> re.Pattern[str]:
    longest_first = sorted(
        (word for word in oven_words() if not word.startswith("gas")), key=len, reverse=True
    )
    return re.compile(r"\b(?:" + "|".join(map(re.escape, longest_first)) + r")(?:ly)?\b", re.IGNORECASE)


def worded(stated: str) -> OvenWord | None:
    """The row that the recipe's words about its oven name: a gas mark first, then the longest word."""
    mark = _MARK.search(stated)
    if mark is not None:
        number = mark[1] or mark[2]
        return oven_words().get(f"gas mark {_FRACTIONS.get(number, number)}")
    word = _words().search(stated)
    if word is None:
        return None
    return oven_words().get(word.group().lower()) or oven_words().get(word.group().lower().removesuffix("ly"))


def oven_aim(recipe: Recipe, dish: Dish, told: Sequence[Piece], day: Day, ledger: Ledger) -> Aim:
    """The temperature to hold, with why; what was not in the text as a figure is asked."""
    aim = _aim(recipe, dish, told, day, ledger)
    more = heat_figure("high ground oven")
    if day.elevation_ft >= heat_figure("high ground").value and dish.leavened and not aim.is_asked:
        ledger.note(
            HIGH_OVEN.says("temperature", more, feet=day.elevation_ft, more=more.value, most=more.value + 5)
        )
    return aim


def _aim(recipe: Recipe, dish: Dish, told: Sequence[Piece], day: Day, ledger: Ledger) -> Aim:
    oven = recipe.oven or Oven()
    if day.temp_f is not None:
        ledger.note(ASKED.says("temperature", temp=day.temp_f))
        return Aim(temp_f=day.temp_f, is_asked=True)
    in_text = oven.temp_f or next(
        (piece.temp_f for piece in told if piece.kind in ("bake", "roast") and piece.temp_f), None
    )
    if in_text and oven.fan and not _has_a_pair(recipe, in_text):
        more = heat_figure("fan")
        ledger.note(FAN.says("temperature", more, more=more.value, temp=in_text + more.value))
        _ask(ledger, "The recipe gives a fan oven's temperature.", in_text + more.value)
        return Aim(temp_f=in_text + more.value, more_f=more.value)
    if in_text:
        ledger.note(FIGURE.says("temperature", temp=in_text))
        return Aim(temp_f=in_text)
    row = worded(oven.stated)
    if row is not None:
        ledger.note(
            WORD.says("temperature", row, word=row.id, temp=row.temp_f, low=row.low_f, high=row.high_f)
        )
        _ask(ledger, f'The recipe says "{row.id}" and no temperature.', row.temp_f)
        return Aim(temp_f=row.temp_f)
    if _HOTTEST.search(oven.stated):
        hottest = heat_figure("hottest oven")
        ledger.note(HOTTEST.says("temperature", hottest, temp=hottest.value))
        _ask(ledger, "The recipe's oven stands at its hottest.", hottest.value)
        return Aim(temp_f=hottest.value)
    usual = family_heat(dish.family)
    temp = usual.temp_f or family_heat("roast").temp_f or 350.0
    ledger.note(USUAL.says("temperature", usual, family=dish.family, temp=temp))
    _ask(ledger, "No temperature was given.", temp)
    return Aim(temp_f=temp)


def _has_a_pair(recipe: Recipe, temp_f: float) -> bool:
    """Whether the text gives a cooler figure beside this one: "200C, 180C fan", of which the still oven's was taken."""
    more = heat_figure("fan").value
    return any(
        more / 2 <= temp_f - figure <= 2 * more
        for step in recipe.steps
        if temp_f in step.temps_f
        for figure in step.temps_f
    )


def _ask(ledger: Ledger, text: str, temp_f: float) -> None:
    ledger.ask("temperature", text, f"{temp_f:.0f} °F")
