"""Which line is what, in the layouts that people paste."""

from __future__ import annotations

import time

import pytest

from assistant.reader.sections import LONGEST_LINE, MOST_LINES, Layout, layout


def kinds(text: str) -> list[tuple[str, str]]:
    return [(line.kind, line.body) for line in layout(text).lines if line.body]


def of_kind(text: str, kind: str) -> list[str]:
    return [body for found, body in kinds(text) if found == kind]


RECIPE = (
    "River Bannock\n\n{list}\n2 cups flour\n1 tsp salt\n\n{method}\n1. Mix the flour and salt.\n2. Bake it.\n"
)


@pytest.mark.parametrize(
    "heading",
    [
        "Ingredients",
        "INGREDIENTS:",
        "## Ingredients",
        "**What you need**",
        "You will need:",
        "Shopping list",
        "What goes in",
    ],
)
def test_the_list_opens_under_any_usual_heading(heading: str) -> None:
    assert of_kind(RECIPE.format(list=heading, method="Method"), "ingredient") == [
        "2 cups flour",
        "1 tsp salt",
    ]


@pytest.mark.parametrize(
    "heading",
    [
        "Method",
        "DIRECTIONS",
        "## Instructions",
        "Preparation:",
        "How to make it",
        "**Steps**",
        "Cooking Directions (90 min)",
    ],
)
def test_the_method_opens_under_any_usual_heading(heading: str) -> None:
    text = RECIPE.format(list="Ingredients", method=heading)
    assert of_kind(text, "step") == ["Mix the flour and salt.", "Bake it."]


def test_every_line_is_kept_with_its_number() -> None:
    text = RECIPE.format(list="Ingredients", method="Method")
    assert [line.number for line in layout(text).lines] == list(range(text.count("\n") + 1))


@pytest.mark.parametrize(
    ("text", "title"),
    [
        ("# River Bannock\n\nText.\n", "River Bannock"),
        ('---\ntitle: "River Bannock"\ndate: 2020-01-01\n---\n\n## Ingredients\n- flour\n', "River Bannock"),
        ("Subject: River Bannock\n\nIngredients\nflour\n", "River Bannock"),
        ("RIVER BANNOCK\nServes 4\n\nIngredients\nflour\n", "RIVER BANNOCK"),
        ("Ingredients\nflour\n\nMethod\n1. Mix.\n", None),
    ],
)
def test_the_title_is_found_where_there_is_one(text: str, title: str | None) -> None:
    assert layout(text).title == title


def components(text: str) -> dict[str, str | None]:
    return {line.body: line.component for line in layout(text).lines if line.kind == "ingredient"}


@pytest.mark.parametrize(
    ("heading", "name"),
    [
        ("For the sauce:", "sauce"),
        ("### Sauce", "sauce"),
        ("**Sauce**", "sauce"),
        ("SAUCE", "sauce"),
        ("Sauce for the Buns", "sauce for the buns"),
        ("- sauce\n    - 1 cup cream", "sauce"),
        ("Sauce ingredients:", "sauce"),
    ],
)
def test_a_sub_heading_names_the_part_below_it(heading: str, name: str) -> None:
    nested = "\n" in heading
    item = "    - 2 onions" if nested else "- 2 onions"
    text = f"## Ingredients\n\n- 3 eggs\n\n{heading}\n{item}\n\n## Method\n\n1. Mix.\n"
    found = components(text)
    assert found["3 eggs"] is None
    assert found["2 onions"] == name


def test_a_bare_word_over_amounts_is_a_sub_heading_and_a_food_alone_is_none() -> None:
    text = "Ingredients\n\n2 eggs\n\nsalt\n\nGlaze\n1 cup sugar\n2 tbsp milk\n\nMethod\n1. Mix.\n"
    assert components(text) == {"2 eggs": None, "salt": None, "1 cup sugar": "glaze", "2 tbsp milk": "glaze"}


def test_items_set_in_belong_to_the_item_above_and_no_further() -> None:
    text = "## Ingredients\n\n- toppings:\n    - nuts\n    - raisins\n- 2 eggs\n\n## Method\n\n1. Mix.\n"
    assert components(text) == {"nuts": "toppings", "raisins": "toppings", "2 eggs": None}


