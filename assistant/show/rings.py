"""The briquettes of one level drawn in characters, seen from above, where the coal rules lay them."""

from __future__ import annotations

import math

from rules.coals.pattern import Spot, on_lid, pattern, under_pot
from rules.plan import Pattern

COAL, RIM, EMPTY = "●", "·", " "
ROWS, COLUMNS = 9, 19
RIM_DOTS = 28


def levels(diameter_in: int, top: int, under: int, said: Pattern | None) -> tuple[list[str], list[str]]:
    """The lid and what lies under the pot, as rows of characters."""
    lid, floor = laid(diameter_in, top, under, said)
    return drawing(lid, diameter_in), drawing(floor, diameter_in)


def laid(
    diameter_in: int, top: int, under: int, said: Pattern | None
) -> tuple[tuple[Spot, ...], tuple[Spot, ...]]:
    """Where the briquettes lie on the lid and under the pot; `said` tells which of two ways they lie."""
    is_spread = said is not None and said.under != pattern(diameter_in, top, under).under
    return on_lid(diameter_in, top), under_pot(diameter_in, under, spread=is_spread)


def drawing(spots: tuple[Spot, ...], diameter_in: int) -> list[str]:
    """One level: the rim dotted, a sign for every briquette.

    Never fewer signs than briquettes, as long as there is room: one whose place is taken goes to the nearest free one.
    """
    grid = [[EMPTY] * COLUMNS for _ in range(ROWS)]
    for step in range(RIM_DOTS):
        row, column = _cell(*_on_circle(math.tau * step / RIM_DOTS))
        grid[row][column] = RIM
    for spot in spots[: ROWS * COLUMNS]:
        # A quarter turn puts the first of a ring at the top, so that the drawing is the same left and right.
        row, column = _free(grid, *_cell(-2 * spot.y_in / diameter_in, 2 * spot.x_in / diameter_in))
        grid[row][column] = COAL
    return ["".join(row) for row in grid]


def _on_circle(angle: float) -> tuple[float, float]:
    return math.sin(angle), math.cos(angle)


def _cell(x: float, y: float) -> tuple[int, int]:
    """The row and column of a place in units of the rim's radius."""
    row = round((ROWS - 1) / 2 * (1 - y))
    column = round((COLUMNS - 1) / 2 * (1 + x))
    return min(max(row, 0), ROWS - 1), min(max(column, 0), COLUMNS - 1)


def _free(grid: list[list[str]], row: int, column: int) -> tuple[int, int]:
    """The place itself, or the free one nearest to it; a row is as high as two columns are wide."""
    places = ((r, c) for r in range(ROWS) for c in range(COLUMNS) if grid[r][c] != COAL)
    return min(places, key=lambda place: (2 * (place[0] - row)) ** 2 + (place[1] - column) ** 2)
