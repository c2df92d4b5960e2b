"""The booklet of a trip as a document and, in a real Chromium, page by page on paper.

Outside: the HTML Living Standard's parse errors as html5lib's strict parser raises them; Chromium lays out and prints;
pypdf reads what was printed.
"""

from __future__ import annotations

import io
import itertools
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.reader.read import read
from assistant.show import parts
from assistant.show.forms import Look
from assistant.show.trip.booklet import trip_booklet
from rules.trip.model import Meal, Person, TripPlan
from rules.trip.plan import plan
from tests.assistant import hostile
from tests.assistant.browser import ABSENT, CHROMIUM, Browser
from tests.assistant.tree import parsed, text
from tests.trips import SUPPER, meal, pot, trip, weekend

IN_CHROMIUM = pytest.mark.skipif(CHROMIUM is None, reason=ABSENT)


def hostile_plan() -> TripPlan:
    """A trip whose every name is hostile."""
    dish = Meal(name=hostile.NAME, eat=SUPPER, recipe=read(hostile.TEXT, file="hostile.txt"))
    return plan(
        trip(
            dish,
            meal("can-chili", "2027-07-03T18:30", name=hostile.NAME),
            name=hostile.NAME,
            persons=(Person(name=hostile.NAME, avoids=("milk", "<script>")),),
            pots=(pot(deep=True),),
        )
    )


def test_the_page_is_valid_and_its_headings_and_ids_are_in_order() -> None:
    tree = parsed(trip_booklet(weekend(), Look()))
    assert [len(list(tree.iter(name))) for name in ("header", "nav", "main", "footer", "h1")] == [1] * 5
    levels = [int(e.tag[1]) for e in tree.iter() if isinstance(e.tag, str) and re.fullmatch(r"h[1-6]", e.tag)]
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))
    ids = [element.get("id") for element in tree.iter() if element.get("id")]
    assert len(set(ids)) == len(ids)
    for link in tree.iter("a"):
        assert link.get("href", "").removeprefix("#") in ids
    for section in tree.iter("section"):
        assert section.get("aria-labelledby") in ids
    ticks = [box.get("data-tick") for box in tree.iter("input")]
    assert len(set(ticks)) == len(ticks)


def test_every_dish_has_a_sheet_with_its_coals_and_its_work() -> None:
    planned = weekend()
    tree = parsed(trip_booklet(planned, Look()))
    sheets = {
        element.get("id"): text(element)
        for element in tree.iter("section")
        if "dish" in element.get("class", "").split()
    }
    assert list(sheets) == [f"dish-{dish.id}" for dish in planned.dishes]
    for dish in planned.dishes:
        said = sheets[f"dish-{dish.id}"]
        assert " ".join(dish.title.split()) in said
        for step in dish.plan.camp_steps:
            assert " ".join(step.split())[1:] in said
        for stage in dish.plan.heat.stages if dish.plan.heat else ():
            if stage.kind != "light" and stage.under:
                assert f"{stage.under} under the pot" in said


def test_every_line_of_the_lists_is_on_the_page() -> None:
    planned = weekend()
    said = text(parsed(trip_booklet(planned, Look())))
    for line in planned.shopping:
        assert line.buy in said
    for task in planned.home:
        assert " ".join(task.do.split()) in said
    for cooler in planned.coolers:
        assert all(f"({layer.pack} of " in said for layer in cooler.layers)
    for caution in planned.cautions:
        _, warning = parts.caution(caution)
        assert " ".join(warning.split())[:60] in said


def test_hostile_names_stay_text() -> None:
    page = trip_booklet(hostile_plan(), Look())
    assert hostile.MARK not in page
    tree = parsed(page)
    assert len(list(tree.iter("script"))) == 1
    assert not list(tree.iter("img"))
    assert "<script>window.hurt" in text(tree)


def test_nothing_is_fetched() -> None:
    tree = parsed(trip_booklet(weekend(), Look()))
    addresses = [
        value
        for element in tree.iter()
        for name, value in element.attrib.items()
        if name in ("src", "href") and not value.startswith(("#", "data:"))
    ]
    assert addresses == []


def test_the_same_trip_gives_the_same_page() -> None:
    assert trip_booklet(weekend(), Look()) == trip_booklet(weekend(), Look())


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    here = Browser()
    yield here
    here.close()


@IN_CHROMIUM
@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_each_dish_is_printed_on_one_page_of_its_own(browser: Browser, tmp_path: Path, paper: str) -> None:
    pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed: the pages are not counted")
    planned = weekend()
    file = tmp_path / "booklet.html"
    file.write_text(trip_booklet(planned, Look()), encoding="utf-8")
    browser.open(file)
    pages = [
        " ".join(page.extract_text().split())
        for page in pypdf.PdfReader(io.BytesIO(browser.printed(paper))).pages
    ]
    begins = [
        next(number for number, page in enumerate(pages) if opens(page, dish.title, dish.meal))
        for dish in planned.dishes
    ]
    labels = next(number for number, page in enumerate(pages) if number > begins[-1])
    # The sheets follow each other without a page between: none runs over.
    assert begins == list(range(begins[0], begins[0] + len(begins)))
    assert labels == begins[-1] + 1
    assert len(pages) <= 20


def opens(page: str, title: str, name: str) -> bool:
    """Whether a page begins with that dish."""
    head = page[: len(title) + len(name) + 40].lower()
    return " ".join(title.lower().split()) in head and name.lower() in head


@IN_CHROMIUM
@pytest.mark.parametrize("width", [320, 768])
def test_it_fits_a_phone(browser: Browser, tmp_path: Path, width: int) -> None:
    file = tmp_path / "booklet.html"
    file.write_text(trip_booklet(weekend(), Look()), encoding="utf-8")
    browser.open(file, width=width)
    assert browser.value("document.documentElement.scrollWidth") <= width
    assert browser.complaints() == []
    assert [address for address in browser.asked() if not address.startswith(("file:", "data:"))] == []


@IN_CHROMIUM
def test_hostile_names_run_nothing(browser: Browser, tmp_path: Path) -> None:
    file = tmp_path / "booklet.html"
    file.write_text(trip_booklet(hostile_plan(), Look()), encoding="utf-8")
    browser.open(file)
    assert browser.value("window.hurt") is None
