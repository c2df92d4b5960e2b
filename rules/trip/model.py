"""A trip and its plan: several meals cooked away from home, joined up.

`Trip` is what the cook says: people, pots, coolers, the drive, and meals, each a recipe already read with the moment
of eating and what is different about it. `TripPlan` is what `rules.trip.plan` makes of it, in the shape of the
published JSON (`coalside schema trip`). Moments are ISO 8601 local times of the trip's zone ("2027-07-02T18:30");
hours of the cooler count from its shutting, masses are kilograms or grams as the field's name says.
"""

from __future__ import annotations

from typing import Literal

from rules.circumstances import Charcoal, Day, Ground, Habit, PotOwned, Swap, Units, Wind
from rules.plan import Allergen, BagState, Caution, Plan, Question, Reason, Travels
from rules.recipe import Amount, Recipe, Struct

# What the cook says


class Person(Struct, frozen=True, kw_only=True):
    """One who eats. `avoids` are allergens, foods or kinds of food in the cook's own words ("milk", "pork", "nuts")."""

    name: str
    avoids: tuple[str, ...] = ()


class Cooler(Struct, frozen=True, kw_only=True):
    """A cooler that comes along: its size [US quarts] and what it is called."""

    quarts: float = 48.0
    name: str | None = None


class Meal(Struct, frozen=True, kw_only=True):
    """One dish at one moment; dishes of the same `name` and `eat` are eaten together.

    Every circumstance that is None or empty is the trip's. `people` is how many eat of it, `pots` the pots that may be
    used for it.
    """

    name: str
    #: "2027-07-02T18:30"
    eat: str
    recipe: Recipe
    people: int | None = None
    scale: float | None = None
    pots: tuple[PotOwned, ...] = ()
    temp_f: float | None = None
    air_f: float | None = None
    wind: Wind | None = None
    ground: Ground | None = None
    screen: bool | None = None
    elevation_ft: float | None = None
    swaps: tuple[Swap, ...] = ()


class Trip(Struct, frozen=True, kw_only=True):
    """Everything that is known before planning. None means: the cook did not say.

    `people` counts everybody, `persons` names those of whom something is known. `fires` is how many pots stand side by
    side on coals (a fire pan's room). `leave` is when the car leaves; the coolers are shut before it.
    """

    name: str = "Trip"
    meals: tuple[Meal, ...] = ()
    leave: str | None = None
    drive_hours: float = 0.0
    people: int | None = None
    persons: tuple[Person, ...] = ()
    pots: tuple[PotOwned, ...] = ()
    coolers: tuple[Cooler, ...] = ()
    fires: int | None = None
    zone: str | None = None
    air_f: float = 70.0
    #: the air around the coolers, over day and night
    cooler_air_f: float | None = None
    wind: Wind = "calm"
    ground: Ground = "dry"
    screen: bool = False
    elevation_ft: float = 0.0
    freezer: bool = True
    charcoal: bool = True
    burns: Charcoal = "briquettes"
    units: Units = "us"
    #: what the cook's own log teaches
    habit: Habit | None = None
    file: str | None = None


# What comes out


class Dish(Struct, frozen=True, kw_only=True):
    """One meal's dish, planned. `id` counts from 1 in the order of eating.

    `ready` is when it leaves the fire: `eat`, or another moment where it had to make room for another dish; the plan's
    minutes count from `ready`. `day` are the circumstances that it was planned with.
    """

    id: str
    meal: str
    title: str
    eat: str
    ready: str
    day: Day
    plan: Plan


class Share(Struct, frozen=True, kw_only=True):
    """What one dish needs of one food: words, the amounts as its recipe measures them, mass [g] and volume [ml]."""

    dish: str
    need: str
    amounts: tuple[Amount, ...] = ()
    grams: float | None = None
    milliliters: float | None = None


class Buy(Struct, frozen=True, kw_only=True, rename={"for_": "for"}):
    """One line of the joined shopping list: `buy` is what goes into the cart, `need` the sum over the dishes.

    `amounts` is that sum in as few units as it can be told in; `grams` and `milliliters` are None where one dish's are
    not known.
    """

    food: str
    buy: str
    need: str
    left_over: str | None = None
    aisle: str | None = None
    likely_at_home: bool = False
    amounts: tuple[Amount, ...] = ()
    grams: float | None = None
    milliliters: float | None = None
    for_: tuple[Share, ...] = ()


class Packed(Struct, frozen=True, kw_only=True):
    """One line of the packing list: the box that it goes into, and the dishes that call for it (none: all do)."""

    box: str
    item: str
    dishes: tuple[str, ...] = ()


class Layer(Struct, frozen=True, kw_only=True):
    """One pack in a cooler, told from the lowest up.

    `out_h` is when it is taken out, `frozen_until_h` how long it serves as ice (None: it goes in unfrozen), `state` and
    `temp_c` how it is when it is taken out, `heat_kj` what it took up until then.
    """

    dish: str
    pack: str
    label: str
    travels: Travels
    out_h: float
    kg: float | None = None
    frozen_until_h: float | None = None
    state: BagState = "thawed"
    temp_c: float | None = None
    heat_kj: float = 0.0
    note: str | None = None


