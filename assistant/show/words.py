"""Figures of a plan in words: the same wording on the terminal, in Markdown, in tables and in the chat."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import NamedTuple, Protocol

from rules import clock
from rules.circumstances import Day, Units
from rules.habit.record import main_stage as main_stage
from rules.plan import (
    Bag,
    Caution,
    CautionId,
    Depth,
    Doneness,
    FatGoes,
    FatUse,
    Fuel,
    Heat,
    Pack,
    PackItem,
    Plan,
    PotPlan,
    Purchase,
    Reason,
    Refresh,
    Stage,
    Travels,
)
from rules.recipe import Amount
from rules.units import kitchen
from rules.wording import measured, short_names

TRAVELS: dict[Travels, str] = {
    "shelf": "no cooling",
    "cool": "in the cooler",
    "frozen": "frozen, in the cooler",
    "camp": "drawn at camp",
}
GOES: dict[FatGoes, str] = {
    "hot pot first": "into the hot pot first",
    "browning": "for browning",
    "cut in at home": "cut into the flour at home",
    "creamed at home": "creamed with its sugar at home",
    "stirred in": "stirred in",
    "greasing": "for greasing",
    "on top": "on top",
}
#: What each caution is about, as its heading.
CAUTIONS: dict[CautionId, str] = {
    "carbon-monoxide": "Carbon monoxide",
    "hot-iron": "Hot iron and embers",
    "fire-restrictions": "May you light charcoal?",
    "two-hour": "Two hours, no longer",
    "leftovers": "Leftovers",
    "raw-meat": "Raw meat",
    "raw-poultry": "Raw poultry",
    "raw-fish": "Raw fish",
    "raw-egg": "Raw egg",
    "raw-flour": "Raw flour",
    "kidney-beans": "Kidney beans",
    "deep-fry": "Hot oil",
    "alcohol": "Alcohol",
    "honey-infant": "Honey and infants",
    "water-treatment": "Water",
    "home-canning": "Keeping in jars",
    "home-ferment": "Fermenting",
    "altitude": "High ground",
    "wildlife": "Wildlife",
}
COUNTS = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
#: Words of a preparation that the packs have done already.
SHARED_OUT = frozenset({"", "divided", "in all"})
KG_PER_LB = 0.45359237


class Range(Protocol):
    """Anything with a low and a high end."""

    @property
    def low(self) -> float:
        """The low end."""
        ...

    @property
    def high(self) -> float:
        """The high end."""
        ...


def number(value: float) -> str:
    """A figure without needless digits: 2, 2.5, 0.75."""
    return f"{round(value, 2):g}"


def count(things: int) -> str:
    """How many, in a word up to twelve."""
    return COUNTS[things] if things < len(COUNTS) else str(things)


def span(ends: Range, unit: str = "") -> str:
    """A range in words: "25 to 30 minutes", or one figure where the ends agree."""
    low, high = number(ends.low), number(ends.high)
    words = low if low == high else f"{low} to {high}"
    return f"{words} {unit}".strip()


def whole_span(ends: Range) -> str:
    """A range in whole figures: estimates carry no decimals."""
    low, high = round(ends.low), round(ends.high)
    return f"{low}" if low == high else f"{low} to {high}"


def minutes(ends: Range) -> str:
    """A stretch of minutes; from two hours up in hours and minutes."""
    if ends.low < 120:
        return span(ends, "minute" if ends.low == ends.high == 1 else "minutes")
    low, high = duration(ends.low), duration(ends.high)
    return low if low == high else f"{low} to {high}"


def duration(total_min: float) -> str:
    """Minutes as "45 min", "2 h", "2 h 30 min", "3 days"."""
    whole = round(total_min)
    if whole < 120:
        return f"{whole} min"
    if whole >= 2 * 24 * 60:
        return f"{round(whole / (24 * 60))} days"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def when(at_min: float, day: Day | None = None) -> str:
    """A moment counted from the meal: its clock time where the meal has one, else "75 min before"."""
    told = clock.told(day, at_min) if day is not None else None
    if told is not None:
        return told
    if round(at_min) == 0:
        return "at the meal"
    return f"{duration(abs(at_min))} {'before' if at_min < 0 else 'after'}"


def date(moment: datetime) -> str:
    """A date as a calendar on the wall has it: "Sat 3 Jul"."""
    return f"{clock.WEEKDAYS[moment.weekday()]} {moment.day} {clock.MONTHS[moment.month - 1]}"


def meal(day: Day) -> str:
    """When the meal is: "Sat 3 Jul 18:30", "18:30", or nothing where nobody said."""
    at = clock.meal(day)
    if at is None:
        return ""
    return f"{date(at)} {at:%H:%M}" if clock.has_date(day) else f"{at:%H:%M}"


def degrees(temp_f: float, units: Units = "us") -> str:
    """A temperature in the cook's units, the other one behind it."""
    fahrenheit, celsius = f"{round(temp_f)} °F", f"{round((temp_f - 32) * 5 / 9)} °C"
    return f"{celsius} ({fahrenheit})" if units == "metric" else f"{fahrenheit} ({celsius})"