def test_a_wrapped_item_is_one_item() -> None:
    text = "## Ingredients\n\n- 2 cups flour, sifted twice\n  and weighed\n- 1 egg\n\n## Method\n\n1. Mix.\n"
    assert of_kind(text, "ingredient") == ["2 cups flour, sifted twice", "1 egg"]
    assert of_kind(text, "more") == ["and weighed"]


def test_remarks_in_the_list_are_no_food() -> None:
    text = (
        "## Ingredients\n(for 12 buns)\n\n- 2 cups flour\n- 1 egg\n\n"
        "Feel free to change these amounts, nothing here is strict at all.\n\n## Method\n\n1. Mix.\n"
    )
    assert of_kind(text, "ingredient") == ["2 cups flour", "1 egg"]


def test_a_table_of_foods_is_a_list() -> None:
    text = "## Ingredients\n\n| Ingredient | Amount |\n|---|---|\n| Flour | 2 cups |\n| Salt | 1 tsp |\n\n## Method\n\n1. Mix.\n"
    assert of_kind(text, "ingredient") == ["Flour 2 cups", "Salt 1 tsp"]


METHOD = "## Ingredients\n\n- 2 cups flour\n\n## Directions\n\n{}"


def test_numbered_lines_are_steps_whatever_they_say() -> None:
    assert of_kind(METHOD.format("1. You'll know it is done.\n2. Enjoy.\n"), "step") == [
        "You'll know it is done.",
        "Enjoy.",
    ]


def test_what_goes_on_below_a_step_is_a_step() -> None:
    lines = [
        line
        for line in layout(METHOD.format("1. Mix the flour\nwith water.\n2. Bake.\n")).lines
        if line.kind == "step"
    ]
    assert [(line.body, line.fresh) for line in lines] == [
        ("Mix the flour", True),
        ("with water.", False),
        ("Bake.", True),
    ]


def test_after_the_list_of_steps_only_what_asks_for_something_is_one() -> None:
    text = METHOD.format(
        "1. Bake it.\n\nServe while hot.\n\nEnjoy your buns!\n\nYou may also eat them cold, as my aunt does.\n\nDo not freeze.\n"
    )
    assert of_kind(text, "step") == ["Bake it.", "Serve while hot.", "Do not freeze."]


def test_bullets_after_a_numbered_list_have_to_ask_for_something() -> None:
    text = METHOD.format("1. Bake it.\n\n* Heat the oven beforehand.\n* If it is too short, it stays raw.\n")
    assert of_kind(text, "step") == ["Bake it.", "Heat the oven beforehand."]


def test_what_is_set_in_under_a_step_belongs_to_it() -> None:
    text = METHOD.format("1. Mix the dough.\n\n   It should be soft.\n\n2. Bake.\n\n   - about an hour\n")
    assert of_kind(text, "step") == ["Mix the dough.", "It should be soft.", "Bake.", "about an hour"]


def test_pictures_and_other_sections_are_no_steps() -> None:
    text = METHOD.format(
        "1. Bake.\n![bun](bun.jpg)\n2. Cool.\n\n## Story\n\nStir up memories. Add a friend.\n"
    )
    assert of_kind(text, "step") == ["Bake.", "Cool."]


def test_a_question_as_heading_ends_the_method() -> None:
    text = METHOD.format("1. Bake.\n\n### How long does it keep?\n\nIt keeps for days in a tin.\n")
    assert of_kind(text, "step") == ["Bake."]


def test_headings_inside_the_method_name_its_parts() -> None:
    text = METHOD.format("### Dough\n\nMix it all.\n\n### Step 2: Filling\n\n1. Chop the nuts.\n")
    found = {line.body: line.component for line in layout(text).lines if line.kind == "step"}
    assert found == {"Mix it all.": "dough", "Chop the nuts.": "filling"}


def test_lines_with_their_heading_on_them_keep_the_rest() -> None:
    text = "Ingredients: 2 cups flour\nMethod: Mix it well. Bake.\n"
    assert kinds(text) == [("ingredient", "2 cups flour"), ("step", "Mix it well. Bake.")]


