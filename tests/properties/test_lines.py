"""Properties of the line reader: any supported way to write an amount reads back; no text makes it raise; time is linear."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from assistant.reader.lines import LONGEST, is_tool, read_line
from assistant.reader.measures import spellings
from rules.recipe import Ingredient

VULGAR = {
    Fraction(1, 2): "½",
    Fraction(1, 3): "⅓",
    Fraction(2, 3): "⅔",
    Fraction(1, 4): "¼",
    Fraction(3, 4): "¾",
    Fraction(1, 8): "⅛",
}
MEASURES = sorted(
    (spelling, row.id)
    for spelling, row in spellings().items()
    if row.kind in ("volume", "mass") and spelling.isalpha()
)
FOODS = (
    "flour",
    "brown sugar",
    "chicken stock",
    "venison",
    "hominy",
    "sorghum syrup",
    "black beans",
    "moonbeam flakes",
)
PREPS = (
    "",
    ", chopped",
    " (chopped)",
    " - chopped",
    ", peeled and diced",
    ", cut into strips",
    " for the pot",
    ", divided",
    " (optional)",
)
BULLETS = ("", "- ", "* ", "• ", "☐ ", "1. ")


def written(value: Fraction) -> list[str]:
    """Ways to write a number."""
    whole, part = divmod(value, 1)
    if not part:
        return [str(whole)]
    ways = [f"{part.numerator}/{part.denominator}", f"{part.numerator}⁄{part.denominator}"]
    if part in VULGAR:
        ways.append(VULGAR[part])
    if not whole:
        return ways
    mixed = [f"{whole} {way}" for way in ways] + [f"{whole}-{ways[0]}", f"{whole} and {ways[0]}"]
    return mixed + ([f"{whole}{VULGAR[part]}"] if part in VULGAR else [])


NUMBERS = st.builds(
    lambda whole, part: whole + part, st.integers(0, 24), st.sampled_from([Fraction(0), *VULGAR])
).filter(bool)


def number(draw: st.DrawFn, value: Fraction) -> str:
    return draw(st.sampled_from(written(value)))


@st.composite
def amounts(draw: st.DrawFn) -> tuple[str, float, float]:
    """A figure or a range as written, with its ends."""
    low = draw(NUMBERS)
    text = number(draw, low)
    if draw(st.booleans()):
        return text, float(low), float(low)
    high = draw(NUMBERS)
    assume(high > low)
    joined = draw(st.sampled_from([" to ", " or ", "–", " - "]))
    return text + joined + number(draw, high), float(low), float(high)


def close(item: Ingredient, low: float, high: float, unit: str | None) -> None:
    main = item.amounts[0]
    assert (pytest.approx(low, abs=1e-5), pytest.approx(high, abs=1e-5), unit) == (
        main.low,
        main.high,
        main.unit,
    )


@settings(deadline=None)
@given(
    amounts(),
    st.sampled_from(MEASURES),
    st.sampled_from(FOODS),
    st.sampled_from(PREPS),
    st.sampled_from(BULLETS),
)
def test_a_measured_line_reads_back(
    amount: tuple[str, float, float], measure: tuple[str, str], food: str, prep: str, bullet: str
) -> None:
    text, low, high = amount
    spelling, unit = measure
    # A bare "c" after a figure from 30 on is a temperature, and no figure here is so great.
    item = read_line(f"{bullet}{text} {spelling} {food}{prep}", line=0)[0]
    close(item, low, high, unit)
    assert food == item.name


@settings(deadline=None)
@given(
    amounts(),
    st.sampled_from(MEASURES),
    st.sampled_from(FOODS),
    st.sampled_from([", ", ": ", " - ", " ", " ("]),
)
def test_an_amount_behind_the_food_reads_back(
    amount: tuple[str, float, float], measure: tuple[str, str], food: str, joined: str
) -> None:
    text, low, high = amount
    spelling, unit = measure
    item = read_line(f"{food}{joined}{text} {spelling}{')' if joined == ' (' else ''}", line=0)[0]
    close(item, low, high, unit)
    assert food == item.name


@settings(deadline=None)
@given(
    st.integers(1, 12),
    st.integers(1, 64),
    st.sampled_from(["oz", "ounce", "g", "ml", "lb"]),
    st.sampled_from(["can", "jar", "bag", "package", "bottle", "box"]),
    st.sampled_from(FOODS),
    st.sampled_from(
        [
            "{n} ({s} {u}) {c} {f}",
            "{n} {s}-{u} {c} {f}",
            "{n} {c} ({s} {u}) {f}",
            "{n} x {s}{u} {c} {f}",
            "{f}, {n} ({s} {u}) {c}",
            "{n} {c} {f} ({s} {u} each)",
        ]
    ),
)
def test_a_container_with_a_size_reads_back(
    count: int, size: int, unit: str, holder: str, food: str, form: str
) -> None:
    plural = holder if count == 1 else f"{holder}es" if holder == "box" else f"{holder}s"
    item = read_line(form.format(n=count, s=size, u=unit, c=plural, f=food), line=0)[0]
    close(item, count, count, holder)
    package = item.amounts[0].package
    assert package is not None
    assert (size, spellings()[unit].id, food) == (package.low, package.unit, item.name)


@settings(deadline=None)
@given(
    st.integers(1, 30),
    st.sampled_from(["large", "small", "fresh", "boneless, skinless", "finely chopped", "ripe"]),
    st.sampled_from(FOODS),
)
def test_a_count_with_a_state_reads_back(count: int, state: str, food: str) -> None:
    item = read_line(f"{count} {state} {food}", line=0)[0]
    close(item, count, count, None)
    assert food == item.name


def sound(text: str) -> None:
    found = read_line(text, line=3, component="stew")
    is_tool(text)
    assert found == read_line(text, line=3, component="stew")
    for item in found:
        assert item.name
        assert item.line == 3
        assert all(0 <= amount.low <= amount.high for amount in item.amounts)


@settings(deadline=None)
@given(st.text(max_size=120))
@example("1" * 400)
@example("(((((1 cup) or (2")
@example("½½½ ⅞/⁄ 1//2 0/0 cups")
@example("1 or or and / & + 2 of of")
def test_no_text_makes_the_reader_raise(text: str) -> None:
    sound(text)


SCRAPS = st.sampled_from(
    [
        "1",
        "2",
        "1/2",
        "½",
        "0",
        "80/20",
        "half",
        "a",
        "an",
        "dozen",
        "about",
        "or",
        "and",
        "/",
        "&",
        "+",
        ",",
        ";",
        ":",
        "-",
        "(",
        ")",
        "[",
        "]",
        ".",
        "%",
        '"',
        "°",
        "x",
        "cup",
        "oz",
        "lb",
        "can",
        "cans",
        "clove",
        "large",
        "chopped",
        "cut",
        "juice",
        "of",
        "from",
        "to",
        "taste",
        "optional",
        "plus",
        "each",
        "whole",
        "flour",
        "onion",
        "salt",
        "whole",
        "milk",
        "for",
        "the",
        "with",
    ]
)


@settings(max_examples=300, deadline=None)
@given(st.lists(SCRAPS, max_size=16), st.sampled_from([" ", ""]))
def test_no_order_of_kitchen_words_makes_the_reader_raise(scraps: list[str], gap: str) -> None:
    sound(gap.join(scraps))


@pytest.mark.parametrize(
    "scrap",
    [
        "(",
        "1 ",
        "or ",
        "a ",
        "- ",
        "1 cup ",
        "1 cup or ",
        "1 cup (",
        "salt and ",
        "1/2/",
        "flour, ",
        "very ",
        "optional ",
        "1 lb 1 oz ",
        "2 x ",
        "½",
        "*",
        "[a](",
    ],
)
def test_a_line_is_read_up_to_its_longest_and_no_further(scrap: str) -> None:
    """Pins the bound that keeps a million signs short: what lies beyond `LONGEST` changes no amount and no name."""
    long = scrap * (5 * LONGEST // len(scrap))

    def bones(text: str) -> list[tuple[str, object]]:
        return [(found.name, found.amounts) for found in read_line(text, line=0)]

    assert bones(long) == bones(scrap * (1_000_000 // len(scrap)))
    assert LONGEST <= 2000
