"""Where the fat goes: every fat named, with its destination and its moment (handbook chapter 3).

`jobs` works out what each share of a fat does, from the method graph; `place` tells it. A fat that the method never
names does the job that its kind of dish has for it.
"""

from __future__ import annotations

import re
from collections import defaultdict

from msgspec.structs import replace

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.dish import Dish
from rules.foods import Item
from rules.method import Graph, Taking
from rules.method.graph import FIRE, OVEN, STOVE, parts
from rules.method.words import kind_of
from rules.plan import FatGoes, FatUse
from rules.recipe import Deed, Family, Recipe, Struct
from rules.roles import Role, role_of

BOOK = "handbook of the trade, chapter 3"

HOT_POT = Rule(
    id="fat.hot-pot",
    because="{food} goes into the hot pot first, lid on, until it sizzles; the batter is poured over it and not stirred",
    source=BOOK,
)
BROWNING = Rule(
    id="fat.browning", because="{food} is heated over coals below to cook in, {when}", source=BOOK
)
CUT_IN = Rule(
    id="fat.cut-in",
    because="{food} is cut into the flour at home, where hands and fat are cold; the crumbs travel chilled",
    source=BOOK,
)
CREAMED = Rule(
    id="fat.creamed",
    because="{food} and its sugar are creamed at home without the egg, and travel cold in one bag",
    source=BOOK,
)
STIRRED = Rule(
    id="fat.stirred",
    because="{food} is stirred in at camp: it belongs inside, not under a batter in the hot pot",
    source=BOOK,
)
GREASING = Rule(id="fat.greasing", because="{food} only greases the pot: rub it in thinly", source=BOOK)
ON_TOP = Rule(id="fat.top", because="{food} goes on top, {when}", source=BOOK)
DIVIDED = Rule(id="fat.divided", because="{food} has two jobs, so it is divided: {jobs}", source=BOOK)
SILENT = Rule(
    id="fat.silent",
    because="the method never says where {food} goes; in a {family} its place is: {goes}",
)
_RULES: dict[FatGoes, Rule] = {
    "hot pot first": HOT_POT,
    "browning": BROWNING,
    "cut in at home": CUT_IN,
    "creamed at home": CREAMED,
    "stirred in": STIRRED,
    "greasing": GREASING,
    "on top": ON_TOP,
}

#: Shares this near to even ones were not told by the text.
LITTLE = 1e-3
#: A plan names at most two destinations for one fat: a third and smaller job is told with the larger.
MOST_JOBS = 2

_DOUGHS: frozenset[Family] = frozenset({"biscuit or quick bread dough", "pastry or pie"})
_BAKES: frozenset[Family] = frozenset(
    {
        "batter bake",
        "biscuit or quick bread dough",
        "yeast bread",
        "pastry or pie",
        "cookie",
        "custard or pudding",
    }
)
#: What makes a batter or a dough of flour and fat.
_WETS: frozenset[Role] = frozenset({"milk", "cultured", "shelf milk", "egg", "water", "juice", "stock"})
#: Names of dishes that are poured over hot fat.
_POURED_OVER_FAT = (
    "cobbler", "cornbread", "corn bread", "popover", "dutch baby", "pannukakku", "puff pancake", "baked pancake",
    "oven pancake", "yorkshire",
)  # fmt: skip
#: Deeds that cook in fat.
FRYING: frozenset[Deed] = frozenset({"saute", "fry", "brown", "deep fry", "griddle", "toast"})
#: Deeds by which food goes over what is in the pot: it does not make the fat any less alone before.
_LATER: frozenset[Deed] = frozenset({"add", "top", "pour", "spread", "layer"})
#: "a little oil for the bowl", "butter for the tin".
_FOR_A_VESSEL = re.compile(
    r"\bfor (?:the |your |a )?(?:pan|tin|dish|bowl|pot|hands|board|tray|sheet|skillet|griddle|mou?ld)s?\b"
)
#: Verbs that grease the vessel whose name follows.
_GREASES = frozenset({"butter", "oil", "grease"})
#: What makes a syrup, and what may be in it.
_SWEET: frozenset[Role] = frozenset({"sugar", "syrup"})
_SYRUP: frozenset[Role] = _SWEET | {
    "fat",
    "water",
    "milk",
    "juice",
    "spirits",
    "extract",
    "spice",
    "salt",
    "zest",
    "mix-in",
}
_MELTED = ("melted", "melt", "liquid")


