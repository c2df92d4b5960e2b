"""Labels for the bags: which bag, what is in it, how it keeps and until when, what it meets at camp, coals and minutes.

A label fits a sticker of 4 by 2 inches: so many lines of so many letters. It opens with the name and the id by which
the steps call the bag. The shop's own packages and water need none; raw meat always has one. Handbook, section 8.
"""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import timedelta
from functools import cache

from rules import clock, table, wording
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.hours import in_cooler
from rules.foods import Item
from rules.hazards import DOUGH_FAMILIES, JUICY, hazard_of
from rules.method import Graph, Taking
from rules.plan import Heat, Label, Minutes, Pack, PackItem, StageKind
from rules.recipe import Recipe
from rules.safety import limit
from rules.wording import short_names

USE_BY = Rule(
    id="labels.use-by",
    because="{label} is used {wording}",
)

#: A 4 by 2 inch sticker at about 9 points.
WIDTH, LINES = 44, 10
#: Lines for what a dry mix meets at camp.
MOST_ADDED = 3
LABELLED = frozenset({"dry mix", "wet mix", "prepped"})
KEEPS = {
    "shelf": "Keep dry, on the shelf",
    "cool": f"Keep at {limit('cold_f')} or below",
    "frozen": "Freeze flat; keep frozen or cold",
}
#: Letters of a food's name.
LONGEST_NAME = 36
COALS: frozenset[StageKind] = frozenset({"bake", "roast", "simmer", "fry", "boil"})


class LabelDays(table.Row, frozen=True, kw_only=True):
    """How long a kind of pack keeps, by how it travels, in words and days."""

    id: str
    travels: str
    days: int
    wording: str


def labels(
    recipe: Recipe,
    items: Sequence[Item],
    packs: Sequence[Pack],
    heat: Heat | None,
    day: Day,
    ledger: Ledger,
    *,
    graph: Graph | None = None,
    camp_steps: Sequence[str] = (),
) -> tuple[Label, ...]:
    """One label per bag measured, cut or cooked at home and per pack of raw meat.

    `graph` tells what a dry mix meets at camp, `camp_steps` in which step a bag is opened.
    """
    made = []
    for pack in packs:
        if pack.kind in LABELLED or (pack.kind == "fresh" and _is_raw(pack, items)):
            head = _head(pack, packs, recipe, items)
            keeps = (
                _wrapped([f"{KEEPS[pack.travels]}.", f"{_use_by(pack, recipe, items, day, ledger)}."])
                if pack.travels in KEEPS
                else []
            )
            use = _at_camp(pack, packs, recipe, items, day, graph, camp_steps)
            tail = [*keeps, *use, *(_shortened(line) for line in _coals(heat))]
            room = max(1, LINES - len(head) - len(tail))
            lines = [*head, *_contents(pack, items, day, room), *tail]
            made.append(Label(pack=pack.id, text="\n".join(lines[:LINES])))
    return tuple(made)


def _head(pack: Pack, packs: Sequence[Pack], recipe: Recipe, items: Sequence[Item]) -> list[str]:
    """The bag as the steps call it, and the dish that it belongs to."""
    title, name = " ".join((recipe.title or "").split()), short_names(packs)[pack.id]
    room = max(12, WIDTH - len(pack.id) - 3)
    called = textwrap.shorten(name, room, placeholder=" ...")
    head = [f"{called[:1].upper()}{called[1:]} ({pack.id})"[:WIDTH]]
    if title and title not in name:
        head.append(_shortened(title))
    if _is_raw(pack, items):
        head.append("RAW - bottom of the cooler, apart")
    return head


def _contents(pack: Pack, items: Sequence[Item], day: Day, room: int) -> list[str]:
    named = [_named(part, items) for part in pack.items]
    measured = [_measured(part, items, day) for part in pack.items]
    lines = _listed("In it:", measured)
    if len(lines) > room:
        # Broken anywhere they may take a line less.
        lines = textwrap.wrap(f"In it: {', '.join(measured)}", WIDTH)
    if len(lines) > room:
        # The names alone say what it is; the amounts stand in the plan.
        lines = _listed("In it:", named)
    if len(lines) > room:
        lines = [*lines[: room - 1], _shortened(f"{lines[room - 1]} and more")]
    return lines


def _measured(part: PackItem, items: Sequence[Item], day: Day) -> str:
    """A share as it is measured: "1 1/2 cups flour"."""
    return wording.measured(part.amount, _named(part, items), system=day.units, grams=part.grams)


def _named(part: PackItem, items: Sequence[Item]) -> str:
    """The food, cut where it alone would fill a line and more."""
    name = items[part.ingredient].ingredient.name
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 4].rstrip()} ..."


