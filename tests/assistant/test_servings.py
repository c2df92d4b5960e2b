"""How many a recipe feeds or makes, wherever it says so."""

from __future__ import annotations

import pytest

from assistant.reader.sections import layout
from assistant.reader.servings import servings_of

TEXT = "Squares\n\n{head}\n\nIngredients\n\n3 eggs\n\nMethod\n\n1. Bake it. {end}\n"


def stated(head: str = "", end: str = "") -> tuple[float, float, str] | None:
    found = servings_of(layout(TEXT.format(head=head, end=end)))
    return (found.low, found.high, found.of) if found else None


@pytest.mark.parametrize(
    ("head", "found"),
    [
        ("Serves 9", (9, 9, "servings")),
        ("Serves: 4-6", (4, 6, "servings")),
        ("Yield: 8-10 servings | Prep: 15 min", (8, 10, "servings")),
        ("Prep: 15 min | Serves 4 to 6", (4, 6, "servings")),
        ("Makes about 3 dozen cookies", (36, 36, "cookies")),
        ("Makes 18", (18, 18, "pieces")),
        ("Feeds nine hungry paddlers", (9, 9, "servings")),
        ("This makes one 9 inch pan, serves about 8.", (8, 8, "servings")),
        ("Our Tuesday supper", None),
        ("Bake for 40 minutes", None),
    ],
)
def test_the_head_says_how_many(head: str, found: tuple[float, float, str] | None) -> None:
    assert stated(head) == found


@pytest.mark.parametrize("end", ["Serves nine.", "Yield: 9 servings.", "Feeds nine hungry people."])
def test_the_method_may_say_it_at_its_end(end: str) -> None:
    found = stated(end=end)
    assert found is not None
    assert found[0] == 9


def test_the_head_counts_before_the_method() -> None:
    assert stated("Serves 4", "Serves nine.") == (4, 4, "servings")
