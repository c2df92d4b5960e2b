"""An utterance as a row of words with their meanings: slips put right, phrases found, values and foods marked.

Every word belongs to groups: its own spelling, the groups of `acts/words.toml` that it stands in, the kind of value
that it is. Words said out of politeness drop out. What the row means is for `acts.py`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cache
from typing import NamedTuple

from assistant.chat import tables
from assistant.chat.measured import values
from assistant.chat.slips import doubled, nearest
from assistant.chat.values import Value, ValueWords
from assistant.chat.values import table as value_words
from assistant.reader import clean
from assistant.reader.tokens import Doc, Finder, Mark, doc

#: What a person says in one breath; the rest is not heard.
MOST_CHARACTERS = 600
#: Shorter words are too near to the names of too many foods.
SHORTEST_FOOD = 6

#: Small words, which may stand between any two words of a pattern.
LIGHT_GROUPS = frozenset({"WE", "IT", "BE", "DO", "HAVE", "NEED"})
LIGHT_WORDS = frozenset({"any", "so", "of", "to", "that", "there", "for", "who", "by", "about", "or", "than"})
EDGE_GROUPS = frozenset({"COMMA", "STOP", "AND"})
#: Marks in the groups of a word: small, an edge of a part, free for a gap.
LIGHT, EDGE, GAP = "~light", "~edge", "~gap"

_ENDINGS = (
    ("n't", " not"), ("'re", " are"), ("'ll", " will"), ("'ve", " have"), ("'m", " am"), ("'s", " is"), ("'d", " would"),
)  # fmt: skip
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?", re.UNICODE)
_AM_PM = re.compile(r"(?<![a-z])([ap])\.\s?m\.?(?![a-z])", re.IGNORECASE)
_GLUED = re.compile(r"(?<=\d)-(?=[a-z])|(?<=[a-z])-(?=[a-z])|(?<=[a-z])/(?=[a-z])", re.IGNORECASE)
_PATH = re.compile(r"[^\s\"']{0,120}\w\.(?:jsonl?|md|html?|ics|csv|txt)\b", re.IGNORECASE)
_QUOTED = re.compile(r"[\"“”]([^\"“”]{1,60})[\"“”]|(?<!\w)'([^']{1,60})'(?!\w)")
_LITERAL = re.compile(r"(?<=[\s\"|])[a-z]{4,}(?=[\s\"|?])")
_OWNERS = re.compile(r"(?<=[a-z]s)'(?![\w'])")
_ISH = re.compile(r"(?<=\d)\s?-?ish\b", re.IGNORECASE)
_TWO_FOR_TO = re.compile(
    r"(?<=\bwhat )2(?= [a-z])|(?<=\bhow )2(?= [a-z])|(?<=\bwhere )2(?= [a-z])", re.IGNORECASE
)
#: Signs of haste that stand for a word.
_SIGNS = {"@": " at ", " = ": " is ", "w/o ": "without ", "w/ ": "with ", "b4 ": "before "}
_GLUED_FEET = re.compile(r"(?<=\d)'(?![\w'])")
_GLUED_INCHES = re.compile(r"(?<=\d)(?:\"|''|”)")


#: Finds the names of foods in an utterance.
FoodMarks = Callable[[Doc], Iterable[Mark]]


class Word(NamedTuple):
    """A word or a phrase of an utterance: its groups, the values it may be, where it stands in the text."""

    text: str
    groups: frozenset[str]
    start: int
    end: int
    values: tuple[Value, ...] = ()
    #: of how many words the phrase is
    size: int = 1

    @property
    def is_known(self) -> bool:
        """Whether the word means something to the talk."""
        return bool(self.values) or any(group[0].isupper() for group in self.groups)

    def value(self, kinds: Sequence[str]) -> Value | None:
        """The value of one of these kinds, if the word can be one."""
        return next((value for kind in kinds for value in self.values if value.kind == kind), None)


class Heard(NamedTuple):
    """An utterance: its text as it was understood, and its words without the polite ones."""

    text: str
    words: tuple[Word, ...]

    def said(self, first: int, last: int) -> str:
        """The text of the words `first` up to, not including, `last`, with the capitals as typed."""
        if first >= last:
            return ""
        return self.text[self.words[first].start : self.words[last - 1].end]


class Lexicon:
    """All words of the talk, and the foods that may be named in it."""

    def __init__(self, groups: Mapping[str, Sequence[str]], misspelt: Mapping[str, str]) -> None:
        self.groups = groups
        self.misspelt = misspelt
        self.finder = Finder({**groups, **_value_phrases()})
        every = [*groups.values(), *_value_phrases().values(), _number_words(), LIGHT_WORDS, _pattern_words()]
        self.spellings = _single_words(every)

    def names(self) -> frozenset[str]:
        """The names of the groups."""
        return frozenset(self.groups)


@cache
def lexicon() -> Lexicon:
    """The one lexicon."""
    loaded = tables.load("words.toml", dict[str, list[str] | dict[str, str]])
    groups = {name: tuple(words) for name, words in loaded.items() if isinstance(words, list)}
    misspelt = loaded["misspelt"]
    return Lexicon(groups, misspelt if isinstance(misspelt, dict) else {})


#: Tables of `values.toml` whose phrases are values by themselves, and the kind of value.
VALUE_TABLES = {
    "wind": "wind", "air": "air", "ground": "ground", "sky": "sky", "units": "units", "forms": "form", "days": "day",
    "allergens": "allergen",
}  # fmt: skip


def _value_phrases() -> dict[str, tuple[str, ...]]:
    """Labels such as "=wind:calm" with their phrases."""
    words: ValueWords = value_words()
    found: dict[str, tuple[str, ...]] = {}
    for name, kind in VALUE_TABLES.items():
        for value, phrases in getattr(words, name).items():
            if isinstance(phrases, float | int):
                found[f"={kind}:{phrases:g}"] = (*found.get(f"={kind}:{phrases:g}", ()), value)
            else:
                found[f"={kind}:{value}"] = tuple(phrases)
    return found


def _number_words() -> tuple[str, ...]:
    """Every word that stands with a number or is one."""
    from assistant.reader.numbers import table

    parts = (getattr(value_words(), name) for name in ValueWords.__struct_fields__)
    return (*table().cardinals, *table().parts, *table().groups, *(word for part in parts for word in part))


def _pattern_words() -> tuple[str, ...]:
    """The words that stand in patterns as they are."""
    found = (_LITERAL.findall(tables.text(name)) for name in tables.files())
    return tuple(word for words in found for word in words)


def _single_words(lists: Iterable[Iterable[str]]) -> frozenset[str]:
    return frozenset(
        word for phrases in lists for phrase in phrases for word in phrase.split() if word.isalpha()
    )


def spelled_out(text: str, *, known: frozenset[str] = frozenset()) -> str:
    """The utterance with its characters written one way, contractions spelled out and slips put right."""
    text = " ".join(clean.characters(text[:MOST_CHARACTERS]).split())
    text = _AM_PM.sub(r"\1m", text)
    text = _OWNERS.sub("", _ISH.sub("", text))
    text = _TWO_FOR_TO.sub("to", text)
    for sign, said in _SIGNS.items():
        text = text.replace(sign, said)
    text = _GLUED_FEET.sub(" feet", _GLUED_INCHES.sub(" inch", text))
    held = [
        *(found.span() for found in _PATH.finditer(text)),
        *(found.span() for found in _QUOTED.finditer(text)),
    ]
    return _outside(
        held, text, lambda part: _WORD.sub(lambda found: _put_right(found[0], known), _cut(part, known))
    )


def _cut(text: str, known: frozenset[str]) -> str:
    """Words joined by a hyphen cut apart ("ten-inch"), but for the names of foods ("all-purpose")."""
    return " ".join(
        word if word.lower().strip(",.?!") in known else _GLUED.sub(" ", word) for word in text.split(" ")
    )


def _outside(held: list[tuple[int, int]], text: str, change: object) -> str:
    """Change a text everywhere but in the spans that are held."""
    parts, at = [], 0
    for start, end in sorted(held):
        if start >= at:
            parts += [change(text[at:start]), text[start:end]]  # type: ignore[operator]
            at = end
    return "".join([*parts, change(text[at:])])  # type: ignore[operator]


def _put_right(word: str, known: frozenset[str]) -> str:
    lower = word.lower()
    table = lexicon()
    if lower in table.misspelt and lower not in known:
        return table.misspelt[lower]
    for ending, full in _ENDINGS:
        if lower.endswith(ending) and not _is_owner(lower, ending, known):
            return word[: -len(ending)] + full
    if lower in table.spellings or lower in known:
        return word
    if lower.endswith("ish") and lower[:-3] in _numerals():
        return f"about {lower[:-3]}"
    return doubled(lower, known) or nearest(lower, table.spellings) or _food_meant(lower, known) or word


def _food_meant(lower: str, known: frozenset[str]) -> str | None:
    """The word of a food that a longer word is a slip of: "tomatos", "chesse"."""
    return nearest(lower, known) if len(lower) >= SHORTEST_FOOD else None


@cache
def _numerals() -> frozenset[str]:
    from assistant.reader.numbers import table

    return frozenset(table().cardinals)


def _is_owner(lower: str, ending: str, known: frozenset[str]) -> bool:
    """Whether an 's belongs to somebody: "Rosa's cobbler", but "dinner's at six"."""
    return ending == "'s" and lower.removesuffix(ending) not in lexicon().spellings | known


