"""What the kitchen has done is not done again at camp; what it has not, is."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.convert import camp

BISCUITS = """River drop biscuits

2 cups flour
1 tablespoon baking powder
6 tablespoons cold butter
1 cup milk

Whisk the flour and baking powder. Cut the butter into the flour until it looks like crumbs.
Stir in the milk. Drop spoonfuls into the pot and bake 15 minutes at 425 F.
"""
STEW = """River stew

2 pounds beef chuck, cubed
2 onions, chopped
2 tablespoons oil
4 cups broth

Chop the onions. Brown the beef in the oil. Add the onions and the broth and simmer for 2 hours.
"""


@pytest.mark.parametrize(
    ("text", "done_at_home"),
    [
        (BISCUITS, ["Whisk the flour", "Cut the butter"]),
        (STEW, ["Chop the onions"]),
    ],
    ids=["crumbs cut in at home", "onions cut at home"],
)
def test_what_was_done_at_home_is_left_out(text: str, done_at_home: list[str]) -> None:
    told = " ".join(camp(read(text)).camp_steps)
    assert not [words for words in done_at_home if words in told]


@pytest.mark.parametrize(
    ("text", "left"),
    [
        (BISCUITS, ["Stir in the milk.", "Drop spoonfuls"]),
        (STEW, ["Brown the beef in the oil.", "simmer for 2 hours"]),
    ],
    ids=["dough", "stew"],
)
def test_what_needs_the_fire_or_fresh_food_is_left_for_camp(text: str, left: list[str]) -> None:
    told = " ".join(camp(read(text)).camp_steps)
    assert not [words for words in left if words not in told]


def test_the_bag_of_crumbs_is_opened_when_the_milk_goes_in() -> None:
    steps = camp(read(BISCUITS)).camp_steps
    (wet,) = [step for step in steps if "Stir in the milk." in step]
    assert "(dry-1)" in wet
