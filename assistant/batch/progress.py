"""How far a long run is, on a terminal: one line that is drawn over itself."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TextIO

from assistant.show.forms import Result

#: So often the line is drawn, at most [s].
DRAW_SECONDS = 0.25


class Progress:
    """Passes results on, says what failed, and counts; where it `draws` on a terminal, shows how far the run is."""

    def __init__(
        self, stream: TextIO, clock: Callable[[], float], say: Callable[[str], None], *, draws: bool
    ) -> None:
        self.done = 0
        self.failed = 0
        self._stream = stream
        self._clock = clock
        self._say = say
        self._began = self._drawn = clock()
        self._is_drawn = False
        self._draws = draws and stream.isatty()

    def counted(self, results: Iterable[Result]) -> Iterator[Result]:
        """The results themselves, counted on their way."""
        for result in results:
            self.done += 1
            if result.problem is not None:
                self.failed += 1
                self.clear()
                self._say(result.problem)
            if self._draws and self._clock() - self._drawn >= DRAW_SECONDS:
                self._draw()
            yield result

    def _draw(self) -> None:
        self._drawn = self._clock()
        self._is_drawn = True
        self._stream.write(f"\r\x1b[K{self.line()}")
        self._stream.flush()

    def line(self) -> str:
        """The line itself."""
        speed = self.done / max(self._clock() - self._began, 0.001)
        failed = f", {self.failed:,} failed" if self.failed else ""
        return f"{self.done:,} recipes{failed}, {speed:,.0f} a second"

    def clear(self) -> None:
        """Take the line away, before something else is said and at the end."""
        if self._is_drawn:
            self._is_drawn = False
            self._stream.write("\r\x1b[K")
            self._stream.flush()
