"""From text to recipe: head, times, oven; partial results say so; nothing raises."""

from __future__ import annotations

import time

import pytest

from assistant.reader.read import read
from rules.recipe import Recipe

BASE = """River dish
{head}

Ingredients
- 2 cups flour
- 1 lb chicken thighs
- 2 onions
- 1 cup rice
- 2 tbsp oil
- 1 lb beef
- 2 cups stock
- 2 tsp yeast

Method
1. {step}
"""


def told(step: str, head: str = "") -> Recipe:
    return read(BASE.format(step=step, head=head))


def times(step: str) -> list[tuple[str, float, float]]:
    return [(d.what, d.low_min, d.high_min) for s in told(step).steps for d in s.durations]


@pytest.mark.parametrize(
    ("step", "what", "low", "high"),
    [
        ("Bake for 25 to 30 minutes.", "bake", 25, 30),
        ("Simmer, covered, for 1 hour 15 minutes.", "simmer", 75, 75),
        ("Refrigerate for at least 4 hours or overnight.", "chill", 240, 240),
        ("Marinate the chicken for 2-3 hours in the refrigerator.", "marinate", 120, 180),
        ("Leave the dough to prove for an hour and a half.", "rise", 90, 90),
        ("Let it rest for 10 minutes before slicing.", "rest", 10, 10),
        ("Let it cool for 20 minutes.", "rest", 20, 20),
        ("Fry the onions in the oil for 5 minutes until golden.", "fry", 5, 5),
        ("Cook the chicken 4 minutes per side.", "fry", 4, 4),
        ("Boil the rice for 12 minutes.", "boil", 12, 12),
        ("Bring a pot of water to a boil, add the rice and cook 15 minutes.", "boil", 15, 15),
        ("Pour in the stock, cover and cook on low for 6-8 hours.", "simmer", 360, 480),
        ("Roast in the oven at 220C for 45 min.", "bake", 45, 45),
        ("Knead for 10 minutes.", "other", 10, 10),
        ("Pressure cook on high for 35 minutes.", "other", 35, 35),
        ("Ferment at room temperature for 5-7 days.", "other", 7200, 10080),
        ("Simmer 2-3 minutes before setting aside.", "simmer", 2, 3),
        ("Chill for an hour before serving.", "chill", 60, 60),
        ("Wait 5 minutes.", "rest", 5, 5),
    ],
)
def test_a_stretch_of_time_says_what_it_is_for(step: str, what: str, low: float, high: float) -> None:
    assert times(step) == [(what, low, high)]


@pytest.mark.parametrize(
    "step",
    [
        "Stir every 5 minutes.",
        "Leave it in the fridge overnight.",
        "Add the rice after 4 minutes.",
        "Uncover for the last 10 minutes.",
        "Add the rice 5 minutes before the end.",
        "Cook for a few minutes.",
        "Keeps for up to 3 days in the fridge.",
        "Store in an airtight tin for 2 weeks.",
        "Freeze for up to 3 months.",
        "Cook the pasta 1 minute less than usual.",
        "Do not let it stand longer than 5 minutes.",
    ],
)
def test_intervals_cues_parts_and_keeping_are_no_stretches(step: str) -> None:
    assert times(step) == []


@pytest.mark.parametrize(
    ("step", "temp_f"),
    [
        ("Preheat the oven to 350.", 350),
        ("Preheat oven to 200C/180C fan/gas 6.", 390),
        ("Preheat oven to 175°C / 350°F.", 350),
        ("Preheat your oven to 180 C.", 355),
        ("Heat oven to 160C fan.", 320),
        ("Put in a 350 degree oven for an hour.", 350),
        ("Preheat oven to 475 - 500 degrees F, then reduce to 425 F.", 475),
        ("Bake at 350°F for 25 min, then raise to 400°F.", 350),
        ("Roast the chicken at 400°F until a thermometer reads 165°F.", 400),
        ("Bake 350 for 1 hour.", 350),
        ("Oven at 450F.", 450),
        ("Bake in a moderate oven for 30 minutes.", None),
        ("Bake at gas mark 4 for 30 min.", None),
    ],
)
def test_the_oven_is_what_it_is_heated_to(step: str, temp_f: float | None) -> None:
    oven = told(step).oven
    assert oven is not None
    assert oven.temp_f == temp_f
    assert oven.stated


