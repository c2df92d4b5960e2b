"""Safe inside temperatures against the published chart.

Safe Minimum Internal Temperatures chart, FoodSafety.gov (HHS and USDA FSIS), page dated 12 Apr 2019 or later. No
tolerance: a limit is a limit.
"""

from __future__ import annotations

import pytest

from rules.coals.doneness import safe, signs

PRINTED = {
    "poultry": 165, "ground poultry": 165, "ground meat": 160, "meat": 145, "fish": 145, "egg dish": 160,
    "leftovers": 165, "ham": 140,
}  # fmt: skip


@pytest.mark.parametrize("food", PRINTED)
def test_the_limit_is_the_printed_one(food: str) -> None:
    assert safe(food).temp_f == PRINTED[food]
    assert safe(food).basis == "published"


def test_whole_cuts_rest_three_minutes() -> None:
    """The same chart: beef, veal, lamb, pork, whole cuts 145 °F and a rest of 3 minutes."""
    assert safe("meat").rest_min == 3


def test_casseroles_reach_what_leftovers_reach() -> None:
    """The same chart: casseroles 165 °F."""
    assert signs()["casserole or layered bake"].temp_f == 165
