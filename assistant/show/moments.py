"""The day in fewer lines: what is done again and again at even steps becomes one line that keeps all its times."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

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
        return self.moments[0].do


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