def hear(utterance: str, *, foods: FoodMarks | None = None, known: frozenset[str] = frozenset()) -> Heard:
    """The utterance as a row of words.

    `foods` finds names of foods, `known` are words of the recipe that are no slips of the pen.
    """
    text = spelled_out(utterance, known=known)
    line = doc(text)
    marks = _marks(text, line, foods)
    words: list[Word] = [_edge(0)]
    at = 0
    while at < len(line):
        mark = marks.get(at)
        end = mark[0] if mark else at + 1
        groups, held = (mark[1], mark[2]) if mark else (frozenset[str](), ())
        word = _word(line, at, end, groups, held)
        if "FILLER" not in groups or held:
            words.append(word)
        at = end
    words.append(_edge(len(text)))
    return Heard(text, tuple(words))


def _edge(place: int) -> Word:
    return Word("", frozenset({EDGE}), place, place)


def _word(line: Doc, start: int, end: int, groups: frozenset[str], held: tuple[Value, ...]) -> Word:
    span = line[start:end]
    text = span.text.lower()
    marks = {f"={text}", *(f"{{{value.kind}}}" for value in held)}
    if groups & LIGHT_GROUPS or text in LIGHT_WORDS:
        marks.add(LIGHT)
    if groups & EDGE_GROUPS:
        marks.add(EDGE)
    elif not held:
        marks.add(GAP)
    return Word(text, groups | marks, span.start_char, span.end_char, held, end - start)


