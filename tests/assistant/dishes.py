"""Ten plans of the corpus, of ten kinds, for the tests of what is shown; made once."""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp
from rules.plan import Plan
from rules.recipe import Recipe

ROOT = Path(__file__).parents[2]
DAY = Day(people=9, eat="2027-07-03T18:30", trip_hours=30)
TEN = (
    "peach-cobbler", "beef-stew", "cinnamon-rolls", "roast-chicken", "egg-bake", "can-chili", "buttermilk-biscuits",
    "cabbage-slaw", "baked-trout", "apple-pie",
)  # fmt: skip


@cache
def recipe_of(dish: str) -> Recipe:
    """A river recipe as read."""
    return read((ROOT / "corpus" / "recipes" / f"river-{dish}.txt").read_text(encoding="utf-8"))


@cache
def plan_of(dish: str) -> Plan:
    """Its plan for nine, dinner at half past six."""
    return camp(recipe_of(dish), DAY)


def node_package(name: str) -> Path | None:
    """The folder of a package of npm, in the node_modules that NODE_MODULES names or that stands here; None without it."""
    folder = Path(os.environ.get("NODE_MODULES", ROOT / "node_modules")) / name
    return folder if folder.is_dir() else None
