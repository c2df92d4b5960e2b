"""What is made of a habit: the factor on the coals, on their split, on the minutes, each within its bounds.

No habit, no reason and a factor of 1: the plan is then the chart's to the last byte.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from rules.because import Rule
from rules.circumstances import Day, Habit
from rules.habit.evidence import fuel_heat, own_minutes, pot_heat, pot_split, spread, time_per_heat
from rules.habit.figures import bound
from rules.plan import Depth, Reason, StageKind
from rules.recipe import Struct

OWN = "the cook's own log; bounds in habit_bounds.csv"
#: A factor nearer to 1 than this changes nothing that a cook could count.
TOO_SMALL = 0.005

HEAT = Rule(
    id="habit.heat",
    because="your log of {cooks} says that your {pot} over {charcoal} holds {share:.0f} % of the chart's rise over the"
    " air, give or take {give:.0f}: the count goes times {factor:.2f}",
    source=OWN,
)
SPLIT = Rule(
    id="habit.split",
    because="your log of {cooks} says that your {pot} gives its top {share:.0f} % of the chart's share against the"
    " bottom, give or take {give:.0f}: top over bottom goes times {factor:.2f}",
    source=OWN,
)
MINUTES = Rule(
    id="habit.minutes",
    because="your log of {cooks} says that {what} takes you {share:.0f} % of the recipe's minutes, give or take"
    " {give:.0f}: the minutes go times {factor:.2f}, and the signs of doneness still decide",
    source=OWN,
)


class Estimate(Struct, frozen=True, kw_only=True):
    """An effect or a sum of them: mean and deviation, of logarithms."""

    mean: float
    deviation: float

    @property
    def share(self) -> float:
        """The mean as a ratio."""
        return math.exp(self.mean)

    @property
    def give(self) -> float:
        """One deviation of that ratio."""
        return self.share * math.sinh(self.deviation)


class Own(Struct, frozen=True, kw_only=True):
    """A factor of the cook's own, and why; 1 without a reason where nothing is learnt."""

    factor: float = 1.0
    reasons: tuple[Reason, ...] = ()


def estimate(habit: Habit, weights: Mapping[str, float]) -> Estimate:
    """The weighted sum of effects; what was never logged is nothing, give or take its spread."""
    parts = [(habit.effects.index(name), weight) for name, weight in weights.items() if name in habit.effects]
    mean = math.fsum(weight * habit.mean[place] for place, weight in parts)
    variance = math.fsum(a * b * habit.covariance[one][other] for one, a in parts for other, b in parts)
    variance += math.fsum(
        (weight * spread(name)) ** 2 for name, weight in weights.items() if name not in habit.effects
    )
    return Estimate(mean=mean, deviation=math.sqrt(max(variance, 0.0)))


def heat(habit: Habit, day: Day, diameter_in: int, depth: Depth) -> Estimate:
    """The heat of a pot over the day's charcoal."""
    return estimate(habit, {pot_heat(diameter_in, depth): 1.0, fuel_heat(day.burns): 1.0})


def coal_factor(day: Day, diameter_in: int, depth: Depth) -> Own:
    """What the count of briquettes is multiplied by, so that the pot holds what the recipe asks for."""
    if day.habit is None:
        return Own()
    found = heat(day.habit, day, diameter_in, depth)
    return _own(HEAT, day.habit, found, bound("coals").held(1 / found.share), diameter_in, depth, day)


def split_factor(day: Day, diameter_in: int, depth: Depth) -> Own:
    """What the ratio of top to bottom is multiplied by, the count staying as it is."""
    if day.habit is None:
        return Own()
    found = estimate(day.habit, {pot_split(diameter_in, depth): 1.0})
    return _own(SPLIT, day.habit, found, bound("split").held(1 / found.share), diameter_in, depth, day)


def minutes_factor(day: Day, kind: StageKind, diameter_in: int, depth: Depth) -> Own:
    """What the minutes of a dish are multiplied by: the cook's own, and what the coals' bounds leave undone."""
    if day.habit is None:
        return Own()
    found = estimate(day.habit, {own_minutes(kind): 1.0})
    left = heat(day.habit, day, diameter_in, depth).mean + math.log(
        coal_factor(day, diameter_in, depth).factor
    )
    rest = -time_per_heat(kind) * left
    if abs(rest) > TOO_SMALL:
        found = Estimate(mean=found.mean + rest, deviation=found.deviation)
    return _own(
        MINUTES,
        day.habit,
        found,
        bound("minutes").held(found.share),
        diameter_in,
        depth,
        day,
        what=f"a {kind}",
    )


def _own(
    rule: Rule,
    habit: Habit,
    found: Estimate,
    factor: float,
    diameter_in: int,
    depth: Depth,
    day: Day,
    *,
    what: str = "",
) -> Own:
    if abs(factor - 1) < TOO_SMALL:
        return Own()
    reason = rule.says(
        "minutes" if rule is MINUTES else "coals",
        cooks="1 cook" if habit.cooks == 1 else f"{habit.cooks} cooks",
        pot=f"{diameter_in}-inch {depth} pot",
        charcoal=day.burns,
        share=100 * found.share,
        give=100 * found.give,
        factor=factor,
        what=what,
    )
    return Own(factor=factor, reasons=(reason,))
