"""The camp card in a real Chromium: its width, its two printed pages, its contrast, its ticks.

Outside: Chromium measures and prints; pypdf counts the pages; WCAG 2.2 gives the contrast ratios (1.4.3, 1.4.11) and
the size of targets (2.5.8).
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace

from assistant.reader.read import read
from assistant.show.card import plan_card
from rules.circumstances import Day, PotOwned
from rules.convert import camp
from rules.plan import Plan
from tests.assistant import hostile
from tests.assistant.browser import ABSENT, CHROMIUM, PAPERS, Browser
from tests.assistant.dishes import DAY, plan_of, recipe_of

pytestmark = pytest.mark.skipif(CHROMIUM is None, reason=ABSENT)
#: A bake, the stew with most to print, a dough, two pots, and a dish without coals.
DISHES = ("peach-cobbler", "beef-stew", "buttermilk-biscuits", "can-chili", "cabbage-slaw")
WIDTHS = (320, 390, 768, 1100)
SLOW = """Six Hour Beans for the Bend

Serves 9

2 lb dried pinto beans
1 lb smoked bacon, diced
2 onions, chopped
1/2 cup molasses
2 tsp dry mustard
salt

Soak the beans overnight. Drain. Fry the bacon with the onions for 10 minutes. Add the beans, molasses, mustard, salt and
water to cover. Bring to a boil, cover and simmer for 6 hours, until tender.
"""
BARE = """River Flatbread

Flour
Baking powder
Salt
Lard
Water

Mix flour, baking powder and salt. Rub in the lard. Add water to make a soft dough. Bake in a hot oven until golden.
"""
LONG_NAME = "The Extraordinarily Long-Winded Riverbank Gathering's Unreasonably Superlative Midsummer Evening Stew of Everything"


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    here = Browser()
    yield here
    here.close()


def _hard() -> dict[str, tuple[Plan, Day]]:
    """Days and dishes that are hard to lay out."""
    stew = plan_of("beef-stew")
    asked = {
        "fourteen people": (recipe_of("chicken-dumplings"), replace(DAY, people=14)),
        "four pots": (
            recipe_of("scalloped-potatoes"),
            replace(DAY, people=24, pots=(PotOwned(diameter_in=10, count=4),)),
        ),
        "six hours": (read(SLOW), replace(DAY, air_f=30, wind="windy")),
        "no charcoal": (recipe_of("beef-stew"), replace(DAY, charcoal=False)),
        "no amounts": (read(BARE), DAY),
        "no clock": (recipe_of("peach-cobbler"), Day()),
        "a long name": (replace(stew.recipe, title=LONG_NAME), DAY),
        "hostile text": (read(hostile.TEXT), DAY),
    }
    return {name: (camp(recipe, day), day) for name, (recipe, day) in asked.items()}


HARD = (
    "fourteen people",
    "four pots",
    "six hours",
    "no charcoal",
    "no amounts",
    "no clock",
    "a long name",
    "hostile text",
)


@pytest.fixture(scope="module")
def made() -> dict[str, tuple[Plan, Day]]:
    easy = {dish: (plan_of(dish), DAY) for dish in DISHES}
    return easy | _hard() | {"hostile": (hostile.plan(), DAY)}


@pytest.fixture(scope="module")
def plans(made: dict[str, tuple[Plan, Day]]) -> dict[str, Plan]:
    return {name: plan for name, (plan, _) in made.items()}


@pytest.fixture(scope="module")
def cards(made: dict[str, tuple[Plan, Day]], tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("cards")
    found = {}
    for name, (plan, day) in made.items():
        found[name] = folder / f"{name}.html"
        found[name].write_text(plan_card(plan, day), encoding="utf-8")
    return found


OUTSIDE = """
(() => { const wide = document.documentElement.clientWidth, found = [];
  for (const e of document.querySelectorAll("body *")) {
    if (e.closest(".skip, details:not([open]) > :not(summary), script")) continue;
    const box = e.getBoundingClientRect();
    if (box.width && (box.right > wide + 0.5 || box.left < -0.5)) found.push(e.tagName + "." + e.className);
    if (e.scrollWidth > e.clientWidth + 1 && e.clientWidth && !e.closest("svg")) found.push("cut " + e.tagName + "." + e.className);
  }
  if (document.documentElement.scrollWidth > wide) found.push("the page");
  return found; })()
