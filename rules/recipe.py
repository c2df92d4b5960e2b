"""What a recipe is, once read.

Frozen structs in the shape of the published JSON (`coalside schema recipe`). Figures are plain numbers with the unit
in the field's name; amounts keep the unit that the cook wrote. `line` always counts from 0 over the source text
split at newlines.
"""

from __future__ import annotations

from typing import Literal

import msgspec

Family = Literal[
    "batter bake",
    "biscuit or quick bread dough",
    "yeast bread",
    "pastry or pie",
    "cookie",
    "custard or pudding",
    "casserole or layered bake",
    "stew or braise",
    "soup",
    "beans or chili",
    "roast",
    "pot roast",
    "pan fry or saute",
    "deep fry",
    "griddle",
    "boil or steam",
    "no cook",
    "preserve or ferment",
    "grill or smoke",
    "other",
]

DurationKind = Literal["bake", "simmer", "rest", "marinate", "rise", "fry", "chill", "boil", "other"]

Deed = Literal[
    # putting together
    "mix", "beat", "cream", "cut in", "rub", "knead", "fold", "mash", "blend", "add", "pour", "season", "coat",
    "fill", "layer", "spread", "top", "shape", "roll",
    # fire
    "preheat", "heat", "melt", "brown", "saute", "fry", "deep fry", "griddle", "boil", "simmer", "reduce", "deglaze",
    "steam", "pressure cook", "bake", "roast", "broil", "grill", "smoke", "toast",
    # waiting
    "rise", "rest", "chill", "freeze", "thaw", "marinate", "soak", "cool", "ferment", "store",
    # handwork
    "chop", "grate", "peel", "grind", "rinse", "drain", "strain", "grease", "line", "cover", "turn", "serve", "can",
    "other",
]  # fmt: skip


class Struct(msgspec.Struct, frozen=True):
    """The base of everything that goes in or out: immutable; each class below it also asks for every field by name."""


class Package(Struct, frozen=True, kw_only=True):
    """The size of one container: the 14 ounces of "2 (14 oz) cans"."""

    low: float
    high: float
    unit: str


class Amount(Struct, frozen=True, kw_only=True):
    """How much, in the cook's own unit. `unit` is None for a bare count; a single figure has low == high.

    `plus` marks an amount that comes on top of the first ("1 cup plus 2 tablespoons"). `each` marks the size of one of
    the things counted first ("4 pork chops (120 g each)"), which the first amount holds as its package.
    """

    low: float
    high: float
    unit: str | None = None
    approx: bool = False
    package: Package | None = None
    plus: bool = False
    each: bool = False


class Ingredient(Struct, frozen=True, kw_only=True, rename={"from_": "from"}):
    """One food of one line. A line that names several foods gives several ingredients with the same `line`."""

    line: int
    text: str
    component: str | None = None
    amounts: tuple[Amount, ...] = ()
    #: lower case, as written, without amount, size, state or preparation words
    name: str
    #: key in the food catalogue, None when unknown
    food: str | None = None
    state: tuple[str, ...] = ()
    prep: str | None = None
    alternatives: tuple[str, ...] = ()
    optional: bool = False
    to_taste: bool = False
    #: what else the line says of it ("divided", "for greasing", "to serve")
    notes: str | None = None
    #: "method" for a food that only the method names; its line is that step's line
    from_: Literal["list", "method"] = "list"


class Duration(Struct, frozen=True, kw_only=True):
    """A stretch of time in the method [minutes] and what it is for."""

    what: DurationKind
    low_min: float
    high_min: float


class Use(Struct, frozen=True, kw_only=True):
    """An ingredient taken by an action, with the share of it (1.0 = all there is, or all that is left)."""

    ingredient: int
    share: float = 1.0


class Action(Struct, frozen=True, kw_only=True):
    """One thing done in a step: a clause of the method, typed.

    `does` is the deed, `word` the verb as written. `things` are the intermediate things it names ("batter", "dry
    ingredients", "sauce"), singular and lower case, without article; `makes` is the thing it is said to give ("until
    a dough forms" gives "dough"). `vessel` is where it happens, as written ("large bowl", "skillet", "oven",
    "fridge"). `until` is the sign to wait for, as written ("until golden"). `ahead` is true when the text puts it hours
    before (the night before, the day before). `says` is the whole sentence in which it stands, as written: actions of
    one sentence share it.
    """

    does: Deed
    word: str
    uses: tuple[Use, ...] = ()
    things: tuple[str, ...] = ()
    makes: str | None = None
    vessel: str | None = None
    heat: Literal["low", "medium", "high"] | None = None
    covered: bool | None = None
    temp_f: float | None = None
    minutes: Duration | None = None
    until: str | None = None
    optional: bool = False
    ahead: bool = False
    says: str | None = None


class Step(Struct, frozen=True, kw_only=True):
    """One line of the method. `uses` lists every ingredient that the step takes, each once.

    `goes_on` is true for a line that goes on with the step of the line above it.
    """

    line: int
    text: str
    uses: tuple[int, ...] = ()
    temps_f: tuple[float, ...] = ()
    durations: tuple[Duration, ...] = ()
    component: str | None = None
    goes_on: bool = False
    actions: tuple[Action, ...] = ()


class Servings(Struct, frozen=True, kw_only=True):
    """How many it feeds, or how many it makes (`of`: servings, people, cookies, loaves)."""

    low: float
    high: float
    of: str = "servings"


class Oven(Struct, frozen=True, kw_only=True):
    """The kitchen oven as the recipe states it.

    `temp_f` is a figure of the text [°F], else None; a word or a gas mark stays in `stated`. `fan` is true when the
    only figure is for a fan oven.
    """

    temp_f: float | None = None
    stated: str = ""
    vessel: str | None = None
    fan: bool = False


class Unread(Struct, frozen=True, kw_only=True):
    """A line that was not understood, kept so that it can be shown."""

    line: int
    text: str


class Doubt(Struct, frozen=True, kw_only=True):
    """A place where the reader chose between readings: what was chosen, so that the plan can ask."""

    line: int
    text: str
    taken: str


class Recipe(Struct, frozen=True, kw_only=True):
    """A recipe as read."""

    title: str | None = None
    servings: Servings | None = None
    ingredients: tuple[Ingredient, ...] = ()
    steps: tuple[Step, ...] = ()
    oven: Oven | None = None
    family: Family = "other"
    file: str | None = None
    unread: tuple[Unread, ...] = ()
    #: lines that name only a tool (foil, a tin): they go to the kit
    tools: tuple[Unread, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    #: titles of further recipes found in the same text, which were left unread
    others: tuple[str, ...] = ()
