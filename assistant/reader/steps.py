"""The method read closely: every step with its typed actions, and the foods that only the method names.

An ingredient is a `use` of the action that takes it: where it is cut (handwork) and where it enters. When it is spoken
of later ("stir the onions again", "the marinated chicken") its name stands among the action's `things`, beside the
batter and the sauce.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from operator import itemgetter
from typing import NamedTuple

import msgspec
from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.clauses import Clause, Frame, cut, frame
from assistant.reader.doing import HANDLING, Scene, deed_of
from assistant.reader.mentions import Foods, Mention, things
from assistant.reader.places import Place, Sign, fires, lids, places
from assistant.reader.prose import Quantity, quantities
from assistant.reader.sections import Line
from assistant.reader.shares import Shares, said_share
from assistant.reader.times import counts, kind
from assistant.reader.tokens import Finder, doc
from assistant.reader.warmth import temperatures
from rules.foods.names import plain, singulars
from rules.recipe import Action, Amount, Deed, Duration, Ingredient, Step, Use
from rules.roles import POURED_AGAIN

#: Foods that a method names without listing them, and that a cook has to have all the same.
PRONOUNS = frozenset({"it", "them", "these", "those", "this", "everything", "all", "both", "each"})
NOT_TAKEN = frozenset({"rinse", "drain", "strain", "store", "cool", "turn", "preheat", "line"})
HEDGES = frozenset(
    {
        "like",
        "such",
        "ideally",
        "e.g",
        "instead",
        "without",
        "than",
        "prefer",
        "recommend",
        "suggest",
        "taste",
        "resemble",
        "works",
        "goes",
        "same",
    }
)


#: "Over the hot butter" is the butter that was put there.
HEATED = frozenset({"hot", "melted", "foaming", "sizzling", "bubbling", "browned", "warm", "cooled"})


class Paragraph(NamedTuple):
    """The lines of one step, joined: text, and for each line where it begins in it."""

    lines: tuple[Line, ...]
    text: str
    starts: tuple[int, ...]

    def line_at(self, offset: int) -> int:
        """The place in `lines` of the line that holds a character of the text."""
        return max(index for index, start in enumerate(self.starts) if start <= max(offset, 0))


class Reading(NamedTuple):
    """The method as read: its steps, and all ingredients with those that only the method names."""

    steps: tuple[Step, ...]
    ingredients: tuple[Ingredient, ...]


def read_steps(
    lines: Iterable[Line], ingredients: Sequence[Ingredient], *, title: str | None = None
) -> Reading:
    """Read the lines of the method against the list of ingredients."""
    reader = _Method(ingredients, title)
    for paragraph in _paragraphs(lines):
        reader.read(paragraph)
    return reader.reading()


def _paragraphs(lines: Iterable[Line]) -> list[Paragraph]:
    groups: list[list[Line]] = []
    for line in lines:
        if line.fresh or not groups:
            groups.append([])
        groups[-1].append(line)
    found = []
    for group in groups:
        starts, text = [], ""
        for line in group:
            text += " " if text else ""
            starts.append(len(text))
            text += line.body
        found.append(Paragraph(tuple(group), text, tuple(starts)))
    return found


class _Draft(NamedTuple):
    """An action on its way: its uses are settled when the whole method is read."""

    line: int
    action: Action
    uses: tuple[tuple[int, int], ...]  # ingredient, number of its taking


class _Method:
    """Reads step after step and remembers what was taken and where the cook stands."""

    def __init__(self, ingredients: Sequence[Ingredient], title: str | None) -> None:
        self.foods = Foods(ingredients)
        self.listed = len(ingredients)
        self.shares = Shares()
        self.scene = Scene()
        self.title = frozenset(singulars(plain(title or "")).split())
        self.steps: list[Step] = []
        self.drafts: list[_Draft] = []
        self.held: tuple[int, ...] = ()

    def read(self, paragraph: Paragraph) -> None:
        """One step: its clauses in order."""
        text = doc(paragraph.text)
        mentions = self.foods.mentions(text)
        vessels = places(text)
        taken = {index for place in vessels for index in range(place.start, place.end)}
        mentions = [
            mention for mention in mentions if mention.start not in taken and mention.end - 1 not in taken
        ]
        names = frozenset(
            index
            for span in (*mentions, *vessels)
            for index in range(span.start, span.end)
            if index > span.start or span.end - span.start == 1
        )
        page_frame = frame(text)
        clauses = cut(page_frame, names | frozenset(p.end - 1 for p in vessels))
        first = len(self.steps)
        for line in paragraph.lines:
            self.steps.append(Step(line=line.number, text=line.body, component=line.component))
        amounts = quantities(paragraph.text)
        page = _Page(paragraph, text, mentions, vessels, amounts, fires(text), lids(text), first, page_frame)
        done = 0
        for start, end in page_frame.sentences:
            inside = [clause for clause in clauses if start <= clause.verb_start < end]
            if not inside:
                self._statement(page, start, end)
            for clause in inside:
                self._clause(page, clause)
                done += 1
        self._temperatures(page)

    def _clause(self, page: _Page, clause: Clause) -> None:
        inside = page.within(clause.start, clause.end)
        spoken = [
            mention
            for mention in inside.mentions
            if mention.start not in range(clause.verb_start, clause.verb_end)
        ]
        place = _place(inside.places)
        made, named = _things(page.text, clause, inside.mentions)
        hands = clause.verb.deed in HANDLING
        deed = deed_of(clause, place, inside.places, [self._roles(mention) for mention in spoken], self.scene)
        if (
            not clause.told
            and clause.verb.form == "ing"
            and deed in ("mix", "turn", "rest", "other", "cover", "check")
        ):
            self._durations(page, clause.start, clause.end, self.scene.last, None)
            if not spoken:
                return
        uses: list[tuple[int, int]] = []
        for mention in spoken:
            uses += self._take(page, clause, mention, deed, hands=deed in HANDLING, named=named)
        if (
            not spoken
            and self.held
            and not (made and not named)
            and (deed not in HANDLING or clause.verb_end < len(page.text))
            and _means_the_last(page.text, clause)
            and deed not in ("preheat", "other", "serve", "cover", "line", "grease")
        ):
            uses += [(index, self.shares.take(index, None, handled=deed in HANDLING)) for index in self.held]
        heat = next((sign.says for sign in page.heat if clause.start <= sign.at < clause.end), None)
        lid = [sign.says for sign in page.lid if clause.start <= sign.at < clause.end]
        durations = self._durations(page, clause.start, clause.end, deed, clause)
        if deed in HANDLING and uses:
            self.held = tuple(dict.fromkeys(index for index, _ in uses))
        elif uses or deed not in HANDLING:
            self.held = () if deed not in ("other",) else self.held
        self.scene.after(
            deed,
            place,
            [self.foods.known[index].role for index, _ in uses],
            text=page.text[clause.start : clause.end].text.lower(),
        )
        low = page.text[clause.start : clause.end].text.lower()
        action = Action(
            does=deed,
            word=clause.verb.words
            if clause.verb.form == "plain"
            else page.text[clause.verb_start : clause.verb_end].text.lower(),
            things=tuple(dict.fromkeys(name for _, name in sorted(named, key=itemgetter(0)))),
            makes=made,
            vessel=place.words if place else None,
            heat=heat,  # type: ignore[arg-type]
            covered=(lid[-1] == "covered") if lid else None,
            temp_f=next(
                (
                    t.fahrenheit
                    for t in temperatures(page.amounts)
                    if page.holds(t.start, clause.start, clause.end)
                ),
                None,
            ),
            minutes=durations[0] if durations else None,
            until=_until(page.text[clause.start : clause.end].text),
            optional=_says(low, "optional"),
            ahead=_says(low, "ahead"),
        )
        self.drafts.append(_Draft(page.step_at(clause.verb_start), action, tuple(uses)))

    def _statement(self, page: _Page, start: int, end: int) -> None:
        """A sentence without an order: its times belong to what goes on, "Salt and pepper to taste" seasons."""
        words_ = page.text[start:end].text.lower()
        mentions = page.within(start, end).mentions
        if "to taste" in words_ and mentions:
            uses: list[tuple[int, int]] = []
            for mention in mentions:
                uses += self._take(page, None, mention, "season", hands=False, named=[])
            self.drafts.append(_Draft(page.step_at(start), Action(does="season", word="season"), tuple(uses)))
        self._durations(page, start, end, self.scene.last, None)

    def _roles(self, mention: Mention) -> frozenset[str]:
        return frozenset(self.foods.known[index].role for index in mention.who)

    def _take(
        self,
        page: _Page,
        clause: Clause | None,
        mention: Mention,
        deed: Deed,
        *,
        hands: bool,
        named: list[tuple[int, str]],
    ) -> list[tuple[int, int]]:
        """What a mention takes; a food that was taken before becomes a thing."""
        text = page.text
        if page.aside(mention.start, clause):
            return []
        who = self._who(page, mention)
        if mention.sort == "unlisted":
            index = self._unlisted(page, clause, mention, deed)
            if index is None:
                return []
            who = (index,)
        if not who:
            if mention.sort == "group":
                named.append((mention.start, singulars(plain(text[mention.start : mention.end].text))))
            return []
        taken = []
        for index in who:
            share = (
                said_share(
                    text,
                    mention.start,
                    self.foods.ingredients[index],
                    page.amounts,
                    page.offset(mention.start),
                )
                if mention.sort == "food"
                else None
            )
            if self.shares.may_take(
                index, share, handled=hands, again=self._again(page, mention, index, deed)
            ):
                taken.append((index, self.shares.take(index, share, handled=hands)))
            else:
                said = singulars(plain(text[mention.start : mention.end].text))
                named.append(
                    (mention.start, said if mention.sort == "food" else self.foods.ingredients[index].name)
                )
        return taken

    def _who(self, page: _Page, mention: Mention) -> tuple[int, ...]:
        if mention.sort in ("all", "rest"):
            left = tuple(index for index in range(self.listed) if not self.shares.entered(index))
            part = _component_near(
                page.text, mention, [i.component for i in self.foods.ingredients[: self.listed]]
            )
            if part:
                return tuple(i for i in left if self.foods.ingredients[i].component == part)
            before = page.text[mention.start - 1].lower_ if mention.start else ""
            if mention.words == "ingredients" and before not in (
                "all",
                "the",
                "these",
                "",
                "mix",
                "combine",
                "add",
                "blend",
                "of",
                "together",
            ):
                return ()
            own = [
                i for i in left if page.component and self.foods.ingredients[i].component == page.component
            ]
            return tuple(own) or left
        if mention.sort == "group":
            members = tuple(i for i in mention.who if not self.shares.entered(i))
            return members if members else ()
        if len(mention.who) > 1:
            here = tuple(
                i
                for i in mention.who
                if page.component and self.foods.ingredients[i].component == page.component
            )
            fresh = tuple(i for i in (here or mention.who) if not self.shares.entered(i))
            several = here or mention.who
            names = {self.foods.ingredients[i].name for i in several}
            if len(names) == 1:
                # One food on two lines: the first that is still there.
                return fresh[:1] or several[:1]
            return fresh or several
        return mention.who

    def _again(self, page: _Page, mention: Mention, index: int, deed: Deed) -> bool:
        """Whether a food that was taken is taken a second time: fat, salt, sugar, without "the"."""
        before = next(
            (
                word
                for index in range(mention.start - 1, -1, -1)
                if (word := page.text[index].lower_) not in HEATED
            ),
            "",
        )
        entering = deed not in HANDLING | {"serve", "turn", "bake", "rest", "cover"} or deed in ("grease",)
        if self.foods.known[index].role not in POURED_AGAIN or not entering:
            return False
        return before not in ("the", "this", "that", "these")

    def _unlisted(self, page: _Page, clause: Clause | None, mention: Mention, deed: Deed) -> int | None:
        """A food that the list does not have, made an ingredient of its own if the cook has to take it."""
        from assistant.reader.added import added

        ingredient = added(
            page, clause, mention, deed, title=self.title, listed=self.foods.ingredients[: self.listed]
        )
        return self.foods.add(ingredient) if ingredient else None

    def _durations(
        self, page: _Page, start: int, end: int, deed: Deed | None, clause: Clause | None
    ) -> list[Duration]:
        found = []
        text = page.paragraph.text
        for quantity in page.amounts:
            if (
                quantity.sort != "time"
                or quantity.start in page.told
                or not page.holds(quantity.start, start, end)
            ):
                continue
            if not counts(text, quantity, deed):
                continue
            page.told.add(quantity.start)
            duration = Duration(what=kind(deed), low_min=quantity.low, high_min=quantity.high)
            found.append(duration)
            number = page.first + page.paragraph.line_at(quantity.end - 1)
            step = self.steps[number]
            self.steps[number] = msgspec.structs.replace(step, durations=(*step.durations, duration))
        return found

    def _temperatures(self, page: _Page) -> None:
        for temperature in temperatures(page.amounts):
            number = page.first + page.paragraph.line_at(temperature.start)
            step = self.steps[number]
            if temperature.fahrenheit not in step.temps_f:
                self.steps[number] = msgspec.structs.replace(
                    step, temps_f=(*step.temps_f, temperature.fahrenheit)
                )

    def reading(self) -> Reading:
        """Settle the shares and hand everything over."""
        actions: dict[int, list[Action]] = {}
        for draft in self.drafts:
            uses = tuple(
                Use(ingredient=index, share=self.shares.share(index, taking))
                for index, taking in dict(draft.uses).items()
            )
            actions.setdefault(draft.line, []).append(msgspec.structs.replace(draft.action, uses=uses))
        steps = []
        for number, step in enumerate(self.steps):
            own = tuple(actions.get(number, ()))
            uses = tuple(dict.fromkeys(use.ingredient for action in own for use in action.uses))
            steps.append(msgspec.structs.replace(step, actions=own, uses=uses))
        return Reading(tuple(steps), tuple(self.foods.ingredients))


class _Inside(NamedTuple):
    mentions: list[Mention]
    places: list[Place]


class _Page:
    """One paragraph with everything found in it."""

    def __init__(
        self,
        paragraph: Paragraph,
        text: Doc,
        mentions: list[Mention],
        vessels: list[Place],
        amounts: tuple[Quantity, ...],
        heat: list[Sign],
        lid: list[Sign],
        first: int,
        bones: Frame,
    ) -> None:
        self.paragraph = paragraph
        self.text = text
        self.mentions = mentions
        self.places = vessels
        self.amounts = amounts
        self.heat = heat
        self.lid = lid
        self.first = first
        self.frame = bones
        self.told: set[int] = set()
        self.component = paragraph.lines[0].component

    def within(self, start: int, end: int) -> _Inside:
        """What stands between two tokens."""
        return _Inside(
            [mention for mention in self.mentions if start <= mention.start < end],
            [place for place in self.places if start <= place.start < end],
        )

    def offset(self, token: int) -> int:
        """Where a token begins in the text [characters]."""
        return self.text[token].idx if token < len(self.text) else len(self.text.text)

    def holds(self, offset: int, start: int, end: int) -> bool:
        """Whether a character stands between two tokens."""
        return self.offset(start) <= offset + 0 < self.offset(end) or (
            offset < self.offset(end) and start == 0
        )

    def step_at(self, token: int) -> int:
        """The number of the step whose line holds a token."""
        return self.first + self.paragraph.line_at(self.offset(token))

    def aside(self, token: int, clause: Clause | None) -> bool:
        """Whether a token stands where the text tells when or how far: "until the onions are soft"."""
        if token not in self.frame.asides:
            return False
        return not (clause and clause.verb_start <= token and clause.verb_start in self.frame.asides)


def _place(found: list[Place]) -> Place | None:
    """The vessel that counts: the first that the food goes into, else the first."""
    into = [place for place in found if not place.out and place.after_preposition]
    oven = [place for place in into if place.kind == "oven"]
    if oven and len(into) > 1 and into[0].kind not in ("oven",):
        return into[0] if into[0].kind not in ("bowl",) else oven[0]
    return (into or [place for place in found if not place.out] or found or [None])[0]


def _things(text: Doc, clause: Clause, mentions: list[Mention]) -> tuple[str | None, list[tuple[int, str]]]:
    """What a clause makes ("until a dough forms") and the intermediate things that it names, each with its place."""
    covered = {
        index
        for mention in mentions
        if mention.sort == "food" and mention.end - mention.start > 1
        for index in range(mention.start, mention.end)
    }
    made: str | None = None
    named: list[tuple[int, str]] = []
    for mark in _thing_finder().longest(text):
        start, end = mark.start, mark.end
        if (
            not clause.start <= start < clause.end
            or start in covered
            or (clause.verb_start <= start < clause.verb_end)
        ):
            continue
        name = singulars(plain(text[start:end].text))
        lead = [text[index].lower_ for index in range(max(clause.start, start - 4), start)]
        if _is_made(lead, clause):
            made = made or name
        else:
            named.append((start, name))
    return made, named


def _is_made(lead: list[str], clause: Clause) -> bool:
    if clause.verb.words in ("make", "prepare", "create", "form", "shape", "make into", "roll", "roll into"):
        return clause.verb.words not in ("roll",) or "into" in lead
    for article in ("a", "an"):
        if article in lead:
            before = lead[: lead.index(article)]
            return bool(before) and before[-1] in (
                "to",
                "into",
                "form",
                "forms",
                "makes",
                "make",
                "becomes",
                "get",
                "until",
                "for",
                "as",
                "like",
                "have",
            )
    return bool(lead) and lead[-1] in ("into", "form")


def _thing_finder() -> Finder:
    return _finders.setdefault(
        "things", Finder({word: [word] for group in words.groups("things.toml").values() for word in group})
    )


_finders: dict[str, Finder] = {}


def _means_the_last(text: Doc, clause: Clause) -> bool:
    """Whether a clause works on what was just cut: "chop them", "add to the pot"."""
    following = text[clause.verb_end].lower_ if clause.verb_end < len(text) else ""
    if any(
        text[index].lower_ in PRONOUNS
        for index in range(clause.verb_start, min(clause.end, clause.verb_start + 4))
    ):
        return True
    return following in (
        "",
        "to",
        "in",
        "into",
        "with",
        "over",
        "on",
        "for",
        "until",
        ".",
        ",",
        ";",
        "and",
        "aside",
        "together",
        "at",
        "under",
        "through",
    )


def _component_near(text: Doc, mention: Mention, components: list[str | None]) -> str | None:
    """The component that a group is of: "all the ingredients in the Meatballs section", "dressing ingredients"."""
    near = {
        singulars(plain(text[index].text))
        for index in range(max(0, mention.start - 3), min(len(text), mention.end + 6))
    }
    for component in dict.fromkeys(components):
        if component and set(singulars(plain(component)).split()) <= near:
            return component
    return None


#: The sign to wait for, up to the next comma, bracket or full stop.
UNTIL = re.compile(r"\b(?:until|till|til)\s+([^,;.()\n]{2,120})", re.IGNORECASE)


def _until(clause: str) -> str | None:
    """The sign to wait for: "until the top is golden"."""
    found = UNTIL.search(clause)
    return f"until {found.group(1).strip()}" if found else None


def _says(low: str, group: str) -> bool:
    return any(phrase in low for phrase in words.groups("clauses.toml")[group])


__all__ = ["Amount", "Reading", "read_steps", "things"]
