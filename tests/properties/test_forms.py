"""Properties of the line reader, form by form: what is written in any supported form reads back with amounts and names.

The plain forms (number, unit, food, range, container) are in `test_lines.py`; here are spoken numbers, hedges, fullness,
decimals, the same amount said twice, sums, foods together or instead of another, remarks and decoration.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.reader.lines import read_line
from rules.recipe import Amount

FOODS = st.sampled_from(
    ["flour", "brown sugar", "chicken stock", "hominy", "black beans", "moonbeam flakes", "butter"]
)
#: Foods that stand in no compound with each other.
APART = ["leeks", "paprika", "hominy", "venison", "butter", "raisins"]
PAIRS = st.permutations(APART).map(lambda foods: (foods[0], foods[1]))
UNITS = st.sampled_from(
    [
        ("cups", "cup"),
        ("tbsp", "tablespoon"),
        ("tsp.", "teaspoon"),
        ("oz", "ounce"),
        ("lb", "pound"),
        ("g", "gram"),
    ]
)
METRIC = st.sampled_from(
    [("g", "gram"), ("ml", "milliliter"), ("grams", "gram"), ("kg", "kilogram"), ("dl", "deciliter")]
)
SPOKEN = {
    "one": 1, "two": 2, "three": 3, "twelve": 12, "twenty-five": 25, "a dozen": 12, "half a dozen": 6, "half": 0.5,
    "one and a half": 1.5, "two and a half": 2.5, "three quarters": 0.75, "a couple": 2, "two and three quarters": 2.75,
}  # fmt: skip


def same(amount: Amount, low: float, unit: str | None, high: float | None = None) -> None:
    assert (pytest.approx(low, abs=1e-5), pytest.approx(high or low, abs=1e-5), unit) == (
        amount.low,
        amount.high,
        amount.unit,
    )


@settings(deadline=None)
@given(
    st.sampled_from(sorted(SPOKEN)),
    st.sampled_from([("cups", "cup"), ("pounds", "pound"), ("tablespoons", "tablespoon")]),
    FOODS,
    st.booleans(),
)
def test_numbers_in_words_read_back(said: str, unit: tuple[str, str], food: str, shouted: bool) -> None:
    line = f"{said} {unit[0]} {food}"
    item = read_line(line.capitalize() if shouted else line, line=0)[0]
    same(item.amounts[0], SPOKEN[said], unit[1])
    assert item.name == food


@settings(deadline=None)
@given(
    st.sampled_from(["a quarter", "half", "a third", "three quarters"]),
    st.sampled_from([" of a", " a", " of an"]),
    FOODS,
)
def test_a_part_of_one_unit_reads_back(part: str, joined: str, food: str) -> None:
    worth = {"a quarter": 0.25, "half": 0.5, "a third": 1 / 3, "three quarters": 0.75}[part]
    unit = "ounce" if joined.endswith("an") else "pound"
    item = read_line(f"{part}{joined} {unit} of {food}", line=0)[0]
    same(item.amounts[0], worth, unit)
    assert item.name == food


@settings(deadline=None)
@given(
    st.integers(1, 24),
    UNITS,
    FOODS,
    st.sampled_from(["about {}", "approx. {}", "~{}", "roughly {}", "ca. {}", "{} or so"]),
)
def test_an_estimate_reads_back_as_one(count: int, unit: tuple[str, str], food: str, form: str) -> None:
    item = read_line(f"{form.format(f'{count} {unit[0]}')} {food}", line=0)[0]
    same(item.amounts[0], count, unit[1])
    assert item.amounts[0].approx
    assert item.name == food


@settings(deadline=None)
@given(
    st.integers(1, 9), st.sampled_from(["heaping", "heaped", "scant", "level", "rounded", "generous"]), FOODS
)
def test_how_full_a_spoon_is_changes_no_figure(count: int, full: str, food: str) -> None:
    item = read_line(f"{count} {full} tablespoons {food}", line=0)[0]
    same(item.amounts[0], count, "tablespoon")
    assert (item.name, item.notes) == (food, full)


@settings(deadline=None)
@given(st.integers(0, 40), st.integers(1, 99), METRIC, FOODS, st.sampled_from([",", "."]))
def test_decimals_read_back_with_either_sign(
    whole: int, part: int, unit: tuple[str, str], food: str, sign: str
) -> None:
    item = read_line(f"{whole}{sign}{part:02d} {unit[0]} {food}", line=0)[0]
    same(item.amounts[0], whole + part / 100, unit[1])
    assert item.name == food


@settings(deadline=None)
@given(
    st.integers(1, 8),
    st.integers(9, 900),
    METRIC,
    FOODS,
    st.sampled_from(
        [
            "{a} ({b}) {f}",
            "{a}/{b} {f}",
            "{a} / {b} {f}",
            "{a} [{b}] {f}",
            "{a} {f} ({b})",
            "{f}, {a} ({b})",
            "{a} or {b} {f}",
            "{a} = {b} {f}",
        ]
    ),
)
def test_the_same_amount_said_twice_reads_back_twice(
    cups: int, other: int, unit: tuple[str, str], food: str, form: str
) -> None:
    line = form.format(a=f"{cups} cups", b=f"{other} {unit[0]}", f=food)
    item = read_line(line, line=0)[0]
    same(item.amounts[0], cups, "cup")
    same(item.amounts[1], other, unit[1])
    assert item.name == food


@settings(deadline=None)
@given(st.integers(1, 8), st.integers(1, 3), FOODS, st.sampled_from(["plus", "+", "and"]))
def test_a_sum_reads_back_as_both_amounts(cups: int, spoons: int, food: str, joined: str) -> None:
    item = read_line(f"{cups} cups {joined} {spoons} tablespoons {food}", line=0)[0]
    same(item.amounts[0], cups, "cup")
    same(item.amounts[1], spoons, "tablespoon")
    assert item.amounts[1].plus
    assert item.name == food


@settings(deadline=None)
@given(
    PAIRS,
    st.sampled_from([" and ", " & ", " or ", "/", " / "]),
    st.sampled_from(["", "2 cups ", "a handful of "]),
)
def test_two_foods_are_wanted_together_or_one_for_the_other(
    foods: tuple[str, str], joined: str, amount: str
) -> None:
    found = read_line(f"{amount}{foods[0]}{joined}{foods[1]}", line=0)
    if joined in (" and ", " & "):
        assert [item.name for item in found] == list(foods)
    else:
        assert [item.name for item in found] == [foods[0]]
        assert found[0].alternatives == (foods[1],)


@settings(deadline=None)
@given(
    PAIRS,
    st.integers(1, 9),
    st.sampled_from(
        ["{n} tsp each {a} and {b}", "{n} tsp each: {a}, {b}", "{n} teaspoons each of {a} & {b}"]
    ),
)
def test_each_gives_every_food_the_amount(foods: tuple[str, str], count: int, form: str) -> None:
    found = read_line(form.format(n=count, a=foods[0], b=foods[1]), line=0)
    assert [item.name for item in found] == list(foods)
    for item in found:
        same(item.amounts[0], count, "teaspoon")


@settings(deadline=None)
@given(PAIRS, st.integers(1, 9), st.integers(1, 9))
def test_two_foods_with_amounts_of_their_own_read_back(
    foods: tuple[str, str], first: int, second: int
) -> None:
    found = read_line(f"{first} cups {foods[0]} and {second} oz {foods[1]}", line=0)
    assert [item.name for item in found] == list(foods)
    same(found[0].amounts[0], first, "cup")
    same(found[1].amounts[0], second, "ounce")


@settings(deadline=None)
@given(
    st.integers(1, 6),
    st.sampled_from(["lemon", "orange", "lime"]),
    st.sampled_from(
        ["juice of {}", "Juice of {}", "zest of {}", "grated zest of {}", "juice and zest of {}"]
    ),
)
def test_what_is_taken_of_a_fruit_counts_the_fruit(count: int, fruit: str, form: str) -> None:
    plural = fruit if count == 1 else f"{fruit}s"
    item = read_line(form.format(f"{count} {plural}"), line=0)[0]
    same(item.amounts[0], count, None)
    assert item.name == plural
    assert form.lower().split()[-3 if " and " not in form else 0] in (item.prep or "")


@settings(deadline=None)
@given(
    st.integers(1, 9),
    FOODS,
    st.sampled_from(
        [
            ("{}, optional", True, False),
            ("{} (optional)", True, False),
            ("(optional) {}", True, False),
            ("optional: {}", True, False),
            ("{}, to taste", False, True),
            ("{}, or to taste", False, True),
            ("{}, for greasing", False, False),
            ("{}, divided", False, False),
            ("{}, plus more for dusting", False, False),
        ]
    ),
)
def test_remarks_read_back_and_change_neither_amount_nor_name(
    count: int, food: str, remark: tuple[str, bool, bool]
) -> None:
    form, optional, taste = remark
    item = read_line(form.format(f"{count} cups {food}"), line=0)[0]
    same(item.amounts[0], count, "cup")
    assert (item.name, item.optional, item.to_taste) == (food, optional, taste)


@settings(deadline=None)
@given(
    st.integers(1, 9),
    FOODS,
    st.sampled_from(
        [
            "- [ ] {a} {f}",
            "* **{a}** {f}",
            "*{a}* _{f}_",
            "{a} [{f}](https://river.example/f)",
            "\N{FISH} {a} {f}",
            "{a} {f}\u2020",
            "{a} {f}[1]",
            "1. {a} {f}",
            "| {a} | {f} |",
            "\u25a2 {a} {f}",
            "\u00a0\u2009{a}\u00a0{f}\u200b",
            "{a} {f}.",
            "> - {a} {f}",
        ]
    ),
)
def test_decoration_changes_nothing(count: int, food: str, form: str) -> None:
    plain = read_line(f"{count} cups {food}", line=0)[0]
    found = read_line(form.format(a=f"{count} cups", f=food), line=0)
    assert [(item.name, item.amounts, item.food) for item in found] == [
        (plain.name, plain.amounts, plain.food)
    ]


@settings(deadline=None)
@given(st.fractions(Fraction(1, 8), 9, max_denominator=8), st.sampled_from(["cups", "pounds"]), FOODS)
def test_any_kitchen_fraction_reads_back(value: Fraction, unit: str, food: str) -> None:
    whole, part = divmod(value, 1)
    said = " ".join(
        ([str(whole)] if whole else []) + ([f"{part.numerator}/{part.denominator}"] if part else [])
    )
    item = read_line(f"{said} {unit} {food}", line=0)[0]
    same(item.amounts[0], float(value), unit.removesuffix("s"))
    assert item.name == food
