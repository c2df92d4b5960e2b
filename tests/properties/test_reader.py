"""Properties of the reader: no text makes it raise, no line is lost, the same text reads the same."""

from __future__ import annotations

import msgspec
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.reader.prose import quantities
from assistant.reader.read import read
from assistant.reader.sections import layout

WORDS = st.sampled_from(
    [
        "Ingredients",
        "Method",
        "For:",
        "the",
        "flour",
        "butter",
        "2",
        "cups",
        "1/2",
        "half",
        "of",
        "remaining",
        "add",
        "bake",
        "until",
        "350°F",
        "20",
        "minutes",
        "or",
        "oven",
        ",",
        ".",
        ";",
        ":",
        "(",
        ")",
        "-",
        "#",
        "**",
        ">",
        "and",
        "then",
        "let",
        "it",
        "simmer",
        "serves",
        "4",
        "salt",
        "½",
        "a",
        "pinch",
        "\n",
        "\n\n",
        "1.",
        "•",
        "|",
        "_",
        "\t",
    ]
)
TEXTS = st.one_of(st.text(max_size=300), st.lists(WORDS, max_size=80).map(" ".join))


@settings(max_examples=150, deadline=None)
@given(TEXTS)
def test_any_text_is_read_and_refers_only_to_what_it_has(text: str) -> None:
    recipe = read(text)
    lines = text.removeprefix("\ufeff").count("\n") + 1
    count = len(recipe.ingredients)
    for step in recipe.steps:
        assert 0 <= step.line < lines
        assert set(step.uses) == {use.ingredient for action in step.actions for use in action.uses}
        assert all(0 <= use.ingredient < count for action in step.actions for use in action.uses)
        assert all(0 < use.share <= 1 for action in step.actions for use in action.uses)
        assert all(0 <= d.low_min <= d.high_min for d in step.durations)
    assert all(0 <= ingredient.line < lines for ingredient in recipe.ingredients)


@settings(max_examples=100, deadline=None)
@given(TEXTS)
def test_every_line_that_says_something_ends_on_one_pile(text: str) -> None:
    page = layout(text)
    numbers = sorted([line.number for line in page.lines] + [line.number for line in page.beyond])
    filled = {number for number, line in enumerate(text.removeprefix("\ufeff").split("\n")) if line.strip()}
    assert filled <= set(numbers)
    assert len(numbers) == len(set(numbers))


@settings(max_examples=50, deadline=None)
@given(TEXTS)
def test_the_same_text_gives_the_same_bytes(text: str) -> None:
    assert msgspec.json.encode(read(text)) == msgspec.json.encode(read(text))


@settings(max_examples=200, deadline=None)
@given(st.text(alphabet="0123456789/-.,½ °FCabehimnorstu", max_size=60))
def test_quantities_stand_where_they_say_in_order(text: str) -> None:
    found = quantities(text)
    assert all(0 <= q.start < q.end <= len(text) for q in found)
    assert all(q.low <= q.high for q in found)
    assert [q.start for q in found] == sorted(q.start for q in found)
