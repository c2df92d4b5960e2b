"""axe-core, the reference checker of WCAG 2.2, on the cards of ten dishes and a trip's booklet in a real Chromium.

It is a package of npm: where the folder that NODE_MODULES names (or node_modules here) holds no copy of it, its rules
are not asked, and the skip says so. Read with axe-core 4.14.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.show.card import plan_card
from assistant.show.forms import Look
from assistant.show.trip.booklet import trip_booklet
from tests.assistant.browser import ABSENT, CHROMIUM, Browser
from tests.assistant.dishes import DAY, TEN, node_package, plan_of
from tests.trips import weekend

AXE = node_package("axe-core")
pytestmark = [
    pytest.mark.skipif(CHROMIUM is None, reason=ABSENT),
    pytest.mark.skipif(AXE is None, reason="no axe-core in NODE_MODULES: its rules are not asked"),
]
RUN = "axe.run().then(r => ({wrong: r.violations.map(v => v.id + ': ' + v.nodes[0].html), passed: r.passes.length}))"


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    here = Browser()
    yield here
    here.close()


def asked(browser: Browser, page: Path, *, width: int, dark: bool) -> dict[str, object]:
    assert AXE is not None
    browser.open(page, width=width, dark=dark)
    browser.value("document.querySelectorAll('details').forEach(d => d.open = true)")
    browser.value((AXE / "axe.min.js").read_text(encoding="utf-8") + ";0")
    return dict(browser.value(RUN))


@pytest.mark.parametrize(
    ("width", "dark"), [(390, False), (390, True), (1100, False)], ids=["phone", "dark", "desk"]
)
@pytest.mark.parametrize("dish", TEN)
def test_axe_finds_nothing_wrong(browser: Browser, tmp_path: Path, dish: str, width: int, dark: bool) -> None:
    page = tmp_path / "card.html"
    page.write_text(plan_card(plan_of(dish), DAY), encoding="utf-8")
    found = asked(browser, page, width=width, dark=dark)
    assert found["wrong"] == []
    assert isinstance(found["passed"], int)
    assert found["passed"] > 20


@pytest.mark.parametrize(
    ("width", "dark"), [(390, False), (390, True), (1100, False)], ids=["phone", "dark", "desk"]
)
def test_axe_finds_nothing_wrong_in_a_trip_s_booklet(
    browser: Browser, tmp_path: Path, width: int, dark: bool
) -> None:
    page = tmp_path / "booklet.html"
    page.write_text(trip_booklet(weekend(), Look()), encoding="utf-8")
    assert asked(browser, page, width=width, dark=dark)["wrong"] == []


def test_axe_would_find_what_is_wrong(browser: Browser, tmp_path: Path) -> None:
    """The check above could not fail if it took everything."""
    page = tmp_path / "bad.html"
    card = plan_card(plan_of("peach-cobbler"), DAY)
    page.write_text(
        card.replace('<html lang="en">', "<html>").replace(' role="img" aria-label=', " role='img' data-x=")
    )
    wrong = asked(browser, page, width=390, dark=False)["wrong"]
    assert isinstance(wrong, list)
    assert {rule.partition(":")[0] for rule in wrong} >= {"html-has-lang", "svg-img-alt"}
