"""Sentences of a method cut into clauses, one for each deed that the cook is told to do.

A plain verb counts where an order can stand: at the head of a sentence or after a comma, "and", "then", "let it".
What follows "until" or "when" tells how far and is no order; nor is what stands in brackets or behind "don't".
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.deeds import Verb, finder, lexicon
from assistant.reader.tokens import doc

ENDS = frozenset(".!?;")
ABBREVIATED = frozenset(
    "tsp tbsp tbs oz lb lbs min mins approx in c f hr hrs pkg qt pt ca eg e.g ie no vs med sec secs ea temp".split()
)
JOINERS = frozenset(
    {",", ";", ":", "and", "then", "or", "but", "&", "/", "(", "-", "--", ".", "+", ")", "plus"}
)
SOFT = frozenset(
    {
        "now",
        "also",
        "just",
        "please",
        "next",
        "first",
        "finally",
        "lastly",
        "meanwhile",
        "again",
        "well",
        "once",
        "either",
        "you",
        "we",
        "instead",
        "second",
        "third",
        "last",
        "together",
        "alternatively",
        "always",
        "twice",
        "then",
        "further",
    }
)
FORWARD = frozenset(
    {"when", "once", "while", "whilst", "if", "after", "as", "before", "whenever", "because", "since"}
)
LEADS = frozenset({"in", "on", "over", "with", "using", "to", "for", "at", "into", "meanwhile", "from"})
LETS = frozenset({"let", "allow", "leave", "have", "get", "set", "help", "watch", "make"})
GOES_ON = frozenset(
    {
        "for",
        "until",
        "till",
        "over",
        "in",
        "with",
        "on",
        "again",
        "into",
        "at",
        "through",
        "through,",
        "well",
        "another",
    }
)


class Clause(NamedTuple):
    """A deed and the words that belong to it: tokens `start` up to `end`, the verb at `verb_start` up to `verb_end`.

    `told` is true for an order, false for a deed that goes along with one ("stirring often"). `let` is true for what
    is left to happen ("let it simmer").
    """

    doc: Doc
    verb: Verb
    start: int
    verb_start: int
    verb_end: int
    end: int
    told: bool
    let: bool = False


class _Found(NamedTuple):
    start: int
    end: int
    verb: Verb
    told: bool
    let: bool


def sentences(text: Doc) -> list[tuple[int, int]]:
    """The bounds of every sentence, in tokens; a semicolon ends one, an abbreviation's dot does not."""
    found: list[tuple[int, int]] = []
    start = 0
    depth = 0
    for index, token in enumerate(text):
        sign = token.text
        depth = max(0, depth + (sign == "(") - (sign == ")"))
        if sign in ENDS and depth == 0 and _ends(text, index):
            found.append((start, index + 1))
            start = index + 1
    if start < len(text):
        found.append((start, len(text)))
    return found


def _ends(text: Doc, index: int) -> bool:
    if text[index].text != "." or index + 1 >= len(text):
        return True
    following = text[index + 1]
    if index and text[index - 1].lower_ in ABBREVIATED and not following.text[:1].isupper():
        return False
    if following.text[:1].islower():
        verb = lexicon().get(following.lower_)
        return bool(verb and verb.form == "plain" and not verb.food)
    return True


def clauses(text: str) -> list[Clause]:
    """The clauses of a text, in order."""
    return cut(doc(text), frozenset())


def cut(text: Doc, nouns: frozenset[int]) -> list[Clause]:
    """The clauses of a Doc; tokens in `nouns` belong to the name of a food or a vessel and are no verbs."""
    marks = _verbs(text, nouns)
    found: list[Clause] = []
    for start, end in sentences(text):
        inside = [mark for mark in marks if start <= mark[0] < end]
        found += _sentence(text, start, end, inside)
    return found


def _verbs(text: Doc, nouns: frozenset[int]) -> list[tuple[int, int, Verb]]:
    kept = []
    for mark in finder().longest(text):
        first = mark.start
        if first in nouns and not (
            text[first].is_title
            and first == 0
            and lexicon()[mark.label].form == "plain"
            and first + 1 in nouns
            and False
        ):
            continue
        kept.append((first, mark.end, lexicon()[mark.label]))
    return kept


