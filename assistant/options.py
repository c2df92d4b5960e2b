"""What the cook types after an option, turned into a `Day`: "45F", "2100m", "18:30", "2 days".

Every refusal is a `UsageProblem` that names the option, what was typed and what may be typed. A figure without its
unit is taken where only one unit makes sense of it (350 is °F for an oven), else the sentence asks for the unit.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import TYPE_CHECKING, Any, NamedTuple, get_args

from rules.circumstances import DIAMETERS_IN, Day, Ground, PotOwned, Units, Wind, checked
from rules.plan import Depth
from rules.problem import UsageProblem

if TYPE_CHECKING:
    from assistant.batch import Run
    from rules.coals.ask import CoalsAnswer

_FIGURE = re.compile(r"\s*([-+\u2212]?\d{1,9}(?:,\d{3})*(?:\.\d{1,9})?)\s*([^\d\s]?.{0,40}?)\s*", re.DOTALL)
_CLOCK = re.compile(r"\s*(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm|a\.m\.|p\.m\.)?\s*", re.IGNORECASE)
_DATED = re.compile(r"\s*(\d{4}-\d{2}-\d{2})(?:[T ]\s*(.+))?", re.IGNORECASE | re.DOTALL)

FAHRENHEIT = (
    "f",
    "°f",
    "º f",
    "ºf",
    "deg f",
    "degf",
    "degrees f",
    "fahrenheit",
    "degrees fahrenheit",
    "\u2109",
)
CELSIUS = ("c", "°c", "º c", "ºc", "deg c", "degc", "degrees c", "celsius", "degrees celsius", "\u2103")
FEET = ("ft", "ft.", "feet", "foot", "'")
METERS = ("m", "meter", "meters", "metre", "metres")
HOURS = {"": 1, "h": 1, "hr": 1, "hrs": 1, "hour": 1, "hours": 1, "d": 24, "day": 24, "days": 24}
QUARTS_PER_LITER = 1.056688
QUARTS = {"": 1.0, "qt": 1.0, "qts": 1.0, "quart": 1.0, "quarts": 1.0} | dict.fromkeys(
    ("l", "liter", "liters", "litre", "litres"), QUARTS_PER_LITER
)
#: More processes than any machine of a cook has processors.
MOST_JOBS = 256
CLOCK_WANTED = "write a time of day from 00:00 to 23:59, or a date and a time as 2027-07-03T18:30"


def day(words: Mapping[str, Any]) -> Day:
    """The day that the options describe; `words` maps their names to what was typed, None where nothing was.

    Raises:
        UsageProblem: for the first option that cannot be.
    """
    told: dict[str, Any] = {
        "people": _whole(words, "people"),
        "pots": pots(words.get("oven") or (), deep=bool(words.get("deep")), count=_whole(words, "pots")),
        "temp_f": _read(words, "temp", OVEN.read),
        "air_f": _read(words, "air", AIR.read),
        "wind": _read(words, "wind", one_of(Wind)),
        "ground": _read(words, "ground", one_of(Ground)),
        "screen": words.get("screen"),
        "elevation_ft": _read(words, "elevation", HEIGHT.read),
        "eat": _read(words, "eat", moment),
        "zone": _read(words, "zone", zone),
        "trip_hours": _read(words, "trip_hours", hours),
        "trip_air_f": _read(words, "trip_air", AIR.read),
        "cooler_quarts": _read(words, "cooler_quarts", quarts),
        "freezer": False if words.get("no_freezer") else None,
        "charcoal": False if words.get("no_charcoal") else None,
        "curve": words.get("curve"),
        "units": _read(words, "units", one_of(Units)),
    }
    return checked(Day(**{name: value for name, value in told.items() if value is not None}))


def coals_for(day: Day, *, way: str, minutes: str) -> CoalsAnswer:
    """The coals that `coalside coals` is asked for; the pot and the temperature stand in the day.

    Raises:
        UsageProblem: more than one pot, or what cannot be.
    """
    from rules.coals.ask import coals

    if len(day.pots) > 1:
        sizes = " ".join(f"--oven {pot.diameter_in}" for pot in day.pots)
        raise UsageProblem("coals", sizes, "one pot at a time")
    pot = day.pots[0] if day.pots else PotOwned()
    last_min = whole("--minutes", minutes, high=720)
    return coals(pot.diameter_in, day.temp_f, way, day, minutes=last_min, deep=pot.depth == "deep")


def _read(words: Mapping[str, Any], name: str, reader: Any) -> Any:
    typed = words.get(name)
    return None if typed is None else reader(_option(name), typed)


def _option(name: str) -> str:
    return "--" + name.replace("_", "-")


def _whole(words: Mapping[str, Any], name: str) -> int | None:
    typed = words.get(name)
    return None if typed is None else whole(_option(name), typed)


def figure(text: str) -> tuple[float, str] | None:
    """The number in front and the word behind it: ("7,000 ft" gives 7000.0 and "ft"); None if there is no number."""
    found = _FIGURE.fullmatch(text[:80])
    if found is None:
        return None
    number = found[1].replace(",", "").replace("\u2212", "-")
    return float(number), " ".join(found[2].lower().split())


def whole(option: str, text: str, *, low: int = 1, high: int = 200) -> int:
    """A whole number."""
    found = figure(text)
    if found is None or found[1] or found[0] != int(found[0]) or not low <= found[0] <= high:
        raise UsageProblem(option, text, f"write a whole number from {low} to {high}")
    return int(found[0])


class Scale(NamedTuple):
    """A quantity with two units: the words for each, the range that makes sense in each, and how to write it."""

    what: str
    ours: tuple[str, ...]
    other: tuple[str, ...]
    our_range: tuple[float, float]
    other_range: tuple[float, float]
    examples: tuple[str, str]
    to_ours: Callable[[float], float]

    def read(self, option: str, text: str) -> float:
        """The value in our unit.

        Raises:
            UsageProblem: no number, no unit of this scale, or a bare number that both units could mean.
        """
        write = f"write {self.examples[0]} or {self.examples[1]}"
        found = figure(text)
        if found is None:
            raise UsageProblem(option, text, f"this is no {self.what}; {write}")
        value, unit = found
        if unit and unit not in (*self.ours, *self.other):
            raise UsageProblem(option, text, f'"{unit.upper()}" is no {self.what} unit; {write}')
        if unit:
            return value if unit in self.ours else self.to_ours(value)
        is_ours = self.our_range[0] <= value <= self.our_range[1]
        is_other = self.other_range[0] <= value <= self.other_range[1]
        if is_ours == is_other:
            raise UsageProblem(option, text, f"the unit is missing; {write}")
        return value if is_ours else self.to_ours(value)


def fahrenheit(value: float) -> float:
    """°C to °F."""
    return value * 9 / 5 + 32


def from_meters(value: float) -> float:
    """Meters to whole feet."""
    return round(value / 0.3048)


OVEN = Scale("temperature", FAHRENHEIT, CELSIUS, (200, 550), (93, 288), ("350F", "180C"), fahrenheit)
AIR = Scale("temperature", FAHRENHEIT, CELSIUS, (-40, 130), (-40, 54), ("45F", "7C"), fahrenheit)
HEIGHT = Scale("height", FEET, METERS, (-1400, 20000), (-427, 6096), ("7000ft", "2100m"), from_meters)


def clock(option: str, text: str) -> str:
    """A time of day as "18:30", from "18:30", "6:30 pm", "6pm"."""
    found = _CLOCK.fullmatch(text[:40])
    half = (found[3] or "").replace(".", "").lower() if found else ""
    if found is None or (found[2] is None and not half):
        raise UsageProblem(option, text, CLOCK_WANTED)
    hour, minute = int(found[1]), int(found[2] or 0)
    if half and not 1 <= hour <= 12:
        raise UsageProblem(option, text, CLOCK_WANTED)
    if half:
        hour = hour % 12 + (12 if half == "pm" else 0)
    if hour > 23 or minute > 59:
        raise UsageProblem(option, text, CLOCK_WANTED)
    return f"{hour:02d}:{minute:02d}"


def moment(option: str, text: str) -> str:
    """A time of day, with or without a date: "18:30" or "2027-07-03T18:30"."""
    dated = _DATED.fullmatch(text[:60])
    if dated is None:
        return clock(option, text)
    try:
        date.fromisoformat(dated[1])
    except ValueError as error:
        raise UsageProblem(option, text, f"{dated[1]} is no day of the calendar; {CLOCK_WANTED}") from error
    if dated[2] is None:
        raise UsageProblem(option, text, f"the time of day is missing; {CLOCK_WANTED}")
    return f"{dated[1]}T{clock(option, dated[2])}"


def zone(option: str, text: str) -> str:
    """A time zone by its IANA name."""
    from zoneinfo import ZoneInfo

    try:
        return ZoneInfo(text).key
    except (ValueError, OSError, KeyError) as error:
        raise UsageProblem(
            option, text, "write a time zone by its name, as America/Boise or Europe/Oslo"
        ) from error


def hours(option: str, text: str) -> float:
    """A stretch of hours, from "30", "30h" or "2 days"."""
    found = figure(text)
    if found is None or found[1] not in HOURS:
        raise UsageProblem(option, text, "write hours from 0 to 336, as 30, 30h or 2days")
    return found[0] * HOURS[found[1]]


def quarts(option: str, text: str) -> float:
    """A cooler's size [quarts], from "48", "48qt" or "45L"."""
    found = figure(text)
    if found is None or found[1] not in QUARTS:
        raise UsageProblem(option, text, "write a size from 4 to 400 quarts, as 48, 48qt or 45L")
    return round(found[0] * QUARTS[found[1]], 1)


