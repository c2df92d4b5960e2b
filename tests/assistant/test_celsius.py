"""Temperatures for a metric cook."""

from __future__ import annotations

import json
import re

import pytest
from msgspec.structs import replace

from assistant.show.celsius import in_celsius, short
from assistant.show.forms import WRITERS, Look, written
from tests.assistant.dishes import DAY, plan_of

METRIC = replace(DAY, units="metric")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("stays at 40 °F or below", "stays at 4 °C (40 °F) or below"),
        ("190 to 205 °F inside", "88 to 96 °C (190 to 205 °F) inside"),
        ("(145 °F inside)", "(63 °C (145 °F) inside)"),
        ("71 °C (160 °F) inside", "71 °C (160 °F) inside"),
        ("160 °F (71 °C) inside", "160 °F (71 °C) inside"),
        ("Bake at 350F", "Bake at 350F"),
        ("no figure °F", "no figure °F"),
    ],
)
def test_a_temperature_is_told_in_celsius_first(text: str, told: str) -> None:
    """NIST SP 811, B.8: t/°C = (t/°F - 32)/1.8, here to the whole degree."""
    assert in_celsius(text) == told
    assert in_celsius(told) == told


def test_a_label_has_room_for_one_figure() -> None:
    assert short("Keep at 40 °F or below.") == "Keep at 4 °C or below."


@pytest.mark.parametrize("form", [form for form in WRITERS["plan"] if form not in ("json", "jsonl")])
def test_a_metric_cook_reads_no_fahrenheit_alone(form: str) -> None:
    told = " ".join(written("plan", plan_of("beef-stew"), Look(form=form, day=METRIC)).split())
    both = r"°C \\?\((?:\d+ to )?\d+ °F\)"
    assert "°C" in told
    assert re.findall(r".{30}\d °F.{9}", re.sub(both, "°C", told)) == []


def test_data_stays_as_it_is_published() -> None:
    plan = plan_of("beef-stew")
    metric = json.loads(written("plan", plan, Look(form="json", day=METRIC)))
    assert metric["cautions"][0]["text"] == plan.cautions[0].text
