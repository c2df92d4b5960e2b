"""Packs are opened once, where what they hold meets the rest."""

from __future__ import annotations

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp


def told(text: str) -> list[str]:
    return list(camp(read(text), Day()).camp_steps)


def test_the_bag_is_opened_where_the_wet_meets_the_dry() -> None:
    steps = told(
        "River cakes\n\n2 cups flour\n2 tsp baking powder\n1 tsp salt\n2 eggs\n2 cups milk\n\nMix the flour, baking powder and "
        "salt.\nBeat the eggs with the milk.\nStir the wet into the dry.\nBake at 350 F for 30 minutes."
    )
    text = " ".join(steps)
    assert text.index("Beat the eggs") < text.index("(dry-1)") < text.index("Stir the wet into the dry")


def test_a_crumble_is_opened_after_its_fruit() -> None:
    steps = told(
        "River crumble\n\nFor the fruit:\n2 lb plums, sliced\n1/2 cup sugar\n\nFor the crumble:\n2 cups flour\n1/2 cup brown sugar"
        "\n1/2 cup cold butter\n\nPut the plums and sugar in a baking dish.\nRub the butter into the flour and brown sugar.\n"
        "Bake at 375 F for 40 minutes until the juice bubbles."
    )
    text = " ".join(steps)
    assert text.index("(wet-1)") < text.index("(dry-1)") < text.index("Bake at 375")


def test_flour_for_the_board_opens_no_bag() -> None:
    steps = told(
        "River rounds\n\n3 cups flour\n1 tbsp baking powder\n1 1/4 cups milk\n\nDust a baking tray with flour. Mix the flour and "
        "baking powder, stir in the milk and pat it out. Bake at 450 F for 14 minutes."
    )
    text = " ".join(steps)
    assert text.count("(dry-1)") == 1
    assert text.index("Dust the pot") < text.index("(dry-1)") < text.index("tir in the milk")


def test_what_is_cut_at_camp_says_how() -> None:
    steps = told(
        "River apples\n\n6 apples, peeled and cored\n1 can (14 oz) beans, drained\n\nPut the apples in a pot with the beans. Simmer "
        "20 minutes."
    )
    assert "6 apples (peeled and cored)" in " ".join(steps)
    assert "(14 ounces, drained)" in " ".join(steps)


def test_what_waits_at_home_is_not_told_to_wait_again() -> None:
    steps = told(
        "River chicken\n\n8 chicken thighs\n1/2 cup yogurt\n1 tsp cumin\n1 tsp salt\n\nMix the yogurt, cumin and salt. Pour over the "
        "chicken in a bag and refrigerate overnight.\nRoast at 400 F for 40 minutes."
    )
    text = " ".join(steps)
    assert "overnight" not in text
    assert text.count("(prepped-1)") == 1


def test_sugar_that_the_recipe_beats_with_the_eggs_is_said_to_be_in_the_mix() -> None:
    steps = told(
        "River cake\n\n2 cups flour\n2 tsp baking soda\n1 cup sugar\n4 eggs\n1 cup oil\n\nWhisk the flour and soda.\nIn another "
        "bowl beat the eggs, sugar and oil. Stir in the dry ingredients. Bake at 350 F for 40 minutes."
    )
    text = " ".join(steps)
    assert "beat the eggs, sugar and oil. The sugar is in the dry mix." in text
    assert text.index("The sugar is in the dry mix") < text.index("(dry-1)") < text.index("Stir in the dry")


def test_fat_for_the_griddle_is_taken_when_the_griddle_is_hot() -> None:
    steps = told(
        "River pancakes\n\n2 cups flour\n2 tsp baking powder\n2 cups milk\n1 cup blueberries\nbutter for the griddle\n\nMix the "
        "flour and baking powder, pour in the milk and fold in the blueberries.\nHeat a lightly buttered griddle and fry the "
        "pancakes for 3 minutes."
    )
    text = " ".join(steps)
    assert text.index("fold in the blueberries") < text.index("Take butter") < text.index("Heat a lightly")


def test_a_whole_can_is_not_called_one_can_in_part() -> None:
    steps = told(
        "River stack\n\n1 can (19 oz) enchilada sauce\n12 tortillas\n\nSpread half of the enchilada sauce in a pot. Lay the tortillas "
        "over it and pour over the rest of the enchilada sauce. Bake at 350 F for 30 minutes."
    )
    assert "Take part of the can of enchilada sauce (19 ounces)" in " ".join(steps)
