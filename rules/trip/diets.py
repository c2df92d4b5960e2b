"""Every person before every dish: what in it they avoid, and what would help.

A word of avoidance is one of the nine allergens, a word of `tables/avoids.csv`, or a food. What a dish surely holds
counts as held; what a packet may hold is a label to read. A swap is only offered when the dish, with the swap worked in
by `rules.swaps`, holds nothing more that the person avoids.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from msgspec.structs import replace

from rules import foods, swaps, table
from rules.allergens import NINE, held_by
from rules.because import Ledger, Rule
from rules.circumstances import Day, Swap
from rules.foods import Food, Item, catalogue
from rules.foods.names import plain, singulars
from rules.hazards import DOUGH_FAMILIES
from rules.plan import Allergen
from rules.recipe import Recipe, Struct
from rules.swaps.book import effect_of, exchanges
from rules.trip.model import Diet, Dish, Person, Verdict, Wish
from rules.wording import joined

HELD = Rule(
    id="diets.held",
    because="{person} avoids {avoids}, and {dish} holds it: {foods}",
)
SWAPPED = Rule(
    id="diets.swap",
    because="{dish} has nothing more that {person} avoids once {said}",
    source="tables/swaps.csv, and the allergens of the food tables",
)
LABEL = Rule(
    id="diets.label",
    because="{foods} in {dish} may hold {avoids}, which {person} avoids, depending on who made it",
)
UNKNOWN = Rule(
    id="diets.unknown",
    because='"{avoids}" is no allergen, kind or food that is known: for {person} the names in every dish were searched'
    " for the word alone",
)
#: A food that makes up so much of a dish is the dish.
MAIN_SHARE = 0.25
#: What a dough or batter does not hold together without.
STRUCTURE = frozenset({"flour", "egg", "leavener"})


class Avoid(table.Row, frozen=True, kw_only=True):
    """What a word of avoidance means: allergens, groups of foods, words in the names of foods."""

    word: str
    allergens: tuple[Allergen, ...] = ()
    groups: tuple[str, ...] = ()
    foods: tuple[str, ...] = ()
    words: tuple[str, ...] = ()


class Meaning(Struct, frozen=True, kw_only=True):
    """What one person avoids by one word."""

    said: str
    allergens: frozenset[Allergen] = frozenset()
    groups: frozenset[str] = frozenset()
    foods: frozenset[str] = frozenset()
    words: frozenset[str] = frozenset()
    known: bool = True


def diets(dishes: Sequence[Dish], persons: Sequence[Person], ledger: Ledger) -> tuple[Diet, ...]:
    """Every person who avoids something, dish by dish and word by word."""
    found = []
    for person in persons:
        for said in person.avoids:
            meaning = means(said)
            if not meaning.known:
                ledger.note(UNKNOWN.says(person.name, avoids=said, person=person.name))
                ledger.ask(person.name, f'What does "{said}" cover?', "any food with that word in its name")
            found += [_before(person, meaning, dish, ledger) for dish in dishes]
    return tuple(found)


@cache
def means(said: str) -> Meaning:
    """A word of avoidance: as the table has it, else a food of the catalogue, else a word in the names."""
    asked = singulars(plain(said))
    for row in table.read("avoids.csv", Avoid):
        if asked == singulars(plain(row.word)):
            return Meaning(
                said=said,
                allergens=frozenset(row.allergens),
                groups=frozenset(row.groups),
                foods=frozenset(row.foods),
                words=frozenset(row.words),
            )
    match = catalogue().find(said)
    if match.food is not None and match.how in ("name", "alias"):
        return Meaning(said=said, foods=frozenset({match.food.name}), words=frozenset({asked}))
    return Meaning(said=said, words=frozenset({asked}), known=False)


# What is in the dish


def _before(person: Person, meaning: Meaning, dish: Dish, ledger: Ledger) -> Diet:
    items = foods.weigh(dish.plan.recipe, dish.plan.scale)
    held = [item for item in items if holds(item, meaning)]
    diet = Diet(
        person=person.name,
        dish=dish.id,
        avoids=meaning.said,
        verdict="fits",
        allergens=_of_nine(held, dish, meaning),
        said=f"{dish.title} fits.",
    )
    if held:
        return _helped(diet, person, meaning, dish, held, items, ledger)
    if diet.allergens:
        # Bread that the method puts on the table is in no line of the list, but the plan knows what it holds.
        said = (
            f"What is served with {dish.title} holds {_all(diet.allergens)}: {person.name} goes without it."
        )
        return replace(diet, verdict="leave out", said=said)
    maybe = _labels(dish, meaning)
    if maybe:
        reason = LABEL.says(
            f"{person.name} and {dish.title}",
            foods=_all(maybe),
            dish=dish.title,
            avoids=meaning.said,
            person=person.name,
        )
        ledger.note(reason)
        said = f"Read the label of the {_all(maybe)} for {meaning.said}."
        return replace(diet, verdict="check the label", foods=maybe, said=said)
    return diet


def _of_nine(held: Sequence[Item], dish: Dish, meaning: Meaning) -> tuple[Allergen, ...]:
    """The avoided allergens that the dish surely holds: in its foods, or in what is served with it."""
    sure = {one for item in held for one in held_by(item.ingredient, item.food)[0]} | set(dish.plan.allergens)
    return tuple(one for one in NINE if one in sure & meaning.allergens)


def _labels(dish: Dish, meaning: Meaning) -> tuple[str, ...]:
    """The foods whose packet decides."""
    return tuple(row.food for row in dish.plan.check_label if set(row.may_hold) & meaning.allergens)


def _all(names: Sequence[str]) -> str:
    """All the names, however many: nobody is told of "2 more" where it matters what they are."""
    return joined(dict.fromkeys(names))


def holds(item: Item, meaning: Meaning) -> bool:
    """Whether an ingredient surely is, or surely holds, what is avoided."""
    name = f" {singulars(plain(item.ingredient.name))} "
    if any(f" {singulars(plain(word))} " in name for word in meaning.words):
        return True
    food = item.food
    sure, _ = held_by(item.ingredient, food)
    return bool(sure & meaning.allergens) or (food is not None and _is(food, meaning))


def _is(food: Food, meaning: Meaning) -> bool:
    name = f" {singulars(plain(food.name.replace(',', ' ')))} "
    return (
        food.group in meaning.groups
        or food.name in meaning.foods
        or any(f" {singulars(plain(word))} " in name for word in meaning.words)
    )


# What would help


def _helped(
    diet: Diet,
    person: Person,
    meaning: Meaning,
    dish: Dish,
    held: Sequence[Item],
    items: Sequence[Item],
    ledger: Ledger,
) -> Diet:
    names = tuple(dict.fromkeys(item.ingredient.name for item in held))
    about = f"{person.name} and {dish.title}"
    ledger.note(HELD.says(about, person=person.name, avoids=meaning.said, dish=dish.title, foods=_all(names)))
    wishes = [_wish(item, meaning) or _left_out(item, dish, items) for item in held]
    known = [wish for wish in wishes if wish is not None]
    if len(known) < len(held) or not fits_after(dish.plan.recipe, known, meaning):
        said = f"{dish.title} needs {_all(names)}: cook {person.name} something else."
        return replace(diet, verdict="another dish", foods=names, said=said)
    out = all(wish.swap.to is None for wish in known)
    said = _all([wish.said for wish in known])
    ledger.note(SWAPPED.says(about, dish=dish.title, person=person.name, said=said))
    verdict: Verdict = "leave out" if out else "swap"
    labels = [food for food in _labels(dish, meaning) if food not in names]
    read = f" Read the label of the {_all(labels)} too." if labels else ""
    return replace(
        diet,
        verdict=verdict,
        foods=names,
        wishes=tuple(known),
        said=f"{said[:1].upper()}{said[1:]}.{read}",
    )


def _wish(item: Item, meaning: Meaning) -> Wish | None:
    """The first exchange of the book that brings in nothing avoided."""
    if item.food is None:
        return None
    for food in _offers(item.food):
        if not _is(food, meaning) and not set(food.allergens) & meaning.allergens:
            swap = Swap(food=item.ingredient.name, to=food.spoken)
            label = " (read its label)" if set(food.may_hold) & meaning.allergens else ""
            return Wish(swap=swap, said=f"{food.spoken}{label} takes the place of the {swap.food}")
    return None


def _offers(food: Food) -> list[Food]:
    """Foods that may take this one's place: what everybody can eat and what is most like it first."""
    found = [catalogue().get(way.main.into) for way in exchanges() if food.name in way.foods]
    everybody = means("vegan")
    return sorted(
        found,
        key=lambda other: (
            _is(other, everybody) or bool(other.allergens),
            other.form != food.form,
        ),
    )