class Job(Struct, frozen=True, kw_only=True):
    """What a share of a fat does. `taking` is None where the method never names the fat."""

    ingredient: int
    share: float
    goes: FatGoes
    when: str
    taking: Taking | None = None


def jobs(recipe: Recipe, items: tuple[Item, ...], graph: Graph, dish: Dish) -> tuple[Job, ...]:
    """Every job of every fat, in the order of the method."""
    found: list[Job] = []
    for item in items:
        if role_of(item.ingredient, item.food) != "fat":
            continue
        takings = _measured_out(graph.moments(item.index), item)
        if not takings:
            goes = _by_words(item) or _by_family(item, items, graph, dish, recipe)
            found.append(
                Job(ingredient=item.index, share=1.0, goes=goes, when=_when(goes, None, recipe, graph))
            )
        for taking in takings:
            goes = _by_words(item) or _goes(item, taking, recipe, items, graph, dish)
            found.append(
                Job(
                    ingredient=item.index,
                    share=taking.share,
                    goes=goes,
                    when=_when(goes, taking, recipe, graph),
                    taking=taking,
                )
            )
    return tuple(found)


def _measured_out(takings: tuple[Taking, ...], item: Item) -> tuple[Taking, ...]:
    """The takings of a fat without the little that greases a tin, where the rest has work of its own."""
    rest = tuple(taking for taking in takings if taking.does != "grease" or taking.hot)
    if not rest or len(rest) == len(takings) or not item.ingredient.amounts:
        return takings
    told = any(abs(taking.share - 1 / len(takings)) > LITTLE for taking in takings)
    if told:
        return takings
    total = sum(taking.share for taking in rest)
    return tuple(replace(taking, share=taking.share / total) for taking in rest)


def place(
    recipe: Recipe,
    items: tuple[Item, ...],
    graph: Graph,
    dish: Dish,
    day: Day,  # noqa: ARG001 - one signature for all rooms
    ledger: Ledger,
) -> tuple[FatUse, ...]:
    """The destination of every fat, divided where it has two jobs."""
    uses: list[FatUse] = []
    by_fat: defaultdict[int, list[Job]] = defaultdict(list)
    for job in jobs(recipe, items, graph, dish):
        by_fat[job.ingredient].append(job)
    for index, of_fat in by_fat.items():
        name = recipe.ingredients[index].name
        merged = _merged(of_fat)
        for goes, share, when in merged:
            uses.append(FatUse(ingredient=index, share=share, goes=goes, when=when))
            ledger.note(_RULES[goes].says(name, food=name, when=when))
        if of_fat[0].taking is None:
            ledger.note(SILENT.says(name, food=name, family=dish.family, goes=merged[0][0]))
        if len(merged) > 1:
            ledger.note(DIVIDED.says(name, food=name, jobs=" and ".join(goes for goes, _, _ in merged)))
        melted = _is_solid(items[index]) and _is_melted(items[index], graph)
        if dish.family == "batter bake" and merged[0][0] == "stirred in" and melted:
            ledger.ask(
                name,
                f"Melted {name} can also go into the hot pot first, with the batter poured over it, for a crisp "
                "edge. Do you want that?",
                "stirred in, as the recipe has it",
            )
    return tuple(uses)


def _merged(of_fat: list[Job]) -> list[tuple[FatGoes, float, str]]:
    """One entry a destination, at most two; the moments of a third are told with the largest."""
    shares: dict[FatGoes, float] = {}
    moments: dict[FatGoes, str] = {}
    for job in of_fat:
        shares[job.goes] = shares.get(job.goes, 0.0) + job.share
        moments.setdefault(job.goes, job.when)
    kept = sorted(shares, key=lambda goes: -shares[goes])[:MOST_JOBS]
    for goes in list(shares):
        if goes not in kept:
            shares[kept[0]] += shares.pop(goes)
            moments[kept[0]] += f"; and a little for the {goes}"
    return [(goes, shares[goes], moments[goes]) for goes in shares]


def _by_words(item: Item) -> FatGoes | None:
    """What the line itself says of the fat."""
    said = " ".join(filter(None, [item.ingredient.prep, item.ingredient.notes])).lower()[:300]
    if item.food is not None and item.food.name == "cooking spray":
        return "greasing"
    if "greas" in said or _FOR_A_VESSEL.search(said):
        return "greasing"
    if any(word in said for word in ("frying", "to fry", "for sauté", "for saute", "for cooking")):
        return "browning"
    if any(
        word in said for word in ("to serve", "for serving", "for brushing", "for the top", "for topping")
    ):
        return "on top"
    return None


