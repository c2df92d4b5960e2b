"""What can be worked out about a dish before its family is known: water to flour, fire, oven, body of the pot.

`gather` fills one struct of plain facts; `dish.py` weighs them, other rooms may read them. Handbook chapter 7.
"""

from __future__ import annotations

from collections.abc import Iterable

from rules.foods import Item
from rules.method import Graph
from rules.method.graph import OPEN_FIRE, OVEN, STOVE
from rules.recipe import Recipe, Struct
from rules.roles import Role, role_of

POURS_ABOVE = 1.0
DOUGH_BELOW = 0.65
#: Flour below this much is a thickener [g].
BODY_FLOUR_G = 60.0
#: Oil above this much is a depth to fry in [ml].
DEEP_OIL_ML = 300.0
#: A simmer as long as this makes a stew of a sauce [min].
LONG_SIMMER_MIN = 15.0
#: A joint in the oven for so long is pot-roasted [min].
LONG_OVEN_MIN = 100.0
#: Grain above this much a recipe is a body, not a garnish [g].
BODY_GRAIN_G = 60.0
#: Sugar per flour by weight above which a dough or batter is sweet.
SWEET_RATIO = 0.35
#: Waiting as long as this, unheated, ferments [min].
FERMENT_MIN = 2 * 24 * 60

_WATERY: frozenset[Role] = frozenset(
    {"milk", "cultured", "shelf milk", "egg", "juice", "water", "spirits", "stock", "acid"}
)
_THIN: frozenset[Role] = frozenset({"water", "stock", "milk", "spirits", "juice"})
_FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat"})


class Facts(Struct, frozen=True, kw_only=True):
    """Plain facts of a dish. `features` are the names that `families.toml` knows as `seen`."""

    title: str
    vessels: str
    made: str
    roles: tuple[Role, ...]
    flour_g: float
    hydration: float | None
    leavened: bool
    yeasted: bool
    simmer_min: float
    features: frozenset[str]

    @property
    def sense(self) -> str:
        """What the hydration means, in words."""
        if self.hydration is None:
            return "unknown"
        if self.hydration > POURS_ABOVE:
            return "it pours"
        return "a dough" if self.hydration < DOUGH_BELOW else "between a batter and a dough"


def gather(recipe: Recipe, items: tuple[Item, ...], graph: Graph) -> Facts:
    """The facts of a recipe."""
    roles = tuple(role_of(item.ingredient, item.food) for item in items)
    flour = _sum(items, roles, {"flour"})
    actions = [action for step in recipe.steps for action in step.actions]
    facts = Facts(
        title=(recipe.title or "").lower()[:300],
        vessels=" | ".join(
            [action.vessel.lower() for action in actions if action.vessel]
            + ([recipe.oven.vessel.lower()] if recipe.oven and recipe.oven.vessel else [])
        )[:4000],
        made=" | ".join(
            [thing for action in actions for thing in (*action.things, *filter(None, [action.makes]))]
        )[:4000],
        roles=roles,
        flour_g=flour,
        hydration=_hydration(items, roles, graph, flour),
        leavened=any(
            role == "leavener" or (item.food is not None and "holds leavener" in item.food.traits)
            for item, role in zip(items, roles, strict=True)
        ),
        yeasted=any(role in ("yeast", "culture") for role in roles),
        simmer_min=_simmer_min(recipe),
        features=frozenset(),
    )
    return _with_features(facts, recipe, items, graph)


def _with_features(facts: Facts, recipe: Recipe, items: tuple[Item, ...], graph: Graph) -> Facts:
    from msgspec.structs import replace

    checks = {**_of_bakes(facts, recipe, items, graph), **_of_pots(facts, recipe, items, graph)}
    return replace(facts, features=frozenset(name for name, holds in checks.items() if holds))


