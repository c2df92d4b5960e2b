"""Orders are told from talk: each deed of a sentence, and what belongs to it."""

from __future__ import annotations

import pytest

from assistant.reader.clauses import clauses
from assistant.reader.deeds import ed, ing, lexicon, starts_with_order, third
from assistant.reader.frame import frame
from assistant.reader.tokens import doc


def orders(text: str) -> list[str]:
    return [clause.verb.words for clause in clauses(text) if clause.told]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Whisk the eggs.", ["whisk"]),
        ("In a bowl, whisk the eggs.", ["whisk"]),
        ("In a tall pot add the oil.", ["add"]),
        ("Peel and chop the onions, then fry them.", ["peel", "chop", "fry"]),
        ("Once melted add your onions, cook until translucent.", ["add", "cook"]),
        ("When hot, pour in the batter.", ["pour in"]),
        ("Let the soup simmer.", ["simmer"]),
        ("Let it all slowly stew for an hour.", ["stew"]),
        ("Continue to cook for 5 minutes.", ["cook"]),
        ("Begin to fry the onions.", ["fry"]),
        ("Start preheating the oven.", ["preheat"]),
        ("Make sure to stir well.", ["stir"]),
        ("You can add a leaf of sage.", ["add"]),
        ("The dough should rise for an hour.", ["rise"]),
        ("The potatoes should be peeled.", ["peel"]),
        ("Brush with fat; cover; let rise.", ["brush", "cover", "rise"]),
        ("Make the dough by mixing flour and water.", ["make", "mix"]),
        ("Cream butter and sugar.", ["cream"]),
        ("Butter the tin and flour it.", ["butter", "flour"]),
        ("Stir until the sauce boils and cook for 2 minutes.", ["stir", "cook"]),
        ("To serve, cut it in squares.", ["serve", "cut"]),
        ("Mix.Bake it.", ["mix", "bake"]),
    ],
)
def test_an_order_is_heard_where_it_can_stand(text: str, told: list[str]) -> None:
    assert orders(text) == told


@pytest.mark.parametrize(
    "text",
    [
        "Salt and pepper to taste.",
        "Do not stir.",
        "Never boil milk.",
        "It will brown at the edges.",
        "Butter, flour and sugar.",
        "The sauce tastes best cold.",
        "(do not cook them through)",
        "A soft, smooth dough.",
    ],
)
def test_talk_and_what_is_forbidden_are_no_orders(text: str) -> None:
    assert orders(text) == []


def test_what_goes_along_is_kept_apart_from_orders() -> None:
    assert [(c.verb.words, c.told) for c in clauses("Simmer for an hour, stirring often.")] == [
        ("simmer", True), ("stir", False),
    ]  # fmt: skip


def test_every_word_belongs_to_one_deed() -> None:
    text = "Chop the nuts, and in a small bowl, whisk the eggs with milk, then fold in the nuts."
    parts = [clause.doc[clause.start : clause.end].text for clause in clauses(text)]
    assert parts == [
        "Chop the nuts, and", "in a small bowl, whisk the eggs with milk, then", "fold in the nuts.",
    ]  # fmt: skip


def test_an_aside_before_an_order_goes_with_it() -> None:
    found = clauses("Fry the onions, and once they are soft, add the rice.")
    assert found[1].doc[found[1].start : found[1].end].text.startswith("once they are soft")


def test_a_shortened_word_and_brackets_end_no_sentence() -> None:
    assert len(frame(doc("Add 1 tsp. salt (fine. not coarse) and stir.")).sentences) == 1
    assert len(frame(doc("Add salt. Stir; bake.")).sentences) == 3


@pytest.mark.parametrize(
    ("word", "forms"),
    [
        ("chop", ("chopping", "chopped", "chops")),
        ("bake", ("baking", "baked", "bakes")),
        ("fry", ("frying", "fried", "fries")),
        ("mix", ("mixing", "mixed", "mixes")),
        ("heat", ("heating", "heated", "heats")),
        ("toss", ("tossing", "tossed", "tosses")),
    ],
)
def test_the_forms_of_a_verb_are_made_by_rule(word: str, forms: tuple[str, str, str]) -> None:
    assert (ing(word), ed(word), third(word)) == forms
    assert {lexicon()[form].words for form in forms} == {word}


def test_irregular_forms_are_known() -> None:
    assert lexicon()["ground"].words == "grind"
    assert lexicon()["risen"].deed == "rise"


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("Add the flour", True),
        ("Set aside to cool", True),
        ("Salt the water", True),
        ("Salt to taste", False),
        ("The flour", False),
    ],
)
def test_a_sentence_that_opens_with_an_order_is_known(text: str, order: bool) -> None:
    assert starts_with_order(text) is order


def test_the_time_is_linear_in_the_words() -> None:
    assert len(clauses("Stir it, " * 3000)) == 3000
