"""The published shapes as JSON Schema 2020-12, made from the structs themselves."""

from __future__ import annotations

from typing import Any

import msgspec

from rules.coals.ask import CoalsAnswer
from rules.plan import Plan
from rules.problem import UsageProblem
from rules.recipe import Recipe
from rules.trip.model import TripPlan

DIALECT = "https://json-schema.org/draft/2020-12/schema"
SHAPES: dict[str, type[Any]] = {"recipe": Recipe, "plan": Plan, "coals": CoalsAnswer, "trip": TripPlan}
VERSION = 1


def schema(shape: str) -> dict[str, Any]:
    """The schema of a shape: `recipe`, `plan`, `coals` or `trip`.

    Raises:
        UsageProblem: there is no such shape.
    """
    kind = SHAPES.get(shape)
    if kind is None:
        raise UsageProblem("schema", shape, f"there are {', '.join(SHAPES)}")
    (top,), parts = msgspec.json.schema_components([kind], ref_template="#/$defs/{name}")
    return {
        "$schema": DIALECT,
        "$id": f"urn:coalside:schema:{shape}:{VERSION}",
        **top,
        "$defs": {name: _tidy(part) for name, part in parts.items()},
    }


def _tidy(part: dict[str, Any]) -> dict[str, Any]:
    """The part with every field required, as results always carry all of them, and its description on one line."""
    if "description" in part:
        part["description"] = " ".join(part["description"].split())
    if "properties" in part:
        part["required"] = list(part["properties"])
    return part
