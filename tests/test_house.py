"""The house itself: what stands at the top, who may import whom, how large a room may grow, what is said aloud."""

from __future__ import annotations

import ast
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
ROOMS = sorted(path for package in ("rules", "assistant") for path in (ROOT / package).rglob("*.py"))
#: A room over this many lines holds more than one subject.
LARGEST_ROOM = 450

#: The rooms of the command line that declare what is typed.
TYPED = ("arguments", "choosing", "habits", "output", "questions", "talking", "trips", "usage")
#: Where each library may be imported, and nowhere else.
HOMES = {
    "pint": {"rules/units/convert.py"},
    "csv": {"rules/table.py", "assistant/show/tables.py", "assistant/show/habit.py"},
    "tomllib": {"rules/table.py", "assistant/trip/file.py"},
    "quantulum3": {"assistant/reader/prose.py"},
    "rapidfuzz": {"rules/foods/catalogue.py", "rules/foods/slips.py", "assistant/chat/slips.py"},
    "typer": {"assistant/cli.py", *(f"assistant/commands/{room}.py" for room in TYPED)},
    "prompt_toolkit": {"assistant/chat/prompt.py"},
    "sqlite3": {"assistant/keep.py"},
    "jinja2": {"assistant/show/template.py"},
    "icalendar": {"assistant/show/calendar.py"},
}


def name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def imported(path: Path) -> set[str]:
    """The top packages that a file imports, wherever in the file."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            found.add(node.module.partition(".")[0])
    return found


def test_nothing_stands_at_the_top_but_what_belongs_there() -> None:
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout")
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True)
    top = {line.partition("/")[0] for line in listed.stdout.splitlines()}
    allowed = {
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "pyproject.toml",
        "assistant",
        "rules",
        "tests",
        "corpus",
    }
    assert {entry for entry in top if not entry.startswith(".")} <= allowed


@pytest.mark.parametrize("path", ROOMS, ids=name)
def test_a_room_is_one_subject(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LARGEST_ROOM


@pytest.mark.parametrize("path", ROOMS, ids=name)
def test_libraries_stay_at_home(path: Path) -> None:
    strays = {
        library
        for library in imported(path) & HOMES.keys()
        if name(path) not in HOMES[library] and path.name[:1] != "_"
    }
    assert not strays


def test_the_rules_know_nothing_of_the_assistant() -> None:
    assert not [
        name(path) for path in ROOMS if path.is_relative_to(ROOT / "rules") if "assistant" in imported(path)
    ]


def test_every_module_has_a_docstring_that_says_what_it_is_for() -> None:
    silent = [
        name(path) for path in ROOMS if not ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
    ]
    assert not silent


TESTS = {test.name for test in (ROOT / "tests").rglob("test_*.py")}
#: Rooms that hold only structs or errors; what they promise is tested where it is used.
PLAIN = {"rules/recipe.py", "rules/plan.py", "rules/problem.py", "assistant/show/kinds.py"}


@pytest.mark.parametrize("path", ROOMS, ids=name)
def test_every_room_has_a_twin_among_the_tests(path: Path) -> None:
    """A test file of the room's own name, with its package's name before it, or of its package's name."""
    if path.name == "__init__.py" or name(path) in PLAIN:
        return
    if path.name == "fire.py":
        assert "test_card.py" in TESTS
        return
    _, *packages, _ = path.relative_to(ROOT).parts
    stem = path.stem.strip("_")
    twins = {
        f"test_{stem}.py",
        f"test_{'_'.join([*packages, stem])}.py",
        *(f"test_{package}.py" for package in packages),
    }
    assert twins & TESTS, f"{name(path)} has no test file of its own name or of its package's"


def test_nothing_unfinished_is_left_lying() -> None:
    mark = re.compile(r"\b(?:TO" + r"DO|FIX" + r"ME|XX" + r"X|NotImplementedError)\b")
    assert not [name(path) for path in ROOMS if mark.search(path.read_text(encoding="utf-8"))]
