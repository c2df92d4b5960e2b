"""The verbs of a method: their forms, and whether a sentence opens with an order."""

from __future__ import annotations

import pytest

from assistant.reader.deeds import ed, ing, lexicon, starts_with_order, third


@pytest.mark.parametrize(
    ("verb", "forms"),
    [
        ("chop", ("chopping", "chopped", "chops")),
        ("bake", ("baking", "baked", "bakes")),
        ("fry", ("frying", "fried", "fries")),
        ("mix", ("mixing", "mixed", "mixes")),
        ("heat", ("heating", "heated", "heats")),
        ("stir", ("stirring", "stirred", "stirs")),
        ("knead", ("kneading", "kneaded", "kneads")),
    ],
)
def test_the_forms_of_a_verb_are_spelt_as_in_english(verb: str, forms: tuple[str, str, str]) -> None:
    assert (ing(verb), ed(verb), third(verb)) == forms


def test_every_form_leads_to_its_deed() -> None:
    assert {lexicon()[form].deed for form in ("bring", "brought", "bringing")} == {"other"}
    assert {lexicon()[form].deed for form in ("stir in", "stirring in", "stirred in")} == {"mix"}
    assert lexicon()["frozen"].form == "past"


@pytest.mark.parametrize(
    "sentence",
    [
        "Add the flour.",
        "Finely chop the onions",
        "Then gently fold in the flour",
        "In a large bowl, beat the eggs",
        "Meanwhile, boil the water",
        "Butter the tin",
        "Dry the fish well with a cloth",
    ],
)
def test_a_sentence_that_opens_with_a_plain_verb_asks(sentence: str) -> None:
    assert starts_with_order(sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "Salt to taste",
        "Butter for the tin",
        "Zest of one lemon",
        "Juice and zest of a lime",
        "Dry oregano",
        "Chopped onions",
        "For the sauce, two eggs",
    ],
)
def test_a_food_is_no_order(sentence: str) -> None:
    assert not starts_with_order(sentence)
