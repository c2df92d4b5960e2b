from __future__ import annotations

import pytest

from rules.allergens import allergens
from rules.because import Ledger
from rules.plan import Allergen
from rules.recipe import Ingredient
from tests.build import act, items, line, recipe, step


def held(*lines: Ingredient) -> tuple[set[Allergen], dict[str, set[Allergen]], Ledger]:
    """What the foods hold, what their labels must be read for, and what was asked."""
    ledger = Ledger()
    made = recipe(*lines)
    sure, check = allergens(made, items(made), ledger)
    return set(sure), {one.food: set(one.may_hold) for one in check}, ledger


@pytest.mark.parametrize(
    ("name", "sure"),
    [
        ("flour", {"wheat"}),
        ("butter", {"milk"}),
        ("mayonnaise", {"egg"}),
        ("soy sauce", {"soybeans", "wheat"}),
        ("hoisin sauce", {"soybeans", "wheat"}),
        ("bechamel", {"milk", "wheat"}),
        ("worcestershire sauce", {"fish"}),
        ("shrimp", {"crustacean shellfish"}),
        ("tahini", {"sesame"}),
        ("peanut butter", {"peanuts"}),
        ("walnuts", {"tree nuts"}),
        ("coconut milk", set()),
        ("rolled oats", set()),
        ("chicken bouillon cube", set()),
    ],
)
def test_what_a_food_surely_holds(name: str, sure: set[Allergen]) -> None:
    """The nine of US law (FDA); coconut is no tree nut for labelling (FDA, 2025)."""
    assert held(line(name))[0] == sure


def test_what_the_usual_make_may_hold_goes_to_the_labels() -> None:
    sure, check, _ = held(line("bread"))
    assert sure == {"wheat"}
    assert "milk" in check["bread"]
    assert "wheat" not in check["bread"]


def test_optional_foods_and_those_that_only_the_method_names_count() -> None:
    assert held(line("walnuts", optional=True))[0] == {"tree nuts"}
    assert held(line("butter", from_="method"))[0] == {"milk"}


def test_bread_that_the_method_serves_counts_and_bread_that_is_baked_is_the_dish() -> None:
    serve = (step(act("serve", things=("bread", "soup"))),)
    soup = recipe(line("onion"), steps=serve, family="soup")
    assert allergens(soup, items(soup), Ledger())[0] == ("wheat",)
    loaf = recipe(line("rice flour"), steps=serve, family="yeast bread")
    assert allergens(loaf, items(loaf), Ledger())[0] == ()


def test_a_food_to_take_instead_is_to_be_checked_and_does_not_count() -> None:
    sure, check, _ = held(line("oil", alternatives=("butter",)))
    assert sure == set()
    assert check["butter instead of oil"] == {"milk"}


def test_a_word_on_the_packet_moves_its_allergen_to_the_labels() -> None:
    sure, check, _ = held(line("soy sauce", state=("gluten-free",)))
    assert sure == {"soybeans"}
    assert "wheat" in check["soy sauce"]


def test_an_unknown_food_is_asked_about_and_never_counted_as_free() -> None:
    sure, _, ledger = held(line("grandmother's paste", food=""))
    assert sure == set()
    (question,) = ledger.questions
    assert "grandmother's paste" in question.text
    assert ledger.reasons[0].rule == "allergens.unknown"


def test_the_nine_come_in_one_order() -> None:
    made = recipe(line("walnuts"), line("eggs"), line("milk"))
    assert allergens(made, items(made), Ledger())[0] == ("milk", "egg", "tree nuts")


@pytest.mark.parametrize(
    ("name", "sure", "labels"),
    [
        ("brioche", {"wheat", "milk", "egg"}, {"soybeans"}),
        ("challah", {"wheat", "egg"}, {"milk", "soybeans"}),
        ("tamari", {"soybeans"}, {"wheat"}),
        ("gochujang", {"soybeans"}, {"wheat", "fish"}),
        ("spaetzle", {"wheat", "egg"}, {"milk"}),
        ("halva", {"sesame"}, {"milk", "tree nuts", "peanuts", "soybeans"}),
        ("toffee", {"milk"}, {"tree nuts", "peanuts", "soybeans", "sesame"}),
        ("plum sauce", set(), {"soybeans", "wheat", "sesame"}),
        ("spring roll wrappers", {"wheat"}, set()),
    ],
)
def test_the_name_tells_more_than_the_food_that_it_is_looked_up_as(
    name: str, sure: set[Allergen], labels: set[Allergen]
) -> None:
    found, check, _ = held(line(name))
    assert found == sure
    assert check.get(name, set()) == labels


@pytest.mark.parametrize(
    ("name", "sure", "labels"),
    [
        ("grandmother's shrimp relish", {"crustacean shellfish"}, set()),
        ("river cheese", set(), {"milk"}),
        ("aunt's festive bread", {"wheat"}, set()),
        ("eggplant relish", set(), set()),
        ("buckwheat honey glaze", set(), set()),
    ],
)
def test_the_words_of_an_unknown_food_are_heard(
    name: str, sure: set[Allergen], labels: set[Allergen]
) -> None:
    """Better a label too many than a caution too few; an unknown food is asked about as well."""
    found, check, ledger = held(line(name, food=""))
    assert found == sure
    assert check.get(name, set()) == labels
    assert any(question.about == "allergens" for question in ledger.questions)


def test_a_word_that_frees_goes_before_the_words_of_the_name() -> None:
    sure, check, _ = held(line("gluten-free brioche"))
    assert "wheat" not in sure
    assert "wheat" in check["gluten-free brioche"]


def test_what_a_known_food_holds_is_not_told_by_words_for_unknown_ones() -> None:
    assert held(line("coconut cream"))[0] == set()
    assert held(line("cream of tartar"))[0] == set()
    assert held(line("butternut squash"))[0] == set()
    assert "milk" not in held(line("butter beans"))[1].get("butter beans", set())
