"""The coals drawn to scale: one picture with the lid and the bottom side by side, as SVG text.

Positions come from `rules.coals.pattern`; nothing is placed by eye. Colours are the page's own (CSS variables), so
the picture follows light, dark and paper.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from rules.coals.pattern import Spot, half_sizes, on_lid, under_pot
from rules.plan import PotPlan, Stage

#: Units of the picture per inch.
SCALE = 10
MARGIN_IN = 1.1
#: The turning arrow: from and to, degrees clockwise from the top.
ARROW_FROM, ARROW_TO = -40, 40


def coals_drawing(stage: Stage, pot: PotPlan) -> str:
    """The picture of a stage's coals, with a text alternative that says the same."""
    diameter = pot.diameter_in
    wide = diameter + 2 * MARGIN_IN
    spread = stage.kind in ("heat fat", "brown", "fry", "boil")
    parts = [
        _disc(diameter, on_lid(diameter, stage.top), wide / 2, "On the lid", lid=True),
        _disc(diameter, under_pot(diameter, stage.under, spread=spread), wide * 1.5, "Under the pot"),
    ]
    if stage.turn_every_min:
        parts += [_arrow(diameter, wide / 2, clockwise=True), _arrow(diameter, wide * 1.5, clockwise=False)]
    said = f"{stage.top} briquettes on the lid, {stage.under} under the pot"
    if stage.turn_every_min:
        said += "; lid and pot turn opposite ways"
    height = wide + 1.6
    return (
        f'<svg viewBox="0 0 {_n(2 * wide)} {_n(height)}" role="img" aria-label="{said}">'
        f"{''.join(parts)}</svg>"
    )


def _disc(diameter: float, spots: Iterable[Spot], x: float, name: str, *, lid: bool = False) -> str:
    y = diameter / 2 + MARGIN_IN
    found = [
        f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(diameter / 2)}" fill="var(--iron)" stroke="var(--ink)"/>',
        *(_coal(spot, x, y) for spot in spots),
    ]
    if lid:
        found.append(
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(0.6)}" fill="none" stroke="var(--ink)" stroke-width="3"/>'
        )
    found.append(
        f'<text x="{_n(x)}" y="{_n(diameter + 2 * MARGIN_IN + 0.9)}" text-anchor="middle" font-size="12" '
        f'fill="var(--ink)">{name}</text>'
    )
    return "".join(found)


def _coal(spot: Spot, x: float, y: float) -> str:
    out, along = half_sizes(spot.pose)
    turn = math.degrees(spot.turn)
    # A coal of an upper layer is drawn lighter and a little smaller, so that the one below it stays in sight.
    shrink = 1.0 if not spot.layer else 0.7
    width, height = 2 * out * shrink, 2 * along * shrink
    return (
        f'<rect x="{_n(-width / 2)}" y="{_n(-height / 2)}" width="{_n(width)}" height="{_n(height)}" rx="3" '
        f'transform="translate({_n(x + spot.x_in)} {_n(y - spot.y_in)}) rotate({-turn:.1f})" '
        f'fill="var(--{"glow" if spot.layer else "coal"})" stroke="var(--glow)"/>'
    )


def _arrow(diameter: float, x: float, *, clockwise: bool) -> str:
    y, radius = diameter / 2 + MARGIN_IN, diameter / 2 + 0.55
    start, end = (ARROW_FROM, ARROW_TO) if clockwise else (ARROW_TO, ARROW_FROM)
    (x0, y0), (x1, y1) = (_at(x, y, radius, degrees) for degrees in (start, end))
    tip = 90 if clockwise else -90
    heading = end + tip
    head = " ".join(
        f"{_n(px)},{_n(py)}"
        for px, py in (
            _at(x1, y1, 0.55, heading),
            _at(x1, y1, 0.4, heading + 125),
            _at(x1, y1, 0.4, heading - 125),
        )
    )
    return (
        f'<path d="M {_n(x0)} {_n(y0)} A {_n(radius)} {_n(radius)} 0 0 {int(clockwise)} {_n(x1)} {_n(y1)}" '
        f'fill="none" stroke="var(--glow)" stroke-width="3"/><polygon points="{head}" fill="var(--glow)"/>'
    )


def _at(x: float, y: float, radius: float, degrees: float) -> tuple[float, float]:
    """A point on a circle [in], degrees clockwise from the top."""
    angle = math.radians(degrees)
    return x + radius * math.sin(angle), y - radius * math.cos(angle)


def _n(inches: float) -> str:
    return f"{inches * SCALE:.1f}"