def _of_bakes(facts: Facts, recipe: Recipe, items: tuple[Item, ...], graph: Graph) -> dict[str, bool]:
    roles = facts.roles
    oven = _in_oven(recipe, graph)
    flour = facts.flour_g >= BODY_FLOUR_G or (
        _unweighed(items, roles, {"flour"}) and graph.count("knead", "roll", "shape") > 0
    )
    sugar = _sum(items, roles, {"sugar", "syrup"})
    hydration = facts.hydration
    small = graph.count("shape", "roll", "chop") > 0 or "cookie" in facts.made
    fire = graph.count(*STOVE, *OPEN_FIRE, "heat", "melt") > 0 or _cooks(recipe)
    flat = flour or _sum(items, roles, {"oats"}) >= BODY_FLOUR_G
    return {
        "yeast and flour": facts.yeasted and flour,
        "dough as a food": "dough" in roles,
        "oven at the end": oven,
        "no oven": not oven,
        "baked flour": oven and flour,
        "pours": flour and hydration is not None and hydration > POURS_ABOVE,
        "between batter and dough": flour and hydration is not None and DOUGH_BELOW <= hydration <= POURS_ABOVE,
        "dough by weight": flour and hydration is not None and hydration < DOUGH_BELOW,
        "sweet and fat": flour and sugar / max(facts.flour_g, 1.0) >= SWEET_RATIO,
        "chemical leavener": facts.leavened,
        "fat cut in": graph.count("cut in") > 0 and flour,
        "rich unleavened dough": oven and flour and not facts.leavened and not facts.yeasted and hydration is not None
        and hydration < DOUGH_BELOW and _sum(items, roles, {"fat"}) > 0.3 * facts.flour_g,
        "kneaded or rolled": graph.count("knead", "roll") > 0 and flour,
        "shaped small and baked sweet": oven and small and sugar > 0 and not facts.yeasted and _sum(items, roles, _FLESH) == 0,
        "flour in a pan": flat and not oven and fire and not facts.yeasted and "grain" not in roles
        and not _FLESH & set(roles) and graph.count("deep fry") == 0,
        "eggs set it": "egg" in roles and facts.flour_g < BODY_FLOUR_G and sugar > 0 and (oven or fire)
        and not _FLESH & set(roles) and "vegetable" not in roles,
        "assembled and baked": oven and not flour and graph.count("layer", "fill", "top", "spread") > 0 and "dough" not in roles,
        "grain or cheese baked": oven and not flour and ("cheese" in roles or "grain" in roles or "cooked grain" in roles)
        and "dough" not in roles,
    }  # fmt: skip


def _of_pots(facts: Facts, recipe: Recipe, items: tuple[Item, ...], graph: Graph) -> dict[str, bool]:
    roles = facts.roles
    oven = _in_oven(recipe, graph)
    deep = graph.count("deep fry") > 0 or (graph.count("fry") > 0 and _oil_ml(items, roles) >= DEEP_OIL_ML)
    fried = graph.count("fry", "saute", "brown", "griddle", "deep fry") > 0
    simmered = graph.count("simmer", "reduce", "pressure cook") > 0
    boiled = graph.count("boil", "steam") > 0
    cooks = _cooks(recipe)
    fire = (
        fried
        or simmered
        or boiled
        or oven
        or deep
        or cooks
        or graph.count("heat", "melt", *OPEN_FIRE, "toast") > 0
    )
    flesh = bool(_FLESH & set(roles))
    liquid = _sum(items, roles, _THIN)
    solid = _sum(items, roles, {"meat", "fish", "vegetable", "can", "grain", "greens", "tofu", "cured meat"})
    grain = _sum(items, roles, {"grain", "oats", "fresh pasta"}) >= BODY_GRAIN_G or _unweighed(
        items, roles, {"grain", "oats"}
    )
    beans = _sum_foods(items, ("bean", "lentil", "chickpea", "pea,"))
    waits = max(
        (
            event.minutes_low
            for thing in graph.things
            for event in thing.events
            if event.does in ("rest", "ferment", "store")
        ),
        default=0,
    )
    return {
        "no fire": not fire,
        "ferments or is jarred": graph.count("ferment", "can") > 0 or (waits >= FERMENT_MIN and not oven),
        "deep oil": deep,
        "simmered": simmered,
        "simmered long": facts.simmer_min >= LONG_SIMMER_MIN and not oven,
        "more liquid than food": liquid > solid > 0 and not oven,
        "flesh or roots stewed": (simmered or facts.simmer_min >= LONG_SIMMER_MIN) and (flesh or "vegetable" in roles),
        "beans are the body": beans > 0.4 * max(solid, beans, 1.0) and beans > 0 and fire,
        "fried and not simmered": (fried or cooks) and not simmered and not oven and not (boiled and grain),
        "fried somewhere": fried,
        "grain boiled": grain and (boiled or cooks) and not oven and not ("flour" in roles and facts.flour_g >= BODY_FLOUR_G),
        "boiled and nothing else": boiled and not fried and not simmered and not oven,
        "joint cooked long": oven and "meat" in roles and _oven_min(recipe) >= LONG_OVEN_MIN and graph.count("layer", "fill") <= 1,
        "flesh or roots in dry heat": oven and facts.flour_g < BODY_FLOUR_G and not simmered and "dough" not in roles
        and not fried and (flesh or "vegetable" in roles) and "egg" not in roles and "grain" not in roles and liquid < 240,
        "grilled": graph.count(*OPEN_FIRE) > 0 and graph.count("fry", "saute") == 0,
    }  # fmt: skip


