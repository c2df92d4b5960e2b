"""The bones of a text: sentences, asides, brackets."""

from __future__ import annotations

import pytest

from assistant.reader.frame import frame
from assistant.reader.tokens import doc


def sentences(text: str) -> list[str]:
    bones = frame(doc(text))
    return [doc(text)[start:end].text for start, end in bones.sentences]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Mix it. Bake it.", 2),
        ("Mix it; bake it.", 2),
        ("Add 2 tsp. salt and stir.", 1),
        ("Bake 375 deg. 40 min.", 1),
        ("Add 2 oz. Then stir.", 2),
        ("Mix (do not beat. really) and bake.", 1),
        ("Stir! Bake.", 2),
    ],
)
def test_a_dot_ends_a_sentence_where_it_is_no_abbreviation(text: str, count: int) -> None:
    assert len(sentences(text)) == count


@pytest.mark.parametrize(
    ("text", "aside"),
    [
        ("Fry until the onions are soft, then stir.", "until the onions are soft"),
        ("Stir as needed and bake.", ""),
        ("When it boils, stir.", "When it boils"),
        ("Cook as low as possible and stir.", "as low as possible"),
    ],
)
def test_an_aside_tells_when_or_how_far(text: str, aside: str) -> None:
    bones = frame(doc(text))
    assert " ".join(doc(text)[at].text for at in sorted(bones.asides)) == aside


def test_what_stands_in_brackets_is_known() -> None:
    bones = frame(doc("Mix the flour (about two cups) with the milk and bake."))
    assert sorted(bones.low[at] for at in bones.brackets) == ["about", "cups", "two"]
