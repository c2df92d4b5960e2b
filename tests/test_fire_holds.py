"""Every recipe of the corpus, on seven kinds of day: the planned fire holds what it says it holds."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from assistant.reader.read import read
from rules.circumstances import Day, PotOwned
from rules.coals.curve import Course, courses
from rules.convert import camp
from rules.recipe import Recipe
from tests.gold import slugs, text

DAYS = {
    "mild": Day(),
    "cold wind": Day(air_f=30, wind="windy"),
    "frost over snow": Day(air_f=10, wind="breezy", ground="snow", screen=True),
    "hot": Day(air_f=95),
    "high ground": Day(air_f=45, elevation_ft=8000),
    "deep pot": Day(pots=(PotOwned(diameter_in=12, depth="deep"),)),
    "small pot": Day(pots=(PotOwned(diameter_in=8),)),
}
#: A pot that was hotter a moment ago is in its band by then [min], as an oven that is turned down.
COMES_DOWN_MIN = 10.0
#: What people may read off a thermometer [°F].
CLOSE_F = 0.5


@cache
def reading(slug: str) -> Recipe:
    return read(text(slug), file=f"{slug}.txt")


def followed(day: Day) -> Iterator[tuple[str, Course, Course | None]]:
    """Every stage over coals of every recipe, with the one before it."""
    for slug in slugs():
        before = None
        for course in courses(camp(reading(slug), day), day, every_min=1.0):
            yield slug, course, before
            before = course


@pytest.mark.parametrize("day", DAYS.values(), ids=DAYS)
def test_iron_and_food_stay_in_their_band_from_the_end_of_the_warming_to_the_end(day: Day) -> None:
    """25 °F about the aim for a bake or roast, 15 °F under the boil for a simmer, at every minute."""
    held = 0
    for slug, course, before in followed(day):
        if course.holds is None or course.low_f is None or course.high_f is None:
            continue
        held += 1
        start = course.held[0][0]
        falls = before is not None and before.points[-1].iron_f > course.high_f and course.holds == "iron"
        free = COMES_DOWN_MIN if falls else 0.0
        out = [
            (at - start, round(temp))
            for at, temp in course.held
            if at >= start + free and not course.low_f - CLOSE_F <= temp <= course.high_f + CLOSE_F
        ]
        assert not out, f"{slug}, {course.stage.kind}: {out[:3]}"
    assert held >= 25


@pytest.mark.parametrize("day", DAYS.values(), ids=DAYS)
def test_a_bake_that_opens_the_cooking_is_warmed_by_a_stage_of_its_own(day: Day) -> None:
    for slug, course, before in followed(day):
        if course.stage.kind in ("bake", "roast") and before is not None and before.stage.kind == "warm":
            assert before.stage.top + before.stage.under > 0, slug
            assert course.held[0][1] >= (course.low_f or 0), slug
        assert before is not None or course.stage.kind not in ("bake", "roast"), slug


@pytest.mark.parametrize("day", DAYS.values(), ids=DAYS)
def test_fresh_coals_are_lit_twenty_minutes_before_they_go_on_and_never_before_the_first(day: Day) -> None:
    for slug in slugs():
        heat = camp(reading(slug), day).heat
        if heat is None:
            continue
        first = min(batch.light_at_min for batch in heat.fuel.batches)
        for stage in heat.stages:
            end = (stage.starts_at_min or 0.0) + (stage.minutes.high if stage.minutes else 0.0)
            for fresh in stage.refresh:
                assert fresh.light_at_min == fresh.at_min - 20 >= first, slug
                assert (stage.starts_at_min or 0.0) <= fresh.at_min < end, slug
                assert fresh.top + fresh.under >= 2, slug


def test_a_recipe_that_lowers_its_oven_says_how_long_the_pot_takes_to_come_down() -> None:
    plan = camp(reading("river-apple-pie"))
    assert "heat.come-down" in [reason.rule for reason in plan.why]
