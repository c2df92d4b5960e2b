"""Every output is held against the schema that the project itself publishes.

Outside: JSON Schema draft 2020-12 as the reference library `jsonschema` reads it.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from assistant import cli
from assistant.show.schema import DIALECT, SHAPES, schema
from rules.problem import UsageProblem

RIVER = sorted((Path(__file__).parents[2] / "corpus" / "recipes").glob("river-*.txt"))


@pytest.fixture(scope="module")
def validators() -> dict[str, Draft202012Validator]:
    return {shape: Draft202012Validator(schema(shape)) for shape in SHAPES}


@pytest.mark.parametrize("shape", SHAPES)
def test_a_schema_is_a_valid_schema_and_names_itself(shape: str) -> None:
    published = schema(shape)
    Draft202012Validator.check_schema(published)
    assert published["$schema"] == DIALECT
    assert f"urn:coalside:schema:{shape}:1" == published["$id"]


@pytest.mark.parametrize("shape", SHAPES)
def test_every_part_is_explained_and_every_field_promised(shape: str) -> None:
    for name, part in schema(shape)["$defs"].items():
        assert part["description"], name
        assert list(part["properties"]) == part["required"], name


def test_an_unknown_shape_is_refused() -> None:
    with pytest.raises(UsageProblem, match="schema menu: there are recipe, plan"):
        schema("menu")


def rows(capsys: pytest.CaptureFixture[str], *arguments: str) -> list[dict[str, Any]]:
    assert cli.run(list(arguments)) == cli.DONE
    return [json.loads(line) for line in capsys.readouterr().out.splitlines()]


def test_every_river_recipe_as_read_keeps_to_the_schema(
    capsys: pytest.CaptureFixture[str], validators: dict[str, Draft202012Validator]
) -> None:
    files = [str(path) for path in RIVER]
    read = rows(capsys, "read", "--as", "jsonl", *files)
    assert files == [recipe["file"] for recipe in read]
    for recipe in read:
        validators["recipe"].validate(recipe)


def test_every_river_plan_keeps_to_the_schema(
    capsys: pytest.CaptureFixture[str], validators: dict[str, Draft202012Validator]
) -> None:
    files = [str(path) for path in RIVER]
    plans = rows(capsys, "camp", "--as", "jsonl", "--eat", "2027-07-03T18:30", *files)
    assert files == [plan["file"] for plan in plans]
    for plan in plans:
        validators["plan"].validate(plan)


def test_a_coal_count_keeps_to_the_schema(
    capsys: pytest.CaptureFixture[str], validators: dict[str, Draft202012Validator]
) -> None:
    (counted,) = rows(capsys, "coals", "--oven", "12", "--temp", "350F", "--as", "jsonl")
    validators["coals"].validate(counted)


def test_the_schema_refuses_what_is_wrong(validators: dict[str, Draft202012Validator]) -> None:
    """The checks above could not fail if it took everything."""
    assert not validators["recipe"].is_valid({"title": "no more than this"})
    assert not validators["plan"].is_valid([])
