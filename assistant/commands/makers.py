"""What a command makes of a text; the rooms that do the work load when they are first asked."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from assistant.keep import Store
    from rules.circumstances import Day


def reader() -> Callable[[str, str], Any]:
    """Reads a text: `assistant.batch.work.reader`."""
    from assistant.batch.work import reader as made

    return made()


def store() -> Store:
    """What is kept and logged in the user's folder, by the clock of the machine."""
    from datetime import UTC, datetime
    from pathlib import Path

    import platformdirs

    from assistant.keep import Store

    return Store(Path(platformdirs.user_data_dir("coalside", appauthor=False)), now=lambda: datetime.now(UTC))


def planner(day: Day) -> Callable[[str, str], Any]:
    """Plans a text for a day: `assistant.batch.work.planner`."""
    from assistant.batch.work import planner as made

    return made(day)
