"""What a camp plan is.

Frozen structs in the shape of the published JSON (`coalside schema plan`). Every `*_at_min` counts minutes from the
moment of eating (negative before it). Briquettes are whole numbers; temperatures are °F, masses grams or kilograms
as the field's name says.
"""

from __future__ import annotations

from typing import Literal

from rules.recipe import Amount, Recipe, Struct

PackKind = Literal["dry mix", "wet mix", "prepped", "fresh", "pantry", "water"]
Travels = Literal["shelf", "cool", "frozen", "camp"]
FatGoes = Literal[
    "hot pot first", "browning", "cut in at home", "creamed at home", "stirred in", "greasing", "on top"
]
StageKind = Literal[
    "light",
    "warm",
    "heat fat",
    "brown",
    "fry",
    "boil",
    "simmer",
    "bake",
    "roast",
    "brown top",
    "rise",
    "keep warm",
]
Depth = Literal["shallow", "deep"]
CautionId = Literal[
    "carbon-monoxide", "hot-iron", "fire-restrictions", "two-hour", "leftovers", "raw-meat", "raw-poultry", "raw-fish",
    "raw-egg", "raw-flour", "kidney-beans", "deep-fry", "alcohol", "honey-infant", "water-treatment", "home-canning",
    "home-ferment", "altitude", "wildlife",
]  # fmt: skip
Allergen = Literal[
    "milk", "egg", "fish", "crustacean shellfish", "tree nuts", "peanuts", "wheat", "soybeans", "sesame"
]


class Reason(Struct, frozen=True, kw_only=True):
    """Why something was decided: the rule's id, what it is about, one sentence, and where that comes from."""

    rule: str
    about: str
    because: str
    source: str


class Question(Struct, frozen=True, kw_only=True):
    """Something the text leaves open, and the default that was taken meanwhile."""

    about: str
    text: str
    default: str


class PotPlan(Struct, frozen=True, kw_only=True):
    """The pot: `count` of them; `fill` is the depth of the raw food over the inside depth (None if unknown)."""

    diameter_in: int
    depth: Depth = "shallow"
    quarts: float
    count: int = 1
    fill: float | None = None


class PackItem(Struct, frozen=True, kw_only=True):
    """An ingredient's share in a pack, with the amount that goes in (already scaled)."""

    ingredient: int
    share: float
    amount: Amount | None = None
    grams: float | None = None


class Pack(Struct, frozen=True, kw_only=True):
    """One bag, bottle, box or shop package that travels."""

    id: str
    kind: PackKind
    label: str
    component: str | None = None
    travels: Travels
    container: str | None = None
    items: tuple[PackItem, ...]
    make_ahead: str | None = None


class FatUse(Struct, frozen=True, kw_only=True):
    """Where a share of a fat goes, and the moment in words."""

    ingredient: int
    share: float = 1.0
    goes: FatGoes
    when: str | None = None


class Minutes(Struct, frozen=True, kw_only=True):
    """A range of minutes."""

    low: float
    high: float


class Pattern(Struct, frozen=True, kw_only=True):
    """How the briquettes lie, in words."""

    top: str
    under: str


class Refresh(Struct, frozen=True, kw_only=True):
    """Fresh briquettes during a stage.

    When they go on and when they are lit, both counted from the meal like every `*_at_min`, and how many go where.
    """

    at_min: float
    light_at_min: float
    top: int
    under: int


class Stage(Struct, frozen=True, kw_only=True):
    """One stretch over the coals. `temp_f` is the aim inside the pot."""

    kind: StageKind
    minutes: Minutes | None = None
    temp_f: float | None = None
    top: int = 0
    under: int = 0
    turn_every_min: int | None = None
    first_look_min: int | None = None
    starts_at_min: float | None = None
    look_for: str = ""
    pattern: Pattern | None = None
    refresh: tuple[Refresh, ...] = ()


class Batch(Struct, frozen=True, kw_only=True):
    """One lighting of the chimney."""

    light_at_min: float
    count: int


class Fuel(Struct, frozen=True, kw_only=True):
    """Briquettes for everything: `lit` is the sum of the batches, `reserve` a quarter of it rounded up.

    `kg` and `lb` are the same mass; `chimney_loads` says how often a chimney is filled, each with a starter under it.
    `stacked_saves` briquettes of those lit are spared where pots of one bake stand on one another: offered, not taken.
    """

    lit: int
    reserve: int
    briquettes: int
    kg: float
    lb: float = 0.0
    chimney_loads: int = 0
    stacked_saves: int = 0
    batches: tuple[Batch, ...] = ()


class Doneness(Struct, frozen=True, kw_only=True):
    """How one knows that it is done."""

    what: str
    temp_f: float | None = None
    rest_min: float | None = None
    sign: str
    source: str