def _sentence(text: Doc, start: int, end: int, marks: list[tuple[int, int, Verb]]) -> list[Clause]:
    found: list[_Found] = []
    aside = _aside_spans(text, start, end)
    bracketed = _brackets(text, start, end)
    previous: _Found | None = None
    for first, last, verb in marks:
        if first in bracketed and not bracketed >= set(range(start + 1, end - 2)):
            continue
        reading = _reads(text, start, end, first, last, verb, first in aside, previous)
        if reading:
            found.append(reading)
            previous = reading
    found = _merge(text, found)
    return _bounded(text, start, end, found, aside)


def _merge(text: Doc, found: list[_Found]) -> list[_Found]:
    """ "Let it simmer", "continue to cook", "start heating" are one deed: the second verb's."""
    kept: list[_Found] = []
    for reading in found:
        if kept and reading.let and kept[-1].verb.words in GOVERNORS():
            kept[-1] = reading._replace(start=kept[-1].start, told=kept[-1].told)
        else:
            kept.append(reading)
    return kept


@cache
def GOVERNORS() -> frozenset[str]:  # noqa: N802
    """Verbs that hand the deed on to the next verb."""
    return frozenset(
        {
            "let",
            "allow",
            "leave",
            "continue",
            "begin",
            "start",
            "keep",
            "proceed",
            "help",
            "have",
            "go",
            "set",
            "return",
            "try",
            "put",
            "put in",
            "place",
            "set aside",
            "make",
            "get",
            "put aside",
            "ensure",
        }
    )


@cache
def _words(group: str) -> frozenset[str]:
    return frozenset(words.groups("clauses.toml")[group])


def _brackets(text: Doc, start: int, end: int) -> set[int]:
    inside: set[int] = set()
    depth = 0
    for index in range(start, end):
        sign = text[index].text
        depth = max(0, depth - (sign == ")"))
        if depth:
            inside.add(index)
        depth += sign == "("
    return inside


def _aside_spans(text: Doc, start: int, end: int) -> set[int]:
    """Tokens that tell when, why or how far: from "until" to the next comma or "then"."""
    openers = _words("aside")
    inside: set[int] = set()
    open_ = False
    for index in range(start, end):
        low = text[index].lower_
        if low in (",", ";", ":", "then", ".", ")"):
            open_ = False
        elif (
            low in openers
            and not (low == "that" and index == start)
            and not (
                low in ("so", "as") and index + 1 < end and text[index + 1].lower_ in ("follows", "well", ",")
            )
        ):
            open_ = True
        if open_:
            inside.add(index)
    return inside


def _reads(
    text: Doc, start: int, end: int, first: int, last: int, verb: Verb, aside: bool, previous: _Found | None
) -> _Found | None:
    """Whether this form of a verb is a deed here, and of which kind."""
    before = first - 1
    while (
        before >= start
        and (text[before].lower_ in SOFT or text[before].lower_.endswith("ly"))
        and text[before].lower_ not in ("only",)
    ):
        before -= 1
    ahead = text[before].lower_ if before >= start else None
    following = text[last].lower_ if last < end else ""
    if _denied(text, start, first):
        return None
    if verb.form == "plain":
        return _plain(text, start, first, last, verb, aside, previous, ahead, before, following)
    if verb.form == "ing":
        if ahead in ("start", "begin", "keep", "by", "continue") or (ahead is None and not aside and False):
            return _Found(first, last, verb, True, ahead != "by")
        if ahead in (",", "and", "while", "then", "whilst") or (ahead == "(" and False):
            if following in (
                "powder",
                "soda",
                "sheet",
                "pan",
                "bowl",
                "oil",
                "time",
                "water",
                "liquid",
                "spray",
            ):
                return None
            return _Found(first, last, verb, False, False)
        return None
    if (
        verb.form == "past"
        and ahead == "be"
        and before - 1 >= start
        and text[before - 1].lower_ in _words("modal")
    ):
        return _Found(first, last, verb, True, False)
    return None


def _denied(text: Doc, start: int, first: int) -> bool:
    """Whether the deed is forbidden: don't, do not, never, without, need not."""
    near = [text[index].lower_ for index in range(max(start, first - 3), first)]
    return any(
        word in ("not", "never", "don't", "dont", "without", "avoid", "needn't", "cannot", "can't", "t")
        for word in near
    )


