"""What the reader does to characters before it reads a line."""

from __future__ import annotations

import time

import pytest

from assistant.reader import clean


def test_lines_are_split_at_newlines_alone_and_keep_their_numbers() -> None:
    assert clean.lines("\ufeffone\r\n\r\ntwo\x0bthree\u2028four\n") == ["one", "", "twothree\u2028four", ""]


@pytest.mark.parametrize(
    ("shown", "written"),
    [
        ("1 cup milk", "\x1b[31;1m1 cup\x1b[0m milk"),
        ("milk", "\x1b]0;a new title\x07milk"),
        ("1 cup milk", "1 \u202ecup\u202c milk\u200b"),
        ("1 cup milk", "1\tcup\x00 milk"),
        ("½ cup crème", "½ cup crème"),
    ],
)
def test_a_line_is_safe_to_show_and_otherwise_as_written(shown: str, written: str) -> None:
    assert shown == clean.safe(written)


@pytest.mark.parametrize(
    ("meant", "written"),
    [
        ("1 1/2 cups", "1½ cups"),
        ("1 1/2 cups", "1 ½ cups"),
        ("1 1/2 cups", "1&frac12; cups"),
        ("1/2-1 cup", "½–1 cup"),
        ("1/2 cup", "1⁄2 cup"),
        ("1/2 cup", "¹⁄₂ cup"),
        ("1 1/2 cups", "1¹⁄₂ cups"),
        ("7/8 in", "⅞ in"),
        ("1 tbsp oil", "1\u00a0tbsp\u202foil"),
        ("2-3 cups", "2‒3 cups"),
        ("2 - 3 cups", "2—3 cups"),
        ("350°F, 180°C, 180°C, 200°C", "350℉, 180℃, 180º\u200bC, 200˚C"),
        ("9x13 in", "9×13 in"),
        ("baker's yeast", "baker’s yeast"),
        ('a 2" piece', "a 2″ piece"),
        ("~150 g", "≈150 g"),
        ("jalapeño", "jalapen\u0303o"),
        ("flour", "ｆｌｏｕｒ"),
        ("2 eggs", "2 eggs 🥚"),
        ("salt & pepper", "salt &amp; pepper"),
    ],
)
def test_characters_are_written_one_way(meant: str, written: str) -> None:
    assert meant == clean.plain(written)


@pytest.mark.parametrize(
    ("meant", "written"),
    [
        ("90 g young starter (river)", "90 g young [starter](/starter) (river)"),
        ("sauce", '[sauce](/sauce "ours")'),
        ("milk", "milk ![a jug](jug.jpg)"),
        ("milk and honey", "**milk** and _honey_"),
        ("250g of wild garlic", "250g of *wild* garlic"),
        ("2 cups flour", "2 cups flour*"),
        ("2 cups flour", "2 cups flour¹"),
        ("2 cups flour", "2 cups flour[1]"),
        ("2 cups flour", "2 cups flour[^sifted]"),
        ("2 x 400 g tins", "2*400 g tins"),
        ("milk", "milk<br/>"),
        ("flour (strong)", "flour (strong) https://example.org/a_b_c"),
        ("cream or milk", "~~cream~~ or `milk`"),
        ("snake_case", "snake_case"),
    ],
)
def test_markup_is_taken_off(meant: str, written: str) -> None:
    assert meant == clean.plain(written)


@pytest.mark.parametrize(
    "sign", ["(", "[", "*", "<", "![", "[a](", "½", "\x1b[", "1", "a", "&", "[^", "www.", "_"]
)
def test_a_megabyte_of_one_sign_is_cleaned_in_time(sign: str) -> None:
    """Pins linear time: a quadratic step would take hours here."""
    text = (sign * (1_000_000 // len(sign)))[:1_000_000]
    started = time.perf_counter()
    clean.plain(text)
    assert time.perf_counter() - started < 20


def test_a_run_without_blanks_is_broken() -> None:
    assert max(len(word) for word in clean.plain("a" * 1000).split()) <= 200
