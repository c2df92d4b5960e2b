"""What is done at home: every bag measured, cut, mixed and frozen, one sentence a pack."""

from __future__ import annotations

import re

from rules.circumstances import Day
from rules.foods import catalogue
from rules.instructions.words import amount_of, contents, joined, prep_verbs, sentence
from rules.packs import Contents
from rules.plan import Pack, PackItem
from rules.recipe import Recipe
from rules.roles import Role, role_of

#: What is done to a food whose preparation is not told.
_USUAL: dict[Role, str] = {"cheese": "grate", "mix-in": "chop", "cured meat": "cut"}
_FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat"})


def home_steps(recipe: Recipe, packs: tuple[Pack, ...], inside: Contents, day: Day) -> tuple[str, ...]:
    """The steps at home, in the order of the packs; freezing and labelling last."""
    steps = [step for pack in packs if (step := _step(pack, recipe, inside, day))]
    made = [pack for pack in packs if pack.kind in ("dry mix", "wet mix", "prepped")]
    frozen = [
        pack.id
        for pack in packs
        if pack.travels == "frozen" and (pack in made or inside.sort(pack) == "flesh")
    ]
    if frozen:
        steps.append(sentence(f"freeze {joined(frozen)} lying flat; hard before the cooler is packed"))
    if made:
        steps.append("Label every pack: what it is, the date, what is added at camp.")
    return tuple(steps)


def _step(pack: Pack, recipe: Recipe, inside: Contents, day: Day) -> str:
    told = joined(contents(pack, recipe, day.units))
    into = f"into a {pack.container or 'bag'} ({pack.id})"
    sort = inside.sort(pack)
    match pack.kind, sort:
        case "dry mix", _ if fats := [item for item in pack.items if _role(recipe, item) == "fat"]:
            fat = joined(recipe.ingredients[item.ingredient].name for item in fats)
            return sentence(
                f"mix {told}, cutting the cold {fat} in until it looks like coarse crumbs; bag them {into} and "
                "chill them at once"
            )
        case "dry mix", _ if len(pack.items) == 1:
            return sentence(f"measure {told} {into}")
        case "dry mix", _:
            return sentence(f"measure {told} {into}, close it and shake it until it is one colour")
        case "wet mix", "fruit":
            return sentence(f"put {told} {into}, press it flat and squeeze the air out")
        case "wet mix", _:
            return sentence(f"pour {told} {into}, close it and shake it")
        case "prepped", "creamed":
            return sentence(f"cream {told} until light, without the egg; put it {into} and chill it")
        case "prepped", "flesh":
            return _cut_flesh(pack, recipe, day)
        case "prepped", "dough":
            return sentence(f"make the dough from {told}, up to its long rest; wrap it flat {into}")
        case "prepped", "mix":
            return sentence(f"mix {told} as the recipe says; fill it {into} and chill it")
        case "prepped", "preserve":
            return sentence(
                f"make it at home from {told}, as the recipe says; it comes along ready ({pack.id})"
            )
        case "prepped", _:
            return _prepare(pack, recipe, day)
        case "fresh", "flesh":
            return sentence(
                f"seal {told} in a bag inside a second bag ({pack.id}), for the bottom of the cooler"
            )
        case _:
            return ""


def _role(recipe: Recipe, item: PackItem) -> Role:
    return role_of(recipe.ingredients[item.ingredient])


def _cut_flesh(pack: Pack, recipe: Recipe, day: Day) -> str:
    """Raw meat, cut and in its marinade where it has one."""
    meats = [item for item in pack.items if _role(recipe, item) in _FLESH] or list(pack.items[:1])
    rest = [item for item in pack.items if item not in meats]
    meat = joined(_with_prep(item, recipe, day) for item in meats)
    bag = f"a bag inside a second bag ({pack.id})"
    if rest:
        seasoning = joined(amount_of(item, recipe.ingredients[item.ingredient], day.units) for item in rest)
        return sentence(
            f"mix {seasoning}; turn {meat} in it and seal all of it in {bag}; wash board, knife and hands"
        )
    return sentence(
        f"cut {meat} to size on a board of its own and seal it in {bag}; wash board, knife and hands"
    )


def _with_prep(item: PackItem, recipe: Recipe, day: Day) -> str:
    ingredient = recipe.ingredients[item.ingredient]
    told = amount_of(item, ingredient, day.units)
    return f"{told} ({ingredient.prep})" if ingredient.prep else told


def _prepare(pack: Pack, recipe: Recipe, day: Day) -> str:
    """Vegetables, cheese, fruit and what is cooked ahead, each by its own verb."""
    work: dict[str, list[str]] = {}
    for item in pack.items:
        ingredient = recipe.ingredients[item.ingredient]
        food = catalogue().get(ingredient.food) if ingredient.food else None
        verb = _verb(ingredient.prep, _role(recipe, item), hardy=food is not None and food.is_hardy)
        told = amount_of(item, ingredient, day.units)
        plain = ingredient.prep is None or ingredient.prep.lower() in prep_verbs()
        work.setdefault(verb, []).append(told if plain else f"{told} ({ingredient.prep})")
    done = joined(f"{verb} {joined(foods)}" for verb, foods in work.items())
    under = " under cold water" if pack.make_ahead and "under cold water" in pack.make_ahead else ""
    return sentence(f"{done}; bag {'it' if len(pack.items) == 1 else 'them together'}{under} ({pack.id})")


def _verb(prep: str | None, role: Role, *, hardy: bool = False) -> str:
    """The verb of a preparation, or what is usually done with such a food; `hardy` fruit is no berry."""
    match role:
        case "boiled egg" | "egg":
            return "boil, cool and peel"
        case "cooked grain" | "grain":
            return "cook and cool at once"
        case "meat" | "fish":
            return "cook through and cool at once"
        case "fruit" if prep is None and not hardy:
            return "wash and pick over"
    for word in re.findall(r"[a-zé]+", (prep or "").lower()[:100]):
        if word in prep_verbs():
            return prep_verbs()[word]
    return _USUAL.get(role, "wash and cut")
