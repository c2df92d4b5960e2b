"""Text from strangers made fit for a terminal.

Recipe text may hold escape sequences, other control characters and signs that turn the writing direction; none of
them may reach a terminal. Everything that is shown passes through here once.
"""

from __future__ import annotations

import re
import unicodedata

#: C0 without tab and newline, delete and C1; direction marks and overrides; line separators; invisible signs; tags.
_UNFIT = (
    "\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\ud800-\udfff\U000e0000-\U000e007f"
)
_ESCAPES = re.compile(
    r"\x1b\[[0-?]{0,40}[ -/]{0,8}[@-~]|\x1b[\]PX^_][^\x07\x1b]{0,200}(?:\x07|\x1b\\)|\x1b[ -/]{0,4}[0-~]"
)
_UNFIT_SIGNS = re.compile(f"[{_UNFIT}]")
_LINE_ENDS = re.compile(r"\r\n?")


def printable(text: str) -> str:
    """The text without escape sequences, control characters and direction signs; tabs and newlines stay."""
    if text.isascii() and text.isprintable():
        return text
    return _UNFIT_SIGNS.sub("", _ESCAPES.sub("", _LINE_ENDS.sub("\n", text)))


def one_line(text: str, most: int = 200) -> str:
    """The text on one line, cut with an ellipsis when it is longer than `most`."""
    line = " ".join(printable(text).split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def escaped(json_text: str) -> str:
    """JSON whose strings hold no unfit sign in the open: each becomes an escape, so the data stays the same."""
    if json_text.isprintable() or (json_text.isascii() and "\x7f" not in json_text):
        return json_text
    return _UNFIT_SIGNS.sub(_as_escape, json_text)


def _as_escape(found: re.Match[str]) -> str:
    sign = found[0]
    if sign == "\r":  # between tokens, never inside a string
        return sign
    units = sign.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[i] << 8 | units[i + 1]:04x}" for i in range(0, len(units), 2))


#: How the signs that are drawn here look where a terminal knows ASCII alone.
_IN_ASCII = {
    "●": "o",
    "·": ".",
    "▔": "=",
    "°": "deg ",
    "–": "-",
    "—": "-",
    "…": "...",
    "×": "x",
    "’": "'",
    "“": '"',
    "”": '"',
}


def in_ascii(error: UnicodeError) -> tuple[str, int]:
    """A handler for `codecs.register_error`: what an encoding lacks, by its plain look, letters without their marks."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    signs = error.object[error.start : error.end]
    plain = (_IN_ASCII.get(sign) or unicodedata.normalize("NFKD", sign).replace("⁄", "/") for sign in signs)
    return "".join("".join(c for c in told if c.isascii()) or "?" for told in plain), error.end
