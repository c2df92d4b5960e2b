"""Parts without headings: titles, counts of people and talk are neither food nor orders."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from assistant.reader.sections import layout
from assistant.reader.servings import servings_of

BARE = """{head}

2 cups flour
1 tsp. dry mustard
3 eggs

{after}Mix the flour and mustard, then beat in the eggs.
Bake for 20 minutes.
"""


def kinds(text: str) -> dict[str, str]:
    return {line.body: line.kind for line in layout(text).lines if line.body}


@pytest.mark.parametrize(
    "title", ["Meat Loaf", "ONE BIG PAN COOKIE", "pasta with lemon and peas", "roast chickens, two"]
)
def test_the_first_line_is_the_title_though_it_names_food(title: str) -> None:
    page = layout(BARE.format(head=title, after=""))
    assert page.title == title
    assert kinds(BARE.format(head=title, after=""))["2 cups flour"] == "ingredient"


def test_a_shortened_unit_ends_no_sentence() -> None:
    """ "1 tsp. dry mustard" the rest is mustard, not the order to dry it."""
    assert kinds(BARE.format(head="Buns", after=""))["1 tsp. dry mustard"] == "ingredient"


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("for 9", 9, 9),
        ("FOR 9 PEOPLE", 9, 9),
        ("9 servings", 9, 9),
        ("serves nine as a side", 9, 9),
        ("For eight or nine people.", 8, 9),
    ],
)
def test_a_count_of_people_is_no_food(line: str, low: int, high: int) -> None:
    text = BARE.format(head=f"Buns\n\n{line}", after="")
    assert kinds(text)[line] != "ingredient"
    servings = servings_of(layout(text))
    assert servings is not None
    assert (low, high) == (servings.low, servings.high)


def test_a_sentence_of_the_method_may_tell_how_many_it_feeds() -> None:
    servings = servings_of(layout(BARE.format(head="Buns", after="") + "Serves nine, with some left.\n"))
    assert servings is not None
    assert servings.low == 9


def test_talk_before_the_list_is_no_food() -> None:
    text = BARE.format(head="Buns\n\nA day ahead you only have to remember one thing: the flour.", after="")
    assert "ingredient" not in {kind for body, kind in kinds(text).items() if body.startswith("A day")}


def test_a_word_over_the_orders_is_a_sub_heading() -> None:
    assert kinds(BARE.format(head="Buns", after="Evening\n"))["Evening"] != "ingredient"


@pytest.mark.parametrize(
    ("line", "of"),
    [("Makes 18", "pieces"), ("Makes 12 rolls", "rolls"), ("Serves 9 hungry paddlers", "servings")],
)
def test_a_yield_counts_pieces_and_servings_count_people(line: str, of: str) -> None:
    servings = servings_of(layout(BARE.format(head=f"Buns\n\n{line}", after="")))
    assert servings is not None
    assert servings.of == of


def test_a_list_that_begins_with_a_bare_food_loses_nothing_to_the_title() -> None:
    recipe = read("eggs\nmilk\n2 lb flour\nbutter\n")
    assert [item.name for item in recipe.ingredients] == ["eggs", "milk", "flour", "butter"]
    assert recipe.title is None


def test_a_name_above_the_amounts_is_still_the_title() -> None:
    recipe = read("River Pancakes\n2 cups flour\n2 eggs\n1 cup milk\nMix and fry in butter.\n")
    assert recipe.title == "River Pancakes"
    assert [item.name for item in recipe.ingredients][:3] == ["flour", "eggs", "milk"]


@pytest.mark.parametrize("line", ["zest of 1 lemon", "Zest and juice of a lime", "- zest of two oranges"])
def test_the_zest_of_a_fruit_is_a_food_and_no_order(line: str) -> None:
    page = layout(BARE.format(head="Buns", after="").replace("3 eggs", f"{line}\n3 eggs"))
    assert {said.body: said.kind for said in page.lines if said.body}[line.lstrip("- ")] == "ingredient"


@pytest.mark.parametrize(
    "line",
    [
        "Finely chop onions and garlic into the pot.",
        "In a large pot, heat olive oil over medium.",
        "Then gently fold in what is left",
        "Slice the onion as thin as you can",
    ],
)
def test_what_stands_before_a_verb_makes_it_no_food(line: str) -> None:
    assert kinds(BARE.format(head="Buns", after=f"{line}\n"))[line] == "step"


@pytest.mark.parametrize(
    "line",
    [
        "8 oz uncooked pasta (spaghetti will work. Any other long noodle you have in the dry box will too.)",
        "1 lb beef shin, or stew meat if you are in town before we leave",
        "Dry oregano",
    ],
)
def test_talk_about_a_food_leaves_it_in_the_list(line: str) -> None:
    assert (
        kinds(BARE.format(head="Buns", after="").replace("3 eggs", f"{line}\n3 eggs"))[line] == "ingredient"
    )


def test_a_figure_at_the_head_of_a_wrapped_line_counts_no_food() -> None:
    wrapped = "25x35 cm sheet) and flatten it with your hands."
    after = f"Roll out the dough and lay it on a large baking sheet (this is enough for a\n{wrapped}\n"
    assert kinds(BARE.format(head="Buns", after=after))[wrapped] == "step"


@pytest.mark.parametrize("line", ["Posted by mudlark, Tue 9:14 pm", "Hi Rowan,", "Dear all,"])
def test_what_stands_over_a_post_is_no_title(line: str) -> None:
    page = layout(BARE.format(head=f"{line}\n\nSandbar Buns", after=""))
    assert page.title == "Sandbar Buns"


def test_a_long_line_with_a_measure_is_a_food() -> None:
    line = "1 large bunch chervil, roughly chopped, plus wedges of lime, sour cream, rice and whatever else we have, to serve"
    assert (
        kinds(BARE.format(head="Buns", after="").replace("3 eggs", f"{line}\n3 eggs"))[line] == "ingredient"
    )
