"""Kept meals against the end of the power: a process that saves is killed without warning, again and again.

Nothing that it confirmed may be lost, and the one save that was under way is there whole or not at all.
"""

from __future__ import annotations

import random
import signal
import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path

from assistant.keep import Store
from tests.talks import CORPUS

SAVES = 200
NAMES = ("Friday", "Saturday", "Put-in morning", "Rain", "Take-out")
#: Saves meals by the seed, one after the other, and says each number once it is done.
SAVING = """
import random, sys
from datetime import UTC, datetime
from pathlib import Path
from assistant.keep import Store
from rules.circumstances import Day
from rules.recipe import Ingredient, Recipe

folder, start = Path(sys.argv[1]), int(sys.argv[2])
store = Store(folder, now=lambda: datetime(2027, 7, 3, tzinfo=UTC))
for number in range(start, 100_000):
    order = random.Random(number)
    line = "1 cup flour, " + "sifted " * order.randrange(2_000)
    recipe = Recipe(title=str(number), ingredients=(Ingredient(line=0, text=line, name="flour"),))
    store.keep(order.choice(sys.argv[3:]), recipe, Day(people=1 + number % 200))
    print(number, flush=True)
"""


def name_of(number: int) -> str:
    """The name that a save goes under; the order draws the line's length first."""
    order = random.Random(number)
    order.randrange(2_000)
    return order.choice(NAMES)


def after(count: int) -> dict[str, int]:
    return {name_of(number): number for number in range(count)}


def held(store: Store) -> dict[str, int]:
    kept = {name: store.get(name) for name in store.names()}
    assert all(meal.day.people == 1 + int(meal.recipe.title or "") % 200 for meal in kept.values())
    return {name: int(meal.recipe.title or "") for name, meal in kept.items()}


def test_kill_in_the_middle_of_saves_loses_nothing_that_was_confirmed(tmp_path: Path) -> None:
    folder, order = tmp_path / "data", random.Random(7)
    store = Store(folder, now=lambda: datetime(2027, 7, 3, tzinfo=UTC))
    done, kills = 0, 0
    while done < SAVES:
        command = [sys.executable, "-c", SAVING, str(folder), str(done), *NAMES]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=CORPUS.parent) as saving:
            assert saving.stdout is not None
            for _ in range(order.randint(5, 25)):
                done = int(saving.stdout.readline()) + 1
            time.sleep(order.random() * 0.01)
            saving.send_signal(signal.SIGKILL)
            for line in saving.stdout:  # confirmed before the end, read after it
                done = int(line) + 1 if line.endswith("\n") else done
        kills += 1
        there = held(store)
        assert there in (after(done), after(done + 1))
        done = max(there.values()) + 1
    assert kills >= 8
    assert store.set_aside is None
