"""What a habit does to a plan: coals, split and minutes within bounds, with a reason; nothing without one."""

from __future__ import annotations

import math
from pathlib import Path
from random import Random

import msgspec
import pytest

from assistant.reader.read import read
from rules.circumstances import Day, Habit, PotOwned
from rules.coals.counts import coals
from rules.convert import camp
from rules.habit import Cooked, Told, coal_factor, cooked, fit, minutes_factor, split_factor
from rules.habit.evidence import fuel_heat, own_minutes, pot_heat, pot_split, spread
from rules.habit.figures import bound
from rules.habit.own import estimate
from rules.habit.record import main_stage
from rules.recipe import Recipe

CORPUS = Path(__file__).parents[3] / "corpus" / "recipes"
COBBLER = "river-peach-cobbler.txt"


def recipe(name: str = COBBLER) -> Recipe:
    return read((CORPUS / name).read_text(encoding="utf-8"), file=name)


def learnt(**effects: float) -> Habit:
    """A habit of which everything is known for sure."""
    names = {
        "pot": pot_heat(12, "shallow"),
        "fuel": fuel_heat("briquettes"),
        "bake": own_minutes("bake"),
        "simmer": own_minutes("simmer"),
        "split": pot_split(12, "shallow"),
    }
    known = tuple(names[name] for name in effects)
    nothing = tuple(tuple(0.0 for _ in known) for _ in known)
    return Habit(effects=known, mean=tuple(effects.values()), covariance=nothing, cooks=5)


def test_without_a_habit_every_factor_is_one_and_says_nothing() -> None:
    own = [coal_factor(Day(), 12, "shallow"), split_factor(Day(), 12, "shallow")]
    own.append(minutes_factor(Day(), "bake", 12, "shallow"))
    assert [(one.factor, one.reasons) for one in own] == [(1.0, ())] * 3


def test_a_habit_of_another_pot_and_charcoal_leaves_the_plan_byte_for_byte() -> None:
    other = Habit(
        effects=(pot_heat(14, "deep"), fuel_heat("lump charcoal")),
        mean=(0.3, -0.3),
        covariance=((0.01, 0.0), (0.0, 0.01)),
        cooks=3,
    )
    dish = recipe()
    plans = [msgspec.json.encode(camp(dish, day)) for day in (Day(), Day(habit=other))]
    assert plans[0] == plans[1]


@pytest.mark.parametrize(("heat", "is_fewer"), [(0.15, True), (-0.15, False)])
def test_a_hot_pot_gets_fewer_coals_and_a_cold_one_more(heat: float, is_fewer: bool) -> None:
    usual = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    own = coals("bake", diameter_in=12, depth="shallow", day=Day(habit=learnt(pot=heat)), temp_f=350)
    assert (own.total < usual.total) == is_fewer
    assert own.exact == pytest.approx(usual.exact * math.exp(-heat))
    assert "habit.heat" in {reason.rule for reason in own.reasons}


def test_a_dark_top_moves_coals_below_and_leaves_their_number() -> None:
    usual = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    own = coals("bake", diameter_in=12, depth="shallow", day=Day(habit=learnt(split=0.3)), temp_f=350)
    assert own.total == usual.total
    assert own.top < usual.top
    assert "habit.split" in {reason.rule for reason in own.reasons}


def test_nothing_moves_up_where_the_lid_carries_nothing() -> None:
    own = coals("fry", diameter_in=12, depth="shallow", day=Day(habit=learnt(split=-0.3, fuel=-0.1)))
    assert own.top == 0


@pytest.mark.parametrize("mean", [-9.0, -1.0, 1.0, 9.0])
def test_no_factor_passes_its_bounds(mean: float) -> None:
    day = Day(habit=learnt(pot=mean, split=mean, bake=-mean))
    assert bound("coals").holds(coal_factor(day, 12, "shallow").factor)
    assert bound("split").holds(split_factor(day, 12, "shallow").factor)
    assert bound("minutes").holds(minutes_factor(day, "bake", 12, "shallow").factor)


def test_what_the_bounds_of_the_coals_leave_undone_falls_to_the_minutes() -> None:
    """A pot of twice the heat keeps three quarters of its coals, so the bake is done early."""
    day = Day(habit=learnt(pot=math.log(1.5)))
    assert coal_factor(day, 12, "shallow").factor == bound("coals").low
    assert minutes_factor(day, "bake", 12, "shallow").factor < 1
    assert minutes_factor(day, "simmer", 12, "shallow").factor == 1


def test_a_plan_says_that_its_minutes_are_the_cooks_own() -> None:
    plan, usual = camp(recipe(), Day(habit=learnt(bake=0.2))), camp(recipe(), Day())
    stage, before = main_stage(plan), main_stage(usual)
    assert stage is not None
    assert stage.minutes is not None
    assert before is not None
    assert before.minutes is not None
    assert stage.minutes.high == round(before.minutes.high * math.exp(0.2))
    (reason,) = [one for one in plan.why if one.rule == "habit.minutes"]
    assert "122 % of the recipe's minutes" in reason.because
    assert "log" in reason.source


def test_an_effect_that_was_never_logged_is_as_unsure_as_before() -> None:
    unknown = {fuel_heat("lump charcoal"): 1.0}
    found = estimate(learnt(pot=0.1), unknown)
    assert (found.mean, found.deviation) == (0.0, spread(fuel_heat("lump charcoal")))


def test_five_meals_through_the_whole_plan_halve_the_error_of_its_minutes() -> None:
    """The plan's own counts go onto a pot that is 15 % hotter than the chart, for a cook 10 % slower than the text."""
    dish, chance = recipe(), Random(5)
    pots = (PotOwned(diameter_in=12),)
    log: list[Cooked] = []
    errors = []
    for _ in range(6):
        day = Day(pots=pots, habit=fit(log))
        chart, plan = camp(dish, Day(pots=pots)), camp(dish, day)
        stage, usual = main_stage(plan), main_stage(chart)
        assert stage is not None
        assert stage.minutes is not None
        assert usual is not None
        assert usual.minutes is not None
        laid = math.log((stage.top + stage.under) / (usual.top + usual.under))
        middle = math.sqrt(usual.minutes.low * usual.minutes.high)
        truth = middle * math.exp(-0.10 - 1.5 * (0.15 + laid))
        planned = math.sqrt(stage.minutes.low * stage.minutes.high)
        errors.append(abs(math.log(planned / truth)))
        line = cooked(plan, chart, day, Told(minutes=round(truth * math.exp(chance.gauss(0, 0.08)))))
        assert line is not None
        log.append(line)
    assert errors[5] < errors[0] / 2