def _plain(
    text: Doc,
    start: int,
    first: int,
    last: int,
    verb: Verb,
    aside: bool,
    previous: _Found | None,
    ahead: str | None,
    before: int,
    following: str,
) -> _Found | None:
    noun_follows = following in _words("article") or following in _words("pronoun")
    if (
        verb.food
        and not noun_follows
        and not (
            verb.words
            in (
                "cream",
                "line",
                "puree",
                "purée",
                "season",
                "dip",
                "level",
                "juice",
                "spoon",
                "ladle",
                "core",
                "plate",
                "process",
                "mash",
                "scoop",
                "rub",
                "dust",
                "seed",
                "skin",
                "squash",
                "cube",
            )
            and ahead in (None, "then", ",", "and", ";")
            and following not in ("and", ",", ".", "to", "or", "", "cheese", "of", "for")
        )
    ):
        return None
    if aside:
        if ahead is not None and ahead not in JOINERS and text[before].lower_ not in _words("aside"):
            # "Once melted add your onions": an order after an aside without a comma.
            past = lexicon().get(ahead)
            if (
                not (noun_follows or following.isalpha())
                or ahead in ("you", "they", "it", "we", "to", "i")
                or ahead in _words("modal")
                or ahead in _words("article")
            ):
                return None
            if not (past and past.form in ("past", "plain", "s")) and not noun_follows:
                return None
            if before - 1 >= start and text[before].lower_ in ("you",):
                return None
            return _Found(first, last, verb, True, False)
        if ahead in JOINERS and ahead not in (None,):
            if noun_follows or following in GOES_ON or _number(following):
                return _Found(first, last, verb, True, False)
            return None
        return None
    if ahead is None or ahead in JOINERS:
        return _Found(first, last, verb, True, _governed(previous, text, first))
    if ahead in ("you", "we", "they", "i"):
        return None
    if ahead in _words("modal") and ahead != "to":
        return _Found(first, last, verb, True, ahead == "will")
    if ahead == "to":
        if previous and previous.verb.words in GOVERNORS() and first - previous.end <= 14:
            return _Found(first, last, verb, True, True)
        earlier = text[before - 1].lower_ if before - 1 >= start else None
        if earlier in (
            "sure",
            "need",
            "want",
            "forget",
            "remember",
            "continue",
            "allow",
            "begin",
            "start",
            "going",
            "able",
            "ready",
        ) and earlier not in ("ready",):
            return _Found(first, last, verb, True, True)
        if earlier is None and following in ("", ",") and verb.words == "serve":
            return _Found(first, last, verb, True, False)
        return None
    if (
        previous
        and previous.verb.words in ("let", "allow", "leave", "have", "help", "watch", "leave")
        and first - previous.end <= 10
        and not _joined(text, previous.end, first)
    ):
        if ahead in _words("article"):
            return None
        return _Found(first, last, verb, True, True)
    return None


def _joined(text: Doc, start: int, end: int) -> bool:
    return any(text[index].lower_ in (",", ";", "then", "until") for index in range(start, end))


def _number(word: str) -> bool:
    return word[:1].isdigit()


def _governed(previous: _Found | None, text: Doc, first: int) -> bool:
    return bool(previous and previous.verb.words in ("let", "allow", "leave") and previous.end == first)


def _bounded(text: Doc, start: int, end: int, found: list[_Found], aside: set[int]) -> list[Clause]:
    """Give every word of the sentence to one deed."""
    result: list[Clause] = []
    for index, reading in enumerate(found):
        begins = start if index == 0 else _lead(text, found[index - 1].end, reading.start, aside)
        if result:
            result[-1] = result[-1]._replace(end=begins)
        result.append(
            Clause(text, reading.verb, begins, reading.start, reading.end, end, reading.told, reading.let)
        )
    return result


def _lead(text: Doc, after: int, verb: int, aside: set[int]) -> int:
    """Where the words before a later verb begin to belong to it: ", and in another bowl, whisk"."""
    begin = verb
    while begin - 1 >= after and (text[begin - 1].lower_ in SOFT or text[begin - 1].lower_.endswith("ly")):
        begin -= 1
    if begin - 1 < after or text[begin - 1].text != ",":
        return begin
    for index in range(begin - 2, after, -1):
        low = text[index].lower_
        if low in (",", ";") or low in ("and", "then", "."):
            opener = text[index + 1].lower_
            if opener in FORWARD or (opener in LEADS and low in ("and", "then", ";")):
                return index + 1
            if low in (",", ";"):
                return begin
    return begin
