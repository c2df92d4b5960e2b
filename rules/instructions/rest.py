"""What the method leaves open: packs that no step opens, and recipes without a method."""

from __future__ import annotations

from functools import cache

from rules import table
from rules.because import Ledger, Rule
from rules.instructions.words import joined, sentence
from rules.recipe import Family

NO_METHOD = Rule(
    id="steps.no-method",
    because="the recipe has no method that could be read: the usual way of a {family} is told, as a guess",
)


class PlainMethod(table.Row, frozen=True, kw_only=True):
    """The usual way of a family, in a few sentences; {fat} and {food} stand for what is there."""

    family: Family
    steps: tuple[str, ...]


@cache
def _methods() -> dict[str, PlainMethod]:
    return {row.family: row for row in table.read("plain_methods.toml", PlainMethod)}


def place_the_rest(
    told: list[tuple[str, bool]], wanted: list[str], maybe: list[str], hot_fat: list[str]
) -> list[str]:
    """The steps with what none of them opened, put before the last one that cooks.

    `told` pairs each step with whether it cooks; `hot_fat` goes into the hot pot before a batter.
    """
    extra = [sentence(f"add {joined(wanted)}")] if wanted else []
    if maybe:
        extra.append(sentence(f"if wanted, add {joined(maybe)}"))
    if hot_fat:
        extra.append(
            sentence(
                f"put {joined(hot_fat)} into the hot pot and shut the lid until it sizzles; pour the batter over it"
            )
        )
    cooking = [number for number, (_, cooks) in enumerate(told) if cooks]
    place = cooking[-1] if cooking else max(len(told) - 1, 0)
    texts = [text for text, _ in told]
    return [*texts[:place], *extra, *texts[place:]]


def plain_method(family: Family, food: list[str], fat: list[str], ledger: Ledger) -> list[str]:
    """The usual way of the family, where the recipe has no method."""
    row = _methods().get(family)
    if row is None or not food:
        return [sentence(f"add {joined(food)}")] if food else []
    ledger.note(NO_METHOD.says("steps", row, family=family))
    ledger.ask(
        "method",
        f"No method was found. Is this made like any {family}?",
        "the usual way of that kind of dish",
    )
    return [step.format(food=joined(food), fat=joined(fat) or "a little oil") for step in row.steps]
