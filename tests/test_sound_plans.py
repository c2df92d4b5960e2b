"""Every plan of the corpus is read as an experienced camp cook reads it, and every way to spoil one is noticed.

The checks stand in `tests/sound.py`. A plan is spoilt below in one place at a time: the check that guards the place
must complain, and only about that plan.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

import pytest
from msgspec.structs import replace

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp
from rules.plan import Pack, Plan
from tests.gold import slugs, text
from tests.sound import complaints

SLUGS = slugs()
#: Days that change where things travel: no freezer, a long way, a short one.
DAYS = (Day(), Day(freezer=False, trip_hours=6), Day(trip_hours=40, people=9))


@cache
def plan(slug: str, day: int = 0) -> Plan:
    return camp(read(text(slug), file=f"{slug}.txt"), DAYS[day])


@pytest.mark.parametrize("day", range(len(DAYS)))
@pytest.mark.parametrize("slug", SLUGS)
def test_an_experienced_cook_has_nothing_to_complain_of(slug: str, day: int) -> None:
    assert complaints(plan(slug, day)) == []


def spoilt(of: Plan, change: Callable[[str], str]) -> Plan:
    """The plan with its camp steps changed."""
    return replace(of, camp_steps=tuple(change(step) for step in of.camp_steps))


def moved(of: Plan, food: str, into: str) -> Plan:
    """The plan with an ingredient put into another pack, out of its own."""
    index = next(n for n, one in enumerate(of.recipe.ingredients) if food in one.name)
    item = next(item for pack in of.packs for item in pack.items if item.ingredient == index)

    def changed(pack: Pack) -> Pack:
        items = tuple(one for one in pack.items if one.ingredient != index)
        return replace(pack, items=(*items, item) if pack.id == into else items)

    return replace(of, packs=tuple(pack for pack in map(changed, of.packs) if pack.items))


def holder(of: Plan, food: str) -> str:
    """The id of the pack that holds a food."""
    return next(
        pack.id
        for pack in of.packs
        for item in pack.items
        if food in of.recipe.ingredients[item.ingredient].name
    )


COBBLER, STEW, SKEWERS = "river-peach-cobbler", "river-beef-stew", "river-chicken-skewers"

SPOILT: dict[str, Callable[[], tuple[Plan, str]]] = {
    "a dry mix that is never opened": lambda: (
        spoilt(plan(COBBLER), lambda step: step.replace("the dry mix (dry-1)", "everything")),
        "is opened 0 times",
    ),
    "a bag that is opened twice": lambda: (
        spoilt(plan(STEW), lambda step: step.replace("Add the carrots", "Take the onions (prepped-2). Add the carrots")),
        "is opened 2 times",
    ),
    "milk that is left in the cooler": lambda: (
        spoilt(plan(COBBLER), lambda step: re.sub(r"milk", "love", step)),
        "is never taken out",
    ),
    "a dry mix after the bake": lambda: (
        spoilt(
            replace(plan(COBBLER), camp_steps=(*plan(COBBLER).camp_steps, "Add the dry mix (dry-1).", "Eat.")),
            lambda step: step if step.startswith("Add the dry") else step.replace("(dry-1)", ""),
        ),
        "is opened after the heat",
    ),
    "a batter before its flour": lambda: (
        spoilt(plan(COBBLER), lambda step: "Beat the batter. " + step if "(dry-1)" in step else step),
        "is spoken of before dry-1 is opened",
    ),
    "leavener in the milk": lambda: (
        moved(plan("river-oat-griddlecakes"), "buttermilk", holder(plan("river-oat-griddlecakes"), "baking powder")),
        "wets its leavener at home",
    ),
    "sour cream beside raw turkey": lambda: (
        moved(plan("river-tortilla-stack"), "sour cream", holder(plan("river-tortilla-stack"), "ground turkey")),
        "sour cream is eaten raw and rides with raw meat",
    ),
    "raw meat on the shelf": lambda: (
        replace(
            plan(STEW),
            packs=tuple(
                replace(pack, travels="shelf") if pack.id == holder(plan(STEW), "beef chuck") else pack
                for pack in plan(STEW).packs
            ),
        ),
        "carries raw meat without cooling",
    ),
    "onions cut at camp": lambda: (
        spoilt(plan(STEW), lambda step: step.replace("Pour in the wine", "Chop the onions. Pour in the wine")),
        "at camp still: Chop onion",
    ),
    "butter creamed at camp": lambda: (
        spoilt(plan("river-pan-cookie"), lambda step: step.replace("BEAT IN", "Cream the butter and BEAT IN")),
        "at camp still: Cream butter",
    ),
    "a marinade overnight at camp": lambda: (
        spoilt(plan(SKEWERS), lambda step: step.replace("Get the grill hot", "Marinate it overnight")),
        "at camp still: Marinate it overnight",
    ),
    "an oven at camp": lambda: (
        spoilt(plan(COBBLER), lambda step: step.replace("Bake for", "Preheat the oven and bake for")),
        "no oven at camp",
    ),
}  # fmt: skip


@pytest.mark.parametrize("how", sorted(SPOILT))
def test_a_spoilt_plan_is_noticed(how: str) -> None:
    of, told = SPOILT[how]()
    found = complaints(of)
    assert found
    assert any(told in complaint for complaint in found), found


OPEN = {
    "no amounts": """River hash