def _goes(
    item: Item, taking: Taking, recipe: Recipe, items: tuple[Item, ...], graph: Graph, dish: Dish
) -> FatGoes:
    """The job of one taking, from the deed, the fire and the company."""
    thing = graph.things[taking.thing]
    bakes_later = any(event.does in OVEN for event in graph.after(taking)) or dish.family in _BAKES
    buttered = taking.does == "spread" and taking.word in _GREASES and kind_of(taking.vessel or "") == "tin"
    if taking.does == "grease" or (buttered and not taking.laid):
        return "browning" if taking.hot else "greasing"
    if taking.does == "cut in" or _is_cut_in(item, taking, items, graph, dish):
        return "cut in at home"
    if taking.does == "cream" or _is_creamed(item, taking, items, graph, dish):
        return "creamed at home"
    if taking.laid and taking.does in ("top", "spread", "serve"):
        return "on top"
    if taking.hot and bakes_later and _is_under_a_batter(taking, items, graph):
        return "hot pot first"
    if taking.hot:
        syrup = taking.does not in FRYING and _is_syrup(taking, items, graph)
        return "browning" if _cooks_in_it(taking, graph) and not syrup else "stirred in"
    alone = all(
        role_of(items[other.ingredient].ingredient, items[other.ingredient].food) in ("fat", "dough")
        for other in _bowl(graph, taking)
        if (not other.laid and other.does not in _LATER) or other.at <= taking.at
    )
    joined = min((o.at for o in _bowl(graph, taking) if not _is_fat(items, o.ingredient)), default=None)
    warmed = any(event.does in FIRE and (joined is None or event.at <= joined) for event in thing.events)
    if bakes_later and thing.poured_over and warmed and alone:
        return "hot pot first"
    if _is_named_for_it(recipe) and not taking.laid and (alone or _is_melted(item, graph)):
        return "hot pot first"
    if taking.laid or taking.does in ("top", "spread", "serve"):
        return "greasing" if _under_dough(taking, alone, dish) else "on top"
    if alone and dish.family in ("yeast bread", "pastry or pie") and not thing.mixed_in and not warmed:
        return "greasing"
    return "stirred in"


def _cooks_in_it(taking: Taking, graph: Graph) -> bool:
    """Heated to cook in, and not stirred into what boiled before."""
    events = graph.things[taking.thing].events
    if taking.does in FRYING:
        return True
    after = [
        event
        for event in events
        if event.at >= taking.at and (event.does in STOVE or parts(event.does, event.word))
    ]
    boiled = any(event.does in ("boil", "simmer", "steam") for event in events if event.at < taking.at)
    if boiled:
        return bool(after) and after[0].does in FRYING
    return bool(after)


def _is_under_a_batter(taking: Taking, items: tuple[Item, ...], graph: Graph) -> bool:
    """Whether a batter, and nothing that fries, goes over the fat: it may sizzle first."""
    joined = {
        number: thing.joined_at
        for number, thing in enumerate(graph.things)
        if thing.into == taking.thing and thing.joined_at is not None and thing.joined_at > taking.at
    }
    if not joined:
        return False
    first = graph.inside(min(joined, key=lambda number: joined[number]))
    roles = {role_of(items[one.ingredient].ingredient, items[one.ingredient].food) for one in first}
    before = all(
        _is_fat(items, other.ingredient) or other.laid or other.at > taking.at
        for other in _bowl(graph, taking)
    )
    return before and "flour" in roles and not roles & {"meat", "fish", "vegetable"}


def _is_syrup(taking: Taking, items: tuple[Item, ...], graph: Graph) -> bool:
    """Whether it only melts into sugar and what flavours it, and boils with them: nothing is cooked in it."""
    roles = {
        role_of(items[other.ingredient].ingredient, items[other.ingredient].food)
        for other in graph.company(taking)
    }
    return bool(roles & _SWEET) and roles <= _SYRUP


def _bowl(graph: Graph, taking: Taking) -> tuple[Taking, ...]:
    """All that is taken into the same thing."""
    return graph.inside(taking.thing)


def _is_fat(items: tuple[Item, ...], index: int) -> bool:
    return role_of(items[index].ingredient, items[index].food) == "fat"


def _is_solid(item: Item) -> bool:
    return item.food is None or not item.food.is_liquid


