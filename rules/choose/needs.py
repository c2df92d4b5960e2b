"""What a planned dish takes of the pots, the charcoal, the cooler, the time, and what somebody at the table avoids."""

from __future__ import annotations

from collections.abc import Iterator

from rules import table
from rules.choose.model import Means, Need
from rules.coals.stages import STOVE_FAMILIES
from rules.cold.hours import figure as cold_figure
from rules.plan import Plan
from rules.pot.volume import pot_families
from rules.recipe import Family
from rules.units import number, to

#: Families that no pot over coals cooks, and what each wants.
ELSEWHERE: dict[Family, str] = {
    "preserve or ferment": "a kitchen at home, some days before",
    "grill or smoke": "an open grill or a smoke fire",
}


def figure(key: str) -> float:
    """A figure of `choose_figures.csv`."""
    return table.figures("choose_figures.csv")[key].value


def needs(plan: Plan, means: Means) -> tuple[Need, ...]:
    """Every need of a plan that was made for the means' own day."""
    return (*_pot(plan, means), *_charcoal(plan, means), *_cooler(plan, means), *_time(plan, means))


def _pot(plan: Plan, means: Means) -> Iterator[Need]:
    pot = plan.pot
    if pot is None:
        return
    size = f"{pot.diameter_in}-inch {pot.depth} pot"
    pots = size if pot.count == 1 else f"{pot.count} {size}s"
    fill = f"fills {pot.fill:.0%} of the {pots}" if pot.fill is not None else f"goes into the {pots}"
    family = pot_families().get(plan.recipe.family)
    if pot.fill is not None and family is not None:
        fill += f", which may be {family.most:.0%} full"
    owned = sum(
        one.count for one in means.day.pots if (one.diameter_in, one.depth) == (pot.diameter_in, pot.depth)
    )
    lacking = pot.count - owned if means.day.pots else 0
    yield Need(
        what="pot",
        said=fill,
        needed=pot.count,
        had=owned or None,
        unit=size,
        missing=f"{number(lacking)} more {size}{'s' if lacking > 1 else ''}" if lacking > 0 else None,
    )


def _charcoal(plan: Plan, means: Means) -> Iterator[Need]:
    if plan.heat is None:
        yield _without_coals(plan, means)
        return
    wanted, had = plan.heat.fuel.briquettes, means.briquettes
    lacking = wanted - had if had is not None else 0
    yield Need(
        what="charcoal",
        said=f"takes {wanted} briquettes, {plan.heat.fuel.reserve} of them in reserve"
        + (f", of your {had}" if had is not None else ""),
        needed=wanted,
        had=had,
        unit="briquette",
        missing=f"{lacking} more briquette{'s' if lacking > 1 else ''}" if lacking > 0 else None,
    )


def _without_coals(plan: Plan, means: Means) -> Need:
    """A dish without coals: cold, cooked elsewhere, or kept from its coals by a ban."""
    family = plan.recipe.family
    if family in ELSEWHERE:
        return Need(what="fire", said=(plan.no_coals_because or "").rstrip("."), missing=ELSEWHERE[family])
    if means.day.charcoal or family == "no cook":
        return Need(what="fire", said="needs no coals")
    if family in STOVE_FAMILIES:
        return Need(
            what="fire", said="wants a camp stove, where stoves are allowed, in the place of its coals"
        )
    return Need(
        what="fire", said="wants coals, which are not allowed", missing="a day on which charcoal is allowed"
    )


def _cooler(plan: Plan, means: Means) -> Iterator[Need]:
    """Room for what travels cold and for its ice [quarts]."""
    liters = sum(
        (item.grams or 0.0) / 1000
        for pack in plan.packs
        if pack.travels in ("cool", "frozen")
        for item in pack.items
    )
    if plan.cold is None:
        yield Need(what="cooler", said="needs no cooler", needed=0, unit="quart")
        return
    ice = (plan.cold.ice_kg or 0.0) / cold_figure("ice_bulk").value
    quarts = to(liters * figure("packing") + ice, "liter", "quart")
    had = means.day.cooler_quarts
    lacking = quarts - had if had is not None else 0.0
    of = f" of your {had:g}" if had is not None else ""
    yield Need(
        what="cooler",
        said=f"takes {quarts:.0f} quarts{of} in the cooler, ice included",
        needed=round(quarts, 1),
        had=had,
        unit="quart",
        missing=f"{max(lacking, 1):.0f} more quarts of cooler" if lacking > 0 else None,
    )


def _time(plan: Plan, means: Means) -> Iterator[Need]:
    """From the first coal to the meal [min]."""
    starts = (
        [stage.starts_at_min for stage in plan.heat.stages if stage.starts_at_min is not None]
        if plan.heat
        else []
    )
    minutes = round(-min(starts, default=0.0))
    if not minutes:
        return
    had = means.minutes
    lacking = minutes - had if had is not None else 0.0
    yield Need(
        what="time",
        said=f"takes {minutes} minutes from the first coal to the meal"
        + (f" of your {had:g}" if had is not None else ""),
        needed=minutes,
        had=had,
        unit="minute",
        missing=f"{lacking:.0f} more minutes" if lacking > 0 else None,
    )
