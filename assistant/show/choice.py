"""What can be cooked with what there is: the best dishes with their figures, or the one thing that is missing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.show.plain import printable
from rules.choose.model import Choice, Choices

if TYPE_CHECKING:
    from assistant.show.forms import Look


def choices_text(found: Choices, _look: Look | None = None) -> str:
    """The answer, then each dish with what it takes."""
    return printable("\n".join([found.said, *_dishes(found)]))


def choices_markdown(found: Choices, _look: Look) -> str:
    """The same as a numbered list."""
    lines = [f"# What can be cooked\n\n{found.said}\n"]
    for place, one in enumerate(found.best or _near(found), start=1):
        lines.append(f"{place}. **{one.title}**" + "".join(f"\n   - {said}" for said in reasons(one)))
    return printable("\n".join(lines))


def reasons(one: Choice) -> list[str]:
    """Why a dish fits, or what it lacks, a line each."""
    return [
        *(f"{need.said}{f' (missing: {need.missing})' if need.missing else ''}" for need in one.needs),
        *(f"so that everybody can eat it {wish}" for wish in one.wishes),
    ]


def _dishes(found: Choices) -> Iterator[str]:
    for place, one in enumerate(found.best or _near(found), start=1):
        known = f' (kept as "{one.name}")' if one.name != one.title else ""
        yield f"{place}. {one.title}{known}" if found.best else f"{one.title}{known}"
        yield from (f"   - {said}" for said in reasons(one))


def _near(found: Choices) -> tuple[Choice, ...]:
    return (found.nearest,) if found.nearest else ()
