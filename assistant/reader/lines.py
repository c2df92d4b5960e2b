"""One ingredient line read: amounts, food, state, preparation, what may stand for it, and what else the line says.

The line is taken apart at commas, dashes and brackets (`pieces.py`); its first amounts come from the amount grammar
(`amounts.py`); the first piece that is more than states and remarks holds the name (`names.py`); every other piece is
an aside: a state, a preparation, an amount said another way, a second food, or a note. Nothing is dropped: what is not
understood stays in `notes`.
"""

from __future__ import annotations

from functools import cache

from assistant.reader import clean, names
from assistant.reader import words as tables
from assistant.reader.amounts import Found, amounts, figure
from assistant.reader.marks import mark
from assistant.reader.measures import Unit, spellings, unit
from assistant.reader.names import ANDS, JOINS, ORS, Taken, known
from assistant.reader.pieces import Line, Piece, pieces
from rules import units
from rules.foods import catalogue
from rules.recipe import Amount, Ingredient, Package

#: A figure after one of these is a name or a size, no amount: "no. 2", "type 00".
NUMBERED = frozenset({"no", ".", "#", "-", "/", "x", "type", "size"})
#: A line longer than this is a text; what stands beyond is not read as an ingredient.
LONGEST = 1000


def read_line(text: str, *, line: int, component: str | None = None) -> tuple[Ingredient, ...]:
    """The ingredients that a line names, in its order; none where it names no food (a blank, a tool).

    `text` is the line as pasted, bullet and markup included; `component` is the sub-heading it stands under.
    """
    body = mark(line, text[: 4 * LONGEST]).body[:LONGEST]
    if not any(character.isalpha() for character in body):
        return ()
    reading = _Reading(Line(body))
    reading.read()
    if reading.is_tool:
        return ()
    return reading.ingredients(text=clean.safe(text).strip(), number=line, component=component)


def is_tool(text: str) -> bool:
    """Whether a line of an ingredient list names a tool and no food: "1 cheesecloth", "wooden skewers"."""
    body = mark(0, text[: 4 * LONGEST]).body[:LONGEST]
    if not any(character.isalpha() for character in body):
        return False
    reading = _Reading(Line(body))
    reading.read()
    return reading.is_tool


@cache
def _makes_optional() -> tuple[str, ...]:
    return tables.groups("asides.toml")["component"]


