"""The coals of one level drawn to scale, seen from above, as SVG text.

Positions come from `rules.coals.pattern`; nothing is placed by eye. Colours are the page's own (its classes), so the
picture follows light, dark and paper. The north of the picture is the first briquette of a ring, which makes the two
halves alike.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from html import escape
from typing import Literal

from rules.coals.figures import figure
from rules.coals.pattern import Spot, half_sizes

#: Units of the picture per inch.
SCALE = 10
#: Room around the iron for the turning arrow [in].
MARGIN_IN = 1.25
#: The turning arrow covers the third of a turn that it asks for, in degrees clockwise from the top.
ARROW_FROM, ARROW_TO = -60, 60
ARROW_OUT_IN, TIP_IN = 0.62, 0.55
#: A coal of an upper layer is drawn a little smaller, so that the one below it stays in sight.
UPPER = 0.7
Turn = Literal["clockwise", "counter-clockwise"]


def level_drawing(
    spots: Sequence[Spot], diameter_in: int, said: str, *, is_lid: bool, turn: Turn | None = None
) -> str:
    """The picture of a lid or of what lies under a pot; `said` is its text alternative, without signs of markup."""
    half = diameter_in / 2 + MARGIN_IN
    parts = [
        f'<circle class="iron" r="{_n(diameter_in / 2)}"/>',
        '<g transform="rotate(-90)">',
        *(_coal(spot) for spot in spots),
        "</g>",
    ]
    if is_lid:
        parts.append(f'<circle class="handle" r="{_n(figure("lid handle").value * 0.6)}"/>')
    if turn:
        parts.append(_arrow(diameter_in / 2 + ARROW_OUT_IN, clockwise=turn == "clockwise"))
    box = f"{_n(-half)} {_n(-half)} {_n(2 * half)} {_n(2 * half)}"
    return f'<svg class="level" viewBox="{box}" role="img" aria-label="{escape(said)}">{"".join(parts)}</svg>'


def _coal(spot: Spot) -> str:
    out, along = half_sizes(spot.pose)
    size = UPPER if spot.layer else 1.0
    width, height = 2 * out * size, 2 * along * size
    kind = "coal upper" if spot.layer else "coal"
    # The picture's y grows downward, the pattern's upward.
    return (
        f'<rect class="{kind}" x="{_n(-width / 2)}" y="{_n(-height / 2)}" width="{_n(width)}" height="{_n(height)}"'
        f' rx="3" transform="translate({_n(spot.x_in)} {_n(-spot.y_in)}) rotate({-math.degrees(spot.turn):.1f})"/>'
    )


def _arrow(radius: float, *, clockwise: bool) -> str:
    start, end = (ARROW_FROM, ARROW_TO) if clockwise else (ARROW_TO, ARROW_FROM)
    (x0, y0), (x1, y1) = _at(radius, start), _at(radius, end)
    heading = end + (90 if clockwise else -90)
    corners = (_at(TIP_IN, heading), _at(TIP_IN, heading + 125), _at(TIP_IN, heading - 125))
    head = " ".join(f"{_n(x1 + x)},{_n(y1 + y)}" for x, y in corners)
    return (
        f'<path class="turn" d="M {_n(x0)} {_n(y0)} A {_n(radius)} {_n(radius)} 0 0 {int(clockwise)} {_n(x1)} {_n(y1)}"/>'
        f'<polygon class="tip" points="{head}"/>'
    )


def _at(radius: float, degrees: float) -> tuple[float, float]:
    """A point on a circle [in], degrees clockwise from the top."""
    angle = math.radians(degrees)
    return radius * math.sin(angle), -radius * math.cos(angle)


def _n(inches: float) -> str:
    return f"{inches * SCALE:.1f}"
