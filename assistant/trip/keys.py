"""One table of a trip file, asked key by key: every refusal names the file, the line and what to write.

The readers of values are those of the command line (`assistant.options`); their refusals are told as the file's.
"""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime
from typing import Any, TypeVar

from assistant.trip.places import Places
from rules.circumstances import Day, checked
from rules.problem import Problem, UsageProblem

T = TypeVar("T")


class TripProblem(Problem):
    """Something in a trip file that cannot be; `line` counts from 1, None where no line is to blame."""

    def __init__(self, file: str, line: int | None, found: str, wanted: str) -> None:
        super().__init__(file, line, found, wanted)
        self.file = file
        self.line = line
        self.found = found
        self.wanted = wanted

    def sentence(self) -> str:
        """File, line, what was found, what to do."""
        where = f"{self.file}, line {self.line}" if self.line else self.file
        end = "" if self.wanted.endswith("?") else "."
        return f"{where}: {self.found}; {self.wanted}{end}"


class Keys:
    """A table's keys and values, with its place in the file."""

    def __init__(
        self, values: Mapping[str, Any], *, file: str, places: Places, table: str = "", index: int = 0
    ) -> None:
        self.values = values
        self.file = file
        self.places = places
        self.table = table
        self.index = index

    def fault(self, key: str, found: str, wanted: str) -> TripProblem:
        """What is wrong with a key."""
        return TripProblem(self.file, self.places.line(self.table, self.index, key), found, wanted)

    def check_names(self, known: Iterable[str]) -> None:
        """Refuse a key that is none.

        Raises:
            TripProblem: naming the key that was probably meant.
        """
        known = list(known)
        for key in self.values:
            if key not in known:
                near = difflib.get_close_matches(key, known, 1, 0.5)
                hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(known)}"
                where = f"a {self.table}" if self.table else "a trip"
                raise self.fault(key, f'{where} has no key "{key}"', hint)

    def text(self, key: str, wanted: str) -> str | None:
        """A text, or None where the key is absent."""
        value = self.values.get(key)
        if value is None:
            return None
        if not isinstance(value, str) or not value.strip():
            raise self.fault(key, f"{key} = {shown(value)} is no text", wanted)
        return value.strip()

    def needed(self, key: str, wanted: str) -> str:
        """A text that must stand there."""
        value = self.text(key, wanted)
        if value is None:
            what = f"this {self.table}" if self.table else "the trip"
            raise self.fault(key, f"{what} has no {key}", wanted)
        return value

    def number(self, key: str, low: float, high: float) -> float | None:
        """A number within a range."""
        value = self.values.get(key)
        if value is None:
            return None
        is_number = isinstance(value, int | float) and not isinstance(value, bool)
        if not is_number or not low <= value <= high:
            raise self.fault(
                key, f"{key} = {shown(value)} cannot be", f"write a number from {low:g} to {high:g}"
            )
        return float(value)

    def whole(self, key: str, high: int) -> int | None:
        """A whole number from 1."""
        value = self.values.get(key)
        if value is None:
            return None
        if not isinstance(value, int) or isinstance(value, bool) or not 1 <= value <= high:
            raise self.fault(
                key, f"{key} = {shown(value)} cannot be", f"write a whole number from 1 to {high}"
            )
        return value

    def truth(self, key: str) -> bool | None:
        """True or false."""
        value = self.values.get(key)
        if value is not None and not isinstance(value, bool):
            raise self.fault(key, f"{key} = {shown(value)} is no answer", "write true or false")
        return value

    def read(self, key: str, reader: Callable[[str, str], T]) -> T | None:
        """A value as the command line reads it: "45F", "7000ft", breezy; a bare number is taken as its text."""
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, bool | list | dict):
            raise self.fault(key, f"{key} = {shown(value)} cannot be", "write one value in quotes")
        return self.told(key, value, lambda: reader(f"{key} =", str(value)))

    def within(self, key: str, field: str, value: T | None) -> T | None:
        """The value, when a day may have it."""
        if value is not None:
            day: dict[str, Any] = {field: value}
            self.told(key, self.values.get(key), lambda: checked(Day(**day)))
        return value

    def told(self, key: str, value: object, ask: Callable[[], T]) -> T:
        """What `ask` gives; its refusal is told as the file's."""
        try:
            return ask()
        except UsageProblem as problem:
            raise self.fault(key, f"{key} = {shown(value)} cannot be", problem.wanted) from problem

    def texts(self, key: str, wanted: str) -> tuple[str, ...]:
        """A list of texts; one text alone is a list of one."""
        value = self.values.get(key, [])
        listed = value if isinstance(value, list) else [value]
        for one in listed:
            if not isinstance(one, str) or not one.strip():
                raise self.fault(key, f"{key} holds {shown(one)}, which is no text", wanted)
        return tuple(one.strip() for one in listed)

    def tables(self, key: str) -> list[Keys]:
        """The tables of a list: `[[meal]]` after `[[meal]]`."""
        value = self.values.get(key, [])
        if not isinstance(value, list) or not all(isinstance(one, dict) for one in value):
            raise self.fault(key, f"{key} is no list of tables", f"open each with a line [[{key}]]")
        return [
            Keys(one, file=self.file, places=self.places, table=key, index=index)
            for index, one in enumerate(value)
        ]


def shown(value: object) -> str:
    """A value as it stands in the file, cut where it is long."""
    if isinstance(value, datetime | date):
        return value.isoformat()
    said = (
        f'"{value}"'
        if isinstance(value, str)
        else str(value).lower()
        if isinstance(value, bool)
        else str(value)
    )
    said = " ".join(said.split())
    return said if len(said) <= 60 else f"{said[:57]}..."
