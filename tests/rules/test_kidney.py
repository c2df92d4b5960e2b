"""Dry kidney beans, from the text to the plan: soaked in time, and boiled hard from the rolling boil on.

Source: FDA's figures (soak at least 5 hours, throw the water away, boil 30 minutes in fresh water), quoted by Ohio
State University, "Chow Line: dry kidney beans need to be boiled".
"""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp

BEANS = """Beans

1 pound dried red kidney beans
2 onions, chopped
2 tablespoons oil
1 teaspoon salt

{soak}Cover the beans with fresh water, bring to a boil and boil for 30 minutes, then drain.
Fry the onions in the oil for 8 minutes. Add the beans, the salt and 6 cups water and simmer for 1 hour.
"""


@pytest.mark.parametrize("soak", ["Soak the beans overnight in cold water and drain.\n", ""])
def test_kidney_beans_are_soaked_in_time_and_boil_from_the_boil_on(soak: str) -> None:
    plan = camp(read(BEANS.format(soak=soak)), Day())
    assert plan.heat is not None
    first = min(batch.light_at_min for batch in plan.heat.fuel.batches)
    soaked = [moment.at_min for moment in plan.timeline if "to soak" in moment.do]
    assert soaked
    assert soaked[0] <= first - 300
    boils = [stage for stage in plan.heat.stages if stage.kind == "boil" and stage.minutes]
    assert boils[0].minutes is not None
    assert boils[1].minutes is not None
    assert boils[1].minutes.low >= 30, "the half hour stands after a stage that brings the pot to the boil"


def test_beans_that_the_list_wants_soaked_are_soaked_in_time() -> None:
    text = "Beans\n\n1 pound dry navy beans, soaked overnight\n8 cups water\n\nSimmer the beans in the water for 1 hour.\n"
    plan = camp(read(text), Day())
    assert [moment for moment in plan.timeline if "to soak" in moment.do]


def test_canned_beans_are_not_soaked() -> None:
    plan = camp(
        read("Chili\n\n2 cans kidney beans\n1 can tomatoes\n\nSimmer everything for 30 minutes.\n"), Day()
    )
    assert not [moment for moment in plan.timeline if "soak" in moment.do]