potatoes, cubed
onion
corned beef
butter
salt, pepper
eggs

Fry the potatoes and onion in butter. Add corned beef and cook till crisp. Make wells, crack in the eggs and cover till set.
""",
    "amounts only in the method": """River goulash

Brown 2 pounds of ground venison with 2 chopped onions in a little oil. Add a tablespoon of paprika, a teaspoon of caraway
and 3 cloves of garlic, chopped. Stir in a 28-ounce can of crushed tomatoes and 3 cups of beef broth. Bring to a boil, then add
2 cups of elbow macaroni and simmer for 15 minutes until the pasta is tender. Stir in half a cup of sour cream and serve.
""",
    "half of the foods unknown": """River glimmerwort stew

2 cups glimmerwort, shredded
1 lb snorkfish fillets
3 tbsp borgle paste
1 quart mirthwater
2 cups flour
1 tsp baking powder
1/2 cup plonk

Simmer glimmerwort and borgle paste in mirthwater for 20 minutes. Mix flour, baking powder and plonk to a dough and drop by
spoonfuls on the stew. Add snorkfish, cover and cook 15 minutes.
""",
    "a list alone": "River beans\n\n2 cans beans\n1 onion\n1 cup broth\nsalt\n",
    "a method alone": "River flat bread\n\nMix flour, water and salt to a dough. Fry in a little oil until brown.\n",
}


@pytest.mark.parametrize("which", sorted(OPEN))
def test_a_text_that_leaves_much_open_still_gives_a_sound_plan_with_questions(which: str) -> None:
    of = camp(read(OPEN[which]), Day())
    assert complaints(of) == []
    assert of.packs
    assert len(of.camp_steps) > 1
    assert of.questions
    assert all(question.text and question.default for question in of.questions)


def test_unknown_foods_are_asked_about_and_raw_fish_is_guessed_cold() -> None:
    of = camp(read(OPEN["half of the foods unknown"]), Day())
    asked = " ".join(question.text for question in of.questions)
    for food in ("glimmerwort", "borgle paste", "mirthwater", "plonk"):
        assert food in asked
    fish = next(pack for pack in of.packs if pack.id == holder(of, "snorkfish"))
    assert fish.travels in ("cool", "frozen")
    assert len(fish.items) == 1


def test_nothing_is_measured_that_the_text_does_not_measure() -> None:
    """No amount is invented: a food without one is packed without one."""
    of = camp(read(OPEN["no amounts"]), Day())
    assert all(item.amount is None for pack in of.packs for item in pack.items)
