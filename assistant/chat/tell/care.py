"""Cold food, dangers, allergens and diets: never a plain no while a label has to be read."""

from __future__ import annotations

from assistant.chat.acts import Meant
from assistant.chat.lexicon import hear
from assistant.chat.tell.question import groups_of
from assistant.chat.values import allergens_of
from assistant.show import parts, words
from rules.circumstances import Day
from rules.foods import catalogue
from rules.plan import Plan


def cold(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """The ice first, or the thawing first where it is asked about."""
    lines = parts.cold_lines(plan, day.units)
    if not lines:
        return "No ice is needed: nothing here has to be kept cold."
    is_thawing = "THAW" in groups_of(utterance)
    first = ("Thaw", "Freeze") if is_thawing else ("Bring", "Ice")
    lines.sort(key=lambda line: not line.startswith(first))
    return " ".join(lines)


def cautions(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    """Every caution of the plan."""
    return "\n".join(f"- {caution.text}" for caution in plan.cautions) or "Nothing beyond ordinary care."


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


#: Groups of the food catalogue that a diet leaves out.
_DIETS = {
    "vegan": ("red meat", "ground meat", "poultry", "fish", "shellfish", "cured meat", "egg", "dairy"),
    "vegetarian": ("red meat", "ground meat", "poultry", "fish", "shellfish", "cured meat"),
}


def _diet(plan: Plan, utterance: str) -> str:
    for diet, groups in _DIETS.items():
        if diet in utterance.lower():
            against = [item.name for item in plan.recipe.ingredients if _group(item.name) in groups]
            if against:
                return f"Not {diet}: {words.joined(list(dict.fromkeys(against)))}."
            return f"Nothing in it speaks against a {diet}, as far as the recipe tells."
    if any(word in utterance.lower() for word in ("celiac", "coeliac")):
        return (
            _one_allergen("wheat", plan) + " Barley, rye and oats are not among the nine: look for them too."
        )
    return ""


def _group(name: str) -> str:
    food = catalogue().find(name).food
    return food.group if food else ""