def _use_by(pack: Pack, recipe: Recipe, items: Sequence[Item], day: Day, ledger: Ledger) -> str:
    if recipe.family == "preserve or ferment":
        # It keeps by its salt, acid or sugar, which only its recipe knows.
        return "Use as long as its recipe says"
    row = days_row(pack.kind, pack.travels)
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
def days_row(kind: str, travels: str) -> LabelDays | None:
    """How long a kind of pack keeps as it travels; None where the table does not say."""
    return next(
        (row for row in table.read("label_days.csv", LabelDays) if row.id == f"{kind} {travels}"), None
    )


def _at_camp(
    pack: Pack,
    packs: Sequence[Pack],
    recipe: Recipe,
    items: Sequence[Item],
    day: Day,
    graph: Graph | None,
    camp_steps: Sequence[str],
) -> list[str]:
    """The camp steps that open the bag, and what a dry mix meets there."""
    numbers = [str(number) for number, step in enumerate(camp_steps, start=1) if f"({pack.id})" in step]
    steps = f"Camp step {' and '.join(numbers)}" if numbers else "At camp"
    added = []
    if pack.kind == "dry mix" and recipe.family in DOUGH_FAMILIES:
        added = _met(pack, packs, items, day, graph) if graph else _of_its_part(pack, packs, items, day)
    if not added:
        return [f"{steps}."] if numbers else []
    lines = _listed(f"{steps}: add", added)
    return (
        lines
        if len(lines) <= MOST_ADDED
        else [*lines[: MOST_ADDED - 1], _shortened(f"{lines[MOST_ADDED - 1]} and more")]
    )


def _met(pack: Pack, packs: Sequence[Pack], items: Sequence[Item], day: Day, graph: Graph) -> list[str]:
    """What is mixed into the thing that most of the bag goes into; what is laid on it or under it is not."""
    own = {part.ingredient for part in pack.items}
    takings = [taking for food in own for taking in graph.moments(food)]
    if not takings:
        return _of_its_part(pack, packs, items, day)
    things = Counter(taking.thing for taking in takings if not taking.laid)
    if not things:
        return []
    thing = max(things, key=lambda number: things[number])
    of_part = (one for one in graph.takings if items[one.ingredient].ingredient.component == pack.component)
    met = graph.inside(thing)
    if all(one.ingredient in own or one.laid for one in met) and pack.component:
        # What it is poured together with stands in another bowl; both belong to one part of the dish.
        met = tuple(of_part)
    beside = [one for one in met if one.ingredient not in own and not (one.laid or one.hot)]
    return _told(beside, pack, packs, items, day)


def _told(
    takings: Iterable[Taking], pack: Pack, packs: Sequence[Pack], items: Sequence[Item], day: Day
) -> list[str]:
    """Foods as they are carried: a mixed bag by its name, everything else by its amount."""
    names = short_names(packs)
    told: dict[str, None] = {}
    for taking in takings:
        holders = [
            (other, part)
            for other in packs
            for part in other.items
            if part.ingredient == taking.ingredient and other.kind != "prepped"
        ]
        # A food in two packs is taken from the one of this part of the dish.
        holders.sort(key=lambda held: held[0].component != pack.component)
        for other, part in holders[:1]:
            mixed = other.kind in ("wet mix", "dry mix")
            told[f"{names[other.id]} ({other.id})" if mixed else _measured(part, items, day)] = None
    return list(told)


def _of_its_part(pack: Pack, packs: Sequence[Pack], items: Sequence[Item], day: Day) -> list[str]:
    """Without a method: what is liquid or fresh in the same part of the dish."""
    names, added = short_names(packs), []
    for other in packs:
        if other.id == pack.id or other.component != pack.component:
            continue
        if other.kind == "wet mix":
            added.append(f"{names[other.id]} ({other.id})")
        elif other.kind in ("fresh", "water"):
            added += [_measured(part, items, day) for part in other.items]
    return added


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


def _listed(opening: str, parts: Sequence[str]) -> list[str]:
    """A list with commas in lines; an amount and its food stay together."""
    last = len(parts) - 1
    ended = (part if at == last else f"{part}," for at, part in enumerate(parts))
    pieces = (part.replace(" (", "\n(", len(part) > WIDTH).split("\n") for part in ended)
    return _wrapped([opening, *(piece for split in pieces for piece in split)])


def _wrapped(parts: Sequence[str]) -> list[str]:
    """Lines of whole parts; a part that fills more than a line is broken between its words."""
    lines: list[str] = []
    for part in parts:
        if lines and len(lines[-1]) + 1 + len(part) <= WIDTH:
            lines[-1] += f" {part}"
        elif lines and len(part) > WIDTH:
            lines = [*lines[:-1], *textwrap.wrap(f"{lines[-1]} {part}", WIDTH)]
        else:
            lines += textwrap.wrap(part, WIDTH)
    return lines


def _shortened(text: str) -> str:
    return textwrap.shorten(text, WIDTH, placeholder=" ...")
