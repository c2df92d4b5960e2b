"""The word tables are well formed: read whole, each word once in its group, lower case, found by the cutter."""

from __future__ import annotations

import pytest

from assistant.reader import words
from assistant.reader.tokens import doc

TABLES = (
    "states.toml",
    "preparations.toml",
    "asides.toml",
    "names.toml",
    "amounts.toml",
    "tools.toml",
    "short.toml",
)
GROUPS = [
    pytest.param(group, id=f"{name} {label}")
    for name in TABLES
    for label, group in words.groups(name).items()
]


@pytest.mark.parametrize("group", GROUPS)
def test_a_group_has_every_word_once_and_in_lower_case(group: tuple[str, ...]) -> None:
    assert group
    assert len(set(group)) == len(group)
    assert [word for word in group if word != word.lower() or word != word.strip()] == []


@pytest.mark.parametrize("group", GROUPS)
def test_every_word_is_cut_into_tokens(group: tuple[str, ...]) -> None:
    assert all(len(doc(word)) for word in group)


def test_a_group_says_what_its_words_have_in_common() -> None:
    for name in TABLES:
        for group in words.load(name, dict[str, words.Group]).values():
            assert group.what