def temperature(temp_f: float, units: Units = "us") -> str:
    """A temperature in the cook's units alone."""
    return degrees(temp_f, units).partition(" (")[0]


def weight(kg: float, units: Units = "us") -> str:
    """A weight in the cook's units."""
    return f"{number(round(kg, 1))} kg" if units == "metric" else f"{number(round(kg / KG_PER_LB, 1))} lb"


def pot(pot_plan: PotPlan) -> str:
    """The pot in words: "a 12-inch pot (6 quarts)", "two deep 10-inch pots"."""
    depth = "deep " if pot_plan.depth == "deep" else ""
    size = f"{depth}{pot_plan.diameter_in}-inch"
    if pot_plan.count == 1:
        article = "an" if not depth and pot_plan.diameter_in == 8 else "a"
        return f"{article} {size} pot ({number(pot_plan.quarts)} quarts)"
    return f"{count(pot_plan.count)} {size} pots ({number(pot_plan.quarts)} quarts each)"


def facts(plan: Plan, day: Day) -> list[str]:
    """What one looks for first: people, pot, fuel, the time of the meal."""
    told = []
    if plan.people:
        told.append(f"for {plan.people}")
    elif plan.recipe.servings and plan.scale == 1:
        told.append(f"{span(plan.recipe.servings)} {plan.recipe.servings.of}")
    if plan.scale != 1:
        told.append(f"{number(plan.scale)} times the recipe")
    if plan.pot:
        told.append(pot(plan.pot))
        if plan.pot.fill is not None:
            told.append(fill(plan.pot.fill))
    if plan.heat:
        told.append(f"{plan.heat.fuel.briquettes} briquettes")
    if day.eat:
        told.append(f"we eat {meal(day)}")
    return told


def per_pot(plan: Plan) -> str:
    """That the counts are each pot's, where there are several; else nothing."""
    if plan.pot is None or plan.pot.count == 1:
        return ""
    pots = f"each of the {count(plan.pot.count)} pots"
    return f"The counts are for {pots}; the briquettes to light and to bring are for all of them."


def rhythm(stage: Stage, day: Day) -> list[str]:
    """When a stage is turned and looked at, a sentence each."""
    told = []
    if stage.turn_every_min:
        told.append(
            f"Every {stage.turn_every_min} minutes turn the lid a third of a turn one way and the pot a third the"
            " other way; keep the lid shut."
        )
    if stage.first_look_min is not None:
        at = (
            f" ({when(stage.starts_at_min + stage.first_look_min, day)})"
            if stage.starts_at_min is not None
            else ""
        )
        told.append(f"First look under the lid after {stage.first_look_min} minutes{at}.")
    return told


def depth_of(depth: Depth) -> str:
    """The depth as one says it of a pot."""
    return "deep" if depth == "deep" else "regular"


