"""One recipe in many layouts reads the same: a metamorphic check, the recipe is our own."""

from __future__ import annotations

import textwrap
from collections.abc import Callable

import pytest

from assistant.reader.read import read
from rules.recipe import Recipe

TITLE = "Sandbar Onion Squares"
SERVES = "Serves 9"
PARTS = {
    "dough": [
        "3 cups all-purpose flour",
        "4 teaspoons baking powder",
        "1 teaspoon salt",
        "1/2 cup cold butter, cubed",
        "1 1/4 cups milk",
    ],
    "topping": ["2 onions, sliced", "2 tablespoons olive oil", "1/4 cup grated cheddar"],
}
STEPS = [
    "Preheat the oven to 425°F and grease a 9x13-inch pan.",
    "Heat the oil in a skillet and fry the onions for 10 minutes until soft.",
    "In a large bowl, whisk the flour, baking powder and salt, then cut in the butter.",
    "Stir in the milk until a soft dough forms.",
    "Pat the dough into the pan and scatter the onions and the cheddar over it.",
    "Bake for 20 to 25 minutes, until golden.",
]


def parts(heading: Callable[[str], str], item: Callable[[str], str]) -> str:
    return "\n\n".join("\n".join([heading(name), *map(item, foods)]) for name, foods in PARTS.items())


def numbered(step: Callable[[int, str], str]) -> str:
    return "\n".join(step(number, text) for number, text in enumerate(STEPS, start=1))


def plain() -> str:
    return f"{TITLE}\n\n{SERVES}\n\nIngredients\n\n{parts('For the {}:'.format, str)}\n\nMethod\n\n{numbered('{}. {}'.format)}\n"


def markdown() -> str:
    return f"# {TITLE}\n\n**{SERVES}**\n\n## Ingredients\n\n{parts('### {}'.format, '- {}'.format)}\n\n## Directions\n\n{numbered('{}. {}'.format)}\n"


def front_matter() -> str:
    return f'---\ntitle: "{TITLE}"\ntags: [supper]\n---\n\n- 🍽️ Servings: 9\n\n## Ingredients\n\n{parts("### {}".format, "* {}".format)}\n\n## Directions\n\n{numbered("{}. {}".format)}\n'


def capitals() -> str:
    return f"{TITLE.upper()}\n{SERVES}\n\nINGREDIENTS:\n\n{parts(lambda name: name.upper() + ':', '• {}'.format)}\n\nDIRECTIONS:\n\n{numbered('{}) {}'.format)}\n"


def other_words() -> str:
    return f"{TITLE}\n\n{SERVES}\n\nWhat you need\n\n{parts('{}:'.format, '– {}'.format)}\n\nHow to make it\n\n{chr(10).join('• ' + step for step in STEPS)}\n"


def bold_and_boxes() -> str:
    return f"**{TITLE}**\n\n{SERVES}\n\n**You will need:**\n\n{parts('**For the {}**'.format, '- [ ] {}'.format)}\n\n**Steps:**\n\n{numbered('**Step {}:** {}'.format)}\n"


def no_headings() -> str:
    return f"{TITLE}\n\n{SERVES}\n\n{parts('{}:'.format, str)}\n\n{chr(10).join(STEPS)}\n"


def list_last() -> str:
    return f"{TITLE}\n\n{SERVES}\n\nMethod\n\n{numbered('{}. {}'.format)}\n\nIngredients\n\n{parts('For the {}:'.format, '- {}'.format)}\n"


def quoted() -> str:
    body = "\n".join(f"> {line}".rstrip() for line in plain().split("\n"))
    return f"Hello all, this is what I meant for the second evening:\n\n{body}\n\nSee you at the put-in. Bring the big pot this time.\n"


def wrapped() -> str:
    return "\n".join(
        textwrap.fill(line, width=46, subsequent_indent="   ")
        if line[:1].isdigit() and ". " in line[:4]
        else line
        for line in plain().split("\n")
    )


def carriage_returns() -> str:
    return plain().replace("\n", "\r\n")


def numbered_foods() -> str:
    count = iter(range(1, 20))
    return f"{TITLE}\n\n{SERVES}\n\nIngredients\n\n{parts('{}:'.format, lambda food: f'{next(count)}. {food}')}\n\nInstructions\n\n{numbered('Step {}: {}'.format)}\n"


def nested() -> str:
    foods = "\n".join(
        f"- {name}\n" + "\n".join(f"    - {food}" for food in items) for name, items in PARTS.items()
    )
    return f"# {TITLE}\n\n{SERVES}\n\n## Ingredients\n\n{foods}\n\n## Method\n\n{chr(10).join(f'{step}{chr(10)}' for step in STEPS)}"


LAYOUTS = [
    plain, markdown, front_matter, capitals, other_words, bold_and_boxes, no_headings, list_last, quoted, wrapped,
    carriage_returns, numbered_foods, nested,
]  # fmt: skip


def told(recipe: Recipe) -> dict[str, object]:
    """What a recipe says, without where it stands."""
    names = [ingredient.name for ingredient in recipe.ingredients]
    return {
        "title": (recipe.title or "").lower(),
        "servings": recipe.servings and (recipe.servings.low, recipe.servings.high),
        "foods": sorted(
            (i.name, i.component, tuple((a.low, a.high, a.unit) for a in i.amounts), i.prep, i.from_)
            for i in recipe.ingredients
        ),
        "deeds": [
            (a.does, a.word, sorted((names[u.ingredient], u.share) for u in a.uses), a.things, a.makes)
            for step in recipe.steps
            for a in step.actions
        ],
        "times": [(d.what, d.low_min, d.high_min) for step in recipe.steps for d in step.durations],
        "oven": recipe.oven and (recipe.oven.temp_f, recipe.oven.vessel),
        "family": recipe.family,
        "unread": recipe.unread,
    }


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.__name__)
def test_the_same_recipe_reads_the_same_in_any_layout(layout: Callable[[], str]) -> None:
    assert told(read(layout())) == told(read(plain()))


def test_the_recipe_of_the_layouts_is_read_whole() -> None:
    """What the others are held against, written out."""
    recipe = read(plain())
    assert recipe.title == TITLE
    assert [(i.name, i.component) for i in recipe.ingredients if i.from_ == "list"] == [
        ("all-purpose flour", "dough"), ("baking powder", "dough"), ("salt", "dough"), ("butter", "dough"),
        ("milk", "dough"), ("onions", "topping"), ("olive oil", "topping"), ("cheddar", "topping"),
    ]  # fmt: skip
    deeds = [action.does for step in recipe.steps for action in step.actions]
    assert deeds == ["preheat", "grease", "heat", "fry", "mix", "cut in", "mix", "shape", "top", "bake"]
    assert recipe.oven is not None
    assert recipe.oven.temp_f == 425
    assert [(d.what, d.low_min, d.high_min) for step in recipe.steps for d in step.durations] == [
        ("fry", 10, 10), ("bake", 20, 25),
    ]  # fmt: skip
    assert recipe.unread == ()
