"""What has been understood of an ingredient line so far, and the ingredients made of it in the end."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from assistant.reader import words as tables
from assistant.reader.amounts import Found
from assistant.reader.names import JOINS, Taken, known
from assistant.reader.pieces import Line
from rules.foods import catalogue
from rules.recipe import Amount, Ingredient

#: Words that are no note by themselves.
SAY_NOTHING = JOINS | {"of", "the", "your", "my", "plus", "use", "other", "", "etc"}
#: Preparations under another name in the catalogue.
MADE_BY = {"minced": "ground"}
SIGNS = " ,;:()[]-.!\"'"


@dataclass
class Draft:
    """A line being read, between two of its places. The parts of the reader fill it in."""

    line: Line
    start: int
    end: int
    amounts: list[Amount] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    alternatives: list[str] = field(default_factory=list)
    taken: Taken = field(default_factory=Taken)
    notes: list[str] = field(default_factory=list)
    optional: bool = False
    to_taste: bool = False
    #: every food of the line has the amounts ("1 tsp each salt and pepper")
    each: bool = False
    is_tool: bool = False
    #: where the name stands
    name_start: int = 0
    name_end: int = 0
    #: stretches that hold another food with an amount of its own
    others: list[tuple[int, int]] = field(default_factory=list)

    @property
    def main(self) -> Amount | None:
        """The first amount, if there is one."""
        return self.amounts[0] if self.amounts else None

    def take(self, found: Found) -> None:
        """Add amounts with what they say besides."""
        self.amounts += found.amounts
        self.each = self.each or found.each
        for note in found.notes:
            self.note(note)
        if found.size:
            self.taken.states.append(found.size)

    def note(self, text: str) -> None:
        """Keep words that are nothing else."""
        text = text.strip(SIGNS)
        if text not in SAY_NOTHING:
            self.notes.append(text)

    def _instead(self) -> tuple[str, ...]:
        """What may stand for the first food: each once, and not that food itself."""
        return tuple(
            dict.fromkeys(
                other for other in map(_unsigned, self.alternatives) if other not in ("", self.names[0])
            )
        )

    def ingredients(self, *, text: str, number: int, component: str | None) -> list[Ingredient]:
        """One ingredient for every food wanted; the first has the amounts, all of them where the line says "each"."""
        optional = self.optional or any(word in (component or "").lower() for word in _makes_optional())
        prep = ", ".join(dict.fromkeys(self.taken.preps)) or None
        state = tuple(dict.fromkeys(_sizes().get(word, word) for word in self.taken.states))
        found = []
        for place, name in enumerate(self.names):
            first = place == 0
            amounts = tuple(self.amounts) if first or self.each else ()
            shared = [f"within the amount of {self.names[0]}"] if self.amounts and not amounts else []
            found.append(
                Ingredient(
                    line=number,
                    text=text,
                    component=component,
                    amounts=amounts,
                    name=name,
                    food=food_key(name, amounts, state, prep, self.taken.preps),
                    state=state,
                    prep=prep,
                    alternatives=self._instead() if first else (),
                    optional=optional,
                    to_taste=self.to_taste,
                    notes="; ".join(dict.fromkeys([*self.notes, *self.taken.notes, *shared])) or None,
                )
            )
        return found


def _unsigned(name: str) -> str:
    return name.strip(SIGNS)


def food_key(
    name: str, amounts: tuple[Amount, ...], state: tuple[str, ...], prep: str | None, preps: list[str]
) -> str | None:
    """The catalogue's key of a food; a preparation that makes another food of it counts ("minced" beef)."""
    for done in preps:
        made = catalogue().find(f"{done} {name}").food if known(f"{done} {name}") else None
        if made and MADE_BY.get(done, done) in made.name:
            return made.name
    unit = amounts[0].unit if amounts else None
    match = catalogue().find(name.replace("&", "and"), unit=unit, state=state, prep=prep)
    return match.food.name if match.food else None


@cache
def _sizes() -> dict[str, str]:
    """The plain word of every spelling of a size."""
    return {word: size for size, words in tables.groups("sizes.toml").items() for word in words}


@cache
def _makes_optional() -> tuple[str, ...]:
    return tables.groups("asides.toml")["component"]
