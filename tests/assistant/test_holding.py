"""What a further amount is the size of."""

from __future__ import annotations

import pytest

from assistant.reader.holding import is_size_of, is_size_of_one, packed
from rules.recipe import Amount, Package


def amount(value: float, unit: str | None = None) -> Amount:
    return Amount(low=value, high=value, unit=unit)


@pytest.mark.parametrize(
    ("main", "size", "each", "holds"),
    [
        (amount(2, "can"), amount(15, "ounce"), False, True),
        (amount(4), amount(120, "gram"), True, True),
        (amount(4), amount(480, "gram"), False, False),
        (amount(1), amount(2, "kilogram"), True, False),
        (amount(2, "envelope"), amount(4.5, "teaspoon"), False, False),
        (amount(2, "envelope"), amount(2.25, "teaspoon"), True, True),
        (amount(2, "can"), amount(2), False, False),
    ],
)
def test_containers_hold_a_size_and_counted_things_do_where_each_is_said(
    main: Amount, size: Amount, each: bool, holds: bool
) -> None:
    assert is_size_of(main, size, each=each, sure=True) is holds


def test_a_thing_with_a_size_takes_no_second_one() -> None:
    main = packed(amount(2, "can"), amount(15, "ounce"))
    assert main.package == Package(low=15, high=15, unit="ounce")
    assert not is_size_of(main, amount(400, "gram"), each=True, sure=True)


@pytest.mark.parametrize(
    ("name", "count", "size", "of_one"),
    [
        ("cream cheese", amount(2, "package"), amount(8, "ounce"), True),
        ("cream cheese", amount(2, "package"), amount(16, "ounce"), False),
        ("tomatoes", amount(3, "can"), amount(14, "ounce"), True),
        ("moonbeam flakes", amount(3, "box"), amount(900, "gram"), True),
    ],
)
def test_the_catalogue_tells_the_size_of_one_from_that_of_all(
    name: str, count: Amount, size: Amount, of_one: bool
) -> None:
    assert is_size_of_one([name], count, size) is of_one