def _in_oven(recipe: Recipe, graph: Graph) -> bool:
    return graph.count(*OVEN) > 0 or recipe.oven is not None


def _cooks(recipe: Recipe) -> bool:
    return any(
        action.does == "other" and action.word.startswith("cook")
        for step in recipe.steps
        for action in step.actions
    )


def _simmer_min(recipe: Recipe) -> float:
    spans = [d.high_min for step in recipe.steps for d in step.durations if d.what in ("simmer", "boil")]
    return sum(spans)


def _oven_min(recipe: Recipe) -> float:
    return sum(d.high_min for step in recipe.steps for d in step.durations if d.what == "bake")


def _sum(items: tuple[Item, ...], roles: tuple[Role, ...], wanted: Iterable[Role]) -> float:
    wanted = set(wanted)
    return sum(item.grams or 0.0 for item, role in zip(items, roles, strict=True) if role in wanted)


def _unweighed(items: tuple[Item, ...], roles: tuple[Role, ...], wanted: Iterable[Role]) -> bool:
    wanted = set(wanted)
    return any(
        role in wanted and item.grams is None and not item.ingredient.optional
        for item, role in zip(items, roles, strict=True)
    )


def _sum_foods(items: tuple[Item, ...], heads: tuple[str, ...]) -> float:
    return sum(
        item.grams or 0.0
        for item in items
        if item.food is not None
        and item.food.group in ("canned", "legume")
        and any(head in item.food.name for head in heads)
    )


def _oil_ml(items: tuple[Item, ...], roles: tuple[Role, ...]) -> float:
    return max(
        (
            item.milliliters or 0.0
            for item, role in zip(items, roles, strict=True)
            if role == "fat" and item.food is not None and item.food.is_liquid
        ),
        default=0.0,
    )


def _hydration(
    items: tuple[Item, ...], roles: tuple[Role, ...], graph: Graph, flour_g: float
) -> float | None:
    """Grams of water per gram of flour, over the mixtures that flour goes into; None where an amount is unknown."""
    if flour_g < BODY_FLOUR_G:
        return None
    mixtures = {
        taking.group for taking in graph.takings if roles[taking.ingredient] == "flour" and not taking.hot
    }
    in_dough = {taking.ingredient for taking in graph.takings if taking.group in mixtures}
    known = any(roles[index] in _WATERY for index in in_dough)
    water = 0.0
    for item, role in zip(items, roles, strict=True):
        if role not in _WATERY or item.ingredient.optional or (known and item.index not in in_dough):
            continue
        if item.grams is None:
            return None
        water += item.grams * (item.food.water_pct or 0.0) / 100 if item.food is not None else item.grams
    return water / flour_g if water else None
