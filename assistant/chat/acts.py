"""What an utterance means: the acts in it, with their slots filled.

Patterns say what can be meant where; of all that fit together the heaviest are taken, so that one sentence may hold
several acts. A sentence most of whose words mean nothing here is not understood, and then nothing is guessed:
`nearest_acts` names what could have been meant.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from assistant.chat.context import Context
from assistant.chat.lexicon import EDGE, LIGHT, Heard, Word, hear
from assistant.chat.patterns import WEIGHT_WORD, Found, acts, patterns
from assistant.chat.settle import settled
from assistant.chat.slips import likeness
from assistant.chat.slots import fits
from rules.recipe import Struct

NOT_UNDERSTOOD = "not understood"
#: Acts that change the plan; in one sentence they are done before its questions are answered.
CHANGES = frozenset(
    (
        *(
            "people",
            "scale",
            "pot",
            "temperature",
            "weather",
            "elevation",
            "eat at",
            "trip",
            "fire ban",
            "cooler",
        ),
        *("swap", "leave out", "add", "units"),
    )
)
#: What else is done and not only answered; it keeps its place before a change.
DEEDS = frozenset(["undo", "new", "open", "forget", "keep", "export"])
#: What is told of the day; where a sentence begins with one of these verbs, it is asked and not told.
CIRCUMSTANCES = (CHANGES - {"scale", "swap", "leave out", "add", "units", "fire ban"}) | {"again"}
#: Words before a part that only explains another: "when do we eat if the coals go on at five?" asks once.
_SUBORDINATE = frozenset(["if", "because", "since", "while"])
_VERBS_THAT_ASK = frozenset(["is", "are", "was", "were", "does", "did"])
#: The least that must be explained, and how much more for every word that means nothing here.
LEAST_WEIGHT, PER_STRANGE_WORD, PER_KNOWN_WORD = 1.5, 0.5, 0.15
#: What sums of weights may miss by rounding and ties.
CLOSE = 0.05
#: How much more for a word that speaks of other matters: whoever books a campsite for nine asks for no plan.
PER_WORD_OF_ELSEWHERE = 3.0
#: How much of that a word costs in a part of the sentence that holds no act.
ELSEWHERE = 0.6
#: In a question that is known by its cue alone so many words may mean nothing here.
MOST_STRANGE = 1
_ASKING = frozenset(["HOWMANY", "HOW", "HOWLONG", "HOWOFTEN", "WHEN", "WHAT", "WHERE", "WHY", "SHOW"])
_SMALL = frozenset(["OF", "NOT", "WHATABOUT", "MORE", "CHANGE_MIND", "AGAIN", "A_BIT", "FILLER"])


class Meant(Struct, frozen=True, kw_only=True):
    """One act, with its slots as `coalside ask` prints them."""

    act: str
    slots: Mapping[str, object] = {}


def understand(utterance: str, context: Context) -> tuple[Meant, ...]:
    """The acts of an utterance in the order in which they are done; empty when it is not understood."""
    heard = hear(utterance, foods=context.food_marks, known=context.known)
    found = [match for match in patterns().find(heard) if _may_be(match, heard, context)]
    chosen = _heaviest(found, heard)
    if not chosen or not _is_enough(chosen, heard):
        return _by_cue(heard)
    meant: list[Meant] = []
    for match in chosen:
        meant += settled(match, heard, context.after(meant))
    return _in_order(_merged(_corrected(meant, context)))


def _by_cue(heard: Heard) -> tuple[Meant, ...]:
    """A question that no pattern fits, by the one act whose cue stands in it; none where a second word is strange."""
    if not _is_asked(heard) or any("ELSEWHERE" in word.groups for word in heard.words):
        return ()
    strange = [word for word in heard.words if _is_strange(word)]
    cued = {name for name, act in acts().items() for word in heard.words if _has_cue(word, act.cues)}
    return (Meant(act=cued.pop()),) if len(cued) == 1 and len(strange) <= MOST_STRANGE else ()


def _is_asked(heard: Heard) -> bool:
    words = heard.words
    if any("=?" in word.groups for word in words) or any(word.groups & _ASKING for word in words):
        return True
    return len(words) > 2 and bool(words[1].groups & {"DO", "BE"})


def _is_strange(word: Word) -> bool:
    return EDGE not in word.groups and LIGHT not in word.groups and not word.is_known


def _has_cue(word: Word, cues: Iterable[str]) -> bool:
    for cue in cues:
        if cue == "{fat}" and fits("fat", word):
            return True
        if (cue if cue.isupper() or cue.startswith("{") else f"={cue}") in word.groups:
            return True
    return False


def _may_be(match: Found, heard: Heard, context: Context) -> bool:
    """Whether nothing around a match speaks against it."""
    if _is_denied(match, heard):
        return False
    if match.act in ("open", "forget"):
        return _is_kept(match, context)
    if match.act in CIRCUMSTANCES and heard.words[_part(match, heard)].text in _VERBS_THAT_ASK:
        own = {heard.words[place].text for place in match.own}
        return "asked" in match.slots or match.act == "pot" or (match.act == "people" and "for" in own)
    if "back" in match.slots and not _was_left_out(match, context):
        return False
    if match.act == "people" and _is_about_some(match, heard):
        return False
    return not (match.act in ("add", "leave out") and _asks_before(match, heard))


def _was_left_out(match: Found, context: Context) -> bool:
    """Whether the food of a match was left out or replaced before, so that it can come back."""
    word = match.slots.get("food")
    out = [one.food for one in context.day.swaps]
    return isinstance(word, Word) and any(word.text in food or food in word.text for food in out)


def _is_about_some(match: Found, heard: Heard) -> bool:
    """Whether what follows tells of a few among the eaters: "two of the boys can't have milk" counts nobody."""
    place = match.end
    while place < len(heard.words) and heard.words[place].groups & {LIGHT, "OFTHEM", "PERSON", "CROWD"}:
        place += 1
    return place < len(heard.words) and bool(heard.words[place].groups & {"CANNOTEAT", "ALLERGEN", "EATER"})


def _is_denied(match: Found, heard: Heard) -> bool:
    """Whether a "not" stands before it."""
    place = match.start - 1
    while place > 0 and LIGHT in heard.words[place].groups:
        place -= 1
    return "NOT" in heard.words[place].groups


def _is_kept(match: Found, context: Context) -> bool:
    """Whether a name is one of a kept meal, or at least written as a name."""
    name = match.slots.get("name")
    if not isinstance(name, str):
        return True
    if name.lower() in (kept.lower() for kept in context.kept):
        return True
    listed = (item.name for item in context.recipe.ingredients)
    return name[:1].isupper() and not any(name.lower() in one for one in listed)


def _asks_before(match: Found, heard: Heard) -> bool:
    """Whether the part of the sentence asks something: "what do I put in with the flour?", "can she eat it?"."""
    first = _part(match, heard)
    before = heard.words[first : match.start]
    begins = heard.words[first].groups
    return any(word.groups & _ASKING for word in before) or (bool(before) and bool(begins & {"BE", "DO"}))


def _heaviest(found: Sequence[Found], heard: Heard) -> list[Found]:
    """The matches that weigh most together, none overlapping another, in reading order.

    A part of a sentence asks one thing: of several questions in it only the heaviest counts.
    """
    asked: dict[int, Found] = {}
    for match in found:
        part = _part(match, heard)
        if match.act not in CHANGES and (part not in asked or match.weight > asked[part].weight):
            asked[part] = match
    main = [part for part in asked if heard.words[part - 1].text not in _SUBORDINATE]
    questions = {id(match) for part, match in asked.items() if part in main or not main}
    chosen = _chain([match for match in found if match.act in CHANGES or id(match) in questions])
    changed = {_part(match, heard) for match in chosen if match.act in CHANGES}
    reasons = {part for part, match in asked.items() if match.act == "why" and match in chosen}
    return [
        match
        for match in chosen
        for part in [_part(match, heard)]
        if (match.act in CHANGES and part not in reasons)
        or (
            match.act not in CHANGES
            and (part not in changed or part in reasons or _is_question(match, heard))
        )
    ]


def _is_question(match: Found, heard: Heard) -> bool:
    """Whether a match holds a word that asks, or begins with a verb as questions do."""
    own = [heard.words[place] for place in sorted(match.own)]
    if any(word.groups & _ASKING for word in own):
        return True
    before = heard.words[match.start - 1]
    return EDGE in before.groups and bool(own[0].groups & {"DO", "BE"})


def _part(match: Found, heard: Heard) -> int:
    """Where the part of the sentence begins that a match starts in."""
    place = match.start
    while place > 0 and EDGE not in heard.words[place - 1].groups:
        place -= 1
    return place


def _chain(found: Sequence[Found]) -> list[Found]:
    ends = sorted(found, key=lambda match: (match.end, match.start))
    best: list[tuple[float, tuple[Found, ...]]] = [(0.0, ())]
    behind = [0]
    for match in ends:
        before = max(place for place, end in enumerate(behind) if end <= match.start)
        weight, chain = best[before]
        taken = (weight + match.weight, (*chain, match))
        best.append(max(best[-1], taken, key=lambda entry: entry[0]))
        behind.append(match.end)
    return list(best[-1][1])


def _is_enough(chosen: Sequence[Found], heard: Heard) -> bool:
    """Whether the acts explain enough of what was said; a part of the sentence without an act counts for less."""
    explained = frozenset(place for match in chosen for place in match.own)
    parts = {_part(match, heard) for match in chosen}
    wanted, here = LEAST_WEIGHT, 1
    for place, word in enumerate(heard.words):
        if EDGE in word.groups:
            here = place + 1
        elif place not in explained and LIGHT not in word.groups and not word.groups & _SMALL:
            is_strange = bool(word.values) or not word.is_known
            cost = PER_STRANGE_WORD if is_strange else PER_KNOWN_WORD
            if "ELSEWHERE" in word.groups:
                cost = PER_WORD_OF_ELSEWHERE
            wanted += cost if here in parts else cost * ELSEWHERE
    if wanted == LEAST_WEIGHT and not any(match.act in CHANGES for match in chosen):
        # Nothing was left unexplained and nothing is changed: a word alone will do.
        wanted = WEIGHT_WORD
    return sum(match.weight for match in chosen) >= wanted - CLOSE


def _merged(meant: Iterable[Meant]) -> list[Meant]:
    """Each act once: slots said in several places come together, and a second food joins the first in a list."""
    merged: dict[str, dict[str, object]] = {}
    for one in meant:
        slots = merged.setdefault(one.act, {})
        for name, value in one.slots.items():
            if name in ("food",) and name in slots and slots[name] != value:
                there = slots[name]
                slots[name] = [*(there if isinstance(there, list) else [there]), value]
            else:
                slots[name] = value
    return [Meant(act=act, slots=slots) for act, slots in merged.items()]


def _in_order(meant: Sequence[Meant]) -> tuple[Meant, ...]:
    """As it was said, but for questions before a change: they come behind it, so that their answers know of it."""
    behind = max((place for place, one in enumerate(meant, start=1) if one.act in CHANGES), default=0)
    done = [one for one in meant[:behind] if one.act in CHANGES or one.act in DEEDS]
    asked = [one for one in meant[:behind] if one not in done]
    return (*done, *asked, *meant[behind:])


def _corrected(meant: Sequence[Meant], context: Context) -> list[Meant]:
    """Without the "scratch that" of a correction: "scratch that, nine" says the number of people again."""
    again = [place for place, one in enumerate(meant) if one.act == context.last and one.act in CHANGES]
    changes = any(one.act in CHANGES for one in meant)
    return [
        one
        for place, one in enumerate(meant)
        if one.slots
        or (
            not (one.act == "undo" and again and place < again[0]) and not (one.act == "forget" and changes)
        )  # "set it to 450 and forget it" forgets no meal
    ]


def nearest_acts(utterance: str, context: Context, most: int = 3) -> tuple[str, ...]:
    """The acts that an utterance comes nearest to, by the words that they share."""
    heard = hear(utterance, foods=context.food_marks, known=context.known)
    scores: dict[str, float] = {}
    for match in patterns().find(heard):
        scores[match.act] = max(scores.get(match.act, 0.0), 100 + match.weight)
    for name, act in acts().items():
        if name not in scores:
            scores[name] = max(likeness(heard.text.lower(), example) for example in (act.example, act.says))
    ranked = sorted((name for name in scores if name != "again"), key=lambda name: -scores[name])
    return tuple(ranked[:most])
