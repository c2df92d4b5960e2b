"""The course of temperatures of a stage of a plan, for whoever wants to see it drawn."""

from __future__ import annotations

import msgspec

from rules.circumstances import Day
from rules.coals.cook import EVERY, Point, cook, temperatures, usual_kg
from rules.coals.counts import Way
from rules.coals.figures import figure
from rules.coals.weather import wind_factor
from rules.plan import Depth, PotPlan, Stage, StageKind

#: How each kind of stage that holds a temperature is followed.
FOLLOWED: dict[StageKind, Way] = {"bake": "bake", "roast": "roast", "simmer": "simmer"}


def curve(
    stage: Stage, pot: PotPlan | None = None, day: Day | None = None, *, food_kg: float | None = None
) -> tuple[Point, ...]:
    """Iron and food [°F] over a bake, roast or simmer, every five minutes; empty for stages that hold no temperature.

    Minutes count from the meal, as in the plan; its fresh coals go on when the plan says. Without `food_kg` the pot is
    as full as pots usually are.
    """
    way = FOLLOWED.get(stage.kind)
    if way is None or stage.minutes is None or stage.temp_f is None or stage.starts_at_min is None:
        return ()
    day = day or Day()
    diameter = pot.diameter_in if pot else 12
    depth: Depth = pot.depth if pot else "shallow"
    start = stage.starts_at_min
    count = float(stage.top + stage.under)
    pot_of_food = cook(
        way=way,
        coals=count,
        exact=count,
        aim_f=stage.temp_f,
        diameter_in=diameter,
        depth=depth,
        air_f=day.air_f,
        faster=wind_factor(diameter, depth, stage.temp_f, day.air_f, day.wind, day.screen),
        elevation_ft=day.elevation_ft,
        food_kg=usual_kg(diameter, depth) if food_kg is None else food_kg,
        preheat_min=figure("warm before").value,
    )
    fresh = [(more.at_min - start, more.top + more.under) for more in stage.refresh]
    course = temperatures(pot_of_food, minutes=stage.minutes.high, fresh=fresh, every_min=EVERY)
    return tuple(msgspec.structs.replace(point, at_min=start + point.at_min) for point in course)