def _is_melted(item: Item, graph: Graph) -> bool:
    """Liquid when it goes in: an oil, or a fat that the line or the method melts."""
    said = " ".join((*item.ingredient.state, item.ingredient.prep or "", item.ingredient.notes or "")).lower()
    if not _is_solid(item) or any(word in said for word in _MELTED):
        return True
    return any(
        event.does in ("melt", "heat") and event.at >= taking.at
        for taking in graph.moments(item.index)
        if all(other.ingredient == item.index for other in _bowl(graph, taking) if other.at <= taking.at)
        for event in graph.things[taking.thing].events[:1]
    )


def _is_cut_in(item: Item, taking: Taking, items: tuple[Item, ...], graph: Graph, dish: Dish) -> bool:
    """Solid, cold fat that meets flour before any liquid in a dough that is not creamed."""
    if not _is_solid(item) or _is_melted(item, graph) or taking.hot or taking.laid:
        return False
    company = graph.company(taking)
    roles = {role_of(items[other.ingredient].ingredient, items[other.ingredient].food) for other in company}
    if "flour" not in roles and "oats" not in roles:
        return False
    if any(other.does == "cut in" for other in company) or graph.things[taking.thing].does("cut in"):
        return True
    if taking.does == "rub":
        return True
    return dish.family in _DOUGHS and not dish.yeasted and not any(other.does == "cream" for other in company)


def _is_creamed(item: Item, taking: Taking, items: tuple[Item, ...], graph: Graph, dish: Dish) -> bool:
    """Solid, soft fat that is beaten with sugar before anything else."""
    if (
        not _is_solid(item)
        or _is_melted(item, graph)
        or taking.hot
        or taking.laid
        or dish.family not in _BAKES
    ):
        return False
    first = [other for other in _bowl(graph, taking) if other.at <= taking.at]
    roles = {role_of(items[other.ingredient].ingredient, items[other.ingredient].food) for other in first}
    return roles <= {"fat", "sugar", "extract", "salt"} and "sugar" in roles


def _is_named_for_it(recipe: Recipe) -> bool:
    title = (recipe.title or "").lower()
    return any(name in title for name in _POURED_OVER_FAT)


def _under_dough(taking: Taking, alone: bool, dish: Dish) -> bool:
    """Oil in the pan under a pizza or a flat bread."""
    return (
        alone
        and dish.family in ("yeast bread", "pastry or pie", "griddle")
        and taking.does in ("coat", "add", "spread")
    )


def _is_of_crumbs(item: Item, items: tuple[Item, ...]) -> bool:
    """Whether its part of the dish is flour, sugar and fat without anything wet: a crumble, a streusel."""
    part = item.ingredient.component
    roles = {role_of(other.ingredient, other.food) for other in items if other.ingredient.component == part}
    return part is not None and "flour" in roles and not roles & _WETS


def _by_family(item: Item, items: tuple[Item, ...], graph: Graph, dish: Dish, recipe: Recipe) -> FatGoes:
    """The job of a fat that no step names."""
    family = dish.family
    melted = _is_melted(item, graph)
    if not melted and _is_of_crumbs(item, items):
        return "cut in at home"
    if _is_named_for_it(recipe):
        return "hot pot first"
    if family in _DOUGHS:
        return "cut in at home" if not melted else "stirred in"
    if family == "cookie" and not melted:
        return "creamed at home"
    if family in _BAKES or family in ("no cook", "preserve or ferment"):
        return "stirred in"
    if item.food is not None and item.food.name == "sesame oil":
        return "stirred in"
    if family == "griddle":
        return "greasing"
    if family in ("boil or steam", "other") and graph.count("fry", "saute", "brown") == 0:
        return "stirred in"
    return "browning"


def _when(goes: FatGoes, taking: Taking | None, recipe: Recipe, graph: Graph) -> str:
    """The moment in words that go on from the destination: "into the hot pot first, just before ..."."""
    match goes:
        case "hot pot first":
            return "just before the batter is poured"
        case "browning":
            return "shimmering before the food goes in"
        case "cut in at home":
            return "while both are cold"
        case "creamed at home":
            return "without the egg"
        case "stirred in":
            beside = [] if taking is None else [food for food in taking.beside if food != taking.ingredient]
            return f"together with the {recipe.ingredients[beside[0]].name}" if beside else "at camp"
        case "greasing":
            return "rubbed into the pot before it is filled"
        case "on top":
            bakes_later = taking is not None and any(event.does in FIRE for event in graph.after(taking))
            return "before it goes over the coals" if bakes_later else "when it is served"
