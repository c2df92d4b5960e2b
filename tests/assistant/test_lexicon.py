"""An utterance cut into words with meanings."""

from __future__ import annotations

import pytest

from assistant.chat.context import Context
from assistant.chat.lexicon import MOST_CHARACTERS, Heard, hear, lexicon, spelled_out
from assistant.chat.slips import doubled, likeness, nearest


def heard(said: str) -> Heard:
    context = Context()
    return hear(said, foods=context.food_marks, known=context.known)


def texts(said: str) -> list[str]:
    return [word.text for word in heard(said).words[1:-1]]


@pytest.mark.parametrize(
    ("said", "spelled"),
    [
        ("we'll be 12", "we will be 12"),
        ("can't, won't, it's", "can not, will not, it is"),
        ("its windy", "it is windy"),
        ("dinner at 6 p.m.", "dinner at 6 pm"),
        ('a 10" pot', "a 10 inch pot"),
        ("at 8500'", "at 8500 feet"),
        ("three hours' drive", "three hours drive"),
        ("a ten-inch pot", "a ten inch pot"),
        ("all-purpose flour", "all-purpose flour"),
        ("save it as my-plan.json", "save it as my-plan.json"),
        ('keep it as "can\'t-miss"', 'keep it as "can\'t-miss"'),
        ("how mny brikets", "how many briquettes"),
        ("alergens", "allergens"),
        ("1½ times", "1 1/2 times"),
    ],
)
def test_contractions_signs_and_slips_are_spelled_out(said: str, spelled: str) -> None:
    assert spelled_out(said, known=frozenset({"all-purpose", "flour"})) == spelled


def test_polite_words_drop_out_and_phrases_hold_together() -> None:
    assert texts("Could you please tell me how many coals on the lid?") == [
        "how many",
        "coals",
        "on the lid",
        "?",
    ]


def test_a_word_may_mean_several_things() -> None:
    milk = next(word for word in heard("no milk").words if word.text == "milk")
    assert {value.kind for value in milk.values} == {"food", "allergen"}
    assert milk.value(("allergen",)) is not None
    assert milk.value(("clock",)) is None


def test_the_longest_food_wins() -> None:
    assert "sweet potatoes" in texts("sweet potatoes instead of potatoes")


def test_a_food_is_no_slip_of_another_word() -> None:
    assert texts("add dried cherries") == ["add", "dried cherries"]


def test_capitals_come_back_as_typed() -> None:
    said = heard("keep this as Friday Night")
    assert said.said(len(said.words) - 3, len(said.words) - 1) == "Friday Night"
    assert said.said(3, 3) == ""


def test_only_one_breath_is_heard() -> None:
    assert len(heard("coals " * 1000).text) <= MOST_CHARACTERS


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("chimeny", "chimney"),
        ("briquetes", "briquets"),
        ("coasl", "coal"),
        ("undoo", None),
        ("herons", None),
        ("nephew", None),
        ("cat", None),
    ],
)
def test_a_slip_is_one_letter_in_a_longer_word(word: str, meant: str | None) -> None:
    assert nearest(word, lexicon().spellings - {"undo"}) == meant


def test_two_spellings_equally_near_are_none() -> None:
    assert nearest("realy", frozenset({"ready", "really"})) is None
    assert nearest("briquete", frozenset({"briquette", "briquettes"})) == "briquette"


def test_likeness_is_full_for_the_same_words_in_any_order() -> None:
    assert likeness("how much ice", "ice how much") == 100
    assert likeness("how much ice", "undo") < 50


@pytest.mark.parametrize(
    ("word", "meant"), [("waht", "what"), ("wehn", "when"), ("plann", "plan"), ("teh", None), ("tac", None)]
)
def test_a_short_slip_is_two_letters_swapped_or_one_written_twice(word: str, meant: str | None) -> None:
    assert nearest(word, frozenset({"what", "when", "plan", "plain", "cat", "act"})) == meant


def test_a_letter_that_stands_once_where_a_food_has_it_twice_is_a_slip() -> None:
    assert doubled("chese", frozenset({"cheese", "beef"})) == "cheese"
    assert doubled("bef", frozenset({"beef"})) is None
