"""Saved web pages: declared as JSON-LD or microdata, or only visible; the line numbers are those of the page's source."""

from __future__ import annotations

import json
import time

import pytest

from assistant.reader.page import is_page, page
from assistant.reader.read import read

RECIPE = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "River Bannock",
    "recipeYield": ["9", "9 servings"],
    "recipeIngredient": ["3 cups flour", "2 tsp baking powder", "1/2 cup butter"],
    "recipeInstructions": [
        {"@type": "HowToStep", "text": "Mix the flour and baking powder."},
        {"@type": "HowToStep", "text": "Cut in the butter, bake at 400F for 20 minutes."},
    ],
}


def html(head: str = "", body: str = "") -> str:
    return f"<!DOCTYPE html>\n<html>\n<head><title>x</title>{head}</head>\n<body>\n{body}\n</body>\n</html>\n"


def declared(recipe: object) -> str:
    return html(
        f'<script type="application/ld+json">\n{json.dumps(recipe, indent=1)}\n</script>',
        "<p>Buy knives!</p>",
    )


MICRODATA = html(
    body="""<nav>Home</nav>
<div itemscope itemtype="https://schema.org/Recipe">
<h1 itemprop="name">River Bannock</h1>
<span itemprop="recipeYield">9 servings</span>
<ul>
<li itemprop="recipeIngredient">3 cups flour</li>
<li itemprop="recipeIngredient">2 tsp baking powder</li>
<li itemprop="recipeIngredient">1/2 cup butter</li>
</ul>
<ol itemprop="recipeInstructions">
<li>Mix the flour and baking powder.</li>
<li>Cut in the butter, bake at 400F for 20 minutes.</li>
</ol>
</div>"""
)
VISIBLE = html(
    body="""<h1>River Bannock</h1>
<p>Serves 9</p>
<h2>Ingredients</h2>
<ul>
<li>3 cups flour</li>
<li>2 tsp baking powder</li>
<li>1/2 cup butter</li>
</ul>
<h2>Method</h2>
<ol>
<li>Mix the flour and baking powder.</li>
<li>Cut in the butter, bake at 400F for 20 minutes.</li>
</ol>
<script>ignore("me")</script>"""
)


@pytest.mark.parametrize(
    "source",
    [
        declared(RECIPE),
        declared([{"@type": "WebSite"}, RECIPE]),
        declared({"@context": "https://schema.org", "@graph": [{"@type": "WebPage"}, {**RECIPE, "@type": ["Thing", "Recipe"]}]}),
        declared({**RECIPE, "recipeInstructions": "Mix the flour and baking powder.\nCut in the butter, bake at 400F for 20 minutes."}),
        declared({**RECIPE, "recipeInstructions": "<p>Mix the flour and baking powder.</p><p>Cut in the butter, bake at 400F for 20 minutes.</p>"}),
        declared({**RECIPE, "recipeInstructions": [{"@type": "HowToSection", "itemListElement": RECIPE["recipeInstructions"]}]}),
        MICRODATA,
        VISIBLE,
    ],
    ids=["json-ld", "a list", "a graph", "one string", "markup in a string", "sections", "microdata", "visible"],
)  # fmt: skip
def test_one_recipe_reads_the_same_however_the_page_gives_it(source: str) -> None:
    recipe = read(source)
    assert recipe.title == "River Bannock"
    assert recipe.servings is not None
    assert recipe.servings.low == 9
    assert [(i.name, i.amounts[0].low) for i in recipe.ingredients] == [
        ("flour", 3),
        ("baking powder", 2),
        ("butter", 0.5),
    ]
    assert [action.does for step in recipe.steps for action in step.actions] == ["mix", "cut in", "bake"]
    assert recipe.oven is not None
    assert recipe.oven.temp_f == 400
    lines = source.split("\n")
    assert all(ingredient.name in lines[ingredient.line] for ingredient in recipe.ingredients)
    assert [lines[step.line].count("Mix") + lines[step.line].count("Cut") > 0 for step in recipe.steps] == [
        True,
        True,
    ]


def test_named_sections_are_the_parts_of_the_method() -> None:
    sections = [
        {
            "@type": "HowToSection",
            "name": "Dough",
            "itemListElement": [{"@type": "HowToStep", "text": "Mix the flour."}],
        },
        {
            "@type": "HowToSection",
            "name": "Baking",
            "itemListElement": [{"@type": "HowToStep", "text": "Bake it."}],
        },
    ]
    recipe = read(declared({**RECIPE, "recipeInstructions": sections}))
    assert [step.component for step in recipe.steps] == ["dough", "baking"]


def test_further_recipes_of_a_page_are_named() -> None:
    assert read(declared([RECIPE, {**RECIPE, "name": "River Tea"}])).others == ("River Tea",)


@pytest.mark.parametrize(
    ("text", "it_is"),
    [
        (VISIBLE, True),
        ("  <html>", True),
        ("Bread\n\n<b>2 cups</b> flour", False),
        ("flour < sugar", False),
        ("", False),
    ],
)
def test_a_page_is_known_by_its_head(text: str, it_is: bool) -> None:
    assert is_page(text) is it_is


@pytest.mark.parametrize(
    "source",
    [
        html('<script type="application/ld+json">{broken</script>', "<h1>Bun</h1><p>Ingredients</p><p>2 cups flour</p><p>Method</p><p>Bake.</p>"),
        html('<script type="application/ld+json">' + "[" * 50_000 + "</script>", "<h2>Ingredients</h2><li>2 cups flour</li>"),
        html(body="<div>" * 5_000 + "2 cups flour"),
        "<html>",
        "<!doctype html>\x00<body>",
        declared({"@type": "Recipe", "recipeIngredient": {"a": [None, 1.5, {}]}, "recipeInstructions": [[[[[[[["x"]]]]]]]]}),
    ],
    ids=["broken", "deep", "nested", "bare", "zero byte", "odd types"],
)  # fmt: skip
def test_broken_pages_are_read_as_far_as_they_go(source: str) -> None:
    recipe = read(source)
    assert all(0 <= ingredient.line <= source.count("\n") for ingredient in recipe.ingredients)


def test_markup_in_a_food_is_taken_off() -> None:
    assert "- 2 cups flour" in page(declared({**RECIPE, "recipeIngredient": ["<b>2 cups</b> flour"]})).text


def test_a_large_page_is_read_in_a_moment() -> None:
    """Processor time for one megabyte around a recipe, everything loaded [seconds]."""
    read(declared(RECIPE))
    source = declared(RECIPE).replace("<p>Buy knives!</p>", "<p>Buy knives!</p>\n" * 50_000)
    start = time.process_time()
    assert len(read(source).ingredients) == 3
    assert time.process_time() - start < 3.0
