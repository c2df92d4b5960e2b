"""What a line leaves unsaid."""

from __future__ import annotations

import pytest

from assistant.reader.lines import read_line
from rules.recipe import Amount, Package


@pytest.mark.parametrize(
    ("name", "amounts", "text"),
    [
        ("garlic", (Amount(low=7, high=7, unit="clove"),), "7 garlic cloves"),
        ("garlic", (), "garlic cloves"),
        ("coriander leaves", (), "coriander leaves"),
        ("bay leaves", (Amount(low=2, high=2),), "2 bay leaves"),
        ("cloves", (Amount(low=5, high=5),), "5 cloves"),
        ("rolls", (Amount(low=6, high=6),), "6 rolls, split"),
        ("squash", (Amount(low=1, high=1),), "whole squash"),
        (
            "peaches",
            (Amount(low=1, high=1, unit="can", package=Package(low=29, high=29, unit="ounce")),),
            "1 29-oz canned peaches",
        ),
        ("bacon", (Amount(low=200, high=200, unit="gram"),), "200 g bacon cubes"),
    ],
)
def test_units_are_filled_in_where_the_line_means_them(
    name: str, amounts: tuple[Amount, ...], text: str
) -> None:
    item = read_line(text, line=0)[0]
    assert (name, amounts) == (item.name, item.amounts)


def test_a_shape_is_a_preparation() -> None:
    assert read_line("200 g bacon cubes", line=0)[0].prep == "cubes"


@pytest.mark.parametrize("text", ["for the river", "to taste", "chopped", "2 cups", "(optional)", "about"])
def test_a_line_of_remarks_still_has_a_name(text: str) -> None:
    assert all(item.name for item in read_line(text, line=0))
