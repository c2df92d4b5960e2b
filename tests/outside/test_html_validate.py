"""html-validate, a validator of the HTML Living Standard, on the cards of ten dishes and a trip's booklet.

It is a package of npm and wants node: where the folder that NODE_MODULES names (or node_modules here) holds no copy of
it, it is not asked, and the skip says so. Read with html-validate 10.17, its presets of the standard and of good form.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from assistant.show.card import plan_card
from assistant.show.forms import Look
from assistant.show.trip.booklet import trip_booklet
from tests.assistant.dishes import DAY, TEN, node_package, plan_of
from tests.trips import weekend

NODE, VALIDATOR = shutil.which("node"), node_package("html-validate")
pytestmark = pytest.mark.skipif(
    NODE is None or VALIDATOR is None, reason="no node with html-validate in NODE_MODULES: it is not asked"
)
PRESETS = ("standard", "document", "recommended", "a11y")


def complaints(folder: Path, *pages: Path) -> list[tuple[str, str]]:
    """Rule and message of everything that the validator says against the pages."""
    assert NODE is not None
    assert VALIDATOR is not None
    rules = folder / "rules.json"
    rules.write_text(json.dumps({"root": True, "extends": [f"html-validate:{preset}" for preset in PRESETS]}))
    ran = subprocess.run(
        [
            NODE,
            str(VALIDATOR / "bin" / "html-validate.mjs"),
            "--config",
            str(rules),
            "-f",
            "json",
            *map(str, pages),
        ],
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert ran.stdout, ran.stderr
    return [(said["ruleId"], said["message"]) for page in json.loads(ran.stdout) for said in page["messages"]]


def test_the_cards_of_ten_dishes_are_valid(tmp_path: Path) -> None:
    pages = []
    for dish in TEN:
        pages.append(tmp_path / f"{dish}.html")
        pages[-1].write_text(plan_card(plan_of(dish), DAY), encoding="utf-8")
    assert complaints(tmp_path, *pages) == []


def test_the_booklet_of_a_trip_is_valid(tmp_path: Path) -> None:
    page = tmp_path / "booklet.html"
    page.write_text(trip_booklet(weekend(), Look()), encoding="utf-8")
    assert complaints(tmp_path, page) == []


def test_the_validator_would_find_what_is_wrong(tmp_path: Path) -> None:
    """The check above could not fail if it took everything."""
    page = tmp_path / "bad.html"
    page.write_text(plan_card(plan_of("peach-cobbler"), DAY).replace("<main>", "<main><p><div>no</div></p>"))
    assert {rule for rule, _ in complaints(tmp_path, page)} >= {"close-order"}
