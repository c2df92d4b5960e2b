"""The course of temperatures of a stage of a plan, for whoever wants to see it drawn."""

from __future__ import annotations

import msgspec

from rules.circumstances import Day
from rules.coals.cook import EVERY, Cook, Point, cook, temperatures, usual_kg
from rules.coals.counts import Way
from rules.coals.figures import figure
from rules.coals.glow import ember
from rules.coals.schedule import SPENT_MIN
from rules.coals.weather import wind_factor
from rules.plan import Depth, Heat, PotPlan, Stage, StageKind

#: How each kind of stage that holds a temperature is followed.
FOLLOWED: dict[StageKind, Way] = {"bake": "bake", "roast": "roast", "simmer": "simmer"}


def curve(
    stage: Stage,
    pot: PotPlan | None = None,
    day: Day | None = None,
    *,
    food_kg: float | None = None,
    heat: Heat | None = None,
) -> tuple[Point, ...]:
    """Iron and food [°F] over a bake, roast or simmer, every five minutes; empty for stages that hold no temperature.

    Minutes count from the meal, as in the plan; its fresh coals go on when the plan says. Without `food_kg` the pot is
    as full as pots usually are. With the plan's whole `heat` the pot and the coals that lie there are as warm and as
    old as its earlier stages make them; without it the coals are fresh.
    """
    followed = _followed(stage, pot, day, food_kg, heat)
    if followed is None or stage.minutes is None or stage.starts_at_min is None:
        return ()
    start = stage.starts_at_min
    before = _course_before(heat, start, pot, day, food_kg) if heat else ()
    if before and followed.holds == "iron":
        begun = msgspec.structs.replace(followed.start, iron_f=before[-1].iron_f, food_f=before[-1].food_f)
        followed = msgspec.structs.replace(followed, start=begun)
    fresh = [(more.at_min - start, more.top + more.under) for more in stage.refresh]
    course = temperatures(followed, minutes=stage.minutes.high, fresh=fresh, every_min=EVERY)
    return tuple(msgspec.structs.replace(point, at_min=start + point.at_min) for point in course)


def band(stage: Stage, pot: PotPlan | None = None, day: Day | None = None) -> tuple[float, float] | None:
    """Between which temperatures [°F] a bake or roast is to hold its iron, a simmer its food; None for other stages."""
    followed = _followed(stage, pot, day, None, None)
    return None if followed is None else (followed.low_f, followed.high_f)


def _followed(
    stage: Stage, pot: PotPlan | None, day: Day | None, food_kg: float | None, heat: Heat | None
) -> Cook | None:
    """The pot at the start of the stage; None for a stage that holds no temperature."""
    way = FOLLOWED.get(stage.kind)
    count = float(stage.top + stage.under)
    if (
        way is None
        or stage.minutes is None
        or stage.temp_f is None
        or stage.starts_at_min is None
        or not count
    ):
        return None
    day = day or Day()
    diameter = pot.diameter_in if pot else 12
    depth: Depth = pot.depth if pot else "shallow"
    age_min = _age(heat, stage.starts_at_min) if heat else 0.0
    return cook(
        way=way,
        # A stage's count is what fresh coals would be; older ones are so many more that they begin with the same heat.
        coals=count / ember().left(age_min),
        exact=count,
        aim_f=stage.temp_f,
        diameter_in=diameter,
        depth=depth,
        air_f=day.air_f,
        faster=wind_factor(diameter, depth, stage.temp_f, day.air_f, day.wind, day.screen),
        elevation_ft=day.elevation_ft,
        food_kg=usual_kg(diameter, depth) if food_kg is None else food_kg,
        age_min=age_min,
        preheat_min=max(figure("warm before").value, _over_coals(heat, stage.starts_at_min) if heat else 0.0),
    )


def _course_before(
    heat: Heat, now: float, pot: PotPlan | None, day: Day | None, food_kg: float | None
) -> tuple[Point, ...]:
    """The course of the stage that ends now with the food in the pot; empty where there is none."""
    for stage in heat.stages:
        if (
            stage.minutes
            and stage.starts_at_min is not None
            and stage.starts_at_min + stage.minutes.high == now
        ):
            return curve(stage, pot, day, food_kg=food_kg, heat=heat)
    return ()


def _age(heat: Heat, now: float) -> float:
    """How old [min] coals all of one kind would be that give what the plan's lit ones give now."""
    glow, chimney = ember(), figure("chimney").value
    since = [(batch.light_at_min + chimney, batch.count) for batch in heat.fuel.batches]
    lying = [(now - laid, count) for laid, count in since if 0 <= now - laid < SPENT_MIN]
    total = sum(count for _, count in lying)
    if not total:
        return 0.0
    return glow.age_at(sum(count * glow.left(age) for age, count in lying) / total)


def _over_coals(heat: Heat, now: float) -> float:
    """How long [min] the pot has stood over coals before `now`."""
    starts = [
        stage.starts_at_min
        for stage in heat.stages
        if stage.starts_at_min is not None and stage.top + stage.under
    ]
    return max(now - min(starts, default=now), 0.0)