@pytest.mark.parametrize(
    "step",
    [
        "Heat the oil to 350F. Fry the chicken for 5 minutes.",
        "Cook the chicken until it reaches 165F inside.",
        "Warm the stock to 45C.",
        "Simmer the beef.",
    ],
)
def test_oil_and_the_inside_of_meat_are_no_oven(step: str) -> None:
    assert told(step).oven is None


def test_the_only_figure_may_be_a_fans() -> None:
    oven = told("Heat oven to 160C fan.").oven
    assert oven is not None
    assert oven.fan


@pytest.mark.parametrize(
    ("step", "vessel"),
    [
        ("Bake in a 9x13 in pan at 350F.", "9x13 in pan"),
        ("Pour into a muffin tin and bake at 350F.", "muffin tin"),
        ("Put the pot in the oven at 350F.", "pot"),
        ("Bake at 350F.", None),
    ],
)
def test_what_goes_into_the_oven_is_named(step: str, vessel: str | None) -> None:
    oven = told(step).oven
    assert oven is not None
    assert oven.vessel == vessel


@pytest.mark.parametrize(
    ("head", "low", "high", "of"),
    [
        ("Serves 4-6", 4, 6, "servings"),
        ("🍽️ Servings: 4", 4, 4, "servings"),
        ("Makes 24 cookies", 24, 24, "cookies"),
        ("Yields about 3 dozen cookies", 36, 36, "cookies"),
        ("Servings: Five-dozen buns", 60, 60, "buns"),
        ("For 6 people", 6, 6, "people"),
        ("Servings: a dozen", 12, 12, "servings"),
        ("(serves 2)", 2, 2, "servings"),
        ("Servings: makes 4 large pretzels", 4, 4, "pretzels"),
    ],
)
def test_the_head_says_how_many_it_feeds(head: str, low: float, high: float, of: str) -> None:
    servings = told("Mix.", head).servings
    assert servings is not None
    assert (servings.low, servings.high, servings.of) == (low, high, of)


@pytest.mark.parametrize(
    "head", ["", "Servings: depends", "One serving should be enough.", "Ready in 40 minutes"]
)
def test_no_count_is_made_up(head: str) -> None:
    assert told("Mix.", head).servings is None


def test_a_list_alone_is_an_honest_part_of_a_recipe() -> None:
    recipe = read("2 loaves bread\nmilk\n1 dozen eggs\nonions (3)\nfoil\n")
    assert [i.name for i in recipe.ingredients] == ["bread", "milk", "eggs", "onions"]
    assert recipe.steps == ()
    assert [tool.text for tool in recipe.tools] == ["foil"]
    assert [doubt.taken for doubt in recipe.doubts] == ["no method was found; the list alone was read"]


def test_a_poem_is_no_recipe_and_nothing_of_it_is_lost() -> None:
    verse = "The river turns its silver back\nand leaves us on the stone,\nthe night is long, the kettle black,\nand none of us alone.\n"
    recipe = read(verse)
    assert recipe.ingredients == ()
    assert recipe.steps == ()
    assert recipe.doubts[0].taken == "no recipe was found in this text"


def test_a_recipe_in_one_paragraph_gives_its_foods_and_their_amounts() -> None:
    recipe = read(
        "Riverside Lentils. Take two cups of brown lentils and rinse them. Heat 3 tablespoons of oil in a pot, fry a "
        "chopped onion for 5 minutes, add the lentils and 6 cups of water and simmer for 40 minutes. Serves six."
    )
    assert recipe.title == "Riverside Lentils"
    assert {i.name: i.amounts[0].low for i in recipe.ingredients} == {
        "brown lentils": 2,
        "oil": 3,
        "onion": 1,
        "water": 6,
    }
    assert {i.from_ for i in recipe.ingredients} == {"method"}
    assert recipe.servings is not None
    assert recipe.servings.low == 6


