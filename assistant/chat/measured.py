"""Values in an utterance: clock times, temperatures, heights, pot sizes, hours, quarts, factors, bare numbers."""

from __future__ import annotations

from assistant.chat.clocks import clock
from assistant.chat.spoken import named
from assistant.chat.values import Value, Words, number, phrase, table
from assistant.reader.numbers import word

METER_FT = 1 / 0.3048


def values(words: Words) -> list[Value]:
    """The values from left to right, the longest reading at each place, none overlapping another."""
    found: list[Value] = []
    at = 0
    while at < len(words):
        here = _value(words, at)
        if here is not None and here.end > at:
            found.append(here)
            at = here.end
        else:
            at += 1
    return found


def _value(words: Words, at: int) -> Value | None:
    if word(words, at) in table().sizes:
        return Value("inches", table().sizes[words[at]], at, at + 1, "s")
    return (
        clock(words, at)
        or named(words, at)
        or _fixed(words, at)
        or _factor(words, at)
        or _measured(words, at)
    )


def _fixed(words: Words, at: int) -> Value | None:
    """Sayings that are a figure: "overnight", "sea level", "a mile high"."""
    for kind, sayings in (("hours", table().fixed_hours), ("feet", table().fixed_feet)):
        end = phrase(words, at, tuple(sayings))
        if end is not None:
            return Value(kind, sayings[" ".join(words[at:end])], at, end)  # type: ignore[arg-type]
    return None


def _measured(words: Words, at: int) -> Value | None:
    """A number with the unit behind it, or alone."""
    found = number(words, at)
    if found is None:
        return None
    names = table()
    unit_at = found.end + 1 if word(words, found.end) == "-" else found.end
    bare = Value("number", found.value, at, found.end)
    half_end = phrase(words, unit_at, ("and a half",))
    for kind, units in (("hours", names.hours), ("quarts", names.quarts)):
        end = phrase(words, unit_at, tuple(units))
        if end is not None:
            size = units[" ".join(words[unit_at:end])]
            more = phrase(words, end, ("and a half",))
            unit = "min" if kind == "hours" and size < 1 else ""
            return Value(kind, (found.value + (0.5 if more else 0)) * size, at, more or end, unit)  # type: ignore[arg-type]
    if found.article or half_end:
        return None
    for kind, spoken, size in (
        ("feet", names.feet, 1.0),
        ("feet", names.meters, METER_FT),
        ("inches", names.inches, 1.0),
    ):
        end = phrase(words, unit_at, spoken)
        if end is not None and not (kind == "inches" and word(words, unit_at) == "in" and word(words, end)):
            return Value(kind, found.value * size, at, end)  # type: ignore[arg-type]
    warm = _degrees(words, at, found.value, unit_at)
    if warm is not None:
        return warm
    if word(words, found.end) == "s" and found.value in (5, 8, 10, 12, 14, 16):
        return Value("inches", found.value, at, found.end + 1, "s")
    return bare


def _degrees(words: Words, at: int, value: float, unit_at: int) -> Value | None:
    names = table()
    marked = phrase(words, unit_at, names.degrees)
    after = marked if marked is not None else unit_at
    for letter, spoken in (("F", names.fahrenheit), ("C", names.celsius)):
        end = phrase(words, after, spoken)
        if end is not None:
            return Value("degrees", value, at, end, letter)
    return Value("degrees", value, at, marked) if marked is not None else None


def _factor(words: Words, at: int) -> Value | None:
    """A factor: "double", "twice", "one and a half times", "3x", "150 %"."""
    names = table()
    end = phrase(words, at, tuple(names.factors))
    if end is not None:
        return Value("factor", names.factors[" ".join(words[at:end])], at, end)
    if word(words, at) in ("x", "×"):
        times = number(words, at + 1)
        return Value("factor", times.value, at, times.end) if times and not times.article else None
    found = number(words, at)
    if found is None or found.article:
        return None
    end = phrase(words, found.end, names.times)
    if end is not None:
        return Value("factor", found.value, at, end)
    percent_end = phrase(words, found.end, ("%", "percent", "per cent"))
    return Value("factor", found.value / 100, at, percent_end) if percent_end is not None else None
