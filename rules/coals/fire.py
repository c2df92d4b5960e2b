"""The fire carried from stage to stage: how warm iron and food are, and which coals lie there (handbook chapter 5).

What one stage leaves is what the next one finds. A fire that is planned (`schedule`) and one that is drawn (`curve`)
take the same steps; they differ in who says which coals are lit.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence

import msgspec

from rules.circumstances import Day
from rules.coals.burn import Ember, State, after, modes, with_coals
from rules.coals.cook import FOOD_STARTS_F, Cook, cook, usual_kg
from rules.coals.counts import Coals, Way
from rules.coals.counts import coals as counted
from rules.coals.figures import figure
from rules.coals.load import Load
from rules.coals.weather import wind_factor
from rules.plan import Depth, StageKind
from rules.recipe import Struct

#: So much of a stage's coals may be missing before new ones are lit for it.
MISSED_SHARE = 0.2
#: Coals that give less than this share of their first heat bring no pot up to a bake: new ones are lit for that.
FADED_SHARE = 0.9
#: Coals as old as this are left to the ash when a new stage begins [min]: next to nothing is left of them.
SPENT_MIN = 90.0
#: Stages whose coals warm a pot that holds no food yet, and those whose little food in hot fat does not count.
EMPTY: frozenset[StageKind] = frozenset({"warm", "heat fat"})
PANNED: frozenset[StageKind] = frozenset({"brown", "fry"})
#: Ways whose count says how fast it comes to the boil, not what holds the pot there.
BOILING: frozenset[Way] = frozenset({"boil", "bring up"})
#: A boil needs its heat on the way: its coals are counted as they will be so much later [min].
ON_THE_WAY_MIN = 15.0
#: What simmered so long is the dish, and still hot when it goes on as a bake; less is a sauce beside it [min].
IS_THE_DISH_MIN = 10.0
#: Food that was weighed in part, and to less than this share of a usual pot, is taken for a usual pot.
LEAST_OF_USUAL = 0.3
#: How closely a moment is found [min].
CLOSE_MIN = 0.05


class Pot(Struct, frozen=True, kw_only=True):
    """What stands over the coals: the iron and, once it is in, its food; an unknown load is a usual one."""

    diameter_in: int
    depth: Depth
    load: Load | None = None


class Bed(Struct, frozen=True, kw_only=True):
    """Coals that burn: how many, since when [min]."""

    count: float
    since_min: float


class Fire(Struct, frozen=True, kw_only=True):
    """A moment between two stages: iron and food [°F], None while no food is in, and the coals that lie there.

    What was taken away lies `aside` and burns on: it may go back.
    """

    at_min: float
    iron_f: float
    food_f: float | None = None
    bed: tuple[Bed, ...] = ()
    aside: tuple[Bed, ...] = ()

    def alive(self, glow: Ember, later_min: float = 0.0) -> float:
        """How many fresh briquettes would give what this bed gives, now or so many minutes later."""
        return sum(part.count * glow.left(self.at_min + later_min - part.since_min) for part in self.bed)

    @property
    def waiting(self) -> float:
        """How many briquettes lie aside."""
        return sum(part.count for part in self.aside)

    @property
    def lying(self) -> float:
        """How many briquettes lie there, old and new."""
        return sum(part.count for part in self.bed)


def over(kind: StageKind, way: Way, its: Coals, fire: Fire, pot: Pot, day: Day) -> Cook:
    """The pot over its coals at the start of a stage, as the stage before left it."""
    held = its
    if way in BOILING:
        held = counted("bake", diameter_in=pot.diameter_in, depth=pot.depth, day=day)
    usual = Load(kg=usual_kg(pot.diameter_in, pot.depth), j_kg_k=figure("food heat").value)
    load = weighed(pot) or usual
    is_empty = fire.food_f is None and kind in EMPTY | PANNED
    this = cook(
        way=way,
        coals=its.exact,
        exact=held.exact,
        aim_f=held.aim_f,
        diameter_in=pot.diameter_in,
        depth=pot.depth,
        air_f=day.air_f,
        faster=wind_factor(pot.diameter_in, pot.depth, held.aim_f, day.air_f, day.wind, day.screen),
        elevation_ft=day.elevation_ft,
        food_kg=0.0 if is_empty else load.kg,
        food_heat=load.j_kg_k,
    )
    alive = fire.alive(this.ember)
    age = this.ember.age_at(alive / fire.lying) if fire.lying else 0.0
    return msgspec.structs.replace(this, start=_start(this, fire), age_min=age)


def weighed(pot: Pot) -> Load | None:
    """The load of a pot, or None where what was weighed is too little to be all of it."""
    load = pot.load
    if load is None or (not load.is_all and load.kg < LEAST_OF_USUAL * usual_kg(pot.diameter_in, pot.depth)):
        return None
    return load


def _start(this: Cook, fire: Fire) -> State:
    parts = [modes(this.ember, part.count, fire.at_min - part.since_min) for part in fire.bed]
    lit = tuple(map(sum, zip(*parts, strict=True))) if parts else (0.0,) * this.ember.steepness
    if this.holds == "food":
        # A simmer is planned from the boil on.
        return State(iron_f=max(fire.iron_f, this.body.boil_f), food_f=this.body.boil_f, modes=lit)
    return State(iron_f=fire.iron_f, food_f=FOOD_STARTS_F if fire.food_f is None else fire.food_f, modes=lit)


def left_by(
    this: Cook, kind: StageKind, fire: Fire, minutes: float, fresh: Sequence[tuple[float, float]]
) -> Fire:
    """The fire at the end of a stage; its `fresh` coals (at minute of it, how many) went on."""
    state = after_fresh(this, minutes, fresh)
    is_in = this.body.food_j_k > 0 and not (kind in ("boil", "simmer") and minutes < IS_THE_DISH_MIN)
    return Fire(
        at_min=fire.at_min + minutes,
        iron_f=state.iron_f,
        food_f=state.food_f if is_in else None,
        bed=(*fire.bed, *(Bed(count=coals, since_min=fire.at_min + at) for at, coals in fresh)),
        aside=fire.aside,
    )


def after_pause(fire: Fire, at_min: float, air_f: float) -> Fire:
    """The fire after a while without a pot on it: the iron is cold again, the coals were raked aside and burned on."""
    return Fire(at_min=at_min, iron_f=air_f, aside=(*fire.bed, *fire.aside))


def fed(
    fire: Fire,
    wanted: int,
    lit_before: int,
    glow: Ember,
    *,
    later_min: float = 0.0,
    is_fresh: bool = False,
) -> tuple[Fire, int]:
    """The fire with coals that give what `wanted` fresh ones would (`later_min` minutes on), and how many were lit for it.

    What is spent goes with the ash, what lies aside goes back first, a surplus is taken away: what is left is as many as
    the stage says, though older. `is_fresh` asks for new coals where those that lie there have begun to fade.
    """
    fire = raked(fire)
    if is_fresh and fire.alive(glow) < FADED_SHARE * fire.lying:
        return laid(fire, wanted, count=wanted), wanted
    fire = put_back(fire, wanted)
    missing = wanted - fire.alive(glow, later_min)
    # A few may be missed, but never so that a stage asks for more than was ever lit.
    may_miss = 0.0 if is_fresh else MISSED_SHARE
    if missing > may_miss * wanted or wanted > lit_before:
        lit = max(math.ceil(missing), wanted - lit_before, 1)
        return laid(fire, lit, count=wanted), lit
    return trimmed(fire, wanted), 0


def put_back(fire: Fire, wanted: int) -> Fire:
    """The fire with the youngest of what lies aside laid on again, to no more than `wanted` briquettes in all."""
    room, bed, aside = wanted - fire.lying, list(fire.bed), []
    for part in sorted(fire.aside, key=lambda part: -part.since_min):
        back = min(part.count, max(room, 0.0))
        room -= back
        bed += [Bed(count=back, since_min=part.since_min)] if back else []
        aside += [Bed(count=part.count - back, since_min=part.since_min)] if part.count > back else []
    return msgspec.structs.replace(fire, bed=tuple(bed), aside=tuple(aside))


def laid(fire: Fire, new: float, *, count: int = 0) -> Fire:
    """The fire with so many fresh briquettes more; where they are all of a stage's `count`, what lay there goes aside."""
    fresh = Bed(count=new, since_min=fire.at_min)
    if count and new >= count:
        return msgspec.structs.replace(fire, bed=(fresh,), aside=(*fire.bed, *fire.aside))
    return msgspec.structs.replace(fire, bed=(*fire.bed, fresh))


