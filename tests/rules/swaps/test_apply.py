from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day, Swap
from rules.recipe import Action, Amount, Ingredient, Recipe, Step, Use
from rules.swaps import apply


def line(
    food: str, value: float | None = None, unit: str | None = None, name: str | None = None
) -> Ingredient:
    amounts = () if value is None else (Amount(low=value, high=value, unit=unit),)
    return Ingredient(line=0, text=food, name=name or food, food=food, amounts=amounts)


def swapped(
    food: str, to: str | None, *lines: Ingredient
) -> tuple[dict[str, tuple[float, str | None] | None], Ledger]:
    """What stands in the recipe afterwards, by food."""
    ledger = Ledger()
    recipe = apply(Recipe(ingredients=lines), Day(swaps=(Swap(food=food, to=to),)), ledger)
    return {
        one.food or one.name: (one.amounts[0].high, one.amounts[0].unit) if one.amounts else None
        for one in recipe.ingredients
    }, ledger


@pytest.mark.parametrize(
    ("was", "to", "now"),
    [
        (line("milk", 2, "cup"), "dry milk", {"dry milk": (2 / 3, "cup"), "water": (1.5, "cup")}),
        (line("milk", 2, "cup"), "powdered milk", {"dry milk": (2 / 3, "cup"), "water": (1.5, "cup")}),
        (line("milk", 1, "pint"), "evaporated milk", {"evaporated milk": (1, "cup"), "water": (1, "cup")}),
        (line("egg", 2), "dried egg", {"dried egg": (0.25, "cup"), "water": (0.3125, "cup")}),
        (line("butter", 1, "cup"), "shortening", {"shortening": (0.875, "cup"), "salt": (0.5, "teaspoon")}),
        (line("butter", 2, "stick"), "oil", {"vegetable oil": (0.875, "cup")}),
        (line("butter", 1, "cup"), "sunflower oil", {"sunflower oil": (0.875, "cup")}),
        (line("buttermilk", 1, "cup"), "milk", {"milk": (0.9375, "cup"), "vinegar": (1, "tablespoon")}),
        (line("kidney bean, dry", 1, "cup"), "canned", {"kidney bean, canned": (2, "can")}),
        (line("kidney bean, canned", 2, "can"), "dry kidney beans", {"kidney bean, dry": (1, "cup")}),
        (line("fresh yeast", 42, "gram"), "instant yeast", {"instant yeast": (14, "gram")}),
        (line("active dry yeast", 1, "package"), "fresh yeast", {"fresh yeast": (18, "gram")}),
        (line("thyme", 2, "tablespoon"), "dried thyme", {"dried thyme": (2, "teaspoon")}),
        (line("dried basil", 1, "teaspoon"), "fresh", {"basil": (1, "tablespoon")}),
        (
            line("self-rising flour", 2, "cup"),
            "flour",
            {"all-purpose flour": (2, "cup"), "baking powder": (1, "tablespoon"), "salt": (1, "teaspoon")},
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else getattr(value, "food", ""),
)
def test_the_book_gives_the_proportion(
    was: Ingredient, to: str, now: dict[str, tuple[float, str | None]]
) -> None:
    """The arithmetic of the sourced rows, rounded to measures that people own."""
    got, ledger = swapped(was.name, to, was)
    assert got == {food: (pytest.approx(value, abs=0.01), unit) for food, (value, unit) in now.items()}
    (reason, *_) = ledger.reasons
    assert reason.rule == "swap.book"
    assert reason.source


def test_self_rising_flour_takes_its_leavener_and_salt_from_the_recipe() -> None:
    got, ledger = swapped(
        "all-purpose flour",
        "self-rising flour",
        line("all-purpose flour", 2, "cup"),
        line("baking powder", 1.25, "tablespoon"),
        line("salt", 1, "teaspoon"),
    )
    assert got == {"self-rising flour": (2, "cup"), "baking powder": (0.75, "teaspoon")}
    assert [one.rule for one in ledger.reasons] == ["swap.book", "swap.less", "swap.less"]


def test_oil_for_butter_says_that_it_neither_creams_nor_cuts_in() -> None:
    _, ledger = swapped("butter", "oil", line("butter", 1, "cup"))
    assert "swap.fat" in {one.rule for one in ledger.reasons}


def test_a_food_of_the_same_kind_takes_the_place_of_another_without_a_question() -> None:
    got, ledger = swapped("ground beef", "ground turkey", line("ground beef", 1, "pound"))
    assert got == {"ground turkey": (1, "pound")}
    assert {one.rule for one in ledger.reasons} == {"swap.same"}
    assert ledger.questions == ()


def test_a_food_of_another_kind_asks_how_much() -> None:
    got, ledger = swapped("milk", "moon dust", line("milk", 2, "cup"))
    assert got == {"moon dust": (2, "cup")}
    assert ledger.questions[0].text == "How much moon dust takes the place of 2 cups milk?"


def test_a_food_without_an_amount_stays_without_one() -> None:
    got, _ = swapped("buttermilk", "milk", line("buttermilk"))
    assert got == {"milk": None, "vinegar": None}


@pytest.mark.parametrize(
    ("food", "effect"),
    [
        ("egg", "nothing binds or lifts"),
        ("baking powder", "flat and dense"),
        ("walnut", "unchanged"),
        ("red wine", "the liquid is missing"),
        ("ground beef", "add beans or vegetables"),
        ("butter", "sticks and browns badly"),
        ("ice", "made without it"),
    ],
)
def test_leaving_a_food_out_says_what_it_does_to_the_dish(food: str, effect: str) -> None:
    got, ledger = swapped(food, None, line(food, 1, "cup"), line("water", 1, "cup"))
    assert got == {"water": (1, "cup")}
    (reason,) = ledger.reasons
    assert reason.rule == "swap.out"
    assert effect in reason.because


def test_a_food_that_is_not_there_is_asked_about() -> None:
    got, ledger = swapped("unicorn", "oil", line("water", 1, "cup"))
    assert got == {"water": (1, "cup")}
    assert ledger.questions[0].text == "There is no unicorn in the recipe to change. What was meant?"


def test_a_food_is_meant_by_its_name_by_another_name_or_by_a_word() -> None:
    for said in ("double cream", "heavy cream", "creams"):
        got, _ = swapped(said, "evaporated milk", line("heavy cream", 1, "cup", name="double cream"))
        assert "heavy cream" not in got, said


def test_every_line_of_the_food_is_swapped() -> None:
    got, _ = swapped(
        "butter", "lard", line("butter", 1, "cup"), line("water"), line("butter", 1, "tablespoon")
    )
    assert "butter" not in got


def test_swaps_are_worked_in_order() -> None:
    wishes = (Swap(food="butter", to="shortening"), Swap(food="shortening", to="lard"))
    recipe = apply(Recipe(ingredients=(line("butter", 1, "cup"),)), Day(swaps=wishes), Ledger())
    assert recipe.ingredients[0].food == "lard"


def test_the_steps_use_what_came_in_where_they_used_what_it_replaces() -> None:
    mix = Action(does="mix", word="mix", uses=(Use(ingredient=0), Use(ingredient=1, share=0.5)))
    recipe = Recipe(
        ingredients=(
            line("all-purpose flour", 2, "cup"),
            line("milk", 1, "cup"),
            line("salt", 1, "teaspoon"),
        ),
        steps=(Step(line=5, text="Mix.", uses=(0, 1, 2), actions=(mix,)),),
    )
    changed = apply(recipe, Day(swaps=(Swap(food="milk", to="dry milk"),)), Ledger())
    foods = [changed.ingredients[use].food for use in changed.steps[0].uses]
    assert foods == ["all-purpose flour", "dry milk", "water", "salt"]
    assert [use.share for use in changed.steps[0].actions[0].uses] == [1.0, 0.5, 0.5]


def test_no_wish_changes_nothing() -> None:
    recipe = Recipe(ingredients=(line("milk", 1, "cup"),))
    assert apply(recipe, Day(), Ledger()) is recipe
