"""The camp card as a document: whole, valid, harmless, and its figures the plan's.

Outside: the HTML Living Standard's parse errors as html5lib's strict parser raises them.
"""

from __future__ import annotations

import itertools
import json
import re

import pytest
from msgspec.structs import replace

from assistant.show.card import plan_card
from assistant.show.data import json_line
from assistant.show.parts import CAUTIONS
from rules.circumstances import Day
from rules.plan import CautionId, Moment, Plan
from tests.assistant import hostile
from tests.assistant.tree import having, parsed, text

DAY = Day(people=9, eat="2027-07-03T18:30", trip_hours=30)


def test_the_page_is_valid_and_its_landmarks_and_headings_are_in_order(river_plan: Plan) -> None:
    tree = parsed(plan_card(river_plan, DAY))
    assert [len(list(tree.iter(name))) for name in ("header", "nav", "main", "footer", "h1")] == [1] * 5
    levels = [int(e.tag[1]) for e in tree.iter() if isinstance(e.tag, str) and re.fullmatch(r"h[1-6]", e.tag)]
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))
    ids = [element.get("id") for element in tree.iter() if element.get("id")]
    assert len(set(ids)) == len(ids)
    for link in tree.iter("a"):
        assert link.get("href", "").removeprefix("#") in ids
    for section in tree.iter("section"):
        assert section.get("aria-labelledby") in ids


def test_no_section_list_or_paragraph_is_empty(river_plan: Plan) -> None:
    for plan in (river_plan, replace(river_plan, heat=None, no_coals_because="nothing is cooked", cold=None)):
        for element in parsed(plan_card(plan, DAY)).iter():
            if element.tag in ("section", "ul", "ol", "dl", "li", "p", "h2", "h3", "dt", "dd", "figcaption"):
                assert text(element), element.attrib


def test_every_figure_of_the_json_plan_is_on_the_page(river_plan: Plan) -> None:
    """The page is held against the JSON that a script would read, not against the structs."""
    plan = json.loads(json_line(river_plan))
    tree = parsed(plan_card(river_plan, DAY))
    told = text(next(tree.iter("main")))
    counts = [text(count) for count in having(tree, "count")]
    for stage in plan["heat"]["stages"]:
        if stage["top"]:
            assert f"{stage['top']} on the lid" in counts
        if stage["under"]:
            assert f"{stage['under']} under the pot" in counts
        if stage["turn_every_min"]:
            assert f"Every {stage['turn_every_min']} minutes turn" in told
        if stage["first_look_min"]:
            assert f"after {stage['first_look_min']} minutes" in told
    assert f"Bring {plan['heat']['fuel']['briquettes']} briquettes" in told
    for batch in plan["heat"]["fuel"]["batches"]:
        assert f"light {batch['count']} " in told
    for step in (*plan["camp_steps"], *plan["home_steps"]):
        assert step in told
    for line in plan["shopping"]:
        assert line["buy"] in told
        assert line["food"].capitalize() in told
    for caution in plan["cautions"]:
        # The first words of a caution may stand in its heading, which ends without a stop.
        assert caution["text"].replace(".", "") in told.replace(".", "")
    assert len(list(having(tree, "label"))) == len(plan["labels"])
    assert f"{len(plan['why'])} reasons" in told


def test_stages_over_the_same_coals_share_one_drawing(river_plan: Plan) -> None:
    heat = river_plan.heat
    assert heat is not None
    bake = heat.stages[-1]
    warm = replace(bake, kind="warm", refresh=(), turn_every_min=None, first_look_min=None)
    plan = replace(river_plan, heat=replace(heat, stages=(warm, bake)))
    tree = parsed(plan_card(plan, DAY))
    assert len(list(having(tree, "bed"))) == 1
    assert len(list(having(tree, "level"))) == 2
    assert len(list(having(tree, "coal"))) == bake.top + bake.under


def test_repeated_turns_are_one_line_with_a_tick_each(river_plan: Plan) -> None:
    turns = tuple(Moment(at_min=minute, do="Turn the lid.") for minute in (-50, -40, -30, -20))
    tree = parsed(plan_card(replace(river_plan, timeline=turns), Day(eat="18:30")))
    (line,) = having(tree, "again")
    assert "17:40 Turn the lid. Then every 10 minutes until 18:10." in text(line)
    assert len(list(line.iter("input"))) == 4


def test_without_a_clock_moments_count_from_the_meal(river_plan: Plan) -> None:
    plan = replace(river_plan, timeline=(Moment(at_min=-85, do="Light 25 briquettes."),))
    assert "85 min before" in plan_card(plan, Day())


def test_every_caution_has_a_heading() -> None:
    assert set(CAUTIONS) == set(CautionId.__args__)


def test_nothing_from_outside_and_no_script_but_our_own(river_plan: Plan) -> None:
    """Content Security Policy Level 3: the script's hash is that of the script."""
    page = plan_card(river_plan, DAY)
    assert "default-src &#39;none&#39;" in page
    addresses = re.findall(r'(?:src|href)="([^"]*)"', page)
    assert all(address.startswith(("#", "data:")) for address in addresses)
    assert page.count("<script") == 1
    assert "<label><input" in page  # a tick needs no script to be a tick


def test_a_hostile_recipe_stays_text() -> None:
    page = plan_card(hostile.plan(), DAY)
    tree = parsed(page)
    assert len(list(tree.iter("script"))) == 1
    assert not list(tree.iter("img"))
    for element in tree.iter():
        assert not [name for name in element.attrib if name.startswith("on")]
    assert text(next(tree.iter("h1"))).startswith('<script>window.hurt = 1</script> & "Pie" 🥧')
    assert hostile.MARK not in page
    assert hostile.LONG in page


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_same_plan_gives_the_same_bytes(river_plan: Plan, units: str) -> None:
    day = Day(eat="18:30", units=units)  # type: ignore[arg-type]
    assert plan_card(river_plan, day) == plan_card(river_plan, day)
