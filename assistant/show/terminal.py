"""Lines for a terminal: headings, paragraphs, rows and lists, wrapped to the width, with colours or without.

Plain text and coloured text are the same text, and nothing from a recipe reaches the terminal but letters.
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from assistant.show.plain import printable

if TYPE_CHECKING:
    from assistant.show.forms import Look

EMBER, HEAD, QUIET, WARN = "bold dark_orange", "bold", "dim", "bold yellow"


class Page:
    """Lines on their way to a terminal: headings, paragraphs, rows and lists, wrapped to the width."""

    def __init__(self, look: Look) -> None:
        self.width = look.width
        self.day = look.day
        self._out = io.StringIO()
        self._console = Console(
            file=self._out,
            width=look.width,
            force_terminal=look.color,
            no_color=not look.color,
            color_system="256" if look.color else None,
            highlight=False,
            markup=False,
            emoji=False,
            legacy_windows=False,
        )

    def title(self, left: str, right: str) -> None:
        """The name of the dish, and what kind of dish it is at the right edge."""
        room = self.width - len(right) - 3
        if right and room >= 24 and len(left) <= room:
            line = Text(left, HEAD) + Text(" " * (self.width - len(left) - len(right))) + Text(right, QUIET)
            self._console.print(line)
        else:
            self._console.print(Text(left, HEAD))
            if right:
                self._console.print(Text(right, QUIET))
        self._console.print(Text("▔" * self.width, "dark_orange"))

    def heading(self, name: str, note: str = "") -> None:
        """A section's name, with a few words of explanation."""
        self.gap()
        self._console.print(Text(name.upper(), EMBER) + Text(f"   {note}" if note else "", QUIET))

    def gap(self) -> None:
        """An empty line."""
        self._console.print()

    def say(self, text: str | Text, *, indent: int = 2, style: str = "") -> None:
        """A paragraph."""
        said = text if isinstance(text, Text) else Text(printable(text), style)
        self._console.print(Padding(said, (0, 0, 0, indent)))

    def facts(self, facts: Iterable[str]) -> None:
        """Short facts after each other, none broken where it fits on a line."""
        lines: list[str] = []
        for fact in filter(None, map(printable, facts)):
            if lines and len(lines[-1]) + 3 + len(fact) <= self.width:
                lines[-1] += f" · {fact}"
            else:
                lines.append(fact)
        self.say("\n".join(lines), indent=0)

    def rows(
        self, rows: Iterable[Sequence[str | Text]], *, indent: int = 2, widths: Sequence[int] = ()
    ) -> None:
        """Rows of cells; the last column takes what is left and wraps. `widths` fixes those of the first columns."""
        grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
        filled = [[cell if isinstance(cell, Text) else Text(printable(cell)) for cell in row] for row in rows]
        if not filled:
            return
        for number in range(len(filled[0])):
            is_last = number == len(filled[0]) - 1
            width = widths[number] if number < len(widths) else None
            grid.add_column(width=width, ratio=1 if is_last and width is None else None)
        for row in filled:
            grid.add_row(*row)
        grid.expand = True
        self._console.print(Padding(grid, (0, 0, 0, indent)))

    def bullets(self, lines: Iterable[str], *, sign: str = "-", style: str = "") -> None:
        """A list; a sign ending in a point counts."""
        self.rows(
            [Text(f"{number}." if sign == "1." else sign, QUIET), Text(printable(line), style)]
            for number, line in enumerate(lines, start=1)
        )

    def text(self) -> str:
        """Everything so far, without blanks at the line ends."""
        return "\n".join(line.rstrip() for line in self._out.getvalue().split("\n"))
