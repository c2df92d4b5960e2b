"""Values said by a name or in another measure."""

from __future__ import annotations

import pytest

from assistant.chat.spoken import named


@pytest.mark.parametrize(
    ("said", "kind", "value"),
    [
        ("gas mark 6", "degrees", 400.0),
        ("mark 4", "degrees", 350.0),
        ("low forties", "air", 42.0),
        ("mid - 50 s", "air", 55.0),
        ("20s", "air", 25.0),
        ("25 mph", "wind", "windy"),
        ("5 knots", "wind", "calm"),
        ("15 km / h", "wind", "breezy"),
        ("30 cm", "inches", 12.0),
        ("6 quart pot", "inches", 12.0),
        ("4 quart dutch oven", "inches", 10.0),
    ],
)
def test_a_name_or_a_foreign_measure_is_a_value(said: str, kind: str, value: float | str) -> None:
    """Gas marks, wind speeds and pot volumes are those of the rules' tables; a ten stands for its middle."""
    heard = named(said.split(), 0)
    assert heard is not None
    assert (heard.kind, heard.value) == (kind, value)
    assert heard.end == len(said.removesuffix(" pot").removesuffix(" dutch oven").split())


@pytest.mark.parametrize("said", ["6 quart cooler", "gas", "a mile", "gas mark 77", "7 quart pot"])
def test_other_words_are_none(said: str) -> None:
    assert named(said.split(), 0) is None
