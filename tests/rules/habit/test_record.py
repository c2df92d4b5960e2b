"""A line of the log keeps what was planned, what lay there and what was told; what it says is worked out by hand."""

from __future__ import annotations

import math

import msgspec
import pytest

from rules.circumstances import Day
from rules.habit.evidence import Evidence, evidence, fuel_heat, is_counted, own_minutes, pot_heat, pot_split
from rules.habit.figures import figure
from rules.habit.record import Cooked, Told, cooked, main_stage
from rules.plan import Fuel, Heat, Minutes, Plan, PotPlan, Stage, StageKind
from rules.recipe import Recipe

replace = msgspec.structs.replace


def planned(top: int, under: int, minutes: float = 40, kind: StageKind = "bake") -> Plan:
    """A plan of one stage."""
    stage = Stage(kind=kind, minutes=Minutes(low=minutes, high=minutes), temp_f=350, top=top, under=under)
    fuel = Fuel(lit=top + under, reserve=0, briquettes=top + under, kg=0.0)
    return Plan(
        recipe=Recipe(title="Cobbler"),
        pot=PotPlan(diameter_in=12, quarts=6),
        heat=Heat(stages=(stage,), fuel=fuel),
    )


def line(told: Told, *, laid: tuple[int, int] = (16, 8), kind: StageKind = "bake") -> Cooked:
    found = cooked(planned(*laid, kind=kind), planned(16, 8, kind=kind), Day(), told)
    assert found is not None
    return found


def about(effect: str, cook: Cooked) -> list[Evidence]:
    return [one for one in evidence(cook) if effect in one.weights]


def test_a_line_keeps_both_counts_and_the_day() -> None:
    day = Day(air_f=45, wind="windy", burns="lump charcoal")
    found = cooked(planned(12, 8), planned(18, 9), day, Told(minutes=35))
    assert found is not None
    assert (found.laid_top, found.laid_under, found.chart_top, found.chart_under) == (12, 8, 18, 9)
    assert (found.dish, found.kind, found.chart_min, found.air_f, found.wind, found.charcoal) == (
        "Cobbler", "bake", 40, 45, "windy", "lump charcoal",
    )  # fmt: skip


def test_coals_that_the_cook_tells_go_before_those_of_the_plan() -> None:
    found = cooked(planned(16, 8), planned(16, 8), Day(), Told(top_coals=20, under_coals=10))
    assert found is not None
    assert (found.laid_top, found.laid_under) == (20, 10)


def test_a_dish_without_coals_has_no_line() -> None:
    cold = Plan(recipe=Recipe(title="Slaw"), no_coals_because="cold")
    assert cooked(cold, cold, Day(), Told(minutes=35)) is None
    assert main_stage(cold) is None


def test_minutes_speak_of_the_cook_and_against_the_heat() -> None:
    """40 planned, 50 taken over a quarter more coals than the chart: ln(50/40) + 1.5 ln(30/24)."""
    (one,) = about(own_minutes("bake"), line(Told(minutes=50), laid=(20, 10)))
    per_heat = figure("time per heat")
    assert one.value == pytest.approx(math.log(50 / 40) + per_heat * math.log(30 / 24))
    assert one.weights[pot_heat(12, "shallow")] == one.weights[fuel_heat("briquettes")] == -per_heat


def test_a_simmer_speaks_of_the_cook_alone() -> None:
    (one,) = evidence(line(Told(minutes=50, pot_f=212, under=1), kind="simmer"))
    assert dict(one.weights) == {own_minutes("simmer"): 1.0}
    assert one.value == pytest.approx(math.log(50 / 40))


def test_a_reading_is_the_rise_over_the_air_against_the_aims() -> None:
    """340 °F where 350 was the aim, in air of 70: ln(270/280)."""
    (one,) = evidence(line(Told(pot_f=340)))
    assert one.value == pytest.approx(math.log(270 / 280))
    assert not list(evidence(line(Told(pot_f=60))))


def test_a_dark_bottom_speaks_of_the_heat_and_of_the_split() -> None:
    cook = line(Told(under=1))
    (heat,) = about(pot_heat(12, "shallow"), cook)
    (split,) = about(pot_split(12, "shallow"), cook)
    assert heat.value == pytest.approx(figure("darkness heat") / 2)
    assert split.value == pytest.approx(-figure("darkness split"))


def test_a_split_that_was_already_moved_is_taken_into_account() -> None:
    """Both faces right over 14 and 10 where the chart says 16 and 8: the pot wants that split."""
    (split,) = about(pot_split(12, "shallow"), line(Told(top=0, under=0), laid=(14, 10)))
    assert split.value == pytest.approx(-(math.log(14 / 16) - math.log(10 / 8)))


@pytest.mark.parametrize(("minutes", "counts"), [(40, True), (17, True), (4, False), (400, False)])
def test_minutes_far_from_the_plan_are_not_counted(minutes: float, counts: bool) -> None:
    cook = line(Told(minutes=minutes))
    assert is_counted(cook) == counts
    assert bool(list(evidence(cook))) == counts


def test_nothing_told_says_nothing() -> None:
    assert list(evidence(line(Told()))) == []
