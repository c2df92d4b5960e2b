"""The characters of a pasted text: made safe to show, written one way, freed of markup; line numbers are kept.

Three strengths, each over one line: `safe` drops only what a terminal or a reader of mixed scripts could be tricked
with; `characters` also writes dashes, quotes, blanks and fractions one way; `plain` also takes off Markdown, emoji
and footnote marks. Bullets are left to `marks.py`, what a
line means to `sections.py` and `lines.py`.
"""

from __future__ import annotations

import html
import re
import unicodedata
from functools import cache

import msgspec

from assistant.reader import words

#: Colours, titles and cursor moves sent to a terminal: CSI and OSC sequences of ECMA-48.
TERMINAL = re.compile(r"\x1b\[[0-?]{0,64}[ -/]{0,8}[@-~]|\x1b\][^\x07\x1b]{0,256}(?:\x07|\x1b\\)")
#: A picture inside the text, as word processors write it into Markdown.
PICTURE = re.compile(r"data:[a-z]{1,20}/[\w.+-]{1,40};base64,[\w+/=]{0,2000000}", re.IGNORECASE)
#: Nobody writes a word of this length; a longer run is broken, so that nothing after it works on it as one word.
LONG_RUN = re.compile(r"\S{200}(?=\S)")
STACKED_FRACTION = re.compile(r"([⁰¹²³⁴-⁹]{1,3})[⁄/]([₀-₉]{1,3})")
PLAIN_DIGITS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")

IMAGE = re.compile(r"!\[[^\[\]]{0,300}\]\([^()\s]{0,600}(?: \"[^\"]{0,200}\")?\)")
LINK = re.compile(r"\[([^\[\]]{1,300})\](?:\([^()\s]{0,600}(?: \"[^\"]{0,200}\")?\)|\[[^\[\]]{0,100}\])")
FOOTNOTE = re.compile(r"\[\^[^\[\]\s]{1,20}\]|(?<=\w)\[\w{1,2}\]|(?<=[^\W\d_])[⁰¹²³⁴-⁹]{1,2}|[†‡§]")
ADDRESS = re.compile(r"<?\b(?:https?://|www\.)[^\s<>()]{1,2000}>?")
TAG = re.compile(r"</?[a-zA-Z][^<>]{0,300}>")
#: "w/ sugar", "w/sugar", "w/o salt".
WITH = re.compile(r"\bw/(?:o\b)?", re.IGNORECASE)
STRUCK = re.compile(r"~~")
TIMES = re.compile(r"(?<=\d) ?\* ?(?=\d)")
EMPHASIS = re.compile(r"\*{1,3}|(?<!\w)_{1,3}|_{1,3}(?!\w)|`{1,3}")
EMPTY_BRACKETS = re.compile(r"\( ?\)|\[ ?\]")
BLANKS = re.compile(r"\s{1,1000}")


class Characters(msgspec.Struct, frozen=True, forbid_unknown_fields=True, rename={"from_": "from"}):
    """Characters that are written `to` in a cleaned line."""

    what: str
    to: str
    from_: str


class Table(dict[int, str]):
    """`str.translate` table: the word table's characters, and for all others a rule by their Unicode category."""

    def __missing__(self, code: int) -> str:
        """Blanks become a blank, controls, private signs and pictures nothing, full-width forms their narrow one."""
        character = chr(code)
        category = unicodedata.category(character)
        if character == "\t" or category.startswith("Z"):
            written = " "
        elif 0xFF01 <= code <= 0xFF5E:
            written = chr(code - 0xFEE0)
        elif (
            (category in {"Cc", "Cf", "Cs", "Co", "Cn", "So", "Sk"} and code > 0x7F)
            or category == "Cc"
            or 0xFE00 <= code <= 0xFE0F
        ):
            written = ""
        else:
            written = character
        self[code] = written
        return written


@cache
def table() -> Table:
    """The one translation table, filled as characters turn up."""
    groups = words.load("characters.toml", dict[str, Characters])
    return Table({ord(character): group.to for group in groups.values() for character in group.from_})


@cache
def _after_a_digit() -> re.Pattern[str]:
    """A vulgar fraction that a whole number stands before, without a blank: 1½."""
    groups = words.load("characters.toml", dict[str, Characters]).values()
    fractions = "".join(group.from_ for group in groups if group.what == "vulgar fraction")
    return re.compile(f"(?<=[0-9])(?=[{fractions}])")


def lines(text: str) -> list[str]:
    """The lines of a text, numbered as in the source (split at newlines alone), each `safe`."""
    return [safe(line) for line in text.removeprefix("\ufeff").split("\n")]


def safe(line: str) -> str:
    """The line as written, without terminal escapes, controls, direction marks and invisible characters."""
    line = line.removesuffix("\r")
    if "base64," in line:
        line = PICTURE.sub("", line)
    if line.isascii() and line.isprintable():
        return line
    line = TERMINAL.sub("", line).replace("\t", " ").replace("\r", " ")
    return "".join(
        character for character in line if unicodedata.category(character) not in {"Cc", "Cf", "Cs", "Co"}
    )


def characters(line: str) -> str:
    """The line with its characters written one way; fractions as 1/2, and 1½ as 1 1/2."""
    if "&" in line:
        line = html.unescape(line)
    if not line.isascii():
        line = STACKED_FRACTION.sub(_unstacked, line)
        line = _after_a_digit().sub(" ", line)
    if not line.isascii() or not line.isprintable():
        line = unicodedata.normalize("NFC", TERMINAL.sub("", line).translate(table()))
    if len(line) > 200:
        line = LONG_RUN.sub(r"\g<0> ", line)
    return line


def _unstacked(found: re.Match[str]) -> str:
    above, below = (part.translate(PLAIN_DIGITS) for part in found.groups())
    return f" {above}/{below}"


def plain(line: str) -> str:
    """The words of the line alone: `characters`, markup taken off, single blanks."""
    # Footnote marks first: as characters of their own they would be read as digits or lost unseen.
    if not line.isascii():
        line = STACKED_FRACTION.sub(_unstacked, line)
    if not line.isascii() or "[" in line:
        line = LINK.sub(r"\1", IMAGE.sub(" ", line))
        line = FOOTNOTE.sub("", line)
    line = characters(line)
    if "w/" in line:
        line = WITH.sub(lambda found: "without" if found[0].endswith("o") else "with ", line)
    if "<" in line or "://" in line or "www." in line:
        line = TAG.sub(" ", ADDRESS.sub("", line))
    if "*" in line or "_" in line or "`" in line or "~~" in line:
        line = TIMES.sub(" x ", line)
        line = EMPHASIS.sub("", STRUCK.sub("", line))
    return BLANKS.sub(" ", EMPTY_BRACKETS.sub("", line)).strip()
