"""The kitchen's oven, pans, stove and fridge in the words of a camp."""

from __future__ import annotations

import pytest

from rules.instructions.translate import LONGEST, at_camp


@pytest.mark.parametrize(
    ("kitchen", "camp_words"),
    [
        ("Bake in the preheated oven for 20 minutes.", "Bake in the pot for 20 minutes."),
        ("Put it into the oven.", "Put it in the pot."),
        ("Take it out of the oven.", "Take it off the coals."),
        ("Preheat the oven to 375°F and grease a 9x13 baking dish.", "Grease the pot."),
        ("Bake it in a slow oven for two hours.", "Bake it in the pot for two hours."),
        ("Cover and cook in a 300°F oven for 3 hours.", "Cover and cook in the pot for 3 hours."),
        ("Bake in the lower third of the oven for 25 minutes.", "Bake for 25 minutes."),
        (
            "Bake 20 minutes, then turn the oven down to 375°F.",
            "Bake 20 minutes, then let the heat fall to 375°F.",
        ),
    ],
)
def test_the_oven_becomes_the_pot(kitchen: str, camp_words: str) -> None:
    assert at_camp(kitchen) == camp_words


@pytest.mark.parametrize(
    ("kitchen", "camp_words"),
    [
        ("Heat oil in a heavy pot over medium-high heat.", "Heat oil in the pot."),
        ("Bring to a boil, reduce heat and simmer.", "Bring to a boil, take coals away and simmer."),
        ("Turn the heat down, add the onions.", "Take coals away, add the onions."),
        ("Remove from the heat and rest.", "Remove from the coals and rest."),
        ("Crisp it under the broiler.", "Crisp it with most of the coals on the lid."),
    ],
)
def test_the_stove_becomes_coals(kitchen: str, camp_words: str) -> None:
    assert at_camp(kitchen) == camp_words


@pytest.mark.parametrize(
    ("kitchen", "camp_words"),
    [
        ("Set them on a greased sheet.", "Set them in the greased pot."),
        ("Press it into a greased 12 inch ovenproof skillet.", "Press it in the greased pot."),
        ("Toss it in a 30 x 20cm baking dish.", "Toss it in the pot."),
        ("Spread into a foil-lined 13x9-inch pan.", "Spread in the pot."),
        ("Return it to the pan.", "Return it to the pot."),
        ("Fit it into a 9-inch pie plate.", "Fit it into a 9-inch pie plate."),
        ("Stand the dish in a roasting tin with hot water.", "Stand the dish in the pot with hot water."),
        ("Cook the pot roast.", "Cook the pot roast."),
        ("Put the lid on the pot.", "Put the lid on the pot."),
    ],
)
def test_pans_and_tins_become_the_pot_and_a_pie_keeps_its_dish(kitchen: str, camp_words: str) -> None:
    assert at_camp(kitchen) == camp_words


@pytest.mark.parametrize(
    ("kitchen", "camp_words"),
    [
        ("Take the birds out of the fridge.", "Take the birds out of the cooler."),
        ("Chill it in the fridge.", "Chill it in the cooler."),
        ("Cool on a wire rack.", "Cool off the coals."),
        ("Beat with an electric mixer for 3 minutes.", "Beat by hand for 3 minutes."),
        ("Knead with the dough hook for 8 minutes.", "Knead for 8 minutes."),
    ],
)
def test_fridge_rack_and_machines_have_their_stand_ins(kitchen: str, camp_words: str) -> None:
    assert at_camp(kitchen) == camp_words


def test_a_sentence_of_the_camp_stays_as_it_is() -> None:
    assert at_camp("Stir the soup.") == "Stir the soup."
    endless = "in a skillet " * LONGEST
    assert at_camp(endless) == endless
