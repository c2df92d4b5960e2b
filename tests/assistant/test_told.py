"""Recipes told in one breath, without a list: every food with an amount is found, and nothing that is none."""

from __future__ import annotations

from assistant.reader.read import read

SOUP = """Onion soup the way Ruth tells it

Melt 2 tablespoons of butter in a big pot and sweat 5 large onions, sliced, for 20 minutes. Pour in 6 cups of beef
stock and a bay leaf, add a knob of ginger the size of an egg, bring it to the boil and simmer for half an hour. I
never put garlic in. That feeds nine if there is bread.
"""


def test_a_telling_gives_its_foods_with_their_amounts() -> None:
    recipe = read(SOUP)
    found = {item.name: [(amount.low, amount.unit) for amount in item.amounts] for item in recipe.ingredients}
    assert found == {
        "butter": [(2, "tablespoon")],
        "onions": [(5, None)],
        "beef stock": [(6, "cup")],
        "bay leaf": [(1, None)],
        "ginger": [(1, "knob")],
    }
    assert {item.from_ for item in recipe.ingredients} == {"method"}


def test_what_is_refused_or_compared_is_no_ingredient() -> None:
    names = {item.name for item in read(SOUP).ingredients}
    assert not names & {"garlic", "egg", "bread"}


def test_a_list_makes_the_telling_a_method() -> None:
    recipe = read(
        "Toast\n\n4 slices bread\n2 tbsp butter\n\nSpread the bread with the butter and toast for 3 minutes.\n"
    )
    assert [(item.name, item.from_) for item in recipe.ingredients] == [("bread", "list"), ("butter", "list")]