def fill(share: float) -> str:
    """How full the pot is, in the fractions that people see."""
    marks = (
        (0.15, "hardly covered"), (0.29, "a quarter full"), (0.42, "a third full"), (0.58, "half full"),
        (0.71, "two thirds full"), (0.82, "three quarters full"), (0.99, "nearly full"),
    )  # fmt: skip
    return next((words for most, words in marks if share <= most), "too full")


def coals(stage: Stage) -> str:
    """The briquettes of a stage: "17 on the lid, 8 under"."""
    if not stage.top and not stage.under:
        return "no coals"
    if not stage.top:
        return f"{stage.under} under, none on the lid"
    if not stage.under:
        return f"{stage.top} on the lid, none under"
    return f"{stage.top} on the lid, {stage.under} under"


def capital(text: str) -> str:
    """The text with a capital letter in front."""
    text = text.strip()
    return text[:1].upper() + text[1:]


def sentence(text: str) -> str:
    """The text with a capital and one full stop."""
    text = capital(text)
    return text + ("" if text.endswith((".", "!", "?")) else ".")


def because(reason: Reason) -> str:
    """A reason as a sentence."""
    return sentence(reason.because)


def fuel(needed: Fuel, units: Units = "us") -> str:
    """How many briquettes to bring."""
    return (
        f"Bring {needed.briquettes} briquettes ({weight(needed.kg, units)}): {needed.lit} to light, "
        f"{needed.reserve} in reserve."
    )


def done(check: Doneness, units: Units = "us") -> str:
    """How one knows that it is done."""
    inside = f"{degrees(check.temp_f, units)} inside; " if check.temp_f is not None else ""
    rest = f" Rest {number(check.rest_min)} min." if check.rest_min else ""
    return f"Done ({check.what}): {inside}{sentence(check.sign) if not inside else check.sign.rstrip('.') + '.'}{rest}"


class FireRow(NamedTuple):
    """One thing done to the fire: when, what, where the coals go, how long; `stage` for the rows that are one."""

    when: str
    what: str
    where: str
    lasts: str = ""
    stage: Stage | None = None


def fire_rows(heat: Heat, day: Day | None = None) -> list[FireRow]:
    """Everything done to the fire in the order of time.

    A stage is a row, and so is every lighting after the first and every adding of fresh coals.
    """
    batches = sorted(heat.fuel.batches, key=lambda batch: batch.light_at_min)
    rows: list[tuple[float, FireRow]] = []
    for stage in heat.stages:
        where = coals(stage)
        if stage.kind == "light":
            where = f"{batches[0].count} in the chimney" if batches else "in the chimney"
        begins = when(stage.starts_at_min, day) if stage.starts_at_min is not None else ""
        lasts = minutes(stage.minutes).replace(" minutes", " min") if stage.minutes else ""
        rows.append((stage.starts_at_min or 0.0, FireRow(begins, stage.kind, where, lasts, stage)))
        rows += [(one.at_min, FireRow(when(one.at_min, day), "add", placed(one))) for one in stage.refresh]
    for batch in batches[1:]:
        row = FireRow(when(batch.light_at_min, day), "light", f"{batch.count} more in the chimney")
        rows.append((batch.light_at_min, row))
    return [row for _, row in sorted(rows, key=lambda entry: entry[0])]


def fresh_coals(fresh: Refresh, day: Day | None = None) -> str:
    """One refresh of a plan, whose minutes count from the meal."""
    return f"{when(fresh.at_min, day)}: fresh coals, {placed(fresh)}, lit {when(fresh.light_at_min, day)}."


def fresh_coals_in(fresh: Refresh) -> str:
    """One refresh of a coal count, whose minutes count from coals on."""
    return (
        f"After {number(fresh.light_at_min)} min light {fresh.top + fresh.under} fresh; "
        f"after {number(fresh.at_min)} min put {placed(fresh)}."
    )


def placed(fresh: Refresh) -> str:
    """Where fresh coals go: "5 on the lid and 2 under"."""
    if not fresh.top:
        return f"{fresh.under} under"
    return f"{fresh.top} on the lid and {fresh.under} under" if fresh.under else f"{fresh.top} on the lid"


