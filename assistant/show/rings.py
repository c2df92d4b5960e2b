"""The briquettes of one level drawn in characters: a ring, and the rest spread inside it.

The pattern's words say how many lie in the ring; the drawing follows the words, so that both say the same.
"""

from __future__ import annotations

import math
import re

COAL, RIM, POT = "●", "·", " "
ROWS, COLUMNS = 9, 19
#: The outer ring's radius as a share of the pot's, and each further ring's as a share of the one around it.
OUTER_RING, NEXT_RING = 0.82, 0.6

_NUMBER = re.compile(r"\d{1,3}")


def in_rings(pattern: str, count: int) -> tuple[int, ...]:
    """How many lie in each ring, from the outside in, as the pattern's words say ("7 in a ring, 1 in the centre")."""
    said = tuple(int(found) for found in _NUMBER.findall(pattern))
    if sum(said) == count and said:
        return said
    if count < 8:
        return (count,)
    outer = math.ceil(count * 2 / 3)
    return (outer, count - outer)


def drawing(pattern: str, count: int) -> list[str]:
    """The level seen from above: rows of characters, the rim dotted, a sign for every briquette.

    Never fewer signs than briquettes: a place that is taken moves a coal to the nearest free one.
    """
    grid = [[POT] * COLUMNS for _ in range(ROWS)]
    _dot_rim(grid)
    rings = in_rings(pattern, count) if count else ()
    for depth, coals in enumerate(rings):
        _place(grid, coals, 0.0 if coals == 1 and depth else OUTER_RING * NEXT_RING**depth)
    return ["".join(row) for row in grid]


def _spot(angle: float, share: float) -> tuple[int, int]:
    x = (COLUMNS - 1) / 2 * (1 + share * math.sin(angle))
    y = (ROWS - 1) / 2 * (1 - share * math.cos(angle))
    return round(y), round(x)


def _dot_rim(grid: list[list[str]]) -> None:
    for step in range(28):
        row, column = _spot(math.tau * step / 28, 1.0)
        grid[row][column] = RIM


def _place(grid: list[list[str]], coals: int, share: float) -> None:
    for number in range(coals):
        row, column = _free(grid, *_spot(math.tau * number / coals, share))
        grid[row][column] = COAL


def _free(grid: list[list[str]], row: int, column: int) -> tuple[int, int]:
    """The place itself, or the free one nearest to it."""
    places = ((r, c) for r in range(ROWS) for c in range(COLUMNS) if grid[r][c] != COAL)
    return min(places, key=lambda place: (2 * (place[0] - row)) ** 2 + (place[1] - column) ** 2)
