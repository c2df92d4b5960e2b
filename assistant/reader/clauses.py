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
from assistant.reader.frame import Frame, clause_words, frame
from assistant.reader.tokens import doc
from rules.recipe import Deed

#: What happens by itself: "the dough should rise".
HAPPENS: frozenset[Deed] = frozenset(
    {
        "rise", "rest", "chill", "marinate", "soak", "bake", "simmer", "boil", "fry", "roast", "ferment", "steam",
        "cool",
    }
)  # fmt: skip
#: How far back a governing verb may stand before the one it governs [tokens].
REACH = 14
#: How far back a "not" forbids [tokens].
DENIAL = 3


class Clause(NamedTuple):
    """A deed and the words that belong to it: tokens `start` up to `end`, the verb at `verb_start` up to `verb_end`.

    `told` is true for an order, false for a deed that goes along with one ("stirring often").
    """

    doc: Doc
    verb: Verb
    start: int
    verb_start: int
    verb_end: int
    end: int
    told: bool


class _Found(NamedTuple):
    start: int
    end: int
    verb: Verb
    told: bool
    governed: bool = False


def clauses(text: str) -> list[Clause]:
    """The clauses of a text, in order."""
    return cut(frame(doc(text)), frozenset())


def cut(page: Frame, nouns: frozenset[int]) -> list[Clause]:
    """The clauses of a text; a token in `nouns` belongs to the name of a food or a vessel and is no verb."""
    verbs = [(mark.start, mark.end, lexicon()[mark.label]) for mark in finder().longest(page.doc)]
    verbs = [verb for verb in verbs if verb[0] not in nouns]
    found: list[Clause] = []
    place = 0
    for start, end in page.sentences:
        sentence = _Sentence(page, start, end)
        while place < len(verbs) and verbs[place][0] < end:
            sentence.hear(*verbs[place])
            place += 1
        found += sentence.clauses()
    return found


@cache
def _set(group: str) -> frozenset[str]:
    return frozenset(words.groups("orders.toml")[group])