def test_a_letter_around_a_quoted_recipe_says_nothing_of_it() -> None:
    quoted = "\n".join("> " + line for line in RECIPE.format(list="Ingredients", method="Method").split("\n"))
    text = f"Here is what I promised you:\n\n{quoted}\n\nBring the big pot. Add it to your list.\n"
    assert of_kind(text, "step") == ["Mix the flour and salt.", "Bake it."]
    assert layout(text).title == "River Bannock"


def test_of_two_recipes_the_first_is_read_and_the_other_named() -> None:
    one = "# Camp Cocoa\n\nServes 4\n\n## Ingredients\n- 4 cups milk\n\n## Method\n1. Warm the milk.\n\n"
    page = layout(one + one.replace("Camp Cocoa", "River Tea"))
    assert page.title == "Camp Cocoa"
    assert page.others == ("River Tea",)
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["4 cups milk"]
    assert page.beyond[0].text == "# River Tea"


def test_parts_with_lists_of_their_own_are_one_recipe() -> None:
    text = (
        "# Pie\n\n## For the dough\n\n### Ingredients\n- 2 cups flour\n\n### Method\n1. Mix it.\n\n"
        "## For the filling\n\n### Ingredients\n- 4 apples\n\n### Method\n1. Slice the apples.\n"
    )
    page = layout(text)
    assert page.others == ()
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["2 cups flour", "4 apples"]


def test_carriage_returns_belong_to_the_line_break() -> None:
    text = RECIPE.format(list="Ingredients", method="Method")
    assert kinds(text.replace("\n", "\r\n")) == kinds(text)


def lines_of(page: Layout) -> int:
    return len(page.lines) + len(page.beyond)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\n\n\n",
        "a",
        "---\n",
        "---\ntitle: x\n",
        "> > >",
        "# \n## \n",
        "|||\n|-|",
        "1.\n2.\n",
        "\x00\x07\ufeff",
    ],
)
def test_odd_texts_are_laid_out(text: str) -> None:
    assert len(layout(text).lines) == text.removeprefix("\ufeff").count("\n") + 1


def test_a_text_longer_than_any_recipe_is_left_unread_and_not_lost() -> None:
    text = "1 cup flour\n" * (MOST_LINES + 500)
    page = layout(text)
    assert len(page.lines) == MOST_LINES
    assert lines_of(page) == MOST_LINES + 500
    assert layout("x" * (LONGEST_LINE + 1)).beyond[0].number == 0


@pytest.mark.parametrize(
    "step",
    ["1. In a bowl, mix the dry\n   ingredients: flour,\n   salt.", "1. Add the remaining\ningredients."],
)
def test_the_wrapped_end_of_a_sentence_opens_no_list(step: str) -> None:
    page = layout(
        RECIPE.format(list="Ingredients", method="Method").partition("1.")[0] + step + "\n2. Bake.\n"
    )
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["2 cups flour", "1 tsp salt"]


def test_a_line_longer_than_any_is_cut_and_the_recipe_under_it_is_read() -> None:
    page = layout("blah " * LONGEST_LINE + "\n" + RECIPE.format(list="Ingredients", method="Method"))
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["2 cups flour", "1 tsp salt"]
    assert [(line.number, len(line.text)) for line in page.beyond] == [(0, 4 * LONGEST_LINE)]


def test_a_picture_inside_the_text_hides_nothing_of_the_recipe() -> None:
    picture = f"![squares](data:image/png;base64,{'iVBORw0KGgo' * 5_000}=)"
    page = layout(f"{picture}\n\n{RECIPE.format(list='Ingredients', method='Method')}\n{picture}\n")
    assert page.title == "River Bannock"
    assert [line.body for line in page.lines if line.kind == "step"] == [
        "Mix the flour and salt.",
        "Bake it.",
    ]
    assert page.beyond == ()


