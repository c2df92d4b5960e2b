"""For every food of every corpus recipe a why lists what was decided about it: where it rides, its job, its dangers."""

from __future__ import annotations

import pytest

from assistant.chat.reasons import reasons_about
from rules.plan import Plan, Reason
from tests.gold import slugs
from tests.test_corpus import plan

#: The chapters of rules that say into which pack a food goes.
PACKING = ("dry.", "wet.", "fresh.", "prepped.", "pantry.", "water.")


def why(of: Plan, index: int) -> tuple[Reason, ...]:
    return reasons_about(of, of.recipe.ingredients[index].name).why


@pytest.mark.parametrize("slug", slugs())
def test_every_food_has_the_reason_of_each_of_its_packs(slug: str) -> None:
    of = plan(slug)
    for index, ingredient in enumerate(of.recipe.ingredients):
        told = why(of, index)
        packing = [reason for reason in told if reason.rule.startswith(PACKING)]
        kinds = {pack.kind for pack in of.packs for item in pack.items if item.ingredient == index}
        assert len({reason.rule for reason in packing}) >= len(kinds), ingredient.name


@pytest.mark.parametrize("slug", slugs())
def test_every_fat_has_the_reason_of_each_of_its_jobs(slug: str) -> None:
    of = plan(slug)
    for use in of.fat:
        fat = [reason.rule for reason in why(of, use.ingredient) if reason.rule.startswith("fat.")]
        jobs = {other.goes for other in of.fat if other.ingredient == use.ingredient}
        assert len(set(fat)) >= len(jobs), of.recipe.ingredients[use.ingredient].name


@pytest.mark.parametrize("slug", slugs())
def test_every_allergen_is_among_the_reasons_of_some_food(slug: str) -> None:
    of = plan(slug)
    told = " ".join(
        reason.because
        for index in range(len(of.recipe.ingredients))
        for reason in why(of, index)
        if reason.rule.startswith("allergens.")
    )
    assert [allergen for allergen in of.allergens if allergen not in told] == []


@pytest.mark.parametrize("slug", slugs())
def test_every_reason_has_its_rule_a_sentence_and_a_source(slug: str) -> None:
    of = plan(slug)
    for index in range(len(of.recipe.ingredients)):
        for reason in why(of, index):
            chapter, _, word = reason.rule.partition(".")
            assert chapter
            assert word
            assert len(reason.because.split()) >= 3
            assert "{" not in reason.because
            assert reason.source.strip()
