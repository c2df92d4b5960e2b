"""Small recipes for the tests of the stages, built as the reader would build them."""

from __future__ import annotations

from collections.abc import Sequence

from rules.because import Ledger
from rules.circumstances import Day
from rules.coals.course import course
from rules.coals.drafts import Draft
from rules.coals.stages import plan_heat
from rules.dish import Dish
from rules.foods import Item, catalogue, weigh
from rules.method import graph
from rules.plan import Heat, PotPlan
from rules.recipe import Action, Amount, Duration, Ingredient, Oven, Recipe, Step, Use

TWELVE = PotPlan(diameter_in=12, quarts=6)


def action(
    does: str, word: str | None = None, *uses: int, minutes: tuple[float, float] | None = None, **more
) -> Action:
    """A deed; its minutes get the kind of time that the deed is."""
    what = {
        "saute": "fry",
        "brown": "fry",
        "deep fry": "fry",
        "griddle": "fry",
        "roast": "bake",
        "heat": "other",
    }
    kind = what.get(does, does if does in ("bake", "simmer", "fry", "boil", "rise", "rest") else "other")
    time = Duration(what=more.pop("what", kind), low_min=minutes[0], high_min=minutes[1]) if minutes else None
    taken = tuple(Use(ingredient=use) for use in uses)
    return Action(does=does, word=word or does, uses=taken, minutes=time, **more)


def step(
    *actions: Action, text: str = "", temps: tuple[float, ...] = (), times: Sequence[Duration] = ()
) -> Step:
    """A step that takes what its actions take, with their times and `times` more."""
    uses = tuple(dict.fromkeys(use.ingredient for each in actions for use in each.uses))
    told = tuple(each.minutes for each in actions if each.minutes)
    return Step(line=0, text=text, uses=uses, temps_f=temps, durations=(*told, *times), actions=actions)


def recipe(
    foods: dict[str, tuple[float, str | None]], *steps: Step, oven: Oven | None = None, title: str = ""
) -> Recipe:
    """A recipe with foods of the catalogue (name: amount and unit) and its steps."""
    known = catalogue()
    ingredients = []
    for line, (name, (number, unit)) in enumerate(foods.items()):
        food = known.find(name).food
        amount = Amount(low=number, high=number, unit=unit)
        ingredients.append(
            Ingredient(line=line, text=name, name=name, food=food.name if food else None, amounts=(amount,))
        )
    return Recipe(title=title or None, ingredients=tuple(ingredients), steps=steps, oven=oven)


def items_of(made: Recipe) -> tuple[Item, ...]:
    return weigh(made)


def drafts(
    made: Recipe,
    family: str,
    day: Day | None = None,
    fat: Sequence = (),
    ledger: Ledger | None = None,
    **dish,
) -> tuple[Draft, ...]:
    """The stages of a recipe run as that family, without coals."""
    return course(made, weigh(made), Dish(family=family, **dish), fat, day or Day(), ledger or Ledger())


def heat(
    made: Recipe,
    family: str,
    day: Day | None = None,
    pot: PotPlan | None = TWELVE,
    fat: Sequence = (),
    ledger: Ledger | None = None,
    **dish,
) -> tuple[Heat | None, str | None]:
    """The coal plan of a recipe run as that family."""
    return plan_heat(
        made,
        weigh(made),
        graph(made),
        Dish(family=family, **dish),
        pot,
        fat,
        day or Day(),
        ledger or Ledger(),
    )


def kinds(stages: Sequence) -> list[str]:
    return [stage.kind for stage in stages]


STEW = recipe(
    {"beef chuck": (3, "pound"), "onion": (2, None), "oil": (2, "tablespoon"), "water": (1, "quart")},
    step(action("heat", "heat", 2), action("brown", "brown", 0)),
    step(action("saute", "cook", 1, minutes=(5, 8))),
    step(action("boil", "bring", 3), action("simmer", "simmer", minutes=(120, 150))),
)
CAKE = recipe(
    {
        "flour": (2, "cup"),
        "sugar": (1, "cup"),
        "milk": (1, "cup"),
        "butter": (1, "stick"),
        "baking powder": (2, "teaspoon"),
    },
    step(action("preheat", "heat", vessel="oven", temp_f=350.0), temps=(350.0,)),
    step(action("melt", "melt", 3), action("mix", "stir", 0, 1, 2, 4, makes="batter")),
    step(action("bake", "bake", minutes=(30, 35))),
    oven=Oven(temp_f=350.0, stated="350 degrees"),
)
