"""How one knows that it is done."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.because import Ledger
from rules.coals.doneness import doneness, signs
from rules.convert import camp
from rules.dish import Dish
from tests.rules.coals.making import items_of, recipe, step


def of(foods, family, title=""):
    made = recipe(foods, step(), title=title)
    ledger = Ledger()
    return doneness(made, items_of(made), Dish(family=family), ledger), ledger


@pytest.mark.parametrize(
    ("food", "temp_f", "rest"),
    [("chicken thigh", 165, None), ("ground beef", 160, None), ("pork chop", 145, 3), ("cod", 145, None)],
)
def test_raw_flesh_has_its_published_limit(food, temp_f, rest) -> None:
    found, ledger = of({food: (2, "pound")}, "roast")
    assert (found[0].temp_f, found[0].rest_min) == (temp_f, rest)
    assert "FoodSafety.gov" in found[0].source
    assert [reason.rule for reason in ledger.reasons] == ["done.safe"]


def test_shellfish_is_judged_by_eye() -> None:
    found, _ = of({"shrimp": (1, "pound")}, "boil or steam")
    assert found[0].temp_f is None
    assert "opaque" in found[0].sign


def test_eggs_count_where_they_make_the_dish() -> None:
    assert of({"egg": (6, None), "milk": (1, "quart")}, "custard or pudding")[0][0].temp_f == 160
    assert len(of({"egg": (2, None), "flour": (2, "cup")}, "batter bake")[0]) == 1


def test_two_meats_of_a_kind_are_told_once() -> None:
    found, _ = of({"beef chuck": (1, "pound"), "pork chop": (2, None)}, "stew or braise")
    assert [check.temp_f for check in found].count(145) == 1


@pytest.mark.parametrize(
    ("foods", "family", "title", "key"),
    [
        ({"peach": (4, None)}, "batter bake", "Peach cobbler", "cobbler"),
        ({"flour": (2, "cup")}, "batter bake", "Spice cake", "batter bake"),
        ({"rice": (1, "cup")}, "custard or pudding", "Rice pudding", "pudding"),
        ({"beef chuck": (3, "pound")}, "stew or braise", "", "tough"),
        ({"carrot": (3, None)}, "stew or braise", "", "stew or braise"),
        ({"potato": (3, "pound")}, "roast", "", "roast vegetables"),
        ({"lettuce": (1, "head")}, "no cook", "", "other"),
    ],
)
def test_every_dish_has_its_sign(foods, family, title, key) -> None:
    found, _ = of(foods, family, title)
    assert found[-1].sign == signs()[key].sign


def test_bread_is_done_between_190_and_210() -> None:
    """Handbook chapter 5: 190-210 °F for breads (from memory)."""
    assert 190 <= of({"flour": (4, "cup")}, "yeast bread")[0][-1].temp_f <= 210


def test_meat_in_a_boiling_sauce_is_not_told_by_a_roasts_juices() -> None:
    plan = camp(
        read(
            "River stew\n\n2 pounds beef chuck, cubed\n4 cups broth\n\nSimmer the beef in the broth for 2 hours."
        )
    )
    assert plan.heat is not None
    signs = {done.what: done.sign for done in plan.heat.doneness}
    assert signs["beef chuck"] == "cut through the thickest piece shows no pink"


def test_beans_from_a_can_are_not_waited_for() -> None:
    plan = camp(
        read(
            "River chili\n\n1 pound ground beef\n2 cans kidney beans\n\nBrown the beef. Add the beans and simmer 30 minutes."
        )
    )
    assert plan.heat is not None
    assert "the beans" not in {done.what for done in plan.heat.doneness}
