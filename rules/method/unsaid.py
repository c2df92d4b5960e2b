"""Foods that no action takes: where the text, or their place in the list, lets one guess that they enter.

A method says "sear each meat" or "add the spices"; the list knows which. A food whose name stands in the words of a
step enters there; raw flesh enters at the first fire; any other food enters with the food before it in the list.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from rules.foods.names import plain, singulars
from rules.method.graph import FIRE, LAYING, MIXING, parts
from rules.method.settle import Raw
from rules.method.words import kind_of
from rules.recipe import Action, Deed, Recipe, Use
from rules.roles import DRY, Role


@dataclass(frozen=True)
class Doing:
    """An action that was done to a thing: a place where a food may enter."""

    at: int
    step: int
    action: Action
    thing: int
    vessel: str | None
    spell: int
    cooked: int


#: "For the griddle", "for frying".
FOR_A_PAN = re.compile(r"\bfor (?:the |your |a )?(?:pan|skillet|griddle|pot|frying|cooking)\b")
#: Last words that alone mean another food: pepper is black pepper.
SHARED_HEADS = frozenset(["pepper", "powder", "seasoning", "mix", "stock", "water"])
_TAKES: frozenset[Deed] = MIXING | LAYING | FIRE
_FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat"})


def guesses(
    recipe: Recipe, roles: Sequence[Role], takings: Sequence[Raw], doings: Sequence[Doing]
) -> list[Raw]:
    """One guessed taking for each ingredient that no action takes and that a place can be found for."""
    taken = {raw.use.ingredient: raw for raw in takings}
    open_ = [doing for doing in doings if _may_take(doing)]
    if not open_:
        return []
    by_step: dict[int, list[Doing]] = {}
    for place in open_:
        by_step.setdefault(place.step, []).append(place)
    heads = Counter(
        _words(ingredient.name)[-1:][0] for ingredient in recipe.ingredients if _words(ingredient.name)
    )
    said = {step: set(singulars(plain(recipe.steps[step].text)).split()) for step in by_step}
    first_fire = next((doing for doing in open_ if _is_fire(doing)), open_[0])
    found: list[Raw] = []
    before: dict[str | None, Raw] = {}
    for index, ingredient in enumerate(recipe.ingredients):
        if index in taken:
            before[ingredient.component] = taken[index]
            continue
        near = _sibling(index, recipe, taken) if _has_rival(index, recipe, taken) else None
        if near is not None:
            found.append(_beside(near, index))
            continue
        pan = _pan_of(index, recipe, roles, open_)
        if pan is not None:
            found.append(_at(pan, index))
            continue
        doing: Doing | None = _where_said(
            _words(ingredient.name), by_step, said, heads, first=roles[index] in DRY
        )
        if doing is None and roles[index] in _FLESH:
            doing = first_fire
        if doing is None and ingredient.component in before and not ingredient.optional:
            near = before[ingredient.component]
            found.append(_beside(near, index))
        elif doing is not None:
            found.append(_at(doing, index))
            before[ingredient.component] = found[-1]
    return found


def _pan_of(index: int, recipe: Recipe, roles: Sequence[Role], open_: Sequence[Doing]) -> Doing | None:
    """Where a fat "for the griddle" goes: into the first vessel of the fire that is called so, or is heated."""
    said = recipe.ingredients[index].notes or ""
    if roles[index] != "fat" or not FOR_A_PAN.search(said):
        return None
    return next((one for one in open_ if kind_of(one.action.vessel or "") in ("pan", "pot")), None)


def _has_rival(index: int, recipe: Recipe, taken: Mapping[int, Raw]) -> bool:
    """Whether a food of another part that is taken ends in the same word: the milk of the dough, of the icing."""
    ingredient = recipe.ingredients[index]
    last = _words(ingredient.name)[-1:]
    return any(
        other.component != ingredient.component and _words(other.name)[-1:] == last
        for at in taken
        if (other := recipe.ingredients[at]) is not ingredient
    )


def _sibling(index: int, recipe: Recipe, taken: Mapping[int, Raw]) -> Raw | None:
    """The taking of the nearest food of its own part, None where it has no part."""
    part = recipe.ingredients[index].component
    own = [at for at in taken if part is not None and recipe.ingredients[at].component == part]
    return taken[min(own, key=lambda at: abs(at - index))] if own else None


def _may_take(doing: Doing) -> bool:
    return doing.action.does in _TAKES or _is_fire(doing)


def _is_fire(doing: Doing) -> bool:
    return doing.action.does in FIRE or parts(doing.action.does, doing.action.word)


def _words(name: str) -> list[str]:
    return re.findall(r"[\w'-]+", singulars(plain(name[:200])))


def _where_said(
    name: list[str],
    by_step: dict[int, list[Doing]],
    said: dict[int, set[str]],
    heads: Counter[str],
    *,
    first: bool,
) -> Doing | None:
    """A doing of the first step whose words hold the name, or its last word where no other food ends in it.

    The first doing of the step for dry foods, the last for others.
    """
    if not name:
        return None
    steps = [step for step in by_step if set(name) <= said[step]]
    if not steps and heads[name[-1]] == 1 and name[-1] not in SHARED_HEADS:
        steps = [step for step in by_step if name[-1] in said[step]]
    return by_step[steps[0]][0 if first else -1] if steps else None


def _at(doing: Doing, index: int) -> Raw:
    return Raw(
        Use(ingredient=index), doing.at, doing.step, doing.action, doing.thing, doing.vessel, doing.spell, doing.cooked,
        (index,), False, guessed=True,
    )  # fmt: skip


def _beside(near: Raw, index: int) -> Raw:
    return Raw(
        Use(ingredient=index), near.at, near.step, near.action, near.thing, near.vessel, near.spell, near.cooked,
        (index,), near.laid, guessed=True,
    )  # fmt: skip
