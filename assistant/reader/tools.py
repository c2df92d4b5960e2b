"""Lines that name only a tool: foil, a tin, a stone. They go to the kit and are no ingredients."""

from __future__ import annotations

from functools import cache

from assistant.reader import words
from assistant.reader.tokens import Finder, doc

VESSELS = ("pan", "pot", "pressure", "grill", "bowl", "tin")
#: No line of tools is longer [tokens].
LONGEST = 16


@cache
def _finder() -> Finder:
    vessels = words.groups("vessels.toml")
    tools = {phrase for kind in VESSELS for phrase in vessels[kind]} | set(words.groups("tools.toml")["tool"])
    return Finder({"tool": tools})


def is_tool(body: str) -> bool:
    """Whether a line names a tool, and nothing else but small words and figures."""
    text = doc(body[:200])
    if not 0 < len(text) <= LONGEST:
        return False
    inside = {index for mark in _finder().longest(text) for index in range(mark.start, mark.end)}
    beside = set(words.groups("tools.toml")["aside"])
    return bool(inside) and all(
        index in inside or token.lower_ in beside or not token.is_alpha or len(token) == 1
        for index, token in enumerate(text)
    )
