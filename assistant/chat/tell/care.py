"""Cold food, dangers, allergens and diets: never a plain no while a label has to be read."""

from __future__ import annotations

from assistant.chat.acts import Meant
from assistant.chat.lexicon import hear
from assistant.chat.reasons import rules_of, words_of
from assistant.chat.tell.question import groups_of
from assistant.chat.values import allergens_of
from assistant.show import parts, words
from rules.circumstances import Day
from rules.foods import catalogue
from rules.plan import Plan
from rules.recipe import Struct


def cold(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """The ice first, or the thawing first where it is asked about."""
    lines = parts.cold_lines(plan, day.units)
    if not lines:
        return "No ice is needed: nothing here has to be kept cold."
    is_thawing = "THAW" in groups_of(utterance)
    first = ("Thaw", "Freeze") if is_thawing else ("Bring", "Ice")
    lines.sort(key=lambda line: not line.startswith(first))
    return " ".join(lines)


def cautions(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    """Every caution of the plan, or only those that were asked about."""
    asked = rules_of(words_of(utterance))
    named = [caution for caution in plan.cautions if f"caution.{caution.id}" in asked]
    told = named or plan.cautions
    return "\n".join(f"- {caution.text}" for caution in told) or "Nothing beyond ordinary care."


def allergens(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    """Yes, perhaps or no for what was asked, else all that the dish holds or may hold."""
    asked = [
        name
        for word in hear(utterance).words
        if word.value(("allergen",))
        for name in allergens_of(word.text)
    ]
    told = [_one_allergen(name, plan) for name in dict.fromkeys(asked)]
    if not told:
        diet = _diet(plan, utterance)
        told = [diet] if diet else []
        held = words.joined(plan.allergens)
        told.append(
            f"It holds {held}."
            if held
            else "It holds none of the nine declared allergens, as far as the recipe tells."
        )
        told += [
            f"Read the label of the {row.food}: it may hold {words.joined(row.may_hold, 'or')}."
            for row in plan.check_label
        ]
    return " ".join(told)


def _one_allergen(name: str, plan: Plan) -> str:
    """Yes, perhaps, or no; never a plain no while a label has to be read."""
    if name in plan.allergens:
        foods = [item.name for item in plan.recipe.ingredients if _food_holds(item.name, name)]
        return f"Yes, {name}: {words.joined(foods)}." if foods else f"Yes, it holds {name}."
    doubtful = [row.food for row in plan.check_label if name in row.may_hold]
    if doubtful:
        return f"Perhaps {name}: read the label of the {words.joined(doubtful)}."
    return f"No {name} in the foods as written; whoever must avoid it still reads every label."


def _food_holds(name: str, allergen: str) -> bool:
    food = catalogue().find(name).food
    return food is not None and allergen in food.allergens


class Diet(Struct, frozen=True, kw_only=True):
    """What a diet leaves out: groups of the catalogue, allergens that name animals, words in the names of foods."""

    groups: frozenset[str]
    allergens: frozenset[str]
    named: frozenset[str]


_ANIMALS = frozenset(["red meat", "ground meat", "poultry", "fish", "shellfish", "cured meat"])
_NAMED = frozenset(
    ("lard", "suet", "gelatin", "drippings", "tallow", "anchovy", "anchovies", "beef", "chicken", "bacon", "fish", "worcestershire")
)  # fmt: skip
_DIETS = {
    "vegan": Diet(
        groups=_ANIMALS | {"egg", "dairy"},
        allergens=frozenset(["milk", "egg", "fish", "crustacean shellfish"]),
        named=_NAMED | {"honey"},
    ),
    "vegetarian": Diet(
        groups=_ANIMALS, allergens=frozenset(["fish", "crustacean shellfish"]), named=_NAMED
    ),
}  # fmt: skip


def _diet(plan: Plan, utterance: str) -> str:
    for name, diet in _DIETS.items():
        if name in utterance.lower():
            return _one_diet(name, diet, plan)
    if any(word in utterance.lower() for word in ("celiac", "coeliac")):
        barley = " Barley, rye and oats are not among the nine: look for them too."
        return _one_allergen("wheat", plan) + barley
    return ""


def _one_diet(name: str, diet: Diet, plan: Plan) -> str:
    """No, perhaps, or nothing against it; what a label may hide is named."""
    foods = dict.fromkeys(item.name for item in plan.recipe.ingredients)
    against = [food for food in foods if _is_against(food, diet)]
    if against:
        return f"Not {name}: {words.joined(against)}."
    doubtful = [row.food for row in plan.check_label if diet.allergens & set(row.may_hold)]
    if doubtful:
        return f"Perhaps {name}: read the label of the {words.joined(doubtful)}."
    return f"Nothing in it speaks against {name}, as far as the recipe tells."


def _is_against(name: str, diet: Diet) -> bool:
    food = catalogue().find(name).food
    if diet.named & set(name.split()):
        return True
    return food is not None and (food.group in diet.groups or bool(diet.allergens & set(food.allergens)))
