"""The templates of the pages: every text escaped, nothing fetched from anywhere, no sign that hides or turns text."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from importlib import resources
from typing import Any

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from assistant.show import words
from assistant.show.plain import printable


def template(name: str) -> Any:
    """A template of this folder; it may include others."""
    return _environment().get_template(name)


@cache
def _environment() -> Environment:
    environment = Environment(
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_clean,
        keep_trailing_newline=True,
        loader=FunctionLoader(_source),
        auto_reload=False,
    )
    environment.filters["capital"] = words.capital
    return environment


def _clean(value: object) -> object:
    """Signs that would turn the writing direction or hide text never reach the page."""
    return printable(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def own_text(name: str) -> str:
    """The text of a file of this folder."""
    return _source(name).strip()


def _source(name: str) -> str:
    return resources.files("assistant").joinpath("show", name).read_text(encoding="utf-8")


def policy(*, script: str) -> str:
    """Nothing is fetched from anywhere, and no script runs but the page's own (Content Security Policy Level 3)."""
    own = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-{own}'"
