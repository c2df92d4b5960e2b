"""The phrases by which a clause is looked at: whole words, and beginnings of words."""

from __future__ import annotations

import pytest

from assistant.reader.look import Look, pattern
from assistant.reader.places import Place
from assistant.reader.scene import Scene


@pytest.mark.parametrize(
    ("group", "said", "found"),
    [
        ("boils", "bring it to a boil", True),
        ("boils", "bring it to a boiler", False),
        ("starchy", "cook the noodles", True),
        ("soft", "until softened", True),
        ("under_grill", "under a hot grill", True),
        ("under_grill", "under the lid", False),
        ("minutes", "give it ten minutes", True),
    ],
)
def test_a_phrase_is_found_as_a_word_or_as_its_beginning(group: str, said: str, found: bool) -> None:
    assert (pattern(group).search(said) is not None) is found


def test_a_clause_says_and_its_asides_only_tell() -> None:
    oven = Place("oven", "oven", False, 0, 1, False, True)
    look = Look(
        verb="put",
        deed="add",
        said="put it in the oven",
        all="put it in the oven until boiling",
        after="it in the oven",
        place=oven,
        places=(oven,),
        roles=frozenset(),
        heat=None,
        warm=False,
        scene=Scene(),
    )
    assert look.tells("boils")
    assert not look.says("boils")
    assert look.into("oven")
    assert not look.into("pan", "pot")
    assert look.one_of("lays")