class CurvePoint(Struct, frozen=True, kw_only=True):
    """A moment of the reckoned fire: iron and food [°F]; `food_f` is None while the pot is empty."""

    at_min: float
    iron_f: float
    food_f: float | None = None


class Heat(Struct, frozen=True, kw_only=True):
    """The coal plan; `curve`, the temperatures that it comes to, is reckoned on request alone."""

    stages: tuple[Stage, ...]
    fuel: Fuel
    doneness: tuple[Doneness, ...] = ()
    curve: tuple[CurvePoint, ...] = ()


MomentKind = Literal["home", "road", "fire", "light", "coals", "meal", "after"]


class Moment(Struct, frozen=True, kw_only=True):
    """One line of the day: minutes from eating, the clock time if one was given, what to do.

    `kind` says to which part of the day it belongs; `light` is a lighting of the chimney, `coals` what the coal plan
    says as well (a stage begun, a turn, a look, fresh coals).
    """

    at_min: float
    clock: str | None = None
    do: str
    kind: MomentKind | None = None


class Hours(Struct, frozen=True, kw_only=True):
    """A range of hours."""

    low: float
    high: float


BagState = Literal["frozen", "part thawed", "thawed"]


class Bag(Struct, frozen=True, kw_only=True):
    """What the cold does to one pack that travels frozen.

    Hours are those of freezing at home and of thawing in the cooler and in ice water or cold water; `outside_min` are
    the minutes in the open air, None for a food that must not thaw there. `state` is how it is when it is first wanted
    if it stays in the cooler; `move_hours_before` that moment it is taken out of the ice, as `advice` says.
    `bought_frozen` is a food that the shop sells frozen.
    """

    pack: str
    freeze_hours: Hours | None = None
    thaw_hours: Hours | None = None
    slush_hours: Hours | None = None
    outside_min: Minutes | None = None
    state: BagState = "frozen"
    move_hours_before: float | None = None
    advice: str | None = None
    bought_frozen: bool = False


class Layer(Struct, frozen=True, kw_only=True):
    """One layer of the cooler: ids of its packs, and why they lie there."""

    packs: tuple[str, ...]
    because: str


class Cold(Struct, frozen=True, kw_only=True):
    """What the cooler has to do. `freeze_hours` and `thaw_hours` span all frozen packs.

    `layers` is the order of packing, from the bottom up; every cooled pack is in one of them.
    """

    frozen_packs: tuple[str, ...] = ()
    freeze_hours: Hours | None = None
    thaw_hours: Hours | None = None
    ice_kg: float | None = None
    bags: tuple[Bag, ...] = ()
    notes: tuple[str, ...] = ()
    layers: tuple[Layer, ...] = ()


class Purchase(Struct, frozen=True, kw_only=True):
    """One line of the shopping list."""

    food: str
    buy: str
    need: str
    left_over: str | None = None
    aisle: str | None = None
    #: most kitchens have it
    likely_at_home: bool = False


class Kit(Struct, frozen=True, kw_only=True):
    """What to have at hand at home and to pack for camp."""

    home: tuple[str, ...] = ()
    camp: tuple[str, ...] = ()


class Label(Struct, frozen=True, kw_only=True):
    """The text for the label of one pack; lines are separated by newlines."""

    pack: str
    text: str


class Caution(Struct, frozen=True, kw_only=True):
    """One caution, what triggered it is told in the text."""

    id: CautionId
    text: str
    source: str


class MayHold(Struct, frozen=True, kw_only=True):
    """Allergens that a bought composite may hold besides; the packet's label decides."""

    food: str
    may_hold: tuple[Allergen, ...]


class Plan(Struct, frozen=True, kw_only=True):
    """The camp version of a recipe, all of it."""

    schema: Literal["coalside/plan/1"] = "coalside/plan/1"
    recipe: Recipe
    people: int | None = None
    scale: float = 1.0
    pot: PotPlan | None = None
    packs: tuple[Pack, ...] = ()
    fat: tuple[FatUse, ...] = ()
    heat: Heat | None = None
    no_coals_because: str | None = None
    home_steps: tuple[str, ...] = ()
    camp_steps: tuple[str, ...] = ()
    timeline: tuple[Moment, ...] = ()
    cold: Cold | None = None
    shopping: tuple[Purchase, ...] = ()
    kit: Kit = Kit()
    labels: tuple[Label, ...] = ()
    cautions: tuple[Caution, ...] = ()
    allergens: tuple[Allergen, ...] = ()
    check_label: tuple[MayHold, ...] = ()
    questions: tuple[Question, ...] = ()
    why: tuple[Reason, ...] = ()
    file: str | None = None
