"""What another depth does to the minutes of a bake (handbook chapter 4)."""

from __future__ import annotations

from rules.because import Ledger, Rule
from rules.foods import Item
from rules.plan import PotPlan
from rules.pot.iron import figure, oven
from rules.pot.pans import pan_of
from rules.pot.volume import pot_families, raw_volume
from rules.recipe import Family, Recipe
from rules.units import to

#: Fuller than this and the pan was not the only one, or was misread.
MORE_THAN_FULL = 1.3

DEPTH = Rule(
    id="pot.minutes",
    because="it stands {pot_in} in deep in the pot and {pan_in} in in the {pan}, so the minutes are taken {factor} times:"
    " an estimate (depth ratio to the power {exponent}), the look and the thermometer decide",
)


def minutes_factor(
    recipe: Recipe, items: tuple[Item, ...], family: Family, pot: PotPlan | None, ledger: Ledger
) -> float:
    """What the baking minutes of the recipe are multiplied with; 1.0 where pan or amounts are unknown.

    Depth ratio to a power between conduction and bakers' habit, held inside limits; the reason says that it is an
    estimate.
    """
    asks = pot_families().get(family)
    pan = pan_of(recipe)
    if pot is None or pot.fill is None or pan is None or asks is None or not asks.by_area:
        return 1.0
    if pan.shape == "sheet" or pan.assumed:
        return 1.0
    room = raw_volume(items, family).milliliters
    if room is None:
        return 1.0
    once = room / items[0].scale
    pan_in = to(once, "milliliter", "cubic inch") / pan.area_sq_in
    if pan_in > MORE_THAN_FULL * pan.depth_in:
        return 1.0
    pot_in = pot.fill * oven(pot.diameter_in, pot.depth).depth_in
    exponent = figure("depth exponent")
    # A layer thinner than that sets and browns from its surface, whatever its depth.
    thin = figure("thin")
    ratio = max(pot_in, thin) / max(pan_in, thin)
    factor: float = min(max(ratio**exponent, figure("least factor")), figure("most factor"))
    if abs(factor - 1) < 0.05:
        return 1.0
    ledger.note(
        DEPTH.says(
            "minutes",
            pot_in=f"{pot_in:.1f}",
            pan_in=f"{pan_in:.1f}",
            pan=pan.said,
            factor=f"{factor:.2f}",
            exponent=exponent,
        )
    )
    return factor