def raked(fire: Fire) -> Fire:
    """The fire without what is spent."""

    def burning(beds: Iterable[Bed]) -> tuple[Bed, ...]:
        return tuple(part for part in beds if fire.at_min - part.since_min < SPENT_MIN)

    return msgspec.structs.replace(fire, bed=burning(fire.bed), aside=burning(fire.aside))


def trimmed(fire: Fire, wanted: int) -> Fire:
    """The fire with no more briquettes than `wanted`, old and new; the oldest are taken away first and lie aside."""
    left, bed, aside = float(wanted), [], list(fire.aside)
    for part in sorted(fire.bed, key=lambda part: -part.since_min):
        kept = min(part.count, left)
        left -= kept
        bed += [Bed(count=kept, since_min=part.since_min)] if kept else []
        aside += [Bed(count=part.count - kept, since_min=part.since_min)] if part.count > kept else []
    return msgspec.structs.replace(fire, bed=tuple(bed), aside=tuple(aside))


def after_fresh(this: Cook, minutes: float, fresh: Sequence[tuple[float, float]] = ()) -> State:
    """The state so many minutes into a stage whose `fresh` coals (at minute, how many) went on by then."""
    state, now = this.start, 0.0
    for at, coals in fresh:
        if at > minutes:
            break
        state = with_coals(after(state, this.body, this.ember, at - now), this.ember, coals)
        now = at
    return after(state, this.body, this.ember, minutes - now)


def minutes_until(
    this: Cook,
    reached: Callable[[State], bool],
    most: float,
    fresh: Sequence[tuple[float, float]] = (),
) -> float:
    """After how long [min] a stage first has `reached` something, or `most` where it has not.

    What is reached may be lost again when the coals fade, so it is looked for minute by minute, then halved to.
    """
    if reached(this.start):
        return 0.0
    high = next((at for at in range(1, int(most) + 1) if reached(after_fresh(this, at, fresh))), None)
    if high is None:
        return most
    low, late = high - 1.0, float(high)
    while late - low > CLOSE_MIN:
        middle = (low + late) / 2
        if reached(after_fresh(this, middle, fresh)):
            late = middle
        else:
            low = middle
    return late