class Energy(Struct, frozen=True, kw_only=True):
    """The heat of one cooler over the whole trip [kJ]: leak + openings + food = ice + bags + missing.

    `leak` comes through the walls, `openings` with the lid, `food` is what unfrozen food gave up as it cooled (negative
    where it warmed in the end); melting `ice` and frozen `bags` took it up. `missing` should be nothing.
    """

    leak: float
    openings: float
    food: float
    ice: float
    bags: float
    missing: float


class Reading(Struct, frozen=True, kw_only=True):
    """The cooler at one moment: inside temperature [°C], ice left [kg], packs still frozen."""

    at_h: float
    inside_c: float
    ice_kg: float
    frozen: int


class CoolerPlan(Struct, frozen=True, kw_only=True):
    """One cooler over the trip: what lies where (lowest first), the ice to bring, how it goes.

    `ice_gone_h` is when the last of that ice has melted, None when some is left at the end.
    """

    name: str
    quarts: float
    layers: tuple[Layer, ...] = ()
    hours: float = 0.0
    ice_kg: float = 0.0
    ice_gone_h: float | None = None
    warmest_c: float | None = None
    fill: float | None = None
    energy: Energy | None = None
    course: tuple[Reading, ...] = ()
    notes: tuple[str, ...] = ()


class LightFor(Struct, frozen=True, kw_only=True):
    """The briquettes of one lighting that are for one dish."""

    dish: str
    count: int


class Lighting(Struct, frozen=True, kw_only=True, rename={"for_": "for"}):
    """One lighting of the chimney, for one dish or for several."""

    at: str
    count: int
    for_: tuple[LightFor, ...]


class TripFuel(Struct, frozen=True, kw_only=True):
    """Briquettes for everything: `lit` is the sum of the lightings, `saved` what stacking spares, `reserve` on top."""

    lit: int
    saved: int
    reserve: int
    briquettes: int
    kg: float
    lightings: tuple[Lighting, ...] = ()


class PotUse(Struct, frozen=True, kw_only=True, rename={"from_": "from"}):
    """One pot in use: which one, for which dish, from when until it is washed."""

    pot: str
    dish: str
    from_: str
    until: str


Way = Literal["another pot", "order", "stacking", "smaller", "open"]


class Settled(Struct, frozen=True, kw_only=True):
    """A clash of dishes over pots or fire room, and how it was settled (`open`: it was not)."""

    dish: str
    others: tuple[str, ...]
    way: Way
    clash: str
    said: str


TaskKind = Literal["shop", "mix", "cut", "freeze", "chill", "pack", "leave", "other"]


class HomeTask(Struct, frozen=True, kw_only=True):
    """One piece of work at home before the trip, in order of time."""

    at: str
    minutes: float
    kind: TaskKind
    do: str
    dishes: tuple[str, ...] = ()


TripMomentKind = Literal["home", "road", "light", "coals", "fire", "meal", "after"]


class TripMoment(Struct, frozen=True, kw_only=True):
    """One line of the joined calendar; `dishes` it is for."""

    at: str
    kind: TripMomentKind
    do: str
    dishes: tuple[str, ...] = ()


Verdict = Literal["fits", "check the label", "swap", "leave out", "another dish"]


class Wish(Struct, frozen=True, kw_only=True):
    """A swap that would make a dish fit: `swap` as the day's wish, `said` in words."""

    swap: Swap
    said: str


class Diet(Struct, frozen=True, kw_only=True):
    """One person before one dish: what stands against it, and what would help."""

    person: str
    dish: str
    avoids: str
    verdict: Verdict
    foods: tuple[str, ...] = ()
    allergens: tuple[Allergen, ...] = ()
    wishes: tuple[Wish, ...] = ()
    said: str = ""


class TripPlan(Struct, frozen=True, kw_only=True):
    """The trip, all of it."""

    schema: Literal["coalside/trip/1"] = "coalside/trip/1"
    name: str
    people: int | None = None
    persons: tuple[Person, ...] = ()
    leave: str
    arrive: str
    units: Units = "us"
    zone: str | None = None
    dishes: tuple[Dish, ...] = ()
    shopping: tuple[Buy, ...] = ()
    packing: tuple[Packed, ...] = ()
    coolers: tuple[CoolerPlan, ...] = ()
    fuel: TripFuel | None = None
    pots: tuple[PotUse, ...] = ()
    settled: tuple[Settled, ...] = ()
    home: tuple[HomeTask, ...] = ()
    calendar: tuple[TripMoment, ...] = ()
    diets: tuple[Diet, ...] = ()
    warnings: tuple[str, ...] = ()
    cautions: tuple[Caution, ...] = ()
    questions: tuple[Question, ...] = ()
    why: tuple[Reason, ...] = ()
    file: str | None = None