class _Reading:
    """What has been understood of a line so far."""

    def __init__(self, line: Line, start: int = 0, end: int | None = None) -> None:
        self.line = line
        self.start = start
        self.end = len(line) if end is None else end
        self.amounts: list[Amount] = []
        self.taken = Taken()
        self.names: list[str] = []
        self.alternatives: list[str] = []
        self.optional = False
        self.to_taste = False
        self.each = False
        self.is_tool = False
        self.notes: list[str] = []
        self.further: list[_Reading] = []
        self.name_place = (0, 0)

    def read(self) -> None:
        """Read the line from left to right."""
        place = self._opening(self.start)
        place = self._part_of(place)
        found = amounts(self.line.words[: self.end], place, implied=True)
        if found:
            self._take(found)
            place = found.end
        left = pieces(self.line, place, self.end)
        while left and not self.names:
            self._name_piece(left)
        self._listed(left)
        for piece in left:
            self._aside(piece.start, piece.end, bracket=piece.before == "(")
        if not self.names:
            self._name_of_last_resort(place)
        self._settle()

    # The opening of the line.

    def _opening(self, at: int) -> int:
        """Opening := ("optional" | vague | sign)*; "some", "a little", "(optional)" come before the amount."""
        line, place = self.line, at
        while place < self.end:
            after = line.after("optional", place)
            if after > place:
                self.optional = True
                place = after
                continue
            if line.word(place) == "(" and line.word(line.after("optional", place + 1)) == ")" != line.word(
                place + 1
            ):
                self.optional = True
                place = line.after("optional", place + 1) + 1
                continue
            after = line.after("vague", place)
            if after > place and line.word(after) not in ("", ")"):
                self._note(line.text(place, after))
                place = self._vague_unit(after)
                continue
            if line.word(place) in (".", ",", ":", "-", '"', "'", "!", "…", ")"):
                place += 1
                continue
            break
        return place

    def _vague_unit(self, at: int) -> int:
        """After "a few", a unit counts for nothing: "a few sprigs of thyme"."""
        own = unit(self.line.words, at)
        if own and self.line.word(own.end) == "of":
            self._note(self.line.text(at, own.end))
            return own.end + 1
        return at

    def _part_of(self, at: int) -> int:
        """part_of := ["the"] part ("of" | "from"); "juice of 1 lemon", "grated zest of two oranges": the fruit is the food."""
        line, taken = self.line, Taken()
        place = names.lead(line, at, self.end, taken) if line.after("part_taken", at) == at else at
        after = line.after("part_taken", place)
        if after == place:
            return at
        if line.word(after - 1) != "of":
            if line.word(after) not in ("of", "from"):
                return at
            after += 1
        self.taken.preps.append(
            " ".join([*taken.preps, line.text(place, after).removesuffix(" of").removesuffix(" from")])
        )
        self.taken.states += taken.states
        return after

    # Amounts.

    def _take(self, found: Found) -> None:
        self.amounts += found.amounts
        self.each = self.each or found.each
        for note in found.notes:
            self._note(note)
        if found.size:
            self.taken.states.append(found.size)

    def _note(self, text: str) -> None:
        text = text.strip(" ,;:()")
        if text and text not in ("of", "the", "your", "my"):
            self.notes.append(text)

    # The name.

    def _name_piece(self, left: list[Piece]) -> None:
        """Read the first piece of those left; the name may be in it."""
        piece = left.pop(0)
        if piece.before == "(":
            self._aside(piece.start, piece.end, bracket=True)
            return
        line = self.line
        start = self._past_lead(piece.start, piece.end)
        if not self.amounts and start < piece.end:
            found = amounts(line.words[: piece.end], start, implied=True)
            if found:
                self._take(found)
                start = self._past_lead(found.end, piece.end)
        if start >= piece.end:
            return
        if self._is_label(piece, left):
            self._note(line.text(piece.start, piece.end))
            return
        if (
            any(line.after(label, start) > start for label in ("optional", "taste", "tail"))
            or line.word(start) in ORS
        ):
            if left or self.amounts or line.after("optional", start) > start:
                self._aside(start, piece.end, bracket=False)
                return
        end = names.core_end(line, start, piece.end)
        end, rest = self._amount_within(start, end, piece.end)
        last = self._second_amount(start, names.trail(line, start, end, self.taken))
        self.name_place = (start, last)
        self.names, others = names.foods(line, start, last, self.taken)
        self.names = [name for name in self.names if name]
        self.alternatives += others
        if rest < piece.end:
            self._remark(rest, piece.end)

    def _starts_aside(self, at: int) -> bool:
        """Whether a remark starts here, and no name."""
        line = self.line
        return line.word(at) in ORS or any(line.after(label, at) > at for label in ("optional", "taste", "tail"))

    def _past_lead(self, start: int, end: int) -> int:
        """The place where the name starts: states, preparations and vague words taken off."""
        line, place = self.line, start
        while place < end:
            after = names.lead(line, place, end, self.taken)
            vague = max(line.after("vague", after), line.after("example", after))
            if after < vague < end:
                self._note(line.text(after, vague))
                after = vague
            if after == place:
                break
            place = after
        return place

    def _is_label(self, piece: Piece, left: list[Piece]) -> bool:
        """Whether a piece before a colon only says what the food after it is for: "topping: walnuts"."""
        if not left or left[0].before != ":" or self.amounts:
            return False
        after = left[0]
        found = amounts(self.line.words[: after.end], after.start)
        if found and found.end >= after.end:
            return False
        if self.line.has("label", piece.start, piece.end):
            return True
        return not known(self.line.text(piece.start, piece.end))

    def _amount_within(self, start: int, end: int, last: int) -> tuple[int, int]:
        """An amount behind the name in the same piece: "butter 100 g", "eggs 2 large".

        Gives where the name ends and where the rest of the piece begins.
        """
        line = self.line
        if self.amounts:
            return end, end
        for place in range(start + 1, end):
            if not line.word(place)[0].isdigit() or line.word(place - 1) in NUMBERED:
                continue
            found = amounts(line.words[:last], place)
            if found and (found.main.unit or names.lead(line, found.end, end, Taken()) >= end):
                self._take(found)
                return place, found.end
        return end, end

    def _second_amount(self, start: int, end: int) -> int:
        """A second food with an amount of its own: "1 cup flour and 2 eggs", "1 egg or 2 yolks"; the name ends before."""
        line = self.line
        for place in range(start + 1, end - 1):
            word = line.word(place)
            if word not in ANDS | ORS or place in line.whole or figure(line.words, place + 1) is None:
                continue
            if word in ORS:
                self._substitute(place + 1, end)
            else:
                self._another(place + 1, end)
            return place
        return end

    def _another(self, start: int, end: int) -> None:
        """A further ingredient in the same line."""
        reading = _Reading(self.line, start, end)
        reading.read()
        self.further.append(reading)

    def _substitute(self, start: int, end: int) -> None:
        """Foods that may stand for the name, with an amount of their own: "6 cups cooked beans"."""
        line = self.line
        found = amounts(line.words[:end], start)
        place = start
        if found:
            self.amounts += found.amounts
            place = found.end
        taken = Taken()
        place = names.lead(line, place, end, taken)
        place = max(place, line.after("vague", place))
        stop = names.core_end(line, place, end) if place < end else end
        last = names.trail(line, place, stop, taken) if place < stop else stop
        if place < last:
            first, others = names.foods(line, place, last, taken)
            self.alternatives += [*first, *others]
        self._note(f"or {line.text(start, end)}")
        if stop < end:
            self._scan(stop, end)

    def _remark(self, start: int, end: int) -> None:
        """What follows the name without a comma: a preparation or a remark."""
        line = self.line
        if line.word(start) == "from" and self._from_fruit(start, end):
            return
        self._aside(start, end, bracket=False)

    def _from_fruit(self, start: int, end: int) -> bool:
        """from_fruit := "from" amount fruit; "lemon juice from half a lemon" is half a lemon of juice."""
        line = self.line
        found = amounts(line.words[:end], start + 1)
        if found is None or found.end >= end or self.amounts:
            return False
        first = names.lead(line, found.end, end, self.taken)
        if found.main.unit is None and first < end:
            fruit = _singular(line.text(first, end))
            self.amounts = [
                Amount(low=found.main.low, high=found.main.high, unit=fruit, approx=found.main.approx)
            ]
        else:
            self._take(found)
        self._note(line.text(start, end))
        return True

    def _name_of_last_resort(self, at: int) -> None:
        """Nothing but amounts, states and remarks: the unit is the food ("2 cloves"), or the words as they stand."""
        line = self.line
        main = self.amounts[0] if self.amounts else None
        written = spellings().get(line.word(at - 1)) if at > self.start else None
        if main and main.unit and written and written.id == main.unit:
            self.amounts[0] = Amount(low=main.low, high=main.high, approx=main.approx)
            self.names = [line.word(at - 1)]
            return
        words = self.taken.preps + self.taken.states
        text = line.text(at, self.end).strip(" ,;:.()-") or line.text(self.start, self.end)
        self.names = [text]
        if words and text in (*self.taken.preps, *self.taken.states):
            self.taken = Taken()

    # Lists of foods over several pieces.

    def _listed(self, left: list[Piece]) -> None:
        """Listed := ("," food)* ["," ("or" | "and") food]; "sugar, honey or molasses", "beef, veal, and pork"."""
        if not self.names:
            return
        found: list[tuple[list[str], Taken]] = []
        sign = ""
        for piece in left:
            if piece.before not in (",", "-", ")"):
                break
            start = piece.start
            opens = self.line.word(start)
            if opens in JOINS:
                start += 1
            read = self._food_piece(start, piece.end, sure=opens in JOINS)
            if read is None:
                break
            parts, inner = read
            found.append((parts, Taken()))
            sign = (
                "or" if opens in ORS or inner == "or" else "and" if opens in ANDS or inner == "and" else sign
            )
            if sign:
                break
        if not found:
            return
        parts = [part for names_, _ in found for part in names_]
        if sign == "or":
            self.alternatives += parts
        elif sign == "and" and not self._inverted(parts):
            self.names += names.of_one_kind(self.names[0], parts)
        elif not sign and self._inverted(parts):
            self.names[0] = f"{parts[0]} {self.names[0]}"
        elif not sign and not self.amounts and all(known(part) for part in parts):
            self.names += parts
        else:
            return
        del left[: len(found)]

    def _inverted(self, parts: list[str]) -> bool:
        """Whether the second piece only tells the kind of the first: "flour, all-purpose"."""
        return len(parts) == 1 and known(f"{parts[0]} {self.names[0]}") and parts[0] != self.names[0]

    def _food_piece(self, start: int, end: int, *, sure: bool) -> tuple[list[str], str] | None:
        """The foods of a piece after the name, and the word that joins them; None where it is no food."""
        line, taken = self.line, Taken()
        if start >= end or any(
            line.after(label, start) > start for label in ("optional", "taste", "tail", "part_taken")
        ):
            return None
        if figure(line.words, start) or any(line.has(label, start, end) for label in ("optional", "taste")):
            return None
        place = names.lead(line, start, end, taken)
        if place >= end or taken.preps or line.after("tail", place) > place:
            return None
        stop = names.core_end(line, place, end)
        last = names.trail(line, place, stop, taken)
        first, others = names.foods(line, place, last, Taken())
        inner = "or" if others else "and" if len(first) > 1 else ""
        parts = [part for part in first + others if part]
        if not parts or not (sure or inner or known(parts[0]) or known(f"{parts[0]} {self.names[0]}")):
            return None
        if inner and not sure and not all(known(part) for part in parts):
            return None
        if stop < end and not sure:
            return None
        return parts, inner

    # Everything else the line says.

    def _aside(self, start: int, end: int, *, bracket: bool) -> None:
        """One piece beside the name."""
        line = self.line
        start, end = self._trimmed(start, end)
        if start >= end:
            return
        for label in ("optional", "taste"):
            for first, last in sorted(line.starts[label].items()):
                if start <= first and last <= end:
                    self._flag(label, start, first)
                    self._aside(start, first, bracket=bracket)
                    self._aside(last, end, bracket=bracket)
                    return
        if bracket and self._bracket(start, end):
            return
        if line.word(start) in ORS or line.word(start) == "/":
            self._substitute(start + 1, end)
            return
        if self._aside_amount(start, end, bracket=bracket) or self._aside_work(start, end):
            return
        if line.word(start) in ("plus", "and", "&", "+") and self._plus(start, end):
            return
        self._note(line.text(start, end))
        if bracket or not self.amounts:
            self._scan(start, end)

    def _trimmed(self, start: int, end: int) -> tuple[int, int]:
        signs = (",", ";", ":", "-", ".", "(", ")", "!", "?", '"', "'")
        while start < end and self.line.word(start) in signs:
            start += 1
        while (
            start < end
            and self.line.word(end - 1) in signs
            and not (self.line.word(end - 1) == '"' and self.line.word(end - 2)[-1:].isdigit())
        ):
            end -= 1
        return start, end

    def _flag(self, label: str, start: int, at: int) -> None:
        if label == "taste":
            self.to_taste = True
        elif not any(self.line.after("no_optional", place) > place for place in range(start, at)):
            self.optional = True

    def _bracket(self, start: int, end: int) -> bool:
        """Whether a bracket held several asides, each read for itself: "(about 2 cups, chopped)"."""
        inner = pieces(self.line, start, end)
        if len(inner) < 2:
            return False
        if self.line.word(start) in ORS or not self._reads_apart(inner[0]):
            if self.line.word(start) in ORS:
                return False
            self._note(self.line.text(start, end))
            self._scan(start, end)
            return True
        for piece in inner:
            self._aside(piece.start, piece.end, bracket=True)
        return True

    def _reads_apart(self, piece: Piece) -> bool:
        """Whether the first piece of a bracket is an amount, a state or a preparation alone."""
        line = self.line
        found = amounts(line.words[: piece.end], piece.start)
        if found:
            return True
        return names.lead(line, piece.start, piece.end, Taken()) >= piece.end

    def _aside_amount(self, start: int, end: int, *, bracket: bool) -> bool:
        """An amount beside the name: the main one if there was none, the size of the container, or the same said anew."""
        line = self.line
        found = amounts(line.words[:end], start, implied=bracket)
        if found is None:
            own = unit(line.words, start)
            if bracket and own and own.end >= end and not own.plural and own.unit.kind != "length":
                self.amounts.append(Amount(low=1, high=1, unit=own.unit.id))
                return True
            return False
        main, second = (self.amounts[0] if self.amounts else None), found.main
        if main and (units.kind(second.unit) == "length" or (second.unit is None and not bracket)):
            return False
        taken = Taken()
        rest = names.lead(line, found.end, end, taken)
        if found.size:
            return False
        if main and self._is_size(main, found, bracket=bracket):
            self.amounts[0] = _packed(main, second)
            self.amounts += found.amounts[1:]
        else:
            self._take(found)
        self.taken.extend(taken)
        if rest < end:
            if line.word(rest) == "per" or line.after("tail", rest) > rest:
                self._note(line.text(rest, end))
            elif main is None and not self.names:
                self.names = [line.text(rest, end)]
            else:
                self._aside(rest, end, bracket=bracket)
        return True

    @staticmethod
    def _is_size(main: Amount, found: Found, *, bracket: bool) -> bool:
        """Whether an amount after the name is the size of one container or piece of it."""
        if main.package is not None or units.kind(found.main.unit) is None:
            return False
        holder = main.unit in _containers() and (bracket or found.each)
        return holder or (main.unit is None and found.each and main.high > 1)

    def _aside_work(self, start: int, end: int) -> bool:
        """A state or a preparation beside the name."""
        line, taken = self.line, Taken()
        place = names.lead(line, start, end, taken)
        if place >= end:
            self.taken.extend(taken)
            return True
        part = line.after("part_taken", start)
        worked = any(line.after(label, start) > start for label in ("done", "verb")) or part >= end
        adverb = line.after("adverb", start)
        worked = worked or (
            adverb > start and any(line.after(label, adverb) > adverb for label in ("done", "verb"))
        )
        if worked:
            self.taken.preps.append(line.text(start, end))
        return worked

    def _plus(self, start: int, end: int) -> bool:
        """More of the same ("plus 2 tbsp for dusting"), or another food ("plus 1 egg yolk")."""
        line = self.line
        found = amounts(line.words[:end], start + 1)
        if found is None:
            return False
        place = names.lead(line, found.end, end, Taken())
        if place >= end or line.after("tail", place) > place or line.after("no_optional", place) > place:
            self.amounts += found.amounts
            self._note(line.text(start, end))
        else:
            self._another(start + 1, end)
        return True

    def _scan(self, start: int, end: int) -> None:
        """Amounts with a unit anywhere in a remark: they are amounts of the line too."""
        line, place = self.line, start
        while place < end:
            if line.word(place)[0].isdigit():
                found = amounts(line.words[:end], place)
                if found and found.main.unit and units.kind(found.main.unit) != "length":
                    self.amounts += found.amounts
                    place = found.end
                    continue
            place += 1

    # The end.

    def _settle(self) -> None:
        """Say which unit a counted part is, what a shape is, and whether a tool was named."""
        first, last = self.name_place
        line = self.line
        self._fill_in()
        measured = bool(self.amounts) and units.kind(self.amounts[0].unit) is not None
        if self.names and not measured and self._names_tool(first, last):
            self.is_tool = not known(self.names[0])
        if not self.names:
            return
        words = self.names[0].split()
        own = spellings().get(words[-1]) if len(words) > 1 else None
        if last - 1 in line.whole:
            return
        if own and own.trails and self._counts(own):
            self.names[0] = " ".join(words[:-1])
        elif (
            measured
            and len(words) > 1
            and line.before("shape", last) < last
            and words[-1] == line.word(last - 1)
        ):
            self.names[0] = " ".join(words[:-1])
            self.taken.preps.append(words[-1])

    def _fill_in(self) -> None:
        """What a line means without saying it: sized tins of a tinned food, one of a whole thing."""
        main = self.amounts[0] if self.amounts else None
        if main and main.unit is None and main.package and {"canned", "tinned"} & set(self.taken.states):
            self.amounts[0] = Amount(
                low=main.low, high=main.high, unit="can", approx=main.approx, package=main.package
            )
        if main is None and self.names and "whole" in self.taken.states[:1]:
            food = catalogue().find(self.names[0]).food
            if food and food.g_per_piece and _singular(self.names[0]) == self.names[0]:
                self.amounts = [Amount(low=1, high=1)]

    def _names_tool(self, first: int, last: int) -> bool:
        if first == last:
            return self.names[0] in _tools()
        return any(" ".join(self.names[0].split()[-count:]) in _tools() for count in (1, 2, 3))

    def _counts(self, own: Unit) -> bool:
        """Give the count its unit: "3 garlic cloves" are cloves. Without a count, cloves alone are told apart."""
        main = self.amounts[0] if self.amounts else None
        if main is None:
            if own.id == "clove":
                self._note("cloves")
            return own.id == "clove"
        if main.unit is not None:
            return False
        self.amounts[0] = Amount(
            low=main.low, high=main.high, unit=own.id, approx=main.approx, package=main.package
        )
        return True

    def ingredients(self, *, text: str, number: int, component: str | None) -> tuple[Ingredient, ...]:
        """One ingredient for every food wanted; the first has the amounts, all of them if it says "each"."""
        optional = self.optional or any(word in (component or "").lower() for word in _makes_optional())
        found = []
        for place, name in enumerate(self.names):
            given = tuple(self.amounts) if place == 0 or self.each else ()
            notes = [
                *self.notes,
                *([f"in the amount of {self.names[0]}"] if place and self.amounts and not self.each else []),
            ]
            prep = ", ".join(dict.fromkeys(self.taken.preps)) or None
            state = tuple(dict.fromkeys(self.taken.states))
            match = catalogue().find(name, unit=given[0].unit if given else None, state=state, prep=prep)
            found.append(
                Ingredient(
                    line=number,
                    text=text,
                    component=component,
                    amounts=given,
                    name=name,
                    food=match.food.name if match.food else None,
                    state=state,
                    prep=prep,
                    alternatives=tuple(dict.fromkeys(part for part in self.alternatives if part))
                    if place == 0
                    else (),
                    optional=optional,
                    to_taste=self.to_taste,
                    notes="; ".join(dict.fromkeys(notes)) or None,
                )
            )
        for reading in self.further:
            found += reading.ingredients(text=text, number=number, component=component)
        return tuple(found)


@cache
def _tools() -> frozenset[str]:
    return frozenset(tables.groups("tools.toml")["tool"])


@cache
def _containers() -> frozenset[str]:
    return frozenset(own.id for own in spellings().values() if own.kind == "container")


def _packed(amount: Amount, size: Amount) -> Amount:
    package = Package(low=size.low, high=size.high, unit=str(size.unit))
    return Amount(low=amount.low, high=amount.high, unit=amount.unit, approx=amount.approx, package=package)


def _singular(word: str) -> str:
    from rules.foods.names import singular

    return singular(word)
