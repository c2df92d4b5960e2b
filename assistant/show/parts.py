"""The parts of a plan in words, the same in every form: what one looks for first, the fire, the packs, the lists."""

from __future__ import annotations

from typing import NamedTuple

from assistant.show import words
from rules.circumstances import Day, Units
from rules.plan import (
    Bag,
    Caution,
    CautionId,
    Doneness,
    FatGoes,
    FatUse,
    Fuel,
    Heat,
    Pack,
    PackItem,
    Plan,
    Purchase,
    Refresh,
    Stage,
    Travels,
)
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


#: What is taken of a fruit, said before it: "juice of 1 lime".
OF_A_FRUIT = frozenset(
    {"juice", "zest", "rind", "juice and zest", "zest and juice", "rind and juice", "juice and rind"}
)
#: Words of a preparation that the packs have done already.
SHARED_OUT = frozenset({"", "divided", "in all"})


def facts(plan: Plan, day: Day) -> list[str]:
    """What one looks for first: people, pot, fuel, the time of the meal."""
    told = []
    if plan.people:
        told.append(f"for {plan.people}")
    elif plan.recipe.servings and plan.scale == 1:
        told.append(f"{words.span(plan.recipe.servings)} {plan.recipe.servings.of}")
    if plan.scale != 1:
        told.append(f"{words.number(plan.scale)} times the recipe")
    if plan.pot:
        told.append(words.pot(plan.pot))
        if plan.pot.fill is not None:
            told.append(words.fill(plan.pot.fill))
    if plan.heat:
        told.append(f"{plan.heat.fuel.briquettes} briquettes")
        if plan.heat.fuel.batches:
            told.append(f"first coals {words.when(first_lit(plan.heat.fuel), day)}")
    if day.eat:
        told.append(f"we eat {words.meal(day)}")
    return told


def first_lit(needed: Fuel) -> float:
    """When the first chimney is lit [min from the meal]."""
    return min(batch.light_at_min for batch in needed.batches)


def per_pot(plan: Plan) -> str:
    """That the counts are each pot's, where there are several; else nothing."""
    if plan.pot is None or plan.pot.count == 1:
        return ""
    pots = f"each of the {words.count(plan.pot.count)} pots"
    return f"The counts are for {pots}, the briquettes to light and to bring for all."


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
            f" ({words.when(stage.starts_at_min + stage.first_look_min, day)})"
            if stage.starts_at_min is not None
            else ""
        )
        told.append(f"First look under the lid after {stage.first_look_min} minutes{at}.")
    return told


def fuel(needed: Fuel, units: Units = "us") -> str:
    """How many briquettes to bring."""
    told = (
        f"Bring {needed.briquettes} briquettes ({words.weight(needed.kg, units)}): {needed.lit} to light, "
        f"{needed.reserve} in reserve."
    )
    if needed.chimney_loads > 1:
        told += f" {words.capital(words.count(needed.chimney_loads))} chimney loads, a starter for each."
    elif needed.chimney_loads:
        told += " One chimney load, one starter."
    if needed.stacked_saves:
        told += f" With the pots stacked on one another {needed.stacked_saves} fewer: ask why about fuel."
    return told


def done(check: Doneness, units: Units = "us") -> str:
    """How one knows that it is done."""
    inside = f"{words.degrees(check.temp_f, units)} inside; " if check.temp_f is not None else ""
    rest = f" Rest {words.number(check.rest_min)} min." if check.rest_min else ""
    return f"Done ({check.what}): {inside}{words.sentence(check.sign) if not inside else check.sign.rstrip('.') + '.'}{rest}"


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
        where = words.coals(stage)
        if stage.kind == "light":
            where = f"{batches[0].count} in the chimney" if batches else "in the chimney"
        begins = words.when(stage.starts_at_min, day) if stage.starts_at_min is not None else ""
        lasts = words.minutes(stage.minutes).replace(" minutes", " min") if stage.minutes else ""
        rows.append((stage.starts_at_min or 0.0, FireRow(begins, stage.kind, where, lasts, stage)))
        rows += [
            (one.at_min, FireRow(words.when(one.at_min, day), "add", placed(one))) for one in stage.refresh
        ]
    for batch in batches[1:]:
        row = FireRow(words.when(batch.light_at_min, day), "light", f"{batch.count} more in the chimney")
        rows.append((batch.light_at_min, row))
    return [row for _, row in sorted(rows, key=lambda entry: entry[0])]


def fresh_coals(fresh: Refresh, day: Day | None = None) -> str:
    """One refresh of a plan, whose minutes count from the meal."""
    return f"{words.when(fresh.at_min, day)}: fresh coals, {placed(fresh)}, lit {words.when(fresh.light_at_min, day)}."


def fresh_coals_in(fresh: Refresh) -> str:
    """One refresh of a coal count, whose minutes count from coals on."""
    return (
        f"After {words.number(fresh.light_at_min)} min light {fresh.top + fresh.under} fresh; "
        f"after {words.number(fresh.at_min)} min put {placed(fresh)}."
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
        lines.append(
            f"Freeze at home: {words.joined([labels.get(id_, id_) for id_ in plan.cold.frozen_packs])}."
        )
    if plan.cold.thaw_hours:
        lines.append(f"Thawed in the cooler after {words.whole_span(plan.cold.thaw_hours)} hours.")
    if plan.cold.ice_kg is not None and not any("of ice" in note for note in plan.cold.notes):
        lines.append(f"Ice to bring: {words.weight(plan.cold.ice_kg, units)}.")
    return [*lines, *plan.cold.notes]


def caution(of: Caution) -> tuple[str, str]:
    """A caution as its heading and its text; what the text says of it first is the heading's end."""
    heading = CAUTIONS[of.id]
    first, stop, rest = of.text.partition(". ")
    return (first, rest) if stop and first.startswith(f"{heading}:") else (heading, of.text)


def bag(of: Bag, name: str) -> str:
    """How one frozen pack fares: its time in the freezer, its state when it is wanted, what is done with it."""
    told = [f"{words.capital(name)}:"]
    if of.freeze_hours:
        told.append(f"freezes in {words.whole_span(of.freeze_hours)} hours at home;")
    told.append(f"{of.state} when it is wanted, if it stays in the cooler.")
    if of.advice:
        told.append(f"Then {of.advice}" if of.move_hours_before is None else f"So: {of.advice}")
    return " ".join(told)


def bought(line: Purchase) -> str:
    """What to buy, and where it is not the same what of it is wanted: "1 pint (2 cups), for 1 1/2 cups; 1/2 cup left over"."""
    wanted = f", {'' if line.need.startswith('as ') else 'for '}{line.need}"
    if _bare(line.need) in _bare(line.buy):
        wanted = ""
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
    if prep.removeprefix("grated ") in OF_A_FRUIT:
        return f"{prep} of {told}"
    return f"{told}, {prep}" if prep else told


def pack_name(pack: Pack) -> str:
    """The pack's label on one line."""
    return pack.label.partition("\n")[0]