def _left_out(item: Item, dish: Dish, items: Sequence[Item]) -> Wish | None:
    """Leaving a food out, where the dish is still a dish: what holds it together or makes most of it stays."""
    food = item.food
    if food is None:
        return None
    total = sum(other.grams or 0.0 for other in items)
    names_it = any(f" {word} " in f" {singulars(plain(dish.title))} " for word in _words_of(food))
    is_main = names_it or (total > 0 and (item.grams or 0.0) / total > MAIN_SHARE)
    holds_up = food.group in STRUCTURE and dish.plan.recipe.family in DOUGH_FAMILIES
    if (is_main or holds_up) and not item.ingredient.optional:
        return None
    row = effect_of(food)
    effect = f" ({row.effect})" if row else ""
    return Wish(
        swap=Swap(food=item.ingredient.name, to=None), said=f"the {item.ingredient.name} is left out{effect}"
    )


def _words_of(food: Food) -> list[str]:
    """The words of a food's name, as they may stand in a title: a shrimp boil is no dish without shrimp."""
    return [word for word in singulars(plain(food.name.partition(",")[0])).split() if len(word) > 3]


def fits_after(recipe: Recipe, wishes: Sequence[Wish], meaning: Meaning) -> bool:
    """Whether the dish holds nothing avoided once the swaps are worked in."""
    changed = swaps.apply(recipe, Day(swaps=tuple(wish.swap for wish in wishes)), Ledger())
    return not any(holds(item, meaning) for item in foods.weigh(changed))
