"""The drawn course of temperatures is the course that the coal rules give."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from assistant.show.graph import (
    BOTTOM,
    HEIGHT,
    LEFT,
    RIGHT,
    TOP,
    WIDTH,
    Course,
    course,
    course_rows,
    graph,
    told,
)
from rules.circumstances import Day
from rules.coals.curve import follow
from rules.coals.load import Load
from rules.plan import CurvePoint, Fuel, Heat, Minutes, PotPlan, Refresh, Stage

DAY = Day(eat="2027-07-03T18:30")
BAKE = Stage(
    kind="bake",
    minutes=Minutes(low=45, high=60),
    temp_f=350,
    top=17,
    under=8,
    starts_at_min=-70,
    refresh=(Refresh(at_min=-40, light_at_min=-60, top=5, under=2),),
)
HEAT = Heat(stages=(BAKE,), fuel=Fuel(lit=25, reserve=7, briquettes=32, kg=0.8))
POT = PotPlan(diameter_in=12, quarts=6)
LOAD = Load(kg=2.0, j_kg_k=3500.0)


def drawn() -> Course:
    found = course(BAKE, POT, HEAT, DAY, LOAD)
    assert found is not None
    return found


def test_a_bake_is_drawn_by_its_iron_within_its_band() -> None:
    found = drawn()
    (followed,) = follow(HEAT, POT, DAY, load=LOAD)
    assert found.points == tuple((point.at_min, point.iron_f) for point in followed.points)
    assert (found.low_f, found.high_f) == (325, 375)


def test_the_line_read_back_from_the_picture_is_the_course() -> None:
    found = drawn()
    root = ElementTree.fromstring(graph(found, DAY))
    marks = [
        (float(t.get("y", 0)) - 4, float(t.text or ""))
        for t in root.iter("text")
        if t.get("text-anchor") == "end"
    ]
    (y0, f0), (y1, f1) = marks[0], marks[-1]
    line = next(root.iter("polyline")).get("points", "").split()
    temps = [f0 + (float(p.split(",")[1]) - y0) / (y1 - y0) * (f1 - f0) for p in line]
    assert temps == pytest.approx([temp for _, temp in found.points], abs=0.5)
    fresh = next(line for line in root.iter("line") if line.get("class") == "fresh-mark")
    assert float(fresh.get("x1", 0)) == pytest.approx(LEFT + 30 / 60 * (WIDTH - LEFT - RIGHT), abs=0.1)


def test_the_words_name_start_band_and_fresh_coals() -> None:
    said = told(drawn(), DAY)
    assert "when it begins, 17:20" in said
    assert "325 to 375 °F" in said
    assert "fresh coals 17:50" in said
    assert "Reckoned, not measured" in said


def test_a_metric_card_has_a_metric_axis() -> None:
    metric = Day(eat="18:30", units="metric")
    assert "°C, iron" in graph(drawn(), metric)
    assert "163 to 191 °C" in told(drawn(), metric)


def test_everything_stays_inside_the_picture() -> None:
    for mark in ElementTree.fromstring(graph(drawn(), DAY)).iter():
        for x in ("x", "x1", "x2"):
            assert 0 <= float(mark.get(x, 0)) <= WIDTH
    ys = [
        float(p.split(",")[1])
        for p in next(ElementTree.fromstring(graph(drawn(), DAY)).iter("polyline")).get("points", "").split()
    ]
    assert min(ys) >= TOP
    assert max(ys) <= HEIGHT - BOTTOM


def test_the_course_is_told_about_every_quarter_of_an_hour_with_its_last_moment() -> None:
    (followed,) = follow(HEAT, POT, DAY, load=LOAD)
    rows = course_rows(followed.points, DAY)
    assert [row[0] for row in rows] == ["17:20", "17:35", "17:50", "18:05", "18:20"]
    assert rows[0][1:] == ["iron 70 °F", "food 60 °F"]
    assert course_rows((CurvePoint(at_min=0, iron_f=212),), Day(units="metric")) == [
        ["at the meal", "iron 100 °C", "no food yet"]
    ]


def test_a_stage_that_holds_no_temperature_has_no_course() -> None:
    fry = Stage(kind="fry", minutes=Minutes(low=5, high=5), temp_f=350, under=20, starts_at_min=-10)
    assert course(fry, POT, HEAT, DAY, None) is None
