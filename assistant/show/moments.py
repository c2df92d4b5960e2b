"""The day in fewer lines, by dates: what is done again and again at even steps becomes one line that keeps its times."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from assistant.show import words
from rules import clock
from rules.circumstances import Day
from rules.plan import Moment
from rules.recipe import Struct

#: Fewer repetitions than this stay lines of their own.
FEWEST = 3


class Line(Struct, frozen=True, kw_only=True):
    """One line of the day: a single moment, or the moments of something repeated every `every_min` minutes."""

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
    for run in _runs(same):
        if len(run) >= FEWEST:
            yield Line(moments=tuple(run), every_min=run[1].at_min - run[0].at_min)
        else:
            yield from (Line(moments=(moment,)) for moment in run)


def _runs(same: Sequence[Moment]) -> Iterator[list[Moment]]:
    """The moments of one deed, parted where the step between them changes."""
    run: list[Moment] = []
    for moment in same:
        if len(run) > 1 and moment.at_min - run[-1].at_min != run[1].at_min - run[0].at_min:
            yield run
            run = []
        run.append(moment)
    if run:
        yield run