class _Sentence:
    """One sentence, its verbs heard from left to right."""

    def __init__(self, page: Frame, start: int, end: int) -> None:
        self.page = page
        self.doc = page.doc
        self.start = start
        self.end = end
        self.found: list[_Found] = []

    def _low(self, index: int) -> str:
        return self.page.low[index] if self.start <= index < self.end else ""

    def hear(self, first: int, last: int, verb: Verb) -> None:
        """Take in the next verb, if it is a deed where it stands."""
        if first in self.page.brackets or self._denied(first):
            return
        before = first - 1
        while before >= self.start and (
            self._low(before) in _set("soft") or self._low(before).endswith("ly")
        ):
            before -= 1
        reading: _Found | None = None
        if verb.form == "plain":
            reading = self._plain(first, last, verb, before)
        elif verb.form == "ing":
            reading = self._ing(first, last, verb, before)
        elif (
            verb.form == "past"
            and self._low(before) == "be"
            and self._low(before - 1) in clause_words("modal")
        ):
            reading = _Found(first, last, verb, told=True)
        if reading is None:
            return
        if self.found and reading.governed and self.found[-1].verb.words in _set("governs"):
            # "Let it simmer", "continue to cook" are one deed: the second verb's.
            governor = self.found.pop()
            reading = reading._replace(start=governor.start, told=governor.told)
        self.found.append(reading)

    def _denied(self, first: int) -> bool:
        return any(
            self._low(index) in _set("denied") for index in range(max(self.start, first - DENIAL), first)
        )

    def _noun_follows(self, last: int) -> bool:
        return self._low(last) in clause_words("article") or self._low(last) in clause_words("pronoun")

    def _plain(self, first: int, last: int, verb: Verb, before: int) -> _Found | None:
        ahead = self._low(before)
        if (
            verb.food
            and not self._noun_follows(last)
            and not self._food_as_verb(verb, ahead, self._low(last))
        ):
            return None
        order = _Found(first, last, verb, told=True)
        if verb.words == "rest" and self._low(last) == "of":
            return None
        if ahead in clause_words("modal") and ahead != "to":
            return order if self._is_asked(before, verb) else None
        if ahead == "to":
            return self._after_to(order, before)
        if first in self.page.asides:
            return self._let(order, ahead) or self._in_aside(order, ahead, before)
        described = self._low(before - 2) in ("a", "an", "the") and self._low(self.start) not in _set("leads")
        if ahead == "," and verb.words in _set("adjective") and described:
            # "A soft, smooth dough": an adjective.
            return None
        if (
            verb.words in _set("adjective")
            and ahead in ("and", "&")
            and self._low(before - 1) in _set("adjective")
        ):
            # "Combine wet and dry"
            return None
        if not ahead or ahead in _set("join"):
            previous = self.found[-1] if self.found else None
            return order._replace(
                governed=bool(previous and previous.verb.words in _set("lets") and previous.end == first)
            )
        return self._let(order, ahead) or self._after_lead(order, ahead)

    def _is_asked(self, modal: int, verb: Verb) -> bool:
        """Whether a modal tells the cook ("you can add") or what happens to food ("it should rise"), not mere talk."""
        subject = self._low(modal - 1)
        return not subject or subject in _set("asked") or verb.deed in HAPPENS

    def _after_lead(self, order: _Found, ahead: str) -> _Found | None:
        """An order after a sentence part without a comma: "In a tall pot add the oil"."""
        if self.found or ahead in clause_words("article") or ahead in _set("subject") or order.verb.food:
            return None
        leads = self._low(self.start) in _set("leads") or self._low(self.start) in _set("forward")
        following = self._low(order.end)
        plain_word = following.isalpha() and following not in _set("leads") and following not in _set("join")
        return (
            order
            if leads and (self._noun_follows(order.end) or plain_word or following[:1].isdigit())
            else None
        )

    def _let(self, order: _Found, ahead: str) -> _Found | None:
        """The verb of what is let happen: "let the soup simmer"."""
        previous = self.found[-1] if self.found else None
        if previous is None or previous.verb.words not in _set("lets") or order.start - previous.end > REACH:
            return None
        between = {self._low(index) for index in range(previous.end, order.start)}
        noun_ahead = ahead in clause_words("article") and ahead not in clause_words("pronoun")
        if between & ({",", ";", "then"} | clause_words("aside")) or noun_ahead:
            return None
        if order.verb.words == "place" and ahead in _set("place_after"):
            # "In a warm place" is a noun.
            return None
        return order._replace(governed=True)

    def _after_to(self, order: _Found, before: int) -> _Found | None:
        """An order behind "to": "continue to cook", "be sure to stir"; "to combine" is none."""
        previous = self.found[-1] if self.found else None
        if order.start in self.page.asides and not (previous and previous.start in self.page.asides):
            return None
        if previous and previous.verb.words in _set("governs") and order.start - previous.end <= REACH:
            if self._is_purpose(previous, order):
                return None
            return order._replace(governed=True)
        if self._low(before - 1) in _set("promise"):
            return order._replace(governed=True)
        opens = before == self.start and self._low(order.end) in ("", ",", ":")
        return order if opens and order.verb.words == "serve" else None

    def _is_purpose(self, previous: _Found, order: _Found) -> bool:
        """Whether a time stands before a "to" that only says what it is good for: "put in a bowl for 15 minutes to loosen"."""
        timed = any(
            self._low(at)[:4] in ("minu", "mins", "min", "hour", "hrs")
            for at in range(previous.end, order.start)
        )
        return (
            timed
            and previous.verb.deed in ("add", "other")
            and order.verb.deed not in HAPPENS
            and previous.verb.words not in _set("lets")
        )

    def _in_aside(self, order: _Found, ahead: str, before: int) -> _Found | None:
        """An order after an aside without a comma: "Once melted add your onions"."""
        following = self._low(order.end)
        if ahead in _set("join"):
            goes_on = self._noun_follows(order.end) or following in _set("goes_on") or following[:1].isdigit()
            return order if goes_on else None
        if ahead in clause_words("aside") or ahead in clause_words("article") or ahead in _set("subject"):
            return None
        if order.verb.food or ahead in ("of", "with"):
            return None
        if before < order.start - 1 and self._low(order.start - 1) in ("you", "we"):
            return None
        if order.verb.words in _set("puts") and (following.isalpha() or following[:1].isdigit()):
            # "When they splutter add cumin"
            return order
        if self._low(before - 1) in clause_words("aside"):
            # "As soon as bubbles form": bubbles do, not the cook.
            return None
        past = lexicon().get(ahead)
        ready = bool(past and past.form in ("past", "plain", "s")) and following.isalpha()
        return order if ready or self._noun_follows(order.end) else None

    def _ing(self, first: int, last: int, verb: Verb, before: int) -> _Found | None:
        ahead = self._low(before)
        if ahead in _set("starts"):
            return _Found(first, last, verb, told=True, governed=ahead != "by")
        if ahead in _set("goes_along") and self._low(last) not in _set("noun_after"):
            if self._low(last) in ("is", "are"):
                # "Until the apples are tender and topping is golden": a noun.
                return None
            return _Found(first, last, verb, told=False)
        return None

    def _food_as_verb(self, verb: Verb, ahead: str, following: str) -> bool:
        """Whether a word that is food and verb is an order here: "cream butter", "season with salt"."""
        if ahead and ahead not in ("then", ",", "and", ";", "or", ":"):
            return False
        if following in _set("food_order"):
            return ahead in ("", "then", ";") or verb.words in _set("before_food")
        return (
            bool(following)
            and verb.words in _set("before_food")
            and following not in _set("not_after_food_order")
        )

    def clauses(self) -> list[Clause]:
        """Every word of the sentence given to one deed."""
        result: list[Clause] = []
        for index, reading in enumerate(self.found):
            begins = self.start if index == 0 else self._lead(self.found[index - 1].end, reading.start)
            if result:
                result[-1] = result[-1]._replace(end=begins)
            result.append(
                Clause(self.doc, reading.verb, begins, reading.start, reading.end, self.end, reading.told)
            )
        return result

    def _lead(self, after: int, verb: int) -> int:
        """Where the words before a later verb begin to belong to it: ", and in another bowl, whisk"."""
        begin = verb
        while begin - 1 >= after and (
            self._low(begin - 1) in _set("soft") or self._low(begin - 1).endswith("ly")
        ):
            begin -= 1
        if begin - 1 < after or self._low(begin - 1) != ",":
            return begin
        for index in range(begin - 2, after, -1):
            low = self._low(index)
            if low in (",", ";", "and", "then"):
                opener = self._low(index + 1)
                if opener in _set("forward") or (opener in _set("leads") and low != ","):
                    return index + 1
                if low in (",", ";"):
                    return begin
        return begin
