"""Labels for the bags: what it is, what is in it, how it keeps and until when, what to add at camp, coals and minutes.

A label fits a sticker of 4 by 2 inches: so many lines of so many letters. The shop's own packages and water need none;
raw meat always has one. Handbook, section 8.
"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from datetime import timedelta
from functools import cache

from rules import clock, table
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.hours import in_cooler
from rules.foods import Item
from rules.hazards import DOUGH_FAMILIES, JUICY, hazard_of
from rules.plan import Heat, Label, Minutes, Pack, StageKind
from rules.recipe import Recipe
from rules.units import kitchen
from rules.wording import short_names

USE_BY = Rule(
    id="labels.use-by",
    because="{label} is used {wording}",
)

#: A 4 by 2 inch sticker at about 9 points.
WIDTH, LINES = 44, 9
LABELLED = frozenset({"dry mix", "wet mix", "prepped"})
KEEPS = {
    "shelf": "Keep dry, on the shelf",
    "cool": "Keep at 40 °F or below",
    "frozen": "Freeze flat; keep frozen or cold",
}
COALS: frozenset[StageKind] = frozenset({"bake", "roast", "simmer", "fry", "boil"})


class LabelDays(table.Row, frozen=True, kw_only=True):
    """How long a kind of pack keeps, by how it travels, in words and days."""

    id: str
    travels: str
    days: int
    wording: str


def labels(
    recipe: Recipe, items: Sequence[Item], packs: Sequence[Pack], heat: Heat | None, day: Day, ledger: Ledger
) -> tuple[Label, ...]:
    """One label per bag measured, cut or cooked at home and per pack of raw meat."""
    made = []
    for pack in packs:
        if pack.kind in LABELLED or (pack.kind == "fresh" and _is_raw(pack, items)):
            made.append(Label(pack=pack.id, text=_text(pack, packs, recipe, items, heat, day, ledger)))
    return tuple(made)


def _text(
    pack: Pack,
    packs: Sequence[Pack],
    recipe: Recipe,
    items: Sequence[Item],
    heat: Heat | None,
    day: Day,
    ledger: Ledger,
) -> str:
    """The label's lines, the contents shortened first when they are too many."""
    title = (recipe.title or "Camp dish").strip()
    name = short_names(packs)[pack.id]
    head = [f"{textwrap.shorten(title, max(12, WIDTH - len(name) - 2), placeholder=' ...')}: {name}"[:WIDTH]]
    if _is_raw(pack, items):
        head.append("RAW - bottom of the cooler, apart")
    tail = (
        _wrapped(f"{KEEPS[pack.travels]}. {_use_by(pack, recipe, items, day, ledger)}.")
        if pack.travels in KEEPS
        else []
    )
    add = _added_at_camp(pack, packs, recipe, items, day)
    tail += _wrapped(f"Add at camp: {add}")[:2] if add else []
    tail += [_shortened(line) for line in _coals(heat)]
    room = max(1, LINES - len(head) - len(tail))
    return "\n".join([*head, *_contents(pack, items, day, room), *tail][:LINES])


def _contents(pack: Pack, items: Sequence[Item], day: Day, room: int) -> list[str]:
    parts = []
    for part in pack.items:
        amount = f" {kitchen(part.amount, units=day.units)}" if part.amount else ""
        parts.append(f"{items[part.ingredient].ingredient.name}{amount}")
    lines = _wrapped("In it: " + ", ".join(parts))
    if len(lines) > room:
        # The names alone say what it is; the amounts stand in the plan.
        lines = _wrapped("In it: " + ", ".join(items[part.ingredient].ingredient.name for part in pack.items))
    if len(lines) > room:
        lines = [*lines[: room - 1], _shortened(f"{lines[room - 1]} and more")]
    return lines


def _use_by(pack: Pack, recipe: Recipe, items: Sequence[Item], day: Day, ledger: Ledger) -> str:
    if recipe.family == "preserve or ferment":
        # It keeps by its salt, acid or sugar, which only its recipe knows.
        return "Use as long as its recipe says"
    row = _days(pack.kind, pack.travels)
    if row is None:
        return "Use soon"
    shortest = [
        food.fridge_days
        for food in (items[part.ingredient].food for part in pack.items)
        if food is not None and food.fridge_days is not None and food.keeps == "chilled"
    ]
    days = min([row.days, *shortest]) if pack.travels == "cool" else row.days
    wording = row.wording if days == row.days else f"within {days} day{'s' if days != 1 else ''}"
    ledger.note(USE_BY.says(pack.label, row, label=pack.label, wording=wording))
    packed = clock.at(day, -60 * in_cooler(day)) if clock.has_date(day) else None
    if packed is None or pack.travels == "frozen":
        return f"Use {wording}"
    until = packed + timedelta(days=days)
    return f"Use by {until.day} {clock.MONTHS[until.month - 1]}"


@cache
def _days(kind: str, travels: str) -> LabelDays | None:
    return next(
        (row for row in table.read("label_days.csv", LabelDays) if row.id == f"{kind} {travels}"), None
    )


def _added_at_camp(pack: Pack, packs: Sequence[Pack], recipe: Recipe, items: Sequence[Item], day: Day) -> str:
    """What is stirred into a dry mix of batter or dough: measured liquids, eggs and fat, and bags by their name."""
    if pack.kind != "dry mix" or recipe.family not in DOUGH_FAMILIES:
        return ""
    names = short_names(packs)
    added = []
    for other in packs:
        if (
            other.id == pack.id
            or other.component != pack.component
            or other.kind not in ("wet mix", "fresh", "water")
        ):
            continue
        if other.kind == "wet mix":
            added.append(names[other.id])
            continue
        for part in other.items:
            amount = f" {kitchen(part.amount, units=day.units)}" if part.amount else ""
            added.append(f"{items[part.ingredient].ingredient.name}{amount}")
    return ", ".join(added)


def _coals(heat: Heat | None) -> list[str]:
    """Coals and minutes of the stages in which the dish cooks."""
    if heat is None:
        return []
    said = []
    for stage in heat.stages:
        if stage.kind in COALS:
            span = f", {_minutes(stage.minutes)} min" if stage.minutes else ""
            look = f", look {stage.first_look_min}" if stage.first_look_min else ""
            said.append(f"{stage.kind.capitalize()}: {stage.top} top, {stage.under} under{span}{look}")
    return said[-2:]


def _minutes(span: Minutes) -> str:
    low, high = f"{span.low:.0f}", f"{span.high:.0f}"
    return low if low == high else f"{low}-{high}"


def _is_raw(pack: Pack, items: Sequence[Item]) -> bool:
    return any(hazard_of(items[part.ingredient]) in JUICY for part in pack.items)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH)


def _shortened(text: str) -> str:
    return textwrap.shorten(text, WIDTH, placeholder=" ...")
