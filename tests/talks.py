"""The talks of the corpus, played through the session: what was done against what the talk says should be done.

A talk is a TOML file with a recipe and turns; a turn has `said`, `did`, sometimes `with` (slots; a list means any of
these) and `or` (other acts that are right as well).
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

from assistant.chat.session import Session
from assistant.reader.read import read
from assistant.show.kinds import Turn

CORPUS = Path(__file__).parent.parent / "corpus"
#: Figures that were rounded on the way (°C to °F, meters to feet) may differ by this much.
TOLERANCE = 1.0


class Played(NamedTuple):
    """A turn of a talk: where it stands, what was wanted, what came."""

    where: str
    wanted: dict[str, Any]
    turn: Turn

    @property
    def is_right(self) -> bool:
        """Whether the acts are the wanted ones, or others that are right as well."""
        return list(self.turn.did) in [self.wanted["did"], *self.wanted.get("or", [])]

    @property
    def is_silently_wrong(self) -> bool:
        """Whether something else was done than was said, without asking back."""
        return not self.is_right and self.turn.did != ("not understood",)

    def slots(self) -> Iterator[tuple[str, object, object]]:
        """Each wanted slot: its name, what is wanted, what came; only where the acts are the first wanted ones."""
        if list(self.turn.did) == self.wanted["did"]:
            for name, value in self.wanted.get("with", {}).items():
                yield name, value, self.turn.with_.get(name)


def play(paths: Iterable[Path]) -> Iterator[Played]:
    """Every turn of every talk, each talk with a session of its own."""
    for path in paths:
        talk = tomllib.loads(path.read_text(encoding="utf-8"))
        text = (CORPUS / "recipes" / talk["recipe"]).read_text(encoding="utf-8")
        session = Session(read(text, file=talk["recipe"]))
        for turn in talk["turn"]:
            yield Played(f'{path.stem}: "{turn["said"]}"', turn, session.say(turn["said"]))


def is_same(wanted: object, came: object) -> bool:
    """Whether a slot came as wanted: words whatever their capitals, figures within their rounding."""
    if isinstance(wanted, list):
        return any(is_same(one, came) for one in wanted)
    if isinstance(wanted, int | float) and isinstance(came, int | float):
        return abs(wanted - came) <= TOLERANCE
    return str(wanted).lower() == str(came).lower()
