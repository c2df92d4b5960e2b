"""Any log: factors within their bounds, counts whole, the fit finite and the same whenever it is made."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.circumstances import Day
from rules.coals.counts import WAYS, coals
from rules.habit import Cooked, Told, coal_factor, fit, minutes_factor, split_factor
from rules.habit.figures import bound

levels = st.sampled_from((None, -2, -1, 0, 1, 2, 3))
told = st.builds(
    Told,
    minutes=st.none() | st.floats(1, 1000),
    pot_f=st.none() | st.floats(-50, 900),
    top=levels,
    under=levels,
)
cooks = st.builds(
    Cooked,
    dish=st.just("Cobbler"),
    kind=st.sampled_from(("bake", "roast", "simmer", "fry", "boil")),
    diameter_in=st.sampled_from((8, 12)),
    depth=st.sampled_from(("shallow", "deep")),
    charcoal=st.sampled_from(("briquettes", "lump charcoal")),
    air_f=st.floats(-40, 120),
    wind=st.just("calm"),
    aim_f=st.none() | st.floats(200, 550),
    chart_low_min=st.floats(1, 60),
    chart_high_min=st.floats(60, 400),
    chart_top=st.integers(0, 40),
    chart_under=st.integers(0, 40),
    laid_top=st.integers(0, 80),
    laid_under=st.integers(0, 80),
    told=told,
)


@settings(max_examples=150)
@given(log=st.lists(cooks, max_size=12), way=st.sampled_from(WAYS))
def test_whatever_is_logged_the_plan_stays_within_bounds(log: list[Cooked], way: str) -> None:
    habit = fit(log)
    assert habit == fit(log)
    day = Day(habit=habit)
    for diameter in (8, 12, 14):
        assert bound("coals").holds(coal_factor(day, diameter, "shallow").factor)
        assert bound("split").holds(split_factor(day, diameter, "shallow").factor)
        assert bound("minutes").holds(minutes_factor(day, "bake", diameter, "shallow").factor)
        own = coals(way, diameter_in=diameter, depth="shallow", day=day)  # type: ignore[arg-type]
        usual = coals(way, diameter_in=diameter, depth="shallow", day=Day())  # type: ignore[arg-type]
        assert min(own.top, own.under) >= 0
        low, high = bound("coals").low, bound("coals").high
        assert low * usual.total - 1 <= own.total <= high * usual.total + 1
    if habit is not None:
        assert all(math.isfinite(value) for value in habit.mean)
        assert all(habit.covariance[place][place] > 0 for place in range(len(habit.effects)))
