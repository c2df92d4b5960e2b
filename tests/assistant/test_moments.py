"""The folded day: even repetitions become one line, and no moment is lost."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from assistant.show.moments import FEWEST, again, by_date, folded
from rules.circumstances import Day
from rules.plan import Moment

deeds = st.lists(
    st.builds(
        Moment,
        at_min=st.integers(-200, 200).map(float),
        do=st.sampled_from(["Turn.", "Look.", "Fresh coals."]),
    ),
    max_size=40,
)


def at(minutes: list[float], do: str = "Turn.") -> list[Moment]:
    return [Moment(at_min=minute, do=do) for minute in minutes]


def test_turns_at_even_steps_are_one_line_that_keeps_its_times() -> None:
    (line,) = folded(at([-50, -40, -30, -20]))
    assert line.every_min == 10
    assert [moment.at_min for moment in line.moments] == [-50, -40, -30, -20]


def test_uneven_steps_are_one_line_too_and_claim_no_rhythm() -> None:
    (line,) = folded(at([-61, -41, -31, -21], "Turn again."))
    assert line.every_min is None
    assert again(line, Day(eat="18:30")) == "also at 17:49, 17:59 and 18:09"
    assert again(line, Day()) == "also 41 min before, 31 min before and 21 min before"


def test_even_steps_tell_their_rhythm() -> None:
    (line,) = folded(at([-50, -40, -30]))
    assert again(line, Day(eat="18:30")) == "then every 10 minutes until 18:00"
    assert again(folded(at([-50]))[0], Day()) == ""


def test_lines_stand_under_their_dates() -> None:
    moments = [Moment(at_min=-1440, do="shop"), Moment(at_min=-60, do="light")]
    named = [
        (date, [line.do for line in lines]) for date, lines in by_date(moments, Day(eat="2027-07-03T18:30"))
    ]
    assert named == [("Fri 2 Jul", ["Shop."]), ("Sat 3 Jul", ["Light."])]
    assert [date for date, _ in by_date(moments, Day(eat="18:30"))] == [
        "One day before",
        "The day of the meal",
    ]
    assert [date for date, _ in by_date(moments, Day())] == [""]


def test_two_of_a_kind_stay_two_lines() -> None:
    assert [line.every_min for line in folded(at([-50, -40]))] == [None, None]


def test_what_happens_between_the_turns_keeps_its_place_after_the_first() -> None:
    day = sorted([*at([-50, -40, -30]), *at([-45], "Fresh coals.")], key=lambda moment: moment.at_min)
    assert [line.do for line in folded(day)] == ["Turn.", "Fresh coals."]


@given(deeds.map(lambda moments: sorted(moments, key=lambda moment: moment.at_min)))
def test_every_moment_is_in_exactly_one_line(moments: list[Moment]) -> None:
    lines = folded(moments)
    told = [moment for line in lines for moment in line.moments]
    assert sorted(map(id, told)) == sorted(map(id, moments))
    for line in lines:
        steps = {b.at_min - a.at_min for a, b in pairwise(line.moments)}
        assert line.every_min is None or steps == {line.every_min}
        assert len(line.moments) == 1 or len(line.moments) >= FEWEST
