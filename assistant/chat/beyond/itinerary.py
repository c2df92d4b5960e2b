"""What a sentence tells of a trip: meals on days, pots, coolers, the drive, the leaving, who avoids what.

"Friday supper chili, Saturday breakfast biscuits, nine of us, two 12s" holds two meals and two pots; the nine are left
for the plan's own ears. A sentence that tells nothing of a trip is left alone.
"""

from __future__ import annotations

from assistant.chat.beyond.hearing import Hearing
from assistant.chat.beyond.meals import meals
from assistant.chat.beyond.parts import Knows, Piece
from assistant.chat.beyond.party import coolers, drives, irons, leavings, persons


def pieces(hearing: Hearing, knows: Knows, *, is_active: bool, last_day: str | None = None) -> list[Piece]:
    """Every piece of a trip in a sentence, in order; what only a trip at hand makes sense of is left out without one."""
    if not is_active and not any(hearing.phrase(place, "day") for place in range(len(hearing.words))):
        return []
    found = list(meals(hearing, knows, is_active=is_active, last_day=last_day))
    if not is_active and not found:
        return []
    taken = {place for piece in found for start, end in piece.spans for place in range(start, end)}
    other = [
        *persons(hearing),
        *drives(hearing),
        *leavings(hearing, taken),
        *irons(hearing),
        *coolers(hearing),
    ]
    return sorted([*found, *other], key=lambda piece: piece.spans[0])
