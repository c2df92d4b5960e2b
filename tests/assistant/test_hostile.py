"""One hostile recipe through every form: safe, whole and unbroken wherever it is shown.

Outside: html5lib's strict parser for the page and what it makes of the Markdown; markdown-it-py as a second reader of
CommonMark; the readers of JSON, CSV (RFC 4180) and iCalendar (RFC 5545).
"""

from __future__ import annotations

import csv
import io
import json
import unicodedata

import html5lib
import pytest
from icalendar import Calendar

from assistant.reader.read import read
from assistant.show.forms import WRITERS, Look, written
from assistant.show.tables import FORMULA_STARTS
from rules.convert import camp
from rules.labels import LINES, WIDTH
from rules.plan import Plan
from rules.recipe import Recipe
from tests.assistant import hostile
from tests.assistant.tree import parsed

SVG = "{http://www.w3.org/2000/svg}"
#: The drawings are made of these and of nothing else.
DRAWN = {"svg", "g", "circle", "rect", "path", "polygon", "polyline", "line", "text"}


@pytest.fixture(scope="module")
def plan() -> Plan:
    """Hostile words in every part of a plan that has words of a recipe."""
    return hostile.plan()


@pytest.fixture(scope="module")
def own() -> Plan:
    """What the hostile text comes to by itself."""
    return camp(read(hostile.TEXT), hostile.DAY)


@pytest.fixture(scope="module")
def recipe() -> Recipe:
    return read(hostile.TEXT)


def shown(thing: Plan | Recipe, form: str, width: int = 80) -> str:
    kind = "plan" if isinstance(thing, Plan) else "recipe"
    return written(kind, thing, Look(form=form, width=width, day=hostile.DAY))


def unfit(text: str) -> set[str]:
    """Signs that steer a terminal or turn the writing direction (Unicode categories Cc, Cf, Zl, Zp, Cs)."""
    return {
        sign
        for sign in text
        if unicodedata.category(sign) in {"Cc", "Cf", "Zl", "Zp", "Cs"} and sign not in "\n\r\t"
    }


@pytest.mark.parametrize("form", WRITERS["plan"])
def test_no_form_of_a_plan_holds_a_sign_that_steers_or_turns(plan: Plan, own: Plan, form: str) -> None:
    assert unfit(shown(plan, form)) == set()
    assert unfit(shown(own, form)) == set()


@pytest.mark.parametrize("form", WRITERS["recipe"])
def test_no_form_of_a_recipe_holds_a_sign_that_steers_or_turns(recipe: Recipe, form: str) -> None:
    assert unfit(shown(recipe, form)) == set()


@pytest.mark.parametrize("form", [form for form in WRITERS["plan"] if form != "ics"])
def test_nothing_of_the_text_is_lost_on_the_way(plan: Plan, form: str) -> None:
    """The calendar shows the day alone; every other form keeps words, emoji and the long word."""
    text = shown(plan, form)
    joined = text.replace("\n", "").replace(" ", "")
    assert hostile.LONG in joined
    assert "🍑" in joined
    assert "HYPERLINK" in joined


@pytest.mark.parametrize("width", [40, 60, 80])
def test_a_word_longer_than_the_terminal_is_broken_and_no_line_is_too_wide(plan: Plan, width: int) -> None:
    for line in shown(plan, "text", width).splitlines():
        wide = sum(2 if unicodedata.east_asian_width(sign) in "WF" else 1 for sign in line)
        assert wide <= width, line


def test_markdown_gives_a_page_without_markup_of_the_recipe(plan: Plan, recipe: Recipe) -> None:
    """markdown-it-py with raw HTML allowed: what the recipe wrote as tags must come out as text."""
    markdown_it = pytest.importorskip(
        "markdown_it", reason="markdown-it-py is not installed: no second reader is asked"
    )
    reader = markdown_it.MarkdownIt("commonmark", {"html": True}).enable("table")
    for thing in (plan, recipe):
        tree = html5lib.parseFragment(reader.render(shown(thing, "md")), namespaceHTMLElements=False)
        tags = {element.tag for element in tree.iter() if isinstance(element.tag, str)}
        assert not tags & {"script", "img", "svg", "b", "a", "style", "h4"}
        told = " ".join("".join(tree.itertext()).split())
        assert "window.hurt = 1" in told
        assert '& "Pie" 🥧' in told or thing is recipe
        assert hostile.LONG in told


def test_a_table_of_markdown_keeps_its_columns(plan: Plan) -> None:
    """GitHub Flavored Markdown 4.10: a cell's pipe is escaped, so that every row has the cells of its head."""
    rows = [line for line in shown(plan, "md").splitlines() if line.startswith("|")]
    counts = [line.replace("\\|", "").count("|") for line in rows]
    heads = [at for at, line in enumerate(rows) if set(line) <= set("|-")]
    assert heads
    for head, following in zip(heads, [*(at - 1 for at in heads[1:]), len(rows)], strict=True):
        assert len(set(counts[head - 1 : following])) == 1


@pytest.mark.parametrize("form", ["json", "jsonl"])
def test_json_gives_back_the_very_words(plan: Plan, form: str) -> None:
    text = shown(plan, form)
    assert form == "json" or text.count("\n") == 1
    data = json.loads(text)
    assert data["recipe"]["title"] == plan.recipe.title
    assert tuple(data["camp_steps"]) == plan.camp_steps
    assert [label["text"] for label in data["labels"]] == [label.text for label in plan.labels]


def test_drawings_hold_nothing_but_shapes_and_figures(plan: Plan) -> None:
    """SVG 2: no script, no link, no picture, no handler; the text alternative is a string of our own words."""
    tree = parsed(shown(plan, "html"))
    drawings = [element for element in tree.iter() if str(element.tag) == f"{SVG}svg"]
    assert drawings
    for drawing in drawings:
        assert {str(element.tag).removeprefix(SVG) for element in drawing.iter()} <= DRAWN
        for element in drawing.iter():
            assert not [name for name in element.attrib if name.startswith("on") or "href" in name]
        assert not set(drawing.attrib["aria-label"]) & set('<>&"')
        assert all(len(text.text or "") < 20 for text in drawing.iter(f"{SVG}text"))


def test_labels_of_a_hostile_recipe_fit_their_stickers(own: Plan) -> None:
    assert own.labels
    for label in own.labels:
        lines = label.text.split("\n")
        assert len(lines) <= LINES
        assert all(len(line) <= WIDTH for line in lines)


def test_the_calendar_has_the_day_and_nothing_else(plan: Plan, own: Plan) -> None:
    events = Calendar.from_ical(shown(own, "ics")).walk("VEVENT")
    assert len(events) == len({moment.at_min for moment in own.timeline})
    calendar = Calendar.from_ical(shown(plan, "ics"))
    assert {component.name for component in calendar.walk()} == {"VCALENDAR", "VEVENT", "VALARM"}


def test_no_cell_of_the_table_is_a_formula(plan: Plan, own: Plan) -> None:
    for thing in (plan, own):
        rows = list(csv.reader(io.StringIO(shown(thing, "csv"), newline="")))
        assert {len(row) for row in rows} == {5}
        assert not [cell for row in rows for cell in row if cell.startswith(FORMULA_STARTS)]


def test_it_is_still_a_recipe(own: Plan) -> None:
    """Nothing hostile hides a food: flour, leavener, sugar, peaches, butter and milk are packed."""
    names = {own.recipe.ingredients[item.ingredient].name for pack in own.packs for item in pack.items}
    for food in ("flour", "baking powder", "butter", "milk"):
        assert any(food in name for name in names), names
