"""A plan in Markdown: complete, and recipe text that means something to Markdown stays text."""

from __future__ import annotations

from msgspec.structs import replace

from assistant.show.forms import Look
from assistant.show.markdown import plan_markdown, recipe_markdown
from rules.circumstances import Day
from rules.plan import Moment, Plan
from rules.recipe import Recipe


def test_a_plan_has_all_its_sections(river_plan: Plan) -> None:
    told = plan_markdown(river_plan, Look(day=Day(eat="18:30")))
    sections = [line[3:] for line in told.splitlines() if line.startswith("## ")]
    assert sections == [
        *("Left open", "Coals", "Packs", "Fat", "At home", "At camp", "The day", "Cold", "Shopping"),
        *("Kit for home", "Kit for camp", "Labels", "Careful", "Holds", "Why"),
    ]
    assert "| 17:30 | bake | 17 on the lid, 8 under | 45 to 50 min | 350 °F (177 °C) |" in told
    assert told.count("●") == 25
    assert "> COBBLER, DRY  \n> add 1 1/2 cups milk" in told


def test_a_plan_without_coals_says_why(river_plan: Plan) -> None:
    cold = replace(river_plan, heat=None, no_coals_because="Nothing is cooked.")
    assert "## Coals\n\nNothing is cooked." in plan_markdown(cold, Look())


def test_signs_of_markdown_and_html_are_taken_literally(river_recipe: Recipe) -> None:
    odd = replace(river_recipe, title="*Pie* | <b>x</b> `y` [z](http://w) # 1 & 2 &lt;")
    first = recipe_markdown(odd, Look()).splitlines()[0]
    assert first == r"# \*Pie\* \| \<b\>x\</b\> \`y\` \[z\](http://w) \# 1 & 2 \&lt;"


def test_a_step_that_begins_like_a_list_stays_a_step(river_plan: Plan) -> None:
    told = plan_markdown(replace(river_plan, home_steps=("- chop", "2. stir")), Look())
    assert "1. \\- chop\n2. \\2. stir" in told


def test_a_recipe_as_read_keeps_its_unread_lines(river_recipe: Recipe) -> None:
    told = recipe_markdown(river_recipe, Look())
    assert "|  | 1 1/2 cups | flour |  |" in told
    assert "line 3: As made on the gravel bar." in told


def test_repeated_turns_are_one_row(river_plan: Plan) -> None:
    turns = tuple(
        Moment(at_min=at, clock=clock, do="Turn.")
        for at, clock in ((-30, "18:00"), (-20, "18:10"), (-10, "18:20"))
    )
    told = plan_markdown(replace(river_plan, timeline=turns), Look(day=Day(eat="18:30")))
    assert "| 18:00 | Turn. Then every 10 minutes until 18:20. |" in told