"""


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("dish", [*DISHES, *HARD, "hostile"])
def test_nothing_is_wider_than_the_window(
    browser: Browser, cards: dict[str, Path], dish: str, width: int
) -> None:
    browser.open(cards[dish], width=width)
    assert browser.value(OUTSIDE) == []


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("dish", [dish for dish in (*DISHES, *HARD) if dish != "hostile text"])
def test_a_card_prints_on_two_pages_and_its_labels_on_a_third(
    browser: Browser, cards: dict[str, Path], plans: dict[str, Plan], dish: str, paper: str
) -> None:
    pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed: the printed pages are not counted")
    browser.open(cards[dish])
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(browser.printed(paper))).pages]
    assert len(pages) == 2 + bool(plans[dish].labels)
    for label in plans[dish].labels:
        first = label.text.split("\n")[0]
        assert " ".join(first.split()) in " ".join(pages[-1].split())
    assert "Shopping" not in pages[-1]
    assert "Fire" in pages[0]


def test_a_printed_label_is_four_by_two_inches_and_nothing_of_it_is_cut(
    browser: Browser, cards: dict[str, Path]
) -> None:
    for dish in (*DISHES, *HARD):
        browser.open(cards[dish])
        browser.call("Emulation.setEmulatedMedia", media="print")
        labels = browser.value(
            "[...document.querySelectorAll('.label')].map(e => [e.offsetWidth / 96, e.offsetHeight / 96,"
            " e.scrollHeight - e.clientHeight])"
        )
        browser.call("Emulation.setEmulatedMedia", media="")
        assert labels
        assert all((wide, high) == (4, 2) and cut <= 0 for wide, high, cut in labels), labels


CONTRAST = """
(() => { const rgb = c => (c.match(/[\\d.]+/g) || []).map(Number);
  const light = c => { const [r, g, b] = rgb(c).map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  const ratio = (a, b) => { const [x, y] = [light(a), light(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
  const behind = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor; if (rgb(c)[3] !== 0) return c; } return "rgb(255, 255, 255)"; };
  let text = 99, where = "";
  for (const e of document.querySelectorAll("body *")) {
    if (![...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()) || e.closest("script")) continue;
    const inSvg = e.closest("svg"), c = getComputedStyle(e);
    const r = ratio(inSvg ? c.fill : c.color, behind(inSvg ? inSvg.parentElement : e));
    if (r < text) { text = r; where = e.tagName + "." + e.className; }
  }
  const fill = s => document.querySelector(s) && getComputedStyle(document.querySelector(s)).fill;
  const stroke = s => document.querySelector(s) && getComputedStyle(document.querySelector(s)).stroke;
  const sheet = document.querySelector(".bed") && behind(document.querySelector(".bed"));
  const pairs = [[fill(".coal"), fill(".iron")], [stroke(".iron"), sheet], [fill(".tip"), sheet], [stroke(".handle"), fill(".iron")],
    [stroke(".course"), fill(".band")], [stroke(".fresh-mark"), fill(".band")]].filter(([a, b]) => a && b);
  return {text, where, drawn: Math.min(...pairs.map(([a, b]) => ratio(a, b)), 99), pairs: pairs.length}; })()
"""


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("dish", ["peach-cobbler", "beef-stew"])
def test_text_and_drawings_stand_out_from_their_ground(
    browser: Browser, cards: dict[str, Path], dish: str, dark: bool
) -> None:
    """WCAG 2.2: 4.5 to 1 for text (1.4.3), 3 to 1 for what a drawing tells (1.4.11)."""
    browser.open(cards[dish], dark=dark)
    browser.value("document.querySelectorAll('details').forEach(d => d.open = true)")
    found = browser.value(CONTRAST)
    assert found["text"] >= 4.5, found["where"]
    assert found["pairs"] >= 5
    assert found["drawn"] >= 3
    paper = browser.value("getComputedStyle(document.body).backgroundColor")
    assert (sum(map(int, paper[4:-1].split(", "))) < 200) == dark


def test_targets_are_large_enough_for_a_cold_hand(browser: Browser, cards: dict[str, Path]) -> None:
    """WCAG 2.2, 2.5.8: at least 24 by 24 CSS pixels."""
    browser.open(cards["peach-cobbler"], width=390)
    small = browser.value(
        "[...document.querySelectorAll('main a, nav a, summary, input, .tick label')].map(e => e.getBoundingClientRect())"
        ".filter(b => b.width < 24 || b.height < 24).length"
    )
    assert small == 0


def test_the_writing_in_drawings_is_readable_on_a_phone(browser: Browser, cards: dict[str, Path]) -> None:
    browser.open(cards["peach-cobbler"], width=390)
    sizes = browser.value(
        "[...document.querySelectorAll('svg text')].map(e => 13 * e.ownerSVGElement.getBoundingClientRect().width"
        " / e.ownerSVGElement.viewBox.baseVal.width)"
    )
    assert min(sizes) >= 11


@pytest.mark.parametrize("dish", ["peach-cobbler", "hostile"])
def test_the_page_asks_for_nothing_and_complains_of_nothing(
    browser: Browser, cards: dict[str, Path], dish: str
) -> None:
    browser.open(cards[dish])
    assert browser.value("typeof window.hurt") == "undefined"
    assert [address for address in browser.asked() if not address.startswith("data:")] == [
        cards[dish].as_uri()
    ]
    assert browser.complaints() == []


def test_the_page_reads_the_same_without_script(browser: Browser, cards: dict[str, Path]) -> None:
    told = "document.body.innerText"
    browser.open(cards["peach-cobbler"])
    with_script = browser.value(told)
    browser.open(cards["peach-cobbler"], script=False)
    assert browser.value(told) == with_script


def test_ticks_are_still_there_when_the_page_is_opened_again(
    browser: Browser, cards: dict[str, Path]
) -> None:
    browser.open(cards["peach-cobbler"])
    browser.value("document.querySelectorAll('input[data-tick]')[2].click()")
    browser.open(cards["peach-cobbler"])
    ticked = "[...document.querySelectorAll('input[data-tick]')].map((box, at) => box.checked ? at : -1).filter(at => at >= 0)"
    assert browser.value(ticked) == [2]
    browser.open(cards["beef-stew"])
    assert browser.value(ticked) == []