def test_a_second_recipe_is_named_and_left_unread() -> None:
    one = "# Camp Cocoa\n\n## Ingredients\n- 4 cups milk\n\n## Method\n1. Warm the milk.\n\n"
    recipe = read(one + one.replace("Camp Cocoa", "River Tea"))
    assert recipe.others == ("River Tea",)
    assert recipe.unread[0].text == "# River Tea"
    assert recipe.doubts[0].taken == "only the first recipe was read; paste the other by itself"


def test_the_tools_of_a_section_of_their_own_go_to_the_kit() -> None:
    recipe = read(
        "# Bread\n\n## Ingredients\n- 2 cups flour\n\n## Equipment\n- a large bowl\n- scale\n\n## Method\n1. Mix.\n"
    )
    assert [tool.text for tool in recipe.tools] == ["- a large bowl", "- scale"]
    assert [i.name for i in recipe.ingredients] == ["flour"]


@pytest.mark.parametrize(
    "text", ["", " ", "\n", "\x00", "Ingredients", "Method", "Ingredients\n\nMethod\n", "1.", "- ", "½", "((((", "350F", "until until until", "Ingredients\n-\n-\nMethod\n1.\n2."]
)  # fmt: skip
def test_odd_texts_are_read(text: str) -> None:
    assert isinstance(read(text), Recipe)


@pytest.mark.parametrize(
    "unit",
    [
        "1 cup flour\n",
        "Method\n1. Add the flour and bake for 20 minutes at 350F.\n",
        "half of the flour, ",
        "let it simmer until ",
        "1/2 ",
        "350°F for 1 hour ",
        "Serves 4 ",
    ],
)
def test_a_million_characters_are_read_in_a_moment(unit: str) -> None:
    """Linear time, once everything is loaded [seconds of processor time]."""
    read(BASE.format(step="Bake.", head=""))
    text = unit * (1_000_000 // len(unit))
    start = time.process_time()
    read(text)
    assert time.process_time() - start < 3.0


@pytest.mark.parametrize(("figure", "scale"), [("350", "°F"), ("180", "°C")])
def test_a_bare_figure_is_a_doubt_that_says_how_it_was_taken(figure: str, scale: str) -> None:
    recipe = told(f"Preheat the oven to {figure}.")
    assert [doubt.taken for doubt in recipe.doubts] == [f"the oven's {figure} was read as {figure} {scale}"]


@pytest.mark.parametrize(
    "step",
    [
        "Preheat the oven to 160C fan (180C / gas 4).",
        "Heat oven to 180C/fan 160C.",
        "Heat oven to 180C (160C fan).",
    ],
)
def test_of_a_still_and_a_fan_oven_the_still_one_counts(step: str) -> None:
    oven = told(step).oven
    assert oven is not None
    assert (oven.temp_f, oven.fan) == (355, False)


def test_people_count_before_pans() -> None:
    text = "Cornbread\n\nThis makes one 9 inch pan, serves about 8.\n\nIngredients\n\n1 cup cornmeal\n\nMethod\n\n1. Bake it.\n"
    servings = read(text).servings
    assert servings is not None
    assert servings.low == 8


def test_a_pound_and_a_half_is_told_in_one_breath() -> None:
    beef = read("Take a pound and a half of stewing beef and brown it in your iron pot.").ingredients[0]
    assert (beef.name, beef.amounts[0].low, beef.amounts[0].unit) == ("stewing beef", 1.5, "pound")


def test_frying_in_deep_fat_is_deep_frying() -> None:
    assert [
        action.does
        for step in told("Fry in deep hot lard, about 3 minutes.").steps
        for action in step.actions
    ] == ["deep fry"]
