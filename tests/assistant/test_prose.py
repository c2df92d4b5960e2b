"""Quantities in free prose: what the stock unit table of the library gets wrong is read right through our door."""

from __future__ import annotations

import subprocess
import sys

import pytest

from assistant.reader import prose
from assistant.reader.prose import Quantity, quantities, unit_of
from assistant.reader.spoken import in_figures, value


def only(text: str) -> Quantity:
    found = quantities(text)
    assert len(found) == 1, f"{text!r} holds {found}"
    return found[0]


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("bake 30 min", 30, 30),
        ("cook 30 mins. on low", 30, 30),
        ("20-25 minutes", 20, 25),
        ("20 to 25 min.", 20, 25),
        ("1½–2 hours".replace("½", " 1/2").replace("–", "-"), 90, 120),
        ("1 to 1 1/2 hours", 60, 90),
        ("1-1/2 hours", 90, 90),
        ("1h30min", 90, 90),
        ("1 hr 15 mins", 75, 75),
        ("2 hours and 30 minutes", 150, 150),
        ("an hour", 60, 60),
        ("half an hour", 30, 30),
        ("an hour and a half", 90, 90),
        ("an hour and a quarter", 75, 75),
        ("two hours and a half", 150, 150),
        ("two to two and a half hours", 120, 150),
        ("a minute or two", 1, 2),
        ("a couple of minutes", 2, 2),
        ("another 10 minutes", 10, 10),
        ("2-3 more minutes", 2, 3),
        ("45s - 1 minute", 0.75, 1),
        ("30 minutes to 1 hour", 30, 60),
        ("at least 7 hours, and up to 24 hours", 420, 1440),
        ("10-minute rest", 10, 10),
        ("twenty minutes", 20, 20),
        ("forty-five minutes", 45, 45),
        ("1h15", 75, 75),
        ("1 hr. 30 min.", 90, 90),
        ("1 and 1/2 hours", 90, 90),
        ("between 20 and 30 minutes", 20, 30),
        ("4-to-5 minutes", 4, 5),
        ("20-ish minutes", 20, 20),
        ("10+ minutes", 10, 10),
        ("two weeks", 20160, 20160),
    ],
)
def test_times_are_read_in_minutes(text: str, low: float, high: float) -> None:
    found = only(text)
    assert (found.sort, found.low, found.high) == ("time", low, high)


@pytest.mark.parametrize(
    ("text", "degrees", "unit"),
    [
        ("350F", 350, "fahrenheit"),
        ("350°F", 350, "fahrenheit"),
        ("350 degrees F", 350, "fahrenheit"),
        ("220c", 220, "celsius"),
        ("175 C", 175, "celsius"),
        ("200 degrees Celsius", 200, "celsius"),
        ("a 350 degree oven", 350, "degree"),
        ("450°", 450, "degree"),
    ],
)
def test_temperatures_are_no_farads_and_no_speeds_of_light(text: str, degrees: float, unit: str) -> None:
    found = only(text)
    assert (found.sort, found.low, found.unit) == ("temperature", degrees, unit)


def test_both_ends_of_a_range_of_degrees_are_kept() -> None:
    found = only("heat to 475 - 500 degrees F")
    assert (found.low, found.high) == (475, 500)


def test_a_figure_told_in_two_units_is_two_quantities() -> None:
    assert [(q.low, q.unit) for q in quantities("375°F (190°C)")] == [(375, "fahrenheit"), (190, "celsius")]


@pytest.mark.parametrize(
    ("text", "low", "unit"),
    [
        ("1 pinch of salt", 1, "pinch"),
        ("1/3 cup water", 1 / 3, "cup"),
        ("two pounds of beef", 2, "pound"),
        ("1.5 kg potatoes", 1.5, "kilogram"),
        ("2 cans of beans", 2, "can"),
        ("1 (14 oz)", 14, "ounce"),
    ],
)
def test_amounts_keep_the_cooks_unit(text: str, low: float, unit: str) -> None:
    found = only(text)
    assert found.sort == "amount"
    assert found.low == pytest.approx(low, abs=1e-4)
    assert found.unit == unit


@pytest.mark.parametrize(
    "text",
    [
        "add 2 eggs",
        "on one side",
        "cut in half",
        "a bit of salt",
        "large bowl 2",
        "",
        "stir well",
        "step 7",
        "at 10 to the hour",
    ],
)
def test_a_number_without_a_unit_is_no_quantity(text: str) -> None:
    assert quantities(text) == ()


def test_the_place_is_that_of_the_words() -> None:
    text = "let it stand for half an hour, then bake 20-25 minutes"
    assert [text[q.start : q.end] for q in quantities(text)] == ["half an hour", "20-25 minutes"]


def test_about_is_kept() -> None:
    assert only("about 20 minutes").approx
    assert not only("20 minutes").approx


def test_words_in_figures_keep_every_place() -> None:
    text = "two cups and an hour"
    assert len(in_figures(text)) == len(text)
    assert in_figures(text).split() == ["2", "cups", "and", "1", "hour"]


@pytest.mark.parametrize(
    ("written", "number"),
    [("2", 2.0), ("1/2", 0.5), ("1 1/2", 1.5), ("1-1/2", 1.5), ("2,5", 2.5), ("1/0", None), ("x", None)],
)
def test_numbers_as_cooks_write_them(written: str, number: float | None) -> None:
    assert value(written) == number


def test_the_library_knows_our_units_alone() -> None:
    assert unit_of("minutes at the boil") == ("minute", 7)
    assert unit_of("parsec") is None


def test_the_library_forms_the_plurals_that_the_table_lacks() -> None:
    assert "mugfuls" not in prose._spellings()
    assert unit_of("mugfuls of stock") == ("mug", 7)


def test_the_library_reads_every_spelling_of_our_table_as_we_do() -> None:
    """quantulum3 with the kitchen's units: a second reader of all of them."""
    read = prose._library().parse
    assert {form: read(f"2 {form}")[0].unit.name for form in prose._spellings()} == prose._spellings()


def test_the_library_comes_without_its_checks_and_without_its_classifier() -> None:
    """Loading keeps typeguard and joblib out and leaves no stub behind."""
    code = (
        "import sys; from assistant.reader.prose import quantities; quantities('2 mugfuls'); "
        "print('typeguard' in sys.modules, sys.modules.get('joblib'), 'sklearn' in sys.modules, "
        "sys.modules['quantulum3.classifier'].USE_CLF)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "None", "False", "False"]


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("1 c. of the cheese", [(1, "cup")]),
        ("2 T. of the butter", [(2, "tablespoon")]),
        ("1/2 t salt", [(0.5, "teaspoon")]),
        ("bake at 180 c", [(180, "celsius")]),
        ("Mark 2 or 300 F", [(300, "fahrenheit")]),
        ("in a second bowl", []),
        ("wait a second, then stir", []),
    ],
)
def test_single_letters_are_units_where_they_can_be(text: str, figures: list[tuple[float, str]]) -> None:
    assert [(found.high, found.unit) for found in quantities(text)] == figures
