"""What an experienced cook finds wrong with a camp plan when reading its steps: packs, leavener, raw meat, home work.

The checks read the words of the plan, as the cook at the fire does, and not what the rules meant by them. Each gives
its complaints as sentences; a sound plan gives none. They follow the handbook's chapters 1 and 2.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from rules import foods, method
from rules.foods.names import plain, singulars
from rules.method.graph import FIRE, parts
from rules.plan import Pack, Plan
from rules.roles import Role, role_of

MADE = ("dry mix", "wet mix", "prepped")
#: What wets a leavener.
LIQUID: frozenset[Role] = frozenset(
    {"water", "milk", "cultured", "shelf milk", "egg", "juice", "stock", "acid", "spirits", "sauce", "syrup", "drink"}
)  # fmt: skip
RAW: frozenset[Role] = frozenset({"meat", "fish"})
#: The heat that must follow once a leavener is wet.
HEAT_WORDS = re.compile(r"\b(?:bake|baking|fry|roast|griddle)\b", re.IGNORECASE)
#: What stands there only once the flour is in.
BATTER = re.compile(r"\b(?:batter|dough|into (?:the )?dry|make a well|knead|pat it out)\b", re.IGNORECASE)
#: Work for a board, a sieve or a fridge, which stays at home; the words up to the next stop are what it is done to.
HOME_WORK = re.compile(
    r"\b(chop|dice|mince|slice|peel|grate|shred|cube|crush|zest|core|pit|seed|trim|julienne|sift|sieve|"
    r"cream|rub in|cut in|cut the|wash)\b((?:(?! (?:and|with|over|into|until|to|from|in)\b)[^.;,:])*)",
    re.IGNORECASE,
)
HOURS_AHEAD = re.compile(
    r"\b(?:overnight|the night before|the day before|in the (?:fridge|refrigerator|freezer))\b", re.IGNORECASE
)
KITCHEN = re.compile(
    r"\b(?:pre-?heat|oven|stove|stovetop|burner|fridge|refrigerator|microwave|food processor|blender|rack|"
    r"(?:medium|low|high)(?:-(?:high|low))? (?:heat|flame)|skillet|saucepan|frying pan|casserole dish|baking dish|sheet)\b",
    re.IGNORECASE,
)


def roles(plan: Plan, pack: Pack) -> frozenset[Role]:
    """The roles of what a pack holds."""
    found = []
    for item in pack.items:
        ingredient = plan.recipe.ingredients[item.ingredient]
        food = foods.catalogue().get(ingredient.food) if ingredient.food else None
        found.append(role_of(ingredient, food))
    return frozenset(found)


def names(plan: Plan, pack: Pack) -> frozenset[str]:
    """The last words of the foods of a pack, singular."""
    told = (plan.recipe.ingredients[item.ingredient].name for item in pack.items)
    return frozenset(singulars(plain(name)).split()[-1] for name in told if name.strip())


def _said_in(text: str, names_: frozenset[str]) -> frozenset[str]:
    return names_ & set(re.findall(r"[\w'-]+", singulars(plain(text))))


def every_made_pack_is_opened_once(plan: Plan) -> Iterator[str]:
    """Dry mixes, wet mixes, prepped packs and raw meat by their id, once; what comes as it is by its name."""
    if plan.recipe.family == "preserve or ferment":
        return
    text = " ".join(plan.camp_steps)
    for pack in plan.packs:
        times = len(re.findall(rf"\b{pack.id}\b", text))
        if pack.kind in MADE and times != 1:
            yield f"{pack.id} ({pack.label}) is opened {times} times"
        elif pack.kind in ("fresh", "pantry") and not times and not _said_in(text, names(plan, pack)):
            yield f"{pack.id} ({pack.label}) is never taken out"


def packs_are_opened_before_the_heat_that_cooks_them(plan: Plan) -> Iterator[str]:
    """A mix with leavener is opened before the last step that bakes or fries."""
    heated = [n for n, step in enumerate(plan.camp_steps[:-1]) if HEAT_WORDS.search(step)]
    for pack in plan.packs:
        if pack.kind != "dry mix" or "leavener" not in roles(plan, pack) or not heated:
            continue
        opened = [n for n, step in enumerate(plan.camp_steps) if re.search(rf"\b{pack.id}\b", step)]
        if opened and opened[0] > heated[-1]:
            yield f"{pack.id} ({pack.label}) is opened after the heat"


def no_batter_is_spoken_of_before_its_flour(plan: Plan) -> Iterator[str]:
    """Where one bag holds the flour of a dish, nothing is a batter or a dough before it is opened."""
    text = " ".join(plan.camp_steps)
    bags = [pack for pack in plan.packs if "flour" in roles(plan, pack)]
    if len(bags) != 1 or bags[0].kind != "dry mix" or "leavener" not in roles(plan, bags[0]):
        return
    opened = re.search(rf"\bTake [^.]*\({bags[0].id}\)", text)
    early = BATTER.search(text[: opened.start()]) if opened else None
    if early:
        yield f"{early.group()} is spoken of before {bags[0].id} is opened"


def leavener_meets_liquid_only_at_camp(plan: Plan) -> Iterator[str]:
    """Save in firm cookie dough that is frozen and in yeast dough that is kept cold."""
    for pack in plan.packs:
        inside = roles(plan, pack)
        firm = "yeast" in inside or plan.recipe.family == "cookie"
        cold_dough = (
            firm and pack.kind == "prepped" and "flour" in inside and pack.travels in ("cool", "frozen")
        )
        if inside & {"leavener", "yeast"} and inside & LIQUID and not cold_dough:
            yield f"{pack.id} ({pack.label}) wets its leavener at home"


def raw_meat_shares_no_pack_with_what_is_eaten_raw(plan: Plan) -> Iterator[str]:
    """Beside raw flesh only what goes over the fire after it; nothing of such a pack rides on the shelf."""
    graph = method.graph(plan.recipe)
    for pack in plan.packs:
        if not roles(plan, pack) & RAW or plan.recipe.family == "preserve or ferment":
            continue
        raw = [item for item in pack.items if _is_raw(plan, item.ingredient)]
        if not raw:
            continue
        if pack.travels == "shelf":
            yield f"{pack.id} ({pack.label}) carries raw meat without cooling"
        for item in pack.items:
            moments = graph.moments(item.ingredient)
            cooked = any(
                event.does in FIRE or parts(event.does, event.word)
                for taking in moments
                for event in graph.after(taking)
            )
            if moments and not cooked:
                yield f"{pack.id}: {plan.recipe.ingredients[item.ingredient].name} is eaten raw and rides with raw meat"


def _is_raw(plan: Plan, index: int) -> bool:
    food = plan.recipe.ingredients[index].food
    return role_of(plan.recipe.ingredients[index]) in RAW and (
        food is None or foods.catalogue().get(food).is_raw_meat
    )


def no_home_work_is_left_for_camp(plan: Plan) -> Iterator[str]:
    """Nothing that came in a made pack is cut, sifted, creamed or soaked again; nothing waits overnight at camp."""
    home = frozenset().union(*(names(plan, pack) for pack in plan.packs if pack.kind in MADE))
    whole = frozenset().union(*(names(plan, pack) for pack in plan.packs if pack.kind not in MADE))
    for step in plan.camp_steps:
        said = re.sub(r"\bTake [^.]*\(.*?\)[^.]*\.", "", step)
        for verb, rest in HOME_WORK.findall(said):
            if again := _said_in(rest, home - whole):
                yield f"at camp still: {verb} {', '.join(sorted(again))}"
        if HOURS_AHEAD.search(said):
            yield f"at camp still: {said}"


def no_kitchen_is_spoken_of(plan: Plan) -> Iterator[str]:
    """There is no oven, no stove and no second pan at camp."""
    for step in plan.camp_steps:
        for word in KITCHEN.findall(step):
            yield f"no {word.lower()} at camp: {step}"


CHECKS: tuple[Callable[[Plan], Iterator[str]], ...] = (
    every_made_pack_is_opened_once,
    packs_are_opened_before_the_heat_that_cooks_them,
    no_batter_is_spoken_of_before_its_flour,
    leavener_meets_liquid_only_at_camp,
    raw_meat_shares_no_pack_with_what_is_eaten_raw,
    no_home_work_is_left_for_camp,
    no_kitchen_is_spoken_of,
)


def complaints(plan: Plan) -> list[str]:
    """All that is wrong with a plan."""
    return [told for check in CHECKS for told in check(plan)]