@pytest.mark.parametrize(
    "unit", ["a\n", "1 cup flour\n", "((((", "# \n", "- salt\n", "> ", "🍳", "1. Mix until done.\n"]
)
def test_a_million_characters_are_laid_out_in_a_moment(unit: str) -> None:
    """Linear time: what is not read costs next to nothing [seconds of processor time]."""
    text = unit * (1_000_000 // len(unit))
    start = time.process_time()
    layout(text)
    assert time.process_time() - start < 3.0


@pytest.mark.parametrize("heading", ["For cooking:", "### Assembly", "Baking:", "### To serve"])
def test_a_part_of_the_list_may_be_called_like_a_part_of_the_work(heading: str) -> None:
    text = f"## Ingredients\n\n- 3 eggs\n\n{heading}\n- 2 tbsp oil\n\n## Method\n\n1. Mix.\n"
    found = components(text)
    assert list(found) == ["3 eggs", "2 tbsp oil"]
    assert found["2 tbsp oil"]


def test_a_sentence_that_opens_with_tip_is_no_tip() -> None:
    text = RECIPE.format(list="Ingredients", method="Method").partition("1.")[0]
    page = layout(f"{text}Mix it.\n\nTip dough into the hot pot and bake it.\n\nTip: use a hot pot.\n")
    assert {line.body: line.kind for line in page.lines if line.body.startswith("Tip")} == {
        "Tip dough into the hot pot and bake it.": "step",
        "Tip: use a hot pot.": "note",
    }


@pytest.mark.parametrize(
    "heading", ["Zutaten / Ingredients", "Ingredients | Ingr\u00e9dients", "Zutaten / Ingredients (9 people)"]
)
def test_a_heading_in_two_languages_opens_the_list(heading: str) -> None:
    page = layout(RECIPE.format(list=heading, method="Zubereitung / Method"))
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["2 cups flour", "1 tsp salt"]
    assert [line.body for line in page.lines if line.kind == "step"] == [
        "Mix the flour and salt.",
        "Bake it.",
    ]


@pytest.mark.parametrize("fact", ["Prep: 10 min", "Cooking: about 1 1/2 hours", "Prep: 10 min | Serves 4"])
def test_a_time_behind_a_heading_word_opens_no_method(fact: str) -> None:
    page = layout(RECIPE.format(list=f"{fact}\n\nIngredients", method="Method"))
    assert page.title == "River Bannock"
    assert [line.body for line in page.lines if line.kind == "ingredient"] == ["2 cups flour", "1 tsp salt"]


TWO = """Potato Pot

2 lb potatoes
1/2 cup butter

Boil the potatoes in salted water for 20 minutes and add the butter.

Bean Pot

2 cans beans
1 onion

Fry the onion and add the beans.
"""


@pytest.mark.parametrize(
    "text", [TWO, TWO.replace("Potato Pot", "POTATO POT").replace("Bean Pot\n", "BEAN POT")]
)
def test_a_title_over_a_second_list_opens_another_recipe_where_nothing_has_headings(text: str) -> None:
    page = layout(text)
    assert [line.body for line in page.lines if line.kind == "ingredient"] == [
        "2 lb potatoes",
        "1/2 cup butter",
    ]
    assert [title.lower() for title in page.others] == ["bean pot"]


def test_a_part_after_the_method_is_no_other_recipe() -> None:
    page = layout(TWO.replace("Bean Pot", "Crumb topping"))
    assert page.others == ()
    assert "2 cans beans" in [line.body for line in page.lines if line.kind == "ingredient"]


@pytest.mark.parametrize(
    ("written", "title"),
    [
        ("Doughnuts - Grandma K.", "Doughnuts - Grandma K."),
        ("Lasagne     Serves 8     Oven 180C", "Lasagne"),
        ("1. Apple Burgers", "Apple Burgers"),
        ("Two for the weekend!\n\nAPPLE BURGERS", "APPLE BURGERS"),
    ],
)
def test_a_title_is_known_by_its_place(written: str, title: str) -> None:
    assert (
        layout(f"{written}\n\n2 lb potatoes\n1 onion\n\na) Fry the onion.\nb) Add the potatoes.\n").title
        == title
    )


def test_buttons_of_a_page_are_no_part_of_the_dish() -> None:
    page = layout(RECIPE.format(list="Ingredients\n\nUS Customary  Metric\n1x 2x 3x", method="Method"))
    assert [(line.body, line.component) for line in page.lines if line.kind == "ingredient"] == [
        ("2 cups flour", None),
        ("1 tsp salt", None),
    ]


def test_two_columns_of_foods_are_two_foods() -> None:
    from assistant.reader.read import read

    text = "Pot\n\nIngredients\n\n500 g mince            60 g butter\n1 onion, chopped       800 ml milk\n\nMethod\n\n1. Fry all.\n"
    assert [item.name for item in read(text).ingredients] == ["mince", "butter", "onion", "milk"]
