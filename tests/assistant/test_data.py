"""The structs as JSON."""

from __future__ import annotations

import json

from msgspec.structs import replace

from assistant.show.data import error, json_line, json_text
from rules.plan import Plan
from rules.recipe import Recipe


def test_a_line_is_one_line_and_the_text_is_the_same_object(river_plan: Plan) -> None:
    line, text = json_line(river_plan), json_text(river_plan)
    assert "\n" not in line
    assert text.startswith('{\n  "schema": "coalside/plan/1"')
    assert json.loads(line) == json.loads(text)


def test_reserved_words_are_written_as_the_shape_promises(river_recipe: Recipe) -> None:
    assert json.loads(json_line(river_recipe))["ingredients"][0]["from"] == "list"


def test_every_row_carries_its_file_also_a_failed_one(river_plan: Plan) -> None:
    assert json.loads(json_line(river_plan))["file"] == "river.txt"
    assert json.loads(json_line(error("gone.txt", "gone."))) == {"error": "gone.", "file": "gone.txt"}


def test_direction_signs_and_line_separators_are_escaped(river_recipe: Recipe) -> None:
    line = json_line(replace(river_recipe, title="a\u202eb\u2028c\x9bd"))
    assert "\\u202e" in line
    assert json.loads(line)["title"] == "a\u202eb\u2028c\x9bd"
