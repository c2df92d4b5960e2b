"""What a log teaches, told one by one: every pot over every charcoal, every split, the cook's minutes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal

from rules.circumstances import Day, Habit
from rules.habit.evidence import own_minutes, pot_split
from rules.habit.own import Estimate, coal_factor, estimate, heat, minutes_factor, split_factor
from rules.habit.record import TIMED, Cooked
from rules.recipe import Struct


class Finding(Struct, frozen=True, kw_only=True):
    """One thing learnt from `cooks` lines: `percent` of the chart's or the recipe's, give or take `give_percent`.

    `factor` is what the plan makes of it, within its bounds.
    """

    what: Literal["heat", "split", "minutes"]
    about: str
    percent: float
    give_percent: float
    factor: float
    cooks: int


def findings(log: Sequence[Cooked], habit: Habit | None) -> tuple[Finding, ...]:
    """Everything that a log and its fit say, pots first."""
    if habit is None:
        return ()
    return (*_heats(log, habit), *_splits(log, habit), *_minutes(log, habit))


def _heats(log: Sequence[Cooked], habit: Habit) -> Iterable[Finding]:
    for diameter, depth, charcoal in dict.fromkeys(
        (cook.diameter_in, cook.depth, cook.charcoal) for cook in log
    ):
        day = Day(habit=habit, burns=charcoal)
        cooks = [
            cook
            for cook in log
            if (cook.diameter_in, cook.depth, cook.charcoal) == (diameter, depth, charcoal)
        ]
        yield _finding(
            "heat",
            f"{diameter}-inch {depth} pot over {charcoal}",
            heat(habit, day, diameter, depth),
            coal_factor(day, diameter, depth).factor,
            len(cooks),
        )


def _splits(log: Sequence[Cooked], habit: Habit) -> Iterable[Finding]:
    for diameter, depth in dict.fromkeys((cook.diameter_in, cook.depth) for cook in log):
        name = pot_split(diameter, depth)
        if name in habit.effects:
            told = [
                cook
                for cook in log
                if (cook.diameter_in, cook.depth) == (diameter, depth)
                and (cook.told.top is not None or cook.told.under is not None)
            ]
            factor = split_factor(Day(habit=habit), diameter, depth).factor
            about = f"{diameter}-inch {depth} pot, top against bottom"
            yield _finding("split", about, estimate(habit, {name: 1.0}), factor, len(told))


def _minutes(log: Sequence[Cooked], habit: Habit) -> Iterable[Finding]:
    for name in dict.fromkeys(own_minutes(cook.kind) for cook in log if cook.kind in TIMED):
        if name in habit.effects:
            told = [
                cook
                for cook in log
                if cook.kind in TIMED and own_minutes(cook.kind) == name and cook.told.minutes
            ]
            last = told[-1]
            factor = minutes_factor(
                Day(habit=habit, burns=last.charcoal), last.kind, last.diameter_in, last.depth
            )
            yield _finding("minutes", name, estimate(habit, {name: 1.0}), factor.factor, len(told))


def _finding(
    what: Literal["heat", "split", "minutes"], about: str, found: Estimate, factor: float, cooks: int
) -> Finding:
    return Finding(
        what=what,
        about=about,
        percent=round(100 * found.share, 1),
        give_percent=round(100 * found.give, 1),
        factor=round(factor, 3),
        cooks=cooks,
    )
