"""The day in fewer lines, by dates: what is done again and again becomes one line that keeps all its times."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from assistant.show import words
from rules import clock
from rules.circumstances import Day
from rules.plan import Moment
from rules.recipe import Struct

#: Fewer repetitions than this stay lines of their own.
FEWEST = 3


class Line(Struct, frozen=True, kw_only=True):
    """One line of the day: a moment, or all moments of what is repeated; `every_min` where their steps are even."""

    moments: tuple[Moment, ...]
    every_min: float | None = None

    @property
    def do(self) -> str:
        """What is done."""
        return words.sentence(self.moments[0].do)


def by_date(moments: Sequence[Moment], day: Day) -> list[tuple[str, list[Line]]]:
    """The lines of each date under its name, which is empty where the meal has no clock."""
    grouped = groupby(folded(moments), key=lambda line: _date(line.moments[0].at_min, day))
    return [(date, list(lines)) for date, lines in grouped]


def again(line: Line, day: Day) -> str:
    """When what a line says is done once more: "then every 10 minutes until 18:10", "also at 17:49 and 18:09"."""
    if len(line.moments) == 1:
        return ""
    times = [hour(moment, day) for moment in line.moments[1:]]
    if line.every_min is not None:
        return f"then every {words.number(line.every_min)} minutes until {times[-1]}"
    return f"also {'at ' if day.eat else ''}{words.joined(times)}"


def hour(moment: Moment, day: Day) -> str:
    """When a moment is, under the name of its date: "17:15", or "75 min before" where the meal has no clock."""
    at = clock.at(day, moment.at_min)
    return f"{at:%H:%M}" if at else words.when(moment.at_min)


def _date(at_min: float, day: Day) -> str:
    eating, moment = clock.meal(day), clock.at(day, at_min)
    if eating is None or moment is None:
        return ""
    if clock.has_date(day):
        return words.date(moment)
    days = (moment.date() - eating.date()).days
    if not days:
        return "The day of the meal"
    return words.capital(
        f"{words.count(abs(days))} day{'' if abs(days) == 1 else 's'} {'before' if days < 0 else 'later'}"
    )


def folded(moments: Sequence[Moment]) -> tuple[Line, ...]:
    """The lines of a day in order of their first moments; nothing is lost and nothing doubled."""
    by_deed: dict[str, list[Moment]] = {}
    for moment in moments:
        by_deed.setdefault(moment.do, []).append(moment)
    place = {id(moment): number for number, moment in enumerate(moments)}
    lines = [line for same in by_deed.values() for line in _lines(same)]
    return tuple(sorted(lines, key=lambda line: place[id(line.moments[0])]))


def _lines(same: Sequence[Moment]) -> Iterator[Line]:
    """One line for what is done often, a line each for what is done once or twice."""
    if len(same) < FEWEST:
        yield from (Line(moments=(moment,)) for moment in same)
        return
    steps = {after.at_min - before.at_min for before, after in pairwise(same)}
    yield Line(moments=tuple(same), every_min=steps.pop() if len(steps) == 1 else None)
