"""Stages without coals: joined, filled from tables, never more than two of a kind."""

from __future__ import annotations

import itertools

import pytest

from rules.coals.drafts import GROUPS, Draft, family_heat, heat_figure, joined, merged, minutes, usual
from rules.coals.pieces import Piece


def draft(kind: str, low: float, high: float, way: str | None = None, **more) -> Draft:
    return Draft(kind=kind, way=way or kind, low_min=low, high_min=high, look=kind, **more)


def test_neighbours_of_one_kind_become_one_stage() -> None:
    found = merged([draft("simmer", 10, 15), draft("simmer", 20, 30)])
    assert [(one.low_min, one.high_min) for one in found] == [(30, 45)]


def test_no_more_than_two_of_a_kind_are_left_and_no_minute_is_lost() -> None:
    many = [draft(kind, 5, 10) for _ in range(4) for kind in ("simmer", "boil", "bake")]
    found = merged(many)
    for group in GROUPS:
        assert sum(one.kind in group for one in found) <= 2
    assert sum(one.high_min for one in found) == sum(one.high_min for one in many)


def test_frying_and_browning_count_as_one_kind() -> None:
    many = [
        draft("fry", 5, 8, "gentle fry"),
        draft("boil", 10, 10),
        draft("brown", 8, 12, "fry"),
        draft("boil", 1, 1),
    ]
    found = merged([*many, draft("fry", 3, 4, "gentle fry")])
    assert [one.kind for one in found].count("fry") + [one.kind for one in found].count("brown") == 2


def test_two_bakes_at_two_heats_stay_two() -> None:
    found = merged([draft("bake", 15, 15, temp_f=475), draft("bake", 25, 30, temp_f=425)])
    assert len(found) == 2


def test_the_longer_spell_leads() -> None:
    one = joined(draft("fry", 5, 5, "gentle fry"), draft("brown", 10, 12, "fry", is_main=True))
    assert (one.kind, one.way, one.low_min, one.is_main) == ("brown", "fry", 15, True)


def test_an_untimed_step_asks_for_the_usual_minutes_at_least() -> None:
    timed = Piece(kind="fry", step=1, low_min=1, high_min=2)
    assert minutes([timed], "fry") == (1, 2)
    assert minutes([timed, Piece(kind="fry", step=0)], "fry") == (usual("fry").low_min, usual("fry").high_min)
    assert minutes([timed, Piece(kind="fry", step=1)], "fry") == (1, 2)


@pytest.mark.parametrize("family", ["batter bake", "stew or braise", "deep fry", "boil or steam"])
def test_every_family_has_its_usual_heat(family) -> None:
    row = family_heat(family)
    assert row.low_min <= row.high_min
    assert row.id == family


def test_a_family_without_a_row_is_cooked_as_any_other() -> None:
    assert family_heat("no cook").id == "other"


def test_figures_say_their_source() -> None:
    assert heat_figure("pressure factor").value == 3
    assert all(heat_figure(key).source for key in ("fan", "first look", "high ground"))


def test_ranges_stand_the_right_way_up() -> None:
    for one, two in itertools.pairwise([usual("warm"), usual("brown"), usual("boil")]):
        assert one.low_min <= one.high_min
        assert two.low_min <= two.high_min
