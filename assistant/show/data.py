"""The structs as JSON, in the shapes that `coalside schema` publishes."""

from __future__ import annotations

import msgspec

from assistant.show.plain import escaped
from rules.recipe import Struct

_ENCODER = msgspec.json.Encoder()


def json_line(thing: Struct | dict[str, object]) -> str:
    """One object on one line."""
    return escaped(_ENCODER.encode(thing).decode())


def json_text(thing: Struct | dict[str, object]) -> str:
    """One object, indented by two."""
    return escaped(msgspec.json.format(_ENCODER.encode(thing), indent=2).decode())


def error(file: str, sentence: str) -> dict[str, object]:
    """What stands in the place of a file that could not be read."""
    return {"error": sentence, "file": file}
