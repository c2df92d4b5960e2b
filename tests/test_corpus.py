"""The recipes of the corpus: their labels are in good form; readings and plans keep to them."""

from __future__ import annotations

import pytest

from rules.coals.chart import baseline
from tests.gold import bag, gold, slugs, text

SLUGS = slugs()


@pytest.mark.parametrize("slug", SLUGS)
def test_labels_name_lines_that_stand_in_the_text(slug: str) -> None:
    """Line numbers count from 0; every word of a name is written on its line."""
    want, lines = gold(slug), text(slug).split("\n")
    numbers = {*want.recipe.ingredient_lines, *want.recipe.header_lines, *want.recipe.step_lines}
    assert all(lines[number].strip(" >") for number in numbers)
    for line in want.recipe.lines:
        written = set(bag(lines[line.line]))
        for name in (line.name, *line.also):
            assert set(bag(name)) <= written, f"{name} is not on line {line.line}"


@pytest.mark.parametrize("slug", SLUGS)
def test_labels_count_each_listed_line_once(slug: str) -> None:
    want = gold(slug).recipe
    assert sorted(line.line for line in want.lines if line.from_ == "list") == list(want.ingredient_lines)
    assert not set(want.ingredient_lines) & set(want.header_lines)
    if all(line.from_ == "list" for line in want.lines):
        assert not set(want.ingredient_lines) & set(want.step_lines)
    for time in (*want.times_min, *want.times_not_labelled):
        assert time.line in want.step_lines
    for words in want.times_not_labelled:
        assert words.words in text(slug).split("\n")[words.line]


@pytest.mark.parametrize("slug", SLUGS)
def test_labelled_foods_of_the_plan_are_those_of_the_recipe(slug: str) -> None:
    want = gold(slug)
    read = {(line.line, name) for line in want.recipe.lines for name in (line.name, *line.also)}
    assert {(item.line, item.name) for item in want.plan.items} <= read
    assert want.recipe.family == want.plan.family[0]
    listed = {
        (line.line, name)
        for line in want.recipe.lines
        if line.from_ == "list"
        for name in (line.name, *line.also)
    }
    assert listed <= {(item.line, item.name) for item in want.plan.items}


@pytest.mark.parametrize("slug", SLUGS)
def test_labels_do_not_contradict_each_other(slug: str) -> None:
    """A group packed together has a pack kind in common, no caution is wanted and refused, no range is upside down."""
    want = gold(slug).plan
    kinds: dict[int, set[str]] = {}
    for item in want.items:
        kinds.setdefault(item.line, set(item.packs))
    for group in want.together:
        assert set.intersection(*(kinds[line] for line in group)), group
        assert not any(set(pair) <= set(group) for pair in want.apart)
    assert not set(want.cautions) & set(want.no_cautions)
    fire = {"carbon-monoxide", "hot-iron", "fire-restrictions"}
    assert want.coal_plan == (fire <= set(want.cautions)) == bool(want.stages)
    for stage in want.stages:
        for span in (stage.top, stage.under, stage.minutes):
            assert span is None or 0 <= span[0] <= span[1]


@pytest.mark.parametrize("slug", SLUGS)
def test_labelled_bakes_hold_the_charts_figures(slug: str) -> None:
    """A stage labelled with a temperature accepts what the printed 12-inch chart says for it, and little more.

    Source: the baking chart in coal_chart.csv.
    """
    for stage in gold(slug).plan.stages:
        if stage.temp_f is None or stage.top is None or stage.under is None:
            continue
        printed = baseline(12, stage.temp_f)
        assert stage.top[0] <= printed.top <= stage.top[1]
        assert stage.under[0] <= printed.under <= stage.under[1]
        assert stage.top[1] - stage.top[0] <= 6
        assert stage.under[1] - stage.under[0] <= 6
