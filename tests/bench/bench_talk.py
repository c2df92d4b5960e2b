"""Measure warm turns of a talk: understood, planned anew where something changed, answered.

    python tests/bench/bench_talk.py

The sentences are those of the open talks in `corpus/talks`, each talk played twice: the first round loads the rooms and
fills what is remembered of names, the second is measured, in processor time, so that what else runs on the machine
cancels out. A turn is held against the blank tokenizer over the same sentence and its recipe, plus 30 ms.
"""

from __future__ import annotations

import statistics
import time
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import spacy

from assistant.chat.session import Session
from assistant.reader.read import read
from assistant.show.data import json_line

CORPUS = Path(__file__).parents[2] / "corpus"
MORE_MS = 30.0
#: What is asked of the 95th percentile: under so many milliseconds, and under so many times the measure.
ASKED_MS, ASKED_RATIO = 60, 3


class Timed(NamedTuple):
    """A turn: its sentence, its time and that of the measure [ms], whether the plan was made anew."""

    said: str
    turn_ms: float
    blank_ms: float
    is_change: bool


def turns(path: Path, tokenize: object) -> Iterator[Timed]:
    """Every turn of a talk."""
    talk = tomllib.loads(path.read_text(encoding="utf-8"))
    text = (CORPUS / "recipes" / talk["recipe"]).read_text(encoding="utf-8")
    session = Session(read(text, file=talk["recipe"]))
    for said in (turn["said"] for turn in talk["turn"]):
        began = time.process_time()
        turn = session.say(said)
        json_line(turn)
        took = time.process_time() - began
        began = time.process_time()
        tokenize(f"{said}\n{text}")  # type: ignore[operator]
        blank = time.process_time() - began
        yield Timed(said, took * 1000, blank * 1000, bool(turn.changed))


def percentile(values: list[float], share: float) -> float:
    """The value that so large a share of all lie under."""
    return statistics.quantiles(values, n=100, method="inclusive")[round(share * 100) - 1]


def main() -> None:
    tokenize = spacy.blank("en").tokenizer
    paths = sorted((CORPUS / "talks").glob("*.toml"))
    for path in paths:
        list(turns(path, tokenize))
    timed = [turn for path in paths for turn in turns(path, tokenize)]
    for name, some in (
        ("all turns", timed),
        ("turns that change the plan", [turn for turn in timed if turn.is_change]),
        ("answers alone", [turn for turn in timed if not turn.is_change]),
    ):
        times = [turn.turn_ms for turn in some]
        middle, high = statistics.median(times), percentile(times, 0.95)
        print(f"{name:27} {len(some):4}: median {middle:5.1f} ms, 95th percentile {high:5.1f} ms")
    high = percentile([turn.turn_ms for turn in timed], 0.95)
    ratio = percentile([turn.turn_ms / (turn.blank_ms + MORE_MS) for turn in timed], 0.95)
    print(f"95th percentile: {high:.1f} ms; asked: under {ASKED_MS}{'' if high < ASKED_MS else '  MISSED'}")
    print(
        f"95th percentile: {ratio:.2f} x (blank tokenizer + {MORE_MS:.0f} ms); asked: under {ASKED_RATIO}"
        f"{'' if ratio < ASKED_RATIO else '  MISSED'}"
    )
    slowest = max(timed, key=lambda turn: turn.turn_ms)
    print(f'slowest: {slowest.turn_ms:.1f} ms for "{slowest.said}"')


if __name__ == "__main__":
    main()
