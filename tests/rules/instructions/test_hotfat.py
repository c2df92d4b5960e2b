"""Fat for the hot pot is told where the batter meets it."""

from __future__ import annotations

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp

COBBLER = """River plum cobbler

1 stick butter
1 cup flour
1 cup sugar
2 teaspoons baking powder
1 cup milk
4 cups plums

Put the butter in a 9x13 pan in the oven to melt.
Whisk the flour, sugar and baking powder. Stir in the milk.
Pour the batter over the hot butter. Spoon the plums over it.
Bake at 350 F for 45 minutes.
"""

CORNBREAD = """River cornbread

1/4 cup bacon grease
2 cups cornmeal
1 teaspoon baking soda
2 cups buttermilk

Melt the grease in a skillet in the oven.
Mix the cornmeal and soda. Stir in the buttermilk.
Bake at 425 F for 25 minutes.
"""


def steps(text: str) -> list[str]:
    return list(camp(read(text), Day()).camp_steps)


def test_the_butter_waits_for_the_batter() -> None:
    told = " ".join(steps(COBBLER))
    assert told.count("into the hot pot") == 1
    assert told.index("Stir in the milk") < told.index("Put 1 stick of butter into the hot pot")
    assert told.index("into the hot pot") < told.index("Pour the batter over the hot butter")


def test_where_the_recipe_never_pours_the_plan_says_so_before_the_fire() -> None:
    told = " ".join(steps(CORNBREAD))
    assert told.index("Stir in the buttermilk") < told.index("into the hot pot")
    assert "until it sizzles; pour the batter over it." in told
    assert told.index("pour the batter over it") < told.index("Bake at 425")
