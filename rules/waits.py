"""Time that passes while nobody works: what chills, rises, soaks and rests, before, between and after the fires.

Read off the method once, for the coal plan (which pauses, and ends so early that the dish can stand) and for the day
(which says when each wait begins). Handbook, chapters 5 and 8.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules import table
from rules.method import Graph, graph
from rules.method.actions import actions_of
from rules.method.graph import OPEN_FIRE, OVEN, STOVE
from rules.plan import StageKind
from rules.recipe import Deed, DurationKind, Recipe, Struct, Use

WAITED: frozenset[DurationKind] = frozenset({"chill", "marinate", "rise", "rest"})
#: Deeds that cook. What is only warmed or melted is not yet a fire of its own.
COOKING: frozenset[Deed] = STOVE | OVEN | OPEN_FIRE
#: The stages in which a deed over the fire may be done at camp.
STAGES: dict[frozenset[Deed], frozenset[StageKind]] = {
    OVEN: frozenset({"bake", "roast"}),
    frozenset({"brown", "saute", "fry", "deep fry", "griddle", "toast"}): frozenset({"brown", "fry"}),
    frozenset({"boil", "simmer", "reduce", "steam", "pressure cook", "deglaze"}): frozenset(
        {"boil", "simmer"}
    ),
}
WATER = "water"


class Wait(Struct, frozen=True, kw_only=True):
    """A stretch of the method in which food waits.

    `foods` are the ingredients that are in it by then, `cooked` tells whether they were over a fire before, `fire` is
    the next deed over a fire (None after the last one).
    """

    at: int
    deed: Deed
    what: DurationKind
    low_min: float
    high_min: float
    ahead: bool
    foods: frozenset[int]
    cooked: bool
    fire: Deed | None


def figure(key: str) -> float:
    """One length of time of `wait_figures.csv` [min]."""
    return table.figures("wait_figures.csv")[key].value


def waits(recipe: Recipe) -> tuple[Wait, ...]:
    """The waits of a method in its own order; those that no deed tells are left out."""
    shape = graph(recipe)
    fires = [(at, action.does) for at, _, action in actions_of(recipe) if action.does in COOKING]
    found = []
    for at, _, action in actions_of(recipe):
        time = action.minutes
        if (
            time is None
            or time.what not in WAITED
            or action.does in COOKING
            or _is_of_tools(recipe, action.uses)
        ):
            continue
        inside = list(_things(shape, at))
        found.append(
            Wait(
                at=at,
                deed=action.does,
                what=time.what,
                low_min=time.low_min,
                high_min=time.high_min,
                ahead=action.ahead,
                foods=frozenset(
                    taking.ingredient for thing in inside for taking in shape.inside(thing) if taking.at <= at
                ),
                cooked=any(
                    event.does in COOKING and event.at < at
                    for thing in inside
                    for event in shape.things[thing].events
                ),
                fire=next((deed for later, deed in fires if later > at), None),
            )
        )
    return tuple(found)


def rest_after(recipe: Recipe) -> float:
    """Minutes that the method lets the dish stand between its last fire and the table, as far as a day has room."""
    last = max((step for _, step, action in actions_of(recipe) if action.does in COOKING), default=None)
    if last is None:
        return 0.0
    after = [wait.high_min for wait in waits(recipe) if wait.fire is None and wait.what == "rest"]
    told = sum(after) if after else _untold_rest(recipe, last)
    return min(told, figure("longest_rest_min"))


def pauses(recipe: Recipe, kinds: Sequence[StageKind]) -> dict[int, float]:
    """By number of the stage: minutes that its food, cooked once already, is put together and waits before it."""
    found: dict[int, float] = {}
    for wait in waits(recipe):
        place = stage_after(wait, kinds)
        is_long = figure("pause_min") <= wait.low_min <= figure("longest_pause_min")
        if place and is_long and wait.cooked and wait.what != "rise":
            found[place] = found.get(place, 0.0) + wait.low_min
    work = figure("pause_work_min")
    return {place: minutes + work for place, minutes in found.items() if _has_fire(kinds[:place])}


def stage_after(wait: Wait, kinds: Sequence[StageKind]) -> int | None:
    """The number of the stage for which the food waits: the first bake, or the last stage of another kind."""
    for deeds, stages in STAGES.items():
        if wait.fire in deeds:
            places = [place for place, kind in enumerate(kinds) if kind in stages]
            if places:
                return places[0] if deeds == OVEN or not wait.cooked else places[-1]
    return None


def _has_fire(kinds: Sequence[StageKind]) -> bool:
    return any(kind not in ("light", "warm", "heat fat", "rise") for kind in kinds)


def _is_of_tools(recipe: Recipe, uses: Sequence[Use]) -> bool:
    """Skewers and paper soak in water: what takes nothing but water is no food."""
    names = {recipe.ingredients[use.ingredient].name for use in uses}
    return names == {WATER}


def _things(shape: Graph, at: int) -> Iterator[int]:
    """The things at work in an action, with all that went into them by then."""
    here = list(shape.worked(at))
    seen: set[int] = set()
    while here:
        thing = here.pop()
        if thing in seen:
            continue
        seen.add(thing)
        yield thing
        here += [
            other
            for other, of in enumerate(shape.things)
            if of.into == thing and of.joined_at is not None and of.joined_at <= at
        ]


def _untold_rest(recipe: Recipe, last: int) -> float:
    """A rest after the last fire that stands in the text without a deed ("off the heat, still covered, 10 min")."""
    times = [time for step in recipe.steps[last + 1 :] for time in step.durations if time.what == "rest"]
    return max((time.high_min for time in times), default=0.0)
