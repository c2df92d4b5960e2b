"""Times backwards from the meal; coals that move on count once."""

from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.coals.counts import coals
from rules.coals.drafts import Draft
from rules.coals.fire import Pot
from rules.coals.load import Load
from rules.coals.schedule import fired


def draft(kind: str, low: float, high: float, way: str | None = None, temp_f: float | None = None) -> Draft:
    return Draft(kind=kind, way=way or kind, low_min=low, high_min=high, temp_f=temp_f, look=kind)


def run(*drafts: Draft, rest: float = 10, day: Day | None = None, load: Load | None = None):
    day = day or Day()
    counted = [
        None
        if one.kind == "rise"
        else coals(one.way, diameter_in=12, depth="shallow", day=day, temp_f=one.temp_f)
        for one in drafts
    ]
    pot = Pot(diameter_in=12, depth="shallow", load=load)
    return fired(drafts, counted, rest_min=rest, pot=pot, day=day)


def test_stages_end_when_the_next_begins_and_the_last_one_before_the_meal() -> None:
    stages, _ = run(draft("brown", 8, 12, "fry"), draft("simmer", 60, 90), rest=10)
    assert [stage.starts_at_min for stage in stages] == [-112, -100]


def test_a_rise_ends_when_the_dough_goes_in_not_when_the_pot_is_warmed() -> None:
    stages, _ = run(
        draft("rise", 60, 90, "keep warm"),
        draft("warm", 10, 10, "bake", 350),
        draft("bake", 30, 35, temp_f=350),
    )
    rise, warm, bake = stages
    assert rise.starts_at_min + 90 == bake.starts_at_min
    assert warm.starts_at_min == bake.starts_at_min - warm.draft.high_min


def test_coals_that_move_to_the_next_stage_count_once() -> None:
    (warm, _), batches = run(draft("warm", 10, 10, "bake", 350), draft("bake", 18, 20, temp_f=350))
    assert [(batch.light_at_min, batch.count) for batch in batches] == [(-50 - warm.draft.high_min, 25)]


def test_a_hotter_stage_gets_what_it_lacks() -> None:
    _, batches = run(draft("fry", 5, 8, "gentle fry"), draft("bake", 20, 25, temp_f=350))
    assert batches[0].count == 15
    assert 9 <= batches[1].count <= 12


def test_a_smaller_stage_takes_coals_away() -> None:
    _, batches = run(draft("brown", 8, 12, "fry"), draft("simmer", 20, 25))
    assert [batch.count for batch in batches] == [30]


@pytest.mark.parametrize("minutes", [70, 180])
def test_a_long_stage_is_renewed_in_minutes_from_the_meal(minutes) -> None:
    stages, batches = run(draft("simmer", minutes, minutes))
    stage = stages[-1]
    assert stage.refresh
    for more in stage.refresh:
        assert stage.starts_at_min <= more.at_min < -10
        assert more.light_at_min == more.at_min - 20
    assert len(batches) == 1 + len(stage.refresh)


def test_no_stage_asks_for_more_coals_than_were_ever_lit() -> None:
    stages, batches = run(draft("fry", 5, 8, "fry"), draft("bake", 10, 12, temp_f=450))
    most = max(stage.coals.total for stage in stages)
    assert sum(batch.count for batch in batches) >= most


def test_spent_coals_are_left_to_the_ash() -> None:
    _, batches = run(
        draft("bake", 45, 50, temp_f=350), draft("fry", 10, 12, "fry"), draft("bake", 40, 45, temp_f=350)
    )
    later = [batch.count for batch in batches[1:]]
    assert sum(later) > 10


def test_coals_raked_aside_for_the_onions_come_back_for_the_boil() -> None:
    stages, batches = run(
        draft("brown", 8, 10, "fry"), draft("fry", 5, 6, "gentle fry"), draft("boil", 10, 15, "bring up")
    )
    assert [batch.count for batch in batches] == [30]
    assert "coals.aside" in [reason.rule for reason in stages[-1].reasons]


def test_a_bake_after_a_simmer_has_fewer_coals_than_the_chart_and_says_so() -> None:
    stages, _ = run(
        draft("simmer", 60, 65), draft("bake", 30, 35, temp_f=425), load=Load(kg=1.0, j_kg_k=3500.0)
    )
    bake = stages[-1]
    assert bake.coals.total < 31  # printed for 12 inches and 425 °F
    assert "heat.eased" in [reason.rule for reason in bake.reasons]
