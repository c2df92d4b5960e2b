"""The marks of a line: quoting, indent, bullet or number, heading signs; and the plain words behind them."""

from __future__ import annotations

import re
from typing import NamedTuple

from assistant.reader.clean import characters, plain

QUOTED = re.compile(r"(?:\s{0,8}>){1,8}\s?")
BULLET = re.compile(r"[-*+•–—‣◦▪▫●○·∙■□☐☑✓✔➤►▶→>](?:\s+|(?=[^\W_]))|\[[ xX]?\]\s+")
NUMBER = re.compile(
    # "(2) 14 oz cans" and "2 - eggs" are counts.
    r"(?!\(\d{1,2}\)\s{1,4}(?-i:[a-z\d]))\(?(?:step\s{0,3})?(\d{1,2})(?:\s{0,2}[.):]\)?(?=\s|$|[A-Z])|\s-\s(?=(?-i:[A-Z])))\s{0,8}"
    r"|(?:step)\s{0,3}(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten)\b\s{0,3}[.):-]?\s{0,8}"
    r"|\(?[a-h][.)]\s+",
    re.IGNORECASE,
)
#: A line in italics is no list item: "*Best with fresh milk.*".
ITALIC = re.compile(r"([*_])(?=[^\s*_])[^*_]{1,400}\1\W{0,2}$")
#: A row of a table: its cells, between bars; and the row of dashes under its head.
ROW = re.compile(r"\|.{1,600}\|\s*$")
RULE_ROW = re.compile(r"\|[\s:|-]{1,300}\|?\s*$")
#: A number whose dot is escaped is a number too.
ESCAPED = re.compile(r"(?<=\d)\\(?=[.)])")
HEADING = re.compile(r"(#{1,6})\s{0,4}(?=[^#\s])")
BOLD = re.compile(r"(\*\*|__)(?=\S)[^*_]{1,120}(?<=\S)\1\s{0,2}:?$")
#: A few words in italics that stand alone are a sub-heading: "*Cake*".
ITALIC_HEADING = re.compile(r"([*_])(?=[A-Z])[^*_.,!?\d]{2,40}(?<=[^\s])\1\s{0,2}:?$")
UNDERLINE = re.compile(r"(?:={3,}|-{3,}|~{3,})\s*$")
#: Two columns of foods side by side: "500 g mince          60 g butter".
COLUMNS = re.compile(r"(?<=[a-z)])(?: {4,80}|\t{1,8})(?=\d)")
#: What stands over a post or opens a letter is no title.
POSTED = re.compile(
    r"(?:posted|submitted|written|shared|uploaded|sent) (?:by|on)\b|(?:hi|hello|hey|dear)\b.{0,40}$|on .{4,60} wrote:?$",
    re.IGNORECASE,
)
IMAGE_ONLY = re.compile(r"!\[[^\]]{0,300}\]\([^)]{0,900}\)$")


class Marked(NamedTuple):
    """A line taken apart."""

    number: int
    raw: str
    indent: int
    #: "" for none, "-" for any bullet, "1" for any number
    bullet: str
    #: 0 for none, 1 to 6 as written with #, 7 for a line that is bold as a whole
    level: int
    body: str

    @property
    def colon(self) -> bool:
        """Whether it ends with a colon."""
        return self.body.endswith(":")

    @property
    def shouted(self) -> bool:
        """Whether it is written in capitals."""
        return len(self.body) > 3 and self.body.isupper()

    @property
    def words(self) -> int:
        """How many words it has."""
        return len(self.body.split())


def mark(number: int, raw: str) -> Marked:
    """Take a line apart; its body is plain text without any of the marks."""
    rest = raw
    quoted = QUOTED.match(rest)
    if quoted:
        rest = rest[quoted.end() :]
    stripped = rest.lstrip()
    indent = len(rest[: len(rest) - len(stripped)].expandtabs(4))
    stripped = stripped.rstrip()
    stripped = ESCAPED.sub("", stripped)
    level = 0
    bullet = ""
    if RULE_ROW.match(stripped):
        return Marked(number, raw, indent, "", 0, "")
    if ROW.match(stripped):
        cells = [cell.strip() for cell in stripped.strip("|").split("|")]
        return Marked(number, raw, indent, "-", 0, plain(" ".join(filter(None, cells))))
    if found := HEADING.match(stripped):
        level = len(found[1])
        stripped = stripped[found.end() :].rstrip("# ")
    elif BOLD.match(stripped) or ITALIC_HEADING.match(stripped):
        level = 7
    elif UNDERLINE.match(stripped) or IMAGE_ONLY.match(stripped):
        return Marked(number, raw, indent, "", 0, "")
    else:
        if not ITALIC.match(stripped) and (found := BULLET.match(stripped)):
            bullet, stripped = "-", stripped[found.end() :]
        if found := NUMBER.match(stripped):
            bullet, stripped = "1", stripped[found.end() :]
    if stripped[:1].isdigit():
        stripped = COLUMNS.sub("; ", stripped)
    body = plain(stripped)
    if not level and not bullet and (found := NUMBER.match(body)):
        # "**1.** Mix" and "Step 1: Mix" with marks of their own.
        bullet, body = "1", body[found.end() :]
    return Marked(number, raw, indent, bullet, level, body)


def sign(raw: str) -> bool:
    """Whether a line holds nothing but signs."""
    return not any(character.isalnum() for character in characters(raw))
