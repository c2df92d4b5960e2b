"""Butter sticks, cans, dry milk, beans, yeast and leavener against printed equivalents.

Each source stands beside its figure.
"""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day, Swap
from rules.foods import catalogue, grams
from rules.recipe import Amount, Ingredient, Package, Recipe
from rules.swaps import apply
from rules.units import to


def mass(food: str, value: float, unit: str | None, package: Package | None = None) -> float:
    found = grams(Amount(low=value, high=value, unit=unit, package=package), catalogue().get(food))
    assert found is not None
    return found


def swap(food: str, value: float, unit: str | None, wish: str) -> dict[str, Amount]:
    line = Ingredient(
        line=0, text=food, name=food, food=food, amounts=(Amount(low=value, high=value, unit=unit),)
    )
    recipe = apply(Recipe(ingredients=(line,)), Day(swaps=(Swap(food=food, to=wish),)), Ledger())
    return {one.food or "": one.amounts[0] for one in recipe.ingredients}


def test_a_stick_of_butter_is_half_a_cup_eight_spoons_four_ounces() -> None:
    """113 g and 4 to the pound: "How many tablespoons in 1/3 cup stick butter" and "Butter measurements" (n.d.), read
    at uzbpmany.cf and puskesmaswangon.tk. USDA's tablespoon is 14.2 g, its cup 227 g: 1 % for the printed gram."""
    stick = mass("butter", 1, "stick")
    assert stick == pytest.approx(113, abs=0.5)
    assert mass("butter", 0.5, "cup") == pytest.approx(stick, rel=0.01)
    assert mass("butter", 8, "tablespoon") == pytest.approx(stick, rel=0.01)
    assert to(4, "ounce", "gram") == pytest.approx(stick, rel=0.01)
    assert to(1, "pound", "gram") / stick == pytest.approx(4, rel=0.01)


@pytest.mark.parametrize(
    ("can", "ounces", "cups"),
    [
        ("No. 300", 14.5, 1.75),
        ("No. 303", 16, 2),
        ("No. 2", 20, 2.5),
        ("No. 2 1/2", 29, 3.5),
        ("No. 3 cylinder", 46, 5.75),
    ],
)
def test_a_can_of_tomatoes_holds_the_cups_of_the_can_table(can: str, ounces: float, cups: float) -> None:
    """American Can Company, Home Economics Department, "A guide to common can sizes" (n.d.), read at bitlit.ru. The
    table is for any food and prints quarter cups, tomatoes are a little heavier than water: 8 %."""
    held = mass("tomato, canned", 1, "can", Package(low=ounces, high=ounces, unit="ounce"))
    assert cups == pytest.approx(held / mass("tomato, canned", 1, "cup"), rel=0.08)


def test_the_can_without_a_size_is_the_usual_one() -> None:
    """14.5 oz, the content of a No. 300 (same table); cans of beans are 15 oz: K-State Research and Extension, "Can
    sizes call for translation" (2009), gives 14 to 16 oz for it."""
    assert mass("tomato, canned", 1, "can") == pytest.approx(to(14.5, "ounce", "gram"), rel=0.01)
    assert to(14, "ounce", "gram") <= mass("kidney bean, canned", 1, "can") <= to(16, "ounce", "gram")


def test_a_third_of_a_cup_of_dry_milk_makes_a_cup() -> None:
    """ "Substituting food ingredients" (1992), read at zetatalk11.com: 1/3 cup and 3/4 cup water. USDA (SR28, NDB
    01092) prints 23 g for that third of a cup, "makes 1 cup reconstituted milk"."""
    made = swap("milk", 1, "cup", "dry milk")
    assert made["dry milk"].high == pytest.approx(1 / 3, abs=0.005)
    assert made["water"].high == 0.75
    assert mass("dry milk", 1 / 3, "cup") == pytest.approx(23, abs=0.5)


