"""How large a card is printed: as large as two pages allow, whatever there is to print.

What fills the paper is added up in shares of two Letter pages at 10 points; letters take room by their area, so the
size goes with the root of the room left. The shares were fitted to cards of many kinds as Chromium prints them (their
largest sizes are met within 3 %); fonts of the same widths stand on every system, and `SPARE` is kept free.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

#: Shares of two pages at 10 points, each: a letter of steps, day and lists, of the cautions, of the kit.
LETTER, CAUTION_LETTER, KIT_LETTER = 0.000105, 0.000042, 0.000178
#: An entry's line end, a pack's box, a stage of the fire, fresh coals on it, a question.
ENTRY, BOX, STAGE, FRESH, QUESTION = 0.0029, 0.0214, 0.0685, 0.0283, 0.019
#: What the boxes of a repeated moment take [letters].
TIME = 6
#: Of the room, left free for other fonts and printers.
SPARE = 0.08
#: The print is neither smaller than one reads by lantern nor larger than it need be [pt].
SMALLEST_PT, LARGEST_PT = 6.6, 10.0


def print_size(shown: Mapping[str, Any]) -> float:
    """The size of the print [pt] for the chapters of a card."""
    room = (1 - SPARE) / max(_filled(shown), 0.01)
    size = 10 * math.sqrt(room)
    return min(max(math.floor(10 * size) / 10, SMALLEST_PT), LARGEST_PT)


def _filled(shown: Mapping[str, Any]) -> float:
    """How much of two pages the chapters fill at 10 points."""
    entries = [*shown["camp_steps"], *shown["home_steps"], *shown["allergens"], *shown["fat"], *shown["cold"]]
    for _, lines in shown["timeline"]:
        entries += [line["do"] + line["again"] + " " * TIME * (len(line["at"]) - 1) for line in lines]
    entries += [food + bought for _, lines in shown["shopping"] for food, bought in lines]
    boxes = [
        text for box in shown["packs"] for text in (box.name, box.where, *box.lines, box.make_ahead or "")
    ]
    kit = [thing for _, things in shown["kit"] for thing in things]
    stages = [stage for bed in shown["fire"]["beds"] for stage in bed["stages"]] if shown["fire"] else []
    return math.fsum(
        (
            LETTER * sum(map(len, (*entries, *boxes))),
            CAUTION_LETTER * sum(len(heading) + len(text) for heading, text, _ in shown["cautions"]),
            KIT_LETTER * sum(map(len, kit)),
            ENTRY * len(entries),
            BOX * len(shown["packs"]),
            STAGE * len(stages),
            FRESH * sum(len(stage["fresh"]) for stage in stages),
            QUESTION * len(shown["questions"]),
        )
    )
