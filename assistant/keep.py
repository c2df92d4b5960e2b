"""What the cook keeps: recipes with their day under a name, and the log of cooks, in one SQLite file.

Every change is one transaction. A file that SQLite cannot read is set aside with a number behind its name and a new
one begun, so that a damaged store never stops the cooking. The clock comes from outside.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime
from pathlib import Path

import msgspec

from rules.circumstances import Day
from rules.habit import Cooked
from rules.plan import Plan
from rules.problem import Problem
from rules.recipe import Recipe, Struct

FILE = "kept.sqlite3"
LONGEST_NAME = 80

#: Each step brings the file from the version of its place to the next; a step is never changed once released.
MIGRATIONS: tuple[str, ...] = (
    """
    CREATE TABLE meal (
        name TEXT NOT NULL COLLATE NOCASE PRIMARY KEY,
        recipe TEXT NOT NULL,
        day TEXT NOT NULL,
        kept_at TEXT NOT NULL
    ) STRICT
    """,
    """
    CREATE TABLE cook (
        number INTEGER PRIMARY KEY AUTOINCREMENT,
        line TEXT NOT NULL,
        plan TEXT NOT NULL,
        cooked_at TEXT NOT NULL
    ) STRICT
    """,
)

#: The tables whose rows are worth rescuing.
TABLES = ("meal", "cook")


class KeepProblem(Problem):
    """A name that cannot be kept, found or opened."""

    def __init__(self, name: str, found: str, wanted: str) -> None:
        super().__init__(name, found, wanted)
        self.name = name
        self.found = found
        self.wanted = wanted

    def sentence(self) -> str:
        """What is wrong with the name, and what to do."""
        return f'"{self.name}" {self.found}; {self.wanted}.'


class Kept(Struct, frozen=True, kw_only=True):
    """A meal in the store."""

    name: str
    recipe: Recipe
    day: Day
    kept_at: str


class Logged(Struct, frozen=True, kw_only=True):
    """A line of the log with the plan that was cooked by, as it stands in the file; `number` counts from 1."""

    number: int
    cooked: Cooked
    cooked_at: str
    plan: str = ""


class Store:
    """The kept meals, and the log.

    `folder` holds the file; `now` gives the time of keeping.
    """

    def __init__(self, folder: Path, *, now: Callable[[], datetime]) -> None:
        self.path = folder / FILE
        self._now = now
        #: where a damaged file was set aside
        self.set_aside: Path | None = None
        self._notice = ""
        self._is_sound = False

    def notice(self) -> str:
        """What the cook has to know of the file, said once; empty when all is well."""
        said, self._notice = self._notice, ""
        return said

    def keep(self, name: str, recipe: Recipe, day: Day) -> bool:
        """Keep a meal; True when one of that name was there and is replaced.

        Raises:
            KeepProblem: the name is empty or too long, or the file cannot be written.
        """
        name = _name_of(name)
        row = (
            name,
            *(msgspec.json.encode(part).decode() for part in (recipe, day)),
            self._now().isoformat(timespec="seconds"),
        )
        with self._opened() as base:
            there = base.execute("SELECT 1 FROM meal WHERE name = ?", (name,)).fetchone() is not None
            base.execute("INSERT OR REPLACE INTO meal (name, recipe, day, kept_at) VALUES (?, ?, ?, ?)", row)
        return there

    def names(self) -> tuple[str, ...]:
        """The names of all kept meals, the latest first."""
        if not self.path.exists():
            return ()
        with self._opened() as base:
            return tuple(
                name for (name,) in base.execute("SELECT name FROM meal ORDER BY kept_at DESC, name")
            )

    def get(self, name: str) -> Kept:
        """The meal of that name, whatever its capitals.

        Raises:
            KeepProblem: there is none, or a later version of coalside wrote it in another shape.
        """
        with self._opened() as base:
            row = base.execute(
                "SELECT name, recipe, day, kept_at FROM meal WHERE name = ?", (name.strip(),)
            ).fetchone()
        if row is None:
            raise KeepProblem(name, "is not kept", _known(self.names()))
        try:
            recipe, day = msgspec.json.decode(row[1], type=Recipe), msgspec.json.decode(row[2], type=Day)
        except msgspec.DecodeError as error:
            raise KeepProblem(name, "cannot be read", "forget it and keep it anew") from error
        return Kept(name=row[0], recipe=recipe, day=day, kept_at=row[3])

    def forget(self, name: str) -> str:
        """Forget a meal; its name as it was kept.

        Raises:
            KeepProblem: there is none of that name.
        """
        with self._opened() as base:
            row = base.execute("DELETE FROM meal WHERE name = ? RETURNING name", (name.strip(),)).fetchone()
        if row is None:
            raise KeepProblem(name, "is not kept", _known(self.names()))
        return str(row[0])

    def log(self, line: Cooked, plan: Plan, *, instead_of: int | None = None) -> int:
        """Write a cook into the log, or a fuller line in the place of one; its number.

        Raises:
            KeepProblem: the file cannot be written.
        """
        row = (
            *(msgspec.json.encode(part).decode() for part in (line, plan)),
            self._now().isoformat(timespec="seconds"),
            instead_of,
        )
        with self._opened() as base:
            found = base.execute(
                "INSERT OR REPLACE INTO cook (line, plan, cooked_at, number) VALUES (?, ?, ?, ?)", row
            )
            return int(found.lastrowid or 0)

    def cooks(self) -> tuple[Logged, ...]:
        """The log, the oldest first; lines that a later version wrote in another shape are left out."""
        if not self.path.exists():
            return ()
        with self._opened() as base:
            rows = base.execute("SELECT number, line, cooked_at, plan FROM cook ORDER BY number").fetchall()
        return tuple(logged for row in rows for logged in _logged(row))

    def unreadable(self) -> int:
        """How many lines of the log are left out because they cannot be read."""
        if not self.path.exists():
            return 0
        with self._opened() as base:
            rows = base.execute("SELECT number, line, cooked_at, '' FROM cook").fetchall()
        return sum(not list(_logged(row)) for row in rows)

    def unlog(self, number: int | None = None) -> tuple[Logged, ...]:
        """Take a line out of the log, or all of them; what was taken out, for `log_again`."""
        taken = [one for one in self.cooks() if number in (None, one.number)]
        with self._opened() as base:
            base.execute("DELETE FROM cook WHERE ?1 IS NULL OR number = ?1", (number,))
        return tuple(taken)

    def log_again(self, lines: Iterable[Logged]) -> None:
        """Put lines back that were taken out."""
        rows = [
            (one.number, msgspec.json.encode(one.cooked).decode(), one.plan, one.cooked_at) for one in lines
        ]
        with self._opened() as base:
            base.executemany(
                "INSERT OR REPLACE INTO cook (number, line, plan, cooked_at) VALUES (?, ?, ?, ?)", rows
            )

    @contextmanager
    def _opened(self) -> Iterator[sqlite3.Connection]:
        """The file within one transaction, brought to the newest version."""
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            with closing(self._connected()) as base, base:
                yield base
        except (OSError, sqlite3.Error) as error:
            raise KeepProblem(
                str(self.path), f"cannot be used ({error})", "check the folder and its room"
            ) from error

    def _connected(self) -> sqlite3.Connection:
        try:
            return self._checked()
        except sqlite3.DatabaseError as error:
            if isinstance(error, sqlite3.OperationalError):
                raise  # locked, no room, not allowed: the file itself may be sound
            self.set_aside = _aside(self.path)
            base = _migrated(self.path)
            saved = _rescued(self.set_aside, base)
            self._notice = (
                f"The file of kept meals was damaged: it is set aside as {self.set_aside.name}, "
                f"and {saved or 'nothing'} of what it held could be read into a new one."
            )
            return base

    def _checked(self) -> sqlite3.Connection:
        """The file, looked through once for damage that only shows later.

        Raises:
            sqlite3.DatabaseError: it is damaged.
        """
        base = _migrated(self.path)
        try:
            if not self._is_sound:
                (found,) = base.execute("PRAGMA quick_check(1)").fetchone()
                if found != "ok":
                    raise sqlite3.DatabaseError(found)
                self._is_sound = True
        except BaseException:
            base.close()
            raise
        return base


def _logged(row: tuple[int, str, str, str]) -> Iterator[Logged]:
    """The row of the log as what it says; nothing where it cannot be read."""
    number, line, cooked_at, plan = row
    with suppress(msgspec.DecodeError):
        yield Logged(
            number=number,
            cooked=msgspec.json.decode(line, type=Cooked),
            cooked_at=cooked_at,
            plan=plan,
        )


def _migrated(path: Path) -> sqlite3.Connection:
    base = sqlite3.connect(path, timeout=5)
    try:
        (version,) = base.execute("PRAGMA user_version").fetchone()
        if version > len(MIGRATIONS):
            raise KeepProblem(str(path), "was written by a newer coalside", "bring this one up to date")
        for number, step in enumerate(MIGRATIONS[version:], start=version + 1):
            with base:
                base.execute("BEGIN IMMEDIATE")
                (now,) = base.execute("PRAGMA user_version").fetchone()
                if now < number:  # another coalside may have done it meanwhile
                    base.execute(step)
                    base.execute(f"PRAGMA user_version = {number}")
    except BaseException:
        base.close()
        raise
    return base


def _aside(path: Path) -> Path:
    """Move a damaged file to the first free name behind its own."""
    number = 1
    while (target := path.with_name(f"{path.name}.damaged-{number}")).exists():
        number += 1
    return path.replace(target)


def _rescued(damaged: Path, base: sqlite3.Connection) -> int:
    """How many rows of a damaged file could still be read, each written into the new one."""
    saved = 0
    with suppress(sqlite3.Error), closing(sqlite3.connect(damaged)) as old:
        for name in TABLES:
            with suppress(sqlite3.Error):
                for row in old.execute(f"SELECT * FROM {name}"):  # noqa: S608 - a name of ours
                    marks = ", ".join("?" * len(row))
                    with base:
                        base.execute(f"INSERT OR IGNORE INTO {name} VALUES ({marks})", row)  # noqa: S608
                    saved += 1
    return saved


def _name_of(name: str) -> str:
    name = " ".join(name.split())
    if not name:
        raise KeepProblem(name, "is no name", "say: keep this as Friday")
    if len(name) > LONGEST_NAME:
        raise KeepProblem(name[:20] + "…", "is too long", f"a name has at most {LONGEST_NAME} characters")
    return name


def _known(names: tuple[str, ...]) -> str:
    return f"kept are {', '.join(names[:8])}" if names else "nothing is kept yet"
