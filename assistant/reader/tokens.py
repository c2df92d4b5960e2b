"""Words and signs of a cleaned line: the one spaCy object of the reader, and the finding of known phrases in it.

A line is cut by one expression, so that the time is linear and nothing is cut by surprise: "350F" is 350 and F,
"9x13" is 9, x and 13, "1-1/2" is 1, - and 1/2, "two-inch" is two, - and inch, while "all-purpose" and "za'atar" stay whole. The text is expected
clean (`clean.py`): one blank between words, plain hyphens and apostrophes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import cache
from itertools import islice
from typing import ClassVar, NamedTuple

from spacy.attrs import LIKE_EMAIL, LIKE_URL, LOWER, SHAPE
from spacy.lang.en import English
from spacy.language import Language
from spacy.matcher import PhraseMatcher
from spacy.strings import get_string_id
from spacy.tokens import Doc as Doc
from spacy.vocab import Vocab

TOKEN = re.compile(
    r"""
      (?:half|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|thirty)(?=-[a-z])(?!-and-|-n-)  # "two-inch"
    | \d{1,9}/\d{1,9}                             # a fraction
    | \d{1,9}(?:[.,]\d{1,9}){0,3}                 # a whole number, a decimal, a thousands sign
    | \.\d{1,9}                                   # .5
    | [a-z]&[a-z](?:'s)?(?![^\W\d_])              # two initials: "M&M's", "S&P"
    | [^\W\d_]{1,64}(?:['-][^\W\d_]{1,64}){0,8}   # a word, with the hyphens and apostrophes inside it
    | \S                                          # any other sign, alone
    """,
    re.VERBOSE | re.IGNORECASE,
)


WITH_BLANKS = re.compile(f"({TOKEN.pattern})(\\s*)", TOKEN.flags)

#: What is kept beside a Doc.
WRITTEN, BLANKS, LOW, NUMBERS = "written", "blanks", "low", "numbers"


class Cutter:
    """The tokenizer: text in, Doc out."""

    def __init__(self, vocab: Vocab) -> None:
        self.vocab = vocab

    def __call__(self, text: str) -> Doc:
        """Cut a text at the bounds of `TOKEN`; where it had blanks, the Doc has one."""
        found = WITH_BLANKS.findall(text)
        words = [word for word, _ in found]
        spaces = [blank != "" for _, blank in found]
        made = with_words(Doc(self.vocab, words=words, spaces=spaces), words)
        made.user_data[BLANKS] = spaces
        return made


def with_words(text: Doc, words: list[str]) -> Doc:
    """The Doc with its words kept beside it: making a token of each again is slow."""
    text.user_data[WRITTEN] = words
    return text


def written(text: Doc) -> list[str]:
    """Every token of a text as written."""
    found: list[str] = text.user_data[WRITTEN]
    return found


def lower(text: Doc) -> list[str]:
    """Every token of a text in lower case."""
    found: list[str] | None = text.user_data.get(LOW)
    if found is None:
        found = text.user_data[LOW] = [word.lower() for word in text.user_data[WRITTEN]]
    return found


def offsets(text: Doc) -> list[int]:
    """Where every token of a text begins [characters]."""
    found = [0]
    for word, blank in zip(written(text), text.user_data[BLANKS], strict=True):
        found.append(found[-1] + len(word) + blank)
    return found[:-1]


def _numbers(text: Doc) -> frozenset[int]:
    """The numbers by which spaCy knows the words of a text."""
    found: frozenset[int] | None = text.user_data.get(NUMBERS)
    if found is None:
        found = text.user_data[NUMBERS] = frozenset(text.to_array(LOWER).tolist())
    return found


class KitchenDefaults(English.Defaults):  # type: ignore[misc]
    """English without its list of exceptions: in a kitchen "cal." or "ill" are no contractions."""

    tokenizer_exceptions: ClassVar[dict[str, list[dict[int, str]]]] = {}


class Kitchen(English):  # type: ignore[misc]
    """English as the kitchen writes it."""

    Defaults = KitchenDefaults


@cache
def nlp() -> Language:
    """The one language object of this process; cheap to ask for again."""
    language = Kitchen()
    language.tokenizer = Cutter(language.vocab)
    # Thousands of food names become words at the start; what costs most and nobody asks is not worked out for them.
    for costly in (SHAPE, LIKE_URL, LIKE_EMAIL):
        language.vocab.lex_attr_getters.pop(costly, None)
    return language


def doc(text: str) -> Doc:
    """The tokens of a cleaned text."""
    return nlp().make_doc(text)


def opening(text: str, most: int) -> list[str]:
    """The first tokens of a cleaned text in lower case, no Doc made."""
    return [found[0].lower() for found in islice(TOKEN.finditer(text), most)]


class Mark(NamedTuple):
    """A known phrase at tokens `start` up to, not including, `end`; `label` is the group it belongs to."""

    label: str
    start: int
    end: int


def _first_word(phrase: str) -> int:
    """The first word of a phrase, as the number by which spaCy knows it."""
    found = TOKEN.search(phrase)
    return int(get_string_id(found[0].lower() if found else ""))


class Finder:
    """Finds the phrases of named groups in a Doc, whatever their capitals."""

    def __init__(self, groups: Mapping[str, Iterable[str]]) -> None:
        language = nlp()
        self.matcher = PhraseMatcher(language.vocab, attr="LOWER")
        # A label outlives the memory zone in which a finder happens to be made. With a blank before it, it is no
        # word of a text, which the zone would forget.
        strings = language.vocab.strings
        self.labels = {strings.add(f" {label}", allow_transient=False): label for label in groups}
        #: Phrases by their first word, until a text holds that word: of thousands of names a text takes a few.
        self._waiting: dict[int, list[tuple[str, str]]] = {}
        for label, phrases in groups.items():
            for phrase in phrases:
                self._waiting.setdefault(_first_word(phrase), []).append((label, phrase))
        self._openers = frozenset(self._waiting)

    def all(self, doc: Doc) -> list[Mark]:
        """Every phrase found, overlaps included, in reading order, the longest first where several start."""
        openers = self._openers & _numbers(doc)
        if not openers:
            return []
        for word in openers & self._waiting.keys():
            for label, phrase in self._waiting.pop(word):
                self.matcher.add(f" {label}", [nlp().make_doc(phrase)])
        found = [Mark(self.labels[key], start, end) for key, start, end in self.matcher(doc)]
        return sorted(found, key=lambda mark: (mark.start, -mark.end)) if len(found) > 1 else found

    def longest(self, doc: Doc) -> list[Mark]:
        """The phrases found from left to right, the longest at each place, none overlapping another."""
        kept: list[Mark] = []
        for mark in self.all(doc):
            if not kept or mark.start >= kept[-1].end:
                kept.append(mark)
        return kept
