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

from assistant.reader import words
from assistant.reader.clauses import Clause
from assistant.reader.doing import deed_of
from assistant.reader.mentions import Mention
from assistant.reader.places import Place
from assistant.reader.scene import WAIT, Scene, liquids
from assistant.reader.sections import Line
from assistant.reader.sheet import Sheet, paragraphs
from assistant.reader.taking import Taker, Taking
from assistant.reader.things import things_of
from assistant.reader.times import counts, kind
from assistant.reader.unspoken import unspoken
from rules.recipe import Action, Deed, Duration, Ingredient, Step, Use

#: Deeds that go along with others; without food of their own they are no actions.
COMPANIONS: frozenset[Deed] = frozenset({"mix", "turn", "rest", "other", "cover"})
#: The pot comes off the fire.
OFF = re.compile(
    r"\b(?:off|from) (?:the )?(?:heat|fire|stove|burner|flame|hob)\b"
    r"|\b(?:turn|turned|switch|shut) (?:(?:the |your )?(?:heat|oven|fire|stove|burner|flame|gas|hob) )?off\b"
)
#: It goes over the fire, or back to it.
ON = re.compile(
    r"\b(?:on|over|onto|to) (?:the |a |your )?(?:\w{1,12} )?(?:heat|fire|stove|stovetop|burner|flame|hob)\b"
)
#: The sign to wait for, up to the next comma, bracket or full stop.
UNTIL = re.compile(r"\b(?:until|till|til)\s+([^,;.()\n]{2,120})", re.IGNORECASE)
#: A sentence that only warns: "Do not stir!", "Again, don't peek."
WARNS = re.compile(r"(?:[A-Za-z]{1,12}, )?(?:do not|don[’']?t|never|be careful|careful)\b", re.IGNORECASE)


class Reading(NamedTuple):
    """The method as read: its steps, and all ingredients with those that only the method names."""

    steps: tuple[Step, ...]
    ingredients: tuple[Ingredient, ...]


class _Draft(NamedTuple):
    """An action on its way: its uses are settled when the whole method is read."""

    step: int
    action: Action
    uses: tuple[Taking, ...]


def read_steps(
    lines: Iterable[Line], ingredients: Sequence[Ingredient], *, title: str | None = None
) -> Reading:
    """Read the lines of the method against the list of ingredients."""
    method = _Method(ingredients, title)
    sheets = [Sheet(paragraph, method.taker.foods) for paragraph in paragraphs(lines)]
    method.taker.referring.look_ahead(mention for sheet in sheets for mention in sheet.mentions)
    for sheet in sheets:
        method.read(sheet)
    return method.reading()