_Mark = tuple[int, frozenset[str], tuple[Value, ...]]


def _marks(text: str, line: Doc, foods: FoodMarks | None) -> dict[int, _Mark]:
    """What stands at each place: the end of the longest phrase there, its groups, its values."""
    lower = [token.lower_ for token in line]
    spans: dict[tuple[int, int], tuple[set[str], list[Value]]] = {}

    def put(start: int, end: int, group: str | None, value: Value | None) -> None:
        groups, held = spans.setdefault((start, end), (set(), []))
        if group:
            groups.add(group)
        if value:
            held.append(value)

    for found in values(lower):
        put(found.start, found.end, None, found)
    for mark in lexicon().finder.all(line):
        if mark.label.startswith("="):
            kind, _, word = mark.label[1:].partition(":")
            word = line[mark.start : mark.end].text if kind == "day" else word
            put(mark.start, mark.end, None, Value(kind, word, mark.start, mark.end))  # type: ignore[arg-type]
        else:
            put(mark.start, mark.end, mark.label, None)
    for mark in foods(line) if foods else ():
        put(
            mark.start,
            mark.end,
            None,
            Value("food", line[mark.start : mark.end].text.lower(), mark.start, mark.end),
        )
    for pattern, kind in ((_PATH, "path"), (_QUOTED, "quoted")):
        for match in pattern.finditer(text):
            inside = line.char_span(*match.span(), alignment_mode="expand")
            if inside is not None:
                said = match[0] if kind == "path" else match[1] or match[2]
                put(inside.start, inside.end, None, Value(kind, said, inside.start, inside.end))  # type: ignore[arg-type]
    best: dict[int, _Mark] = {}
    taken = 0
    for start in range(len(line)):
        here = [(end, groups, held) for (first, end), (groups, held) in spans.items() if first == start]
        if not here or start < taken:
            continue
        end, groups, held = max(here, key=lambda entry: entry[0])
        best[start] = (end, frozenset(groups), tuple(held))
        taken = end
    return best
