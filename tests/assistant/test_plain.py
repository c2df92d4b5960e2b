"""Nothing in a stranger's text steers a terminal."""

from __future__ import annotations

import codecs
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.show.plain import escaped, in_ascii, one_line, printable

STEERING = [
    *map(chr, range(32)),
    *map(chr, range(0x7F, 0xA0)),
    *"\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u2028\u2029\ufeff",
]


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("\x1b[31mred\x1b[0m butter", "red butter"),
        ("\x1b]0;title\x07sugar", "sugar"),
        ("\x1b]8;;http://x\x1b\\link", "link"),
        ("\x9b2Jmilk", "2Jmilk"),
        ("salt\u202egge", "saltgge"),
        ("a\r\nb\rc", "a\nb\nc"),
        ("1 cup\tflour\n", "1 cup\tflour\n"),
    ],
    ids=["colour", "title", "link", "one-byte escape", "turned", "line ends", "tab and newline stay"],
)
def test_escapes_and_direction_signs_are_taken_out(text: str, left: str) -> None:
    assert left == printable(text)


@given(st.text(alphabet=st.sampled_from([*STEERING, "a", "[", "m", "é"]), max_size=60))
def test_no_steering_sign_is_left_whatever_the_text(text: str) -> None:
    assert not set(printable(text)) & (set(STEERING) - {"\t", "\n"})


@given(st.text(max_size=80))
def test_escaped_json_says_the_same_and_steers_nothing(text: str) -> None:
    line = escaped(json.dumps({"text": text}, ensure_ascii=False))
    assert {"text": text} == json.loads(line)
    assert not set(line) & set(STEERING)


def test_one_line_is_one_line_and_short() -> None:
    assert one_line(" a\n\n b ") == "a b"
    assert len(one_line("x" * 50, most=10)) == 10
    assert one_line("x" * 50, most=10).endswith("…")


def test_where_a_terminal_knows_ascii_alone_signs_keep_their_look() -> None:
    codecs.register_error("in ascii", in_ascii)
    assert (
        "17 ● at 350 °F, ½ cup crème ▔▔ 粉".encode("ascii", "in ascii")
        == b"17 o at 350 deg F, 1/2 cup creme == ?"
    )