class _Method:
    """Reads step after step and remembers where the cook stands."""

    def __init__(self, ingredients: Sequence[Ingredient], title: str | None) -> None:
        self.taker = Taker(ingredients, title)
        self.scene = Scene(yeast=any(food.role in ("yeast", "culture") for food in self.taker.foods.known))
        self.steps: list[Step] = []
        self.drafts: list[_Draft] = []

    def read(self, sheet: Sheet) -> None:
        """One step: its clauses in order."""
        sheet.first = len(self.steps)
        self.steps += [
            Step(line=line.number, text=line.body, component=line.component, goes_on=number > 0)
            for number, line in enumerate(sheet.paragraph.lines)
        ]
        rest = iter(sheet.clauses)
        clause = next(rest, None)
        for start, end in sheet.frame.sentences:
            if end <= sheet.label:
                clause = next((clause for clause in rest if clause.verb_start >= end), None)
                continue
            before = len(self.drafts)
            if clause is None or clause.verb_start >= end:
                self._statement(sheet, start, end)
            elif clause.verb_start - start > 2 and sheet.low(clause.verb_start - 1) in (",", ";", "."):
                clause = self._before_the_verb(sheet, clause)
            while clause is not None and clause.verb_start < end:
                self._clause(sheet, clause)
                clause = next(rest, None)
            self._quote(before, sheet.text[start:end].text)
        for temperature in sheet.temperatures:
            number = sheet.first + sheet.paragraph.line_at(temperature.start)
            known = self.steps[number].temps_f
            if temperature.fahrenheit not in known:
                self._change(number, temps_f=(*known, temperature.fahrenheit))

    def _quote(self, since: int, sentence: str) -> None:
        """Let the actions drafted `since` then keep the sentence that tells them.

        A warning tells no action of its own ("Do not stir!"): it stays with the sentence before it.
        """
        said = " ".join(sentence.split())
        if since == len(self.drafts) and WARNS.match(said) and self.drafts:
            last = self.drafts[-1].action.says
            while since and self.drafts[since - 1].action.says == last:
                since -= 1
            said = f"{last} {said}" if last else said
        for number in range(since, len(self.drafts)):
            draft = self.drafts[number]
            self.drafts[number] = draft._replace(action=msgspec.structs.replace(draft.action, says=said))

    def _before_the_verb(self, sheet: Sheet, clause: Clause) -> Clause:
        """What a sentence says before its first verb may be a deed of its own: "Onions in, keep going"."""
        comma = clause.verb_start - 1
        if not unspoken(sheet, clause.start, comma, self.scene) or _leads(sheet.low(clause.start)):
            return clause
        self._statement(sheet, clause.start, comma)
        return clause._replace(start=clause.verb_start)

    def _change(self, number: int, **fields: object) -> None:
        self.steps[number] = msgspec.structs.replace(self.steps[number], **fields)

    def _clause(self, sheet: Sheet, clause: Clause) -> None:
        # "Put the butter in the oven to melt" is one deed, and the butter stands inside of its verb.
        own = clause.verb_end - len(clause.verb.words.split())
        verb_start = own if clause.verb.form == "plain" and not clause.verb.food else clause.verb_start
        spoken = [
            mention
            for mention in sheet.mentions_in(clause.start, clause.end)
            if not max(verb_start, clause.verb_start) <= mention.start < clause.verb_end
        ]
        vessels = [
            place
            for place in sheet.places_in(clause.start, clause.end)
            # "While the oven heats" tells of another place than the one where it is done.
            if not sheet.aside(place.start, clause)
        ]
        place = _place(vessels)
        heat = next(iter(sheet.signs_in(sheet.heat, clause.start, clause.end)), None)
        things = sheet.things_in(clause.start, clause.end)
        made, named = things_of(sheet.text, clause, things, spoken, sheet.frame.asides)
        deed = deed_of(
            clause,
            page=sheet.frame,
            place=place,
            places=vessels,
            roles=self._roles(sheet, clause, spoken),
            heat=heat,  # type: ignore[arg-type]
            warm=sheet.temperature_in(clause.start, clause.end) is not None,
            scene=self.scene,
        )
        if not clause.told and deed in COMPANIONS and not spoken:
            self._durations(sheet, clause.start, clause.end, self.scene.goes_on("mix") or self.scene.last)
            return
        uses = self.taker.of_clause(sheet, clause, deed, spoken, made, named)
        if deed == "other" and made and uses:
            # "Prepare the batter" mixes all that belongs to it.
            deed = "mix"
        taken = [self.taker.foods.known[at] for at, _ in uses]
        pours = bool({name for _, name in named} & liquids()) or any(food.pours for food in taken)
        durations = self._durations(
            sheet,
            clause.start,
            clause.end,
            self.scene.goes_on(deed, place, wet=pours, heat=heat),  # type: ignore[arg-type]
        )
        roles = [food.role for food in taken]
        pours = pours or any(food.pours for food in taken)
        said = sheet.said(clause.start, clause.end)
        off = bool(OFF.search(said))
        on = bool(ON.search(said)) and not off
        self.scene.after(deed, place, roles, heat=heat, pours=pours, off=off, on=on)  # type: ignore[arg-type]
        lid = sheet.signs_in(sheet.lid, clause.start, clause.end)
        action = Action(
            does=deed,
            word=clause.verb.words
            if clause.verb.form == "plain"
            else sheet.said(clause.verb_start, clause.verb_end),
            things=tuple(dict.fromkeys(name for _, name in sorted(named, key=itemgetter(0)))),
            makes=made,
            vessel=place.name if place else None,
            heat=heat,  # type: ignore[arg-type]
            covered=lid[-1] == "covered" if lid else None,
            temp_f=sheet.temperature_in(clause.start, clause.end),
            minutes=durations[0] if durations else None,
            until=_until(sheet.written(clause.start, clause.end)),
            optional=_says(said, "optional"),
            ahead=sheet.ahead or _says(said, "ahead"),
        )
        self.drafts.append(_Draft(sheet.step_at(clause.verb_start), action, tuple(uses)))

    def _statement(self, sheet: Sheet, start: int, end: int) -> None:
        """A sentence, or the head of one, without an order: what it tells to do all the same, and its times."""
        place = _place(sheet.places_in(start, end))
        deeds = unspoken(sheet, start, end, self.scene)
        going = self.scene.last if self.scene.last in WAIT else self.scene.goes_on("other")
        durations = self._durations(sheet, start, end, "bake" if "bake" in deeds else going)
        for deed in deeds:
            uses: list[Taking] = []
            if deed in ("season", "add", "top"):
                for mention in sheet.mentions_in(start, end):
                    uses += self.taker.of_mention(sheet, None, mention, deed, [])
                if not uses:
                    continue
            roles = {self.taker.foods.known[at].role for at, _ in uses}
            # Fat alone in a pan is there to get hot.
            done: Deed = "heat" if roles == {"fat"} and place and place.kind in ("pan", "pot") else deed
            pours = any(self.taker.foods.known[at].pours for at, _ in uses)
            self.scene.after(done, place, roles, heat=None, pours=pours)
            action = Action(
                does=done,
                word=done,
                vessel="oven" if done == "preheat" else place.name if place else None,
                temp_f=sheet.temperature_in(start, end),
                minutes=durations[0] if durations and done == "bake" else None,
                optional=_says(sheet.said(start, end), "optional"),
                ahead=sheet.ahead,
            )
            self.drafts.append(_Draft(sheet.step_at(start), action, tuple(uses)))

    def _roles(self, sheet: Sheet, clause: Clause, spoken: list[Mention]) -> frozenset[str]:
        """The roles of the foods that a clause itself speaks of."""
        return frozenset(
            self.taker.foods.role_of(at, mention)
            for mention in spoken
            if not sheet.aside(mention.start, clause)
            for at in (mention.who or (-1,))
        )

    def _durations(self, sheet: Sheet, start: int, end: int, deed: Deed | None) -> list[Duration]:
        found = []
        for quantity in sheet.times_in(start, end):
            if not counts(sheet.paragraph.text, quantity, deed):
                continue
            sheet.told.add(quantity.start)
            duration = Duration(
                what=kind(deed, sheet.paragraph.text, quantity), low_min=quantity.low, high_min=quantity.high
            )
            found.append(duration)
            number = sheet.first + sheet.paragraph.line_at(quantity.end - 1)
            self._change(number, durations=(*self.steps[number].durations, duration))
        return found

    def reading(self) -> Reading:
        """Settle the shares and hand everything over."""
        actions: dict[int, list[Action]] = {}
        for draft in self.drafts:
            uses = tuple(
                Use(ingredient=index, share=self.taker.shares.share(index, taking))
                for index, taking in dict(draft.uses).items()
            )
            actions.setdefault(draft.step, []).append(msgspec.structs.replace(draft.action, uses=uses))
        for number in range(len(self.steps)):
            own = tuple(actions.get(number, ()))
            self._change(
                number, actions=own, uses=tuple(dict.fromkeys(u.ingredient for a in own for u in a.uses))
            )
        return Reading(tuple(self.steps), tuple(self.taker.foods.ingredients))


def _leads(word: str) -> bool:
    """Whether a word opens a part that belongs to the verb after it: "In a bowl, whisk"."""
    table = words.groups("orders.toml")
    return word in table["leads"] or word in table["forward"]


def _place(found: list[Place]) -> Place | None:
    """The vessel that counts: the first that the food goes into, else the first."""
    into = [place for place in found if not place.out and place.after_preposition]
    if len(into) > 1 and into[0].kind == "bowl":
        return next((place for place in into if place.kind == "oven"), into[0])
    if into:
        return into[0]
    return next((place for place in found if not place.out), found[0] if found else None)


def _until(clause: str) -> str | None:
    """The sign to wait for: "until the top is golden"."""
    found = UNTIL.search(clause)
    return f"until {found.group(1).strip()}" if found else None


def _says(low: str, group: str) -> bool:
    return any(phrase in low for phrase in words.groups("clauses.toml")[group])
