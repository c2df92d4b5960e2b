"""The temperature of a stage over time as SVG text: the course, the band it is to keep, fresh coals as marks.

The picture is as wide as a phone, so that its writing is read there without magnifying. Figures come from
`rules.coals.curve` alone; it is a reckoning, and the page says so.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from html import escape

from assistant.show import words
from rules.circumstances import Day, Units
from rules.coals.curve import follow
from rules.coals.load import Load
from rules.plan import CurvePoint, Heat, PotPlan, Refresh, Stage
from rules.recipe import Struct

WIDTH, HEIGHT = 360, 196
LEFT, RIGHT, TOP, BOTTOM = 40, 12, 26, 24
#: Steps that an axis may have, the finest that leaves room for its writing is taken.
MINUTE_STEPS, DEGREE_STEPS = (5, 10, 15, 30, 60, 120, 240), (10, 20, 25, 50, 100, 200)
ROWS_EVERY_MIN = 15.0
MOST_MINUTE_MARKS, MOST_DEGREE_MARKS = 6, 6


class Course(Struct, frozen=True, kw_only=True):
    """What is drawn: the temperatures [°F] of the iron or the food over minutes from the meal, and the band."""

    of: str
    points: tuple[tuple[float, float], ...]
    low_f: float
    high_f: float
    fresh: tuple[Refresh, ...]


def course(stage: Stage, pot: PotPlan | None, heat: Heat, day: Day, load: Load | None) -> Course | None:
    """The course of the temperature that a stage has to hold; None for a stage that holds none."""
    found = next((one for one in follow(heat, pot, day, load=load) if one.stage == stage), None)
    if found is None or found.holds is None or found.low_f is None or found.high_f is None:
        return None
    return Course(
        of=found.holds, points=found.held, low_f=found.low_f, high_f=found.high_f, fresh=stage.refresh
    )


def course_rows(points: Sequence[CurvePoint], day: Day) -> list[list[str]]:
    """When, how warm the iron and how warm the food: about every quarter of an hour, and the last moment."""
    shown: list[CurvePoint] = []
    for point in points:
        if not shown or point.at_min - shown[-1].at_min >= ROWS_EVERY_MIN or point is points[-1]:
            shown.append(point)
    return [
        [
            words.when(point.at_min, day),
            f"iron {words.temperature(point.iron_f, day.units)}",
            "no food yet" if point.food_f is None else f"food {words.temperature(point.food_f, day.units)}",
        ]
        for point in shown
    ]


def told(of: Course, day: Day) -> str:
    """The course in words, which serve as the picture's text alternative too."""
    units = day.units
    limits = f"{_degrees(of.low_f, units):.0f} to {words.temperature(of.high_f, units)}"
    (begins, first), *_ = of.points
    inside = [(at, temp) for at, temp in of.points if of.low_f <= temp <= of.high_f]
    said = f"The {of.of} is at {words.temperature(first, units)} when it begins, {words.when(begins, day)}"
    if inside and inside[0][0] > begins:
        said += f"; in its band of {limits} from about {words.when(inside[0][0], day)}"
    else:
        said += f"; its band is {limits}"
    after = [temp for at, temp in of.points if inside and at >= inside[0][0]]
    if after and max(after) > of.high_f + 1:
        said += f"; up to {words.temperature(max(after), units)} at the most"
    if after and min(after) < of.low_f - 1:
        said += f"; down to {words.temperature(min(after), units)} at the least"
    if of.fresh:
        said += f"; fresh coals {words.joined([words.when(fresh.at_min, day) for fresh in of.fresh])}"
    return f"{said}. Reckoned, not measured: wind and the kind of briquette move it."


def graph(of: Course, day: Day) -> str:
    """The picture."""
    units = day.units
    temps = [_degrees(temp, units) for _, temp in of.points]
    low, high = _degrees(of.low_f, units), _degrees(of.high_f, units)
    step = _step(max(*temps, high) - min(*temps, low), DEGREE_STEPS, MOST_DEGREE_MARKS)
    floor, ceiling = math.floor(min(*temps, low) / step) * step, math.ceil(max(*temps, high) / step) * step
    begins, ends = of.points[0][0], of.points[-1][0]

    def x(at_min: float) -> float:
        return LEFT + (at_min - begins) / (ends - begins) * (WIDTH - LEFT - RIGHT)

    def y(degrees: float) -> float:
        return TOP + (ceiling - degrees) / (ceiling - floor) * (HEIGHT - TOP - BOTTOM)

    path = " ".join(f"{x(at):.1f},{y(temp):.1f}" for (at, _), temp in zip(of.points, temps, strict=True))
    parts = [
        f'<rect class="band" x="{LEFT}" y="{y(high):.1f}" width="{WIDTH - LEFT - RIGHT}"'
        f' height="{y(low) - y(high):.1f}"/>',
        *_degree_marks(int(floor), int(ceiling), step, y),
        *_minute_marks(begins, ends, day, x),
        f'<polyline class="course" points="{path}"/>',
        *(_fresh(x(fresh.at_min), fresh) for fresh in of.fresh if begins <= fresh.at_min <= ends),
        f'<text x="0" y="12">{words.temperature(0, units)[-2:]}, {of.of}</text>',
    ]
    return (
        f'<svg class="graph" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{escape(told(of, day))}">'
        f"{''.join(parts)}</svg>"
    )


def _fresh(x: float, fresh: Refresh) -> str:
    foot = HEIGHT - BOTTOM
    return (
        f'<line class="fresh-mark" x1="{x:.1f}" x2="{x:.1f}" y1="{TOP}" y2="{foot}"/>'
        f'<text class="fresh-count" x="{x:.1f}" y="{TOP - 5}" text-anchor="middle">+{fresh.top + fresh.under}</text>'
    )


def _degree_marks(floor: int, ceiling: int, step: int, y: Callable[[float], float]) -> Sequence[str]:
    return [
        f'<line class="grid" x1="{LEFT}" x2="{WIDTH - RIGHT}" y1="{y(mark):.1f}" y2="{y(mark):.1f}"/>'
        f'<text x="{LEFT - 5}" y="{y(mark) + 4:.1f}" text-anchor="end">{mark}</text>'
        for mark in range(floor, ceiling + 1, step)
    ]


def _minute_marks(begins: float, ends: float, day: Day, x: Callable[[float], float]) -> Sequence[str]:
    """Marks at round distances from the meal."""
    step = _step(ends - begins, MINUTE_STEPS, MOST_MINUTE_MARKS - 1)
    first = math.ceil(begins / step) * step
    foot = HEIGHT - BOTTOM
    return [
        f'<line class="grid" x1="{x(at):.1f}" x2="{x(at):.1f}" y1="{foot}" y2="{foot + 4}"/>'
        f'<text x="{x(at):.1f}" y="{HEIGHT - 6}" text-anchor="middle">{_short(at, day)}</text>'
        for at in range(first, math.floor(ends) + 1, step)
        if LEFT + 14 <= x(at) <= WIDTH - RIGHT - 8
    ]


def _short(at_min: float, day: Day) -> str:
    """The last word of a clock ("18:10" of any day); minutes before the meal where there is no clock."""
    return words.when(at_min, day).rpartition(" ")[2] if day.eat else f"{at_min:.0f}".replace("-", "−")


def _step(span: float, steps: Sequence[int], most: int) -> int:
    return next((step for step in steps if span / step <= most), steps[-1])


def _degrees(temp_f: float, units: Units) -> float:
    return (temp_f - 32) * 5 / 9 if units == "metric" else temp_f