def cold_lines(plan: Plan, units: Units = "us") -> list[str]:
    """What the cooler has to do, a sentence each."""
    if plan.cold is None:
        return []
    lines = []
    labels = short_names(plan.packs)
    if plan.cold.frozen_packs:
        lines.append(f"Freeze at home: {joined([labels.get(id_, id_) for id_ in plan.cold.frozen_packs])}.")
    if plan.cold.thaw_hours:
        lines.append(f"Thawed in the cooler after {whole_span(plan.cold.thaw_hours)} hours.")
    if plan.cold.ice_kg is not None and not any("of ice" in note for note in plan.cold.notes):
        lines.append(f"Ice to bring: {weight(plan.cold.ice_kg, units)}.")
    return [*lines, *plan.cold.notes]


def caution(of: Caution) -> tuple[str, str]:
    """A caution as its heading and its text; what the text says of it first is the heading's end."""
    heading = CAUTIONS[of.id]
    first, stop, rest = of.text.partition(". ")
    return (first, rest) if stop and first.startswith(f"{heading}:") else (heading, of.text)


def bag(of: Bag, name: str) -> str:
    """How one frozen pack fares: its time in the freezer, its state when it is wanted, what is done with it."""
    told = [f"{capital(name)}:"]
    if of.freeze_hours:
        told.append(f"freezes in {whole_span(of.freeze_hours)} hours at home;")
    told.append(f"{of.state} when it is wanted, if it stays in the cooler.")
    if of.advice:
        told.append(f"Then {of.advice}" if of.move_hours_before is None else f"So: {of.advice}")
    return " ".join(told)


def amount(of: Amount | None, units: Units = "us") -> str:
    """An amount as people measure it; empty when the recipe gives none."""
    return kitchen(of, units=units) if of is not None else ""


def bought(line: Purchase) -> str:
    """What to buy, and where it is not the same what of it is wanted: "1 pint (2 cups), for 1 1/2 cups; 1/2 cup left over"."""
    wanted = f", for {line.need}" if _bare(line.need) not in _bare(line.buy) else ""
    return line.buy + wanted + (f"; {line.left_over} left over" if line.left_over else "")


def _bare(text: str) -> str:
    """An amount without what only holds its words together: " 3 cans 15 ounces "."""
    return f" {' '.join(text.replace('(', ' ').replace(')', ' ').replace(' of ', ' ').split())} "


def fat_goes(use: FatUse) -> str:
    """Where a fat goes and when: "into the hot pot first, just before the batter is poured"."""
    if not use.when:
        return GOES[use.goes]
    comma = "" if use.when.startswith(("together", "at ")) else ","
    return f"{GOES[use.goes]}{comma} {use.when}"


def fat_said(use: FatUse, name: str) -> str:
    """The same as words of a sentence: "butter goes into the hot pot first", "oil is for browning"."""
    verb = "goes" if GOES[use.goes].startswith(("into", "on ")) else "is"
    return f"{name} {verb} {fat_goes(use)}"


def packed(plan: Plan, item: PackItem, units: Units = "us") -> str:
    """What goes into a pack of one ingredient: "1 1/2 cups flour", "2 cans of tomatoes (28 ounces each), crushed"."""
    ingredient = plan.recipe.ingredients[item.ingredient]
    states = (word for word in ingredient.state if word not in ingredient.name)
    name = " ".join([*states, ingredient.name])
    told = measured(item.amount, name, system=units)
    if told == name and item.share < 1:
        told = f"part of the {name}"
    prep = ", ".join(part for part in (ingredient.prep or "").split(", ") if part not in SHARED_OUT)
    return f"{told}, {prep}" if prep else told


def pack_name(pack: Pack) -> str:
    """The pack's label on one line."""
    return pack.label.partition("\n")[0]


def joined(words: Sequence[str], last: str = "and") -> str:
    """A list as one says it: "milk, eggs and wheat"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"