def one_of(kind: Any) -> Callable[[str, str], Any]:
    """A reader of the words that a Literal type allows."""
    *most, last = get_args(kind)

    def read(option: str, text: str) -> Any:
        word = text.strip().lower()
        if word not in (*most, last):
            raise UsageProblem(option, text, f"write {', '.join(most)} or {last}")
        return word

    return read


def diameter(option: str, text: str) -> int:
    """A pot's diameter [in]: 12, 12in or 12"."""
    found = figure(text)
    if found is None or found[1] not in ("", "in", "inch", "inches", '"') or found[0] not in DIAMETERS_IN:
        allowed = f"{', '.join(map(str, DIAMETERS_IN[:-1]))} and {DIAMETERS_IN[-1]}"
        raise UsageProblem(option, text, f"camp pots come in {allowed} inches")
    return int(found[0])


def pots(typed: Sequence[str], *, deep: bool, count: int | None) -> tuple[PotOwned, ...] | None:
    """The pots that come along; None when no option speaks of them."""
    depth: Depth = "deep" if deep else "shallow"
    sizes = [diameter("--oven", text) for text in typed]
    if not sizes and not deep and count is None:
        return None
    return tuple(PotOwned(diameter_in=size, depth=depth, count=count or 1) for size in sizes or [12])


def run(jobs: str | None, cluster: str | None, done: str | None) -> Run:
    """How a run over many recipes is spread, and where it notes what is done.

    Raises:
        UsageProblem: no such number of processes, or two ways of spreading at once.
    """
    from assistant.batch import Run

    number = _whole({"jobs": jobs}, "jobs") if jobs is not None else 1
    if number is None or not 1 <= number <= MOST_JOBS:
        raise UsageProblem("--jobs", str(jobs), f"write a whole number from 1 to {MOST_JOBS}")
    if cluster and jobs:
        raise UsageProblem("--jobs", str(jobs), "the cluster of --cluster has its own number of workers")
    return Run(jobs=number, cluster=cluster, done=done)
