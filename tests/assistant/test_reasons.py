"""A why finds the reasons about the thing, not every sentence that names it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from assistant.chat import tables
from assistant.chat.reasons import NoReason, Topics, reasons_about, words_of
from rules.plan import Plan, Reason


def reason(rule: str, about: str, because: str) -> Reason:
    return Reason(rule=rule, about=about, because=because, source="common practice, no source")


@pytest.fixture
def plan(river_plan: Plan) -> Plan:
    return replace(
        river_plan,
        why=(
            reason("dry.leavener", "baking powder", "it rides dry, far from the milk"),
            reason("fresh.milk", "milk", "milk keeps cold"),
            reason("coals.share", "bake", "two thirds of the coals lie above"),
            reason("packs.powder", "powdered sugar", "it clumps"),
        ),
    )


@pytest.mark.parametrize(
    ("about", "rules"),
    [
        ("baking powder", ["dry.leavener"]),
        ("the milk", ["fresh.milk"]),
        ("is the milk kept cold", ["fresh.milk"]),
        ("so many coals above", ["coals.share"]),
        ("leavener", ["dry.leavener"]),
        ("clumps", ["packs.powder"]),
    ],
)
def test_what_it_is_about_comes_before_rule_and_sentence(plan: Plan, about: str, rules: list[str]) -> None:
    assert [found.rule for found in reasons_about(plan, about).why] == rules


def test_no_reason_names_what_there_is(plan: Plan) -> None:
    with pytest.raises(NoReason) as caught:
        reasons_about(plan, "propane")
    assert str(caught.value) == (
        'why propane: no reason is about "propane"; there are reasons about baking powder, milk, bake, powdered sugar.'
    )


def test_words_are_singular_and_without_small_ones() -> None:
    assert words_of("Why are the tomatoes and berries in it?") == {"tomato", "berry"}


@pytest.mark.parametrize("about", ["on top", "so many on the lid", "the split", "fewer underneath"])
def test_a_topic_stands_for_the_rules_that_answer(plan: Plan, about: str) -> None:
    assert [found.rule for found in reasons_about(plan, about).why] == ["coals.share"]


def test_a_topic_tells_of_the_stage_that_cooks_the_dish(plan: Plan) -> None:
    warm = reason("coals.share", "warm", "all the coals lie under the empty pot")
    assert plan.heat is not None
    stages = (replace(plan.heat.stages[0], kind="warm"), *plan.heat.stages)
    told = replace(plan, why=(warm, *plan.why), heat=replace(plan.heat, stages=stages))
    assert [found.about for found in reasons_about(told, "on top").why] == ["bake"]


def test_every_rule_that_a_topic_names_is_one() -> None:
    import rules.convert  # noqa: F401 - all rules are registered with it
    from rules.because import RULES

    known = list(RULES)
    named = {rule for topic in tables.load("topics.toml", Topics).topic for rule in topic.rules}
    assert not [rule for rule in named if not any(f"{one}.".startswith(f"{rule}.") for one in known)]
