"""The structs as JSON, in the shapes that `coalside schema` publishes."""

from __future__ import annotations

import re
from typing import Any

import msgspec

from assistant.show.plain import escaped
from rules.recipe import Struct

_ENCODER = msgspec.json.Encoder()
_HALF = re.compile("[\ud800-\udfff]")


def json_line(thing: Struct | dict[str, object]) -> str:
    """One object on one line."""
    return escaped(_encoded(thing).decode())


def json_text(thing: Struct | dict[str, object]) -> str:
    """One object, indented by two."""
    return escaped(msgspec.json.format(_encoded(thing), indent=2).decode())


def error(file: str, sentence: str) -> dict[str, object]:
    """What stands in the place of a file that could not be read."""
    return {"error": sentence, "file": file}


def _encoded(thing: Struct | dict[str, object]) -> bytes:
    """The bytes of an object; half a surrogate pair, as in the name of a file in another code, becomes U+FFFD."""
    try:
        return _ENCODER.encode(thing)
    except UnicodeEncodeError:
        return _ENCODER.encode(_whole(msgspec.to_builtins(thing)))


def _whole(part: Any) -> Any:
    if isinstance(part, str):
        return _HALF.sub("\ufffd", part)
    if isinstance(part, dict):
        return {key: _whole(value) for key, value in part.items()}
    return [_whole(value) for value in part] if isinstance(part, list) else part
