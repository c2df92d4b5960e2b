"""What is shown beside recipes and plans: the reasons about one thing, and a turn of the talk."""

from __future__ import annotations

from collections.abc import Mapping

from rules.plan import Reason
from rules.recipe import Struct


class Reasons(Struct, frozen=True, kw_only=True):
    """The reasons about one thing."""

    file: str | None = None
    about: str
    why: tuple[Reason, ...]


class Turn(Struct, frozen=True, kw_only=True, rename={"with_": "with"}):
    """What was said, what was done for it, the answer, and which parts of the plan are different now."""

    said: str
    did: tuple[str, ...]
    with_: Mapping[str, object] = {}
    answer: str
    changed: tuple[str, ...] = ()
    file: str | None = None