def test_beans_swell_threefold() -> None:
    """U.S. Dry Bean Council figures (n.d.), read at frugalliving.about.com: a 15-oz can holds 1 1/2 cups drained, a
    cup dry gives 3 cups, so two cans for a cup; a pound is 2 cups dry (others 2 1/2: 10 % on the mean)."""
    assert swap("kidney bean, dry", 1, "cup", "canned")["kidney bean, canned"].high == 2
    assert swap("kidney bean, canned", 1, "can", "dry kidney beans")["kidney bean, dry"].high == 0.5
    assert to(1, "pound", "gram") / mass("kidney bean, dry", 1, "cup") == pytest.approx(2.25, rel=0.12)


def test_a_packet_of_yeast() -> None:
    """2 1/4 teaspoons, 1/4 oz, as much as 0.6 oz fresh: "Yeast conversions for recipes" (n.d.), read at
    thespruceeats.com. A spoon of it is 4 g (USDA SR28, NDB 18375), so a packet is known to a quarter spoon: 25 %
    between weight and spoons; the factor 0.40 by weight gives 0.63 oz, printed 0.6."""
    packet = mass("active dry yeast", 1, "packet")
    assert packet == pytest.approx(to(0.25, "ounce", "gram"), rel=0.03)
    assert mass("active dry yeast", 2.25, "teaspoon") == pytest.approx(packet, rel=0.26)
    fresh = swap("active dry yeast", 1, "packet", "fresh yeast")["fresh yeast"]
    assert to(fresh.high, fresh.unit or "", "ounce") == pytest.approx(0.6, abs=0.05)


def test_a_teaspoon_of_baking_powder_from_soda_and_cream_of_tartar() -> None:
    """North Dakota State University Extension, "Ingredient substitutions" (2018, after FN198): 1/4 and 5/8 teaspoon;
    told in spoons of an eighth and a quarter."""
    made = swap("baking powder", 4, "teaspoon", "baking soda")
    assert made["baking soda"].high == 1
    assert made["cream of tartar"].high == pytest.approx(2.5)


def test_a_cup_of_flour_is_raised_by_a_spoon_and_a_half_of_baking_powder() -> None:
    """Self-rising flour by the cup: 1 cup flour, 1 1/2 teaspoons baking powder, 1/2 teaspoon salt ("Recipe measurement
    question" and "Self rising flour substitute", n.d., read at foodaq.com); there and back."""
    made = swap("self-rising flour", 2, "cup", "all-purpose flour")
    assert made["all-purpose flour"].high == 2
    assert to(made["baking powder"].high, made["baking powder"].unit or "", "teaspoon") == pytest.approx(3)
    assert to(made["salt"].high, made["salt"].unit or "", "teaspoon") == pytest.approx(1)


def test_butter_by_shortening_and_by_oil() -> None:
    """7/8 to 1 cup of hydrogenated fat and 1/2 teaspoon salt: Columbia Gas System home service sheet HSR-67 (n.d.),
    read at clyx.com. 7/8 cup of oil: "Substitutions" (n.d.). By weight that is what the fat in the butter weighs:
    81 % of 227 g against 7/8 cup, within 4 %."""
    made = swap("butter", 1, "cup", "shortening")
    assert 0.875 <= made["shortening"].high <= 1
    assert made["salt"].high == 0.5
    fat_g = mass("butter", 1, "cup") * (catalogue().get("butter").fat_pct or 0) / 100
    assert mass("vegetable oil", 0.875, "cup") == pytest.approx(fat_g, rel=0.04)


def test_dried_herbs_are_a_third_of_fresh_ones() -> None:
    """1 tablespoon fresh = 1 teaspoon dried: Columbia Gas System sheet HSR-67 (n.d.)."""
    made = swap("parsley", 3, "tablespoon", "dried parsley")["dried parsley"]
    assert to(made.high, made.unit or "", "teaspoon") == pytest.approx(3)
