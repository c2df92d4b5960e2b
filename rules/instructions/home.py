"""What is done at home: every bag measured, cut, mixed and frozen, one sentence or two a pack."""

from __future__ import annotations

from rules.circumstances import Day
from rules.instructions.words import contents, joined, sentence
from rules.packs import Contents
from rules.plan import Pack
from rules.recipe import Recipe
from rules.roles import role_of


def home_steps(recipe: Recipe, packs: tuple[Pack, ...], inside: Contents, day: Day) -> tuple[str, ...]:
    """The steps at home, in the order of the packs; freezing and labelling last."""
    steps = [step for pack in packs if (step := _step(pack, recipe, inside, day))]
    frozen = [pack.id for pack in packs if pack.travels == "frozen" and pack.kind != "fresh"]
    raw = [pack.id for pack in packs if pack.travels == "frozen" and pack.kind == "fresh"]
    if frozen or raw:
        steps.append(sentence(f"freeze {joined([*frozen, *raw])} lying flat, at least a day before leaving"))
    if any(pack.kind in ("dry mix", "wet mix", "prepped") for pack in packs):
        steps.append("Write the label of every pack: what it is, the date, what is added at camp.")
    return tuple(steps)


def _step(pack: Pack, recipe: Recipe, inside: Contents, day: Day) -> str:
    told = joined(contents(pack, recipe, day.units))
    bag = pack.container or "bag"
    sort = inside.sort(pack)
    match pack.kind, sort:
        case "dry mix", _ if any(_is_fat(recipe, item.ingredient) for item in pack.items):
            fat = joined(
                recipe.ingredients[item.ingredient].name
                for item in pack.items
                if _is_fat(recipe, item.ingredient)
            )
            return sentence(
                f"mix {told}, cutting the cold {fat} in until it looks like coarse crumbs; bag it ({pack.id}, {bag}) and chill it at once"
            )
        case "dry mix", _ if len(pack.items) == 1:
            return sentence(f"measure {told} into a {bag} ({pack.id})")
        case "dry mix", _:
            return sentence(
                f"measure {told} into a {bag} ({pack.id}), close it and shake it until it is one colour"
            )
        case "wet mix", "fruit":
            return sentence(f"put {told} into a {bag} ({pack.id}), press it flat and squeeze the air out")
        case "wet mix", _:
            return sentence(f"pour {told} into a {bag} ({pack.id}), close it and shake it")
        case "prepped", "creamed":
            return sentence(
                f"cream {told} until light, without the egg; put it into a {bag} ({pack.id}) and chill it"
            )
        case "prepped", "flesh":
            return _flesh(pack, recipe, day)
        case "prepped", "dough":
            return sentence(
                f"make the dough with {told}, as far as it rests; wrap it flat ({pack.id}, {bag})"
            )
        case "prepped", "mix":
            return sentence(f"mix {told}; fill it into a tub with a lid ({pack.id}) and chill it")
        case "prepped", "preserve":
            return sentence(f"make it at home from {told}, as the recipe says; it comes ready ({pack.id})")
        case "prepped", _:
            return _prepare(pack, recipe, day)
        case "fresh", _ if sort == "flesh":
            return sentence(
                f"seal {told} in a bag inside a second bag ({pack.id}); it rides at the bottom of the cooler"
            )
        case _:
            return ""


def _is_fat(recipe: Recipe, index: int) -> bool:
    return role_of(recipe.ingredients[index]) == "fat"


def _flesh(pack: Pack, recipe: Recipe, day: Day) -> str:
    """Raw meat, cut and in its marinade where it has one."""
    told = contents(pack, recipe, day.units)
    roles = [role_of(recipe.ingredients[item.ingredient]) for item in pack.items]
    meat = [part for part, role in zip(told, roles, strict=True) if role in ("meat", "fish", "cured meat")]
    rest = [
        part for part, role in zip(told, roles, strict=True) if role not in ("meat", "fish", "cured meat")
    ]
    cut = next(
        (
            recipe.ingredients[item.ingredient].prep
            for item in pack.items
            if recipe.ingredients[item.ingredient].prep
        ),
        None,
    )
    how = f" ({cut})" if cut else ""
    if rest:
        return sentence(
            f"mix {joined(rest)}; cut {joined(meat)}{how} to size, turn it in the marinade and seal it in a bag inside a second bag ({pack.id})"
        )
    return sentence(
        f"cut {joined(meat)}{how} to size on a board of its own, seal it in a bag inside a second bag ({pack.id}) and wash board, knife and hands"
    )


def _prepare(pack: Pack, recipe: Recipe, day: Day) -> str:
    """Vegetables, cheese and fruit, cut as the recipe has them."""
    parts = []
    for item, told in zip(pack.items, contents(pack, recipe, day.units), strict=True):
        prep = recipe.ingredients[item.ingredient].prep
        parts.append(f"{told} ({prep})" if prep else told)
    dry = pack.travels == "shelf"
    under = " under cold water" if pack.make_ahead and "under cold water" in pack.make_ahead else ""
    return sentence(
        f"{'chop' if dry else 'wash and cut'} {joined(parts)}; bag{' it' if len(parts) == 1 else ' them together'}{under} ({pack.id})"
    )
