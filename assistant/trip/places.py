"""Where in a trip file a key stands: line numbers for the sentences about what is wrong, which TOML itself forgets."""

from __future__ import annotations

import re

_TABLE = re.compile(r"\s*\[\[?\s*([A-Za-z0-9_-]{1,40})\s*\]?\]\s*(?:#.*)?")
_KEY = re.compile(r"""\s*["']?([A-Za-z0-9_-]{1,40})["']?\s*=""")
#: What opens and closes a text over several lines.
_FENCES = ('"""', "'''")

Place = tuple[str, int, str]


class Places:
    """The lines of a trip file by table, number of the table (from 0) and key; lines count from 1."""

    def __init__(self, text: str) -> None:
        self._lines: dict[Place, int] = {}
        counts: dict[str, int] = {}
        table, fence = "", ""
        for number, line in enumerate(text.split("\n"), start=1):
            if fence:
                fence = "" if fence in line else fence
                continue
            if header := _TABLE.fullmatch(line):
                table = header[1]
                counts[table] = counts.get(table, -1) + 1
                self._lines[table, counts[table], ""] = number
            elif key := _KEY.match(line):
                self._lines.setdefault((table, counts.get(table, 0), key[1]), number)
                fence = next((one for one in _FENCES if line.count(one) % 2), "")

    def line(self, table: str, index: int, key: str) -> int | None:
        """The line of a key, else of its table's header, else None."""
        return self._lines.get((table, index, key)) or self._lines.get((table, index, ""))
