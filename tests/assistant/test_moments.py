"""The folded day: even repetitions become one line, and no moment is lost."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from assistant.show.moments import FEWEST, folded
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


def test_another_step_begins_another_line() -> None:
    lines = folded(at([-90, -75, -60, -50, -40, -30]))
    assert [(line.every_min, len(line.moments)) for line in lines] == [(15, 3), (10, 3)]


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
        steps = {b.at_min - a.at_min for a, b in zip(line.moments, line.moments[1:], strict=False)}
        assert steps == (set() if line.every_min is None else {line.every_min})
        assert line.every_min is None or len(line.moments) >= FEWEST
