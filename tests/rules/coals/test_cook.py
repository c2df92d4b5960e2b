"""A pot over its coals: the printed count holds the printed temperature."""

from __future__ import annotations

import pytest

from rules.coals.chart import baseline, column
from rules.coals.cook import cook, held_loss, temperatures, usual_kg


def bake(diameter: int = 12, aim: float = 350.0, kg: float | None = None, **more):
    count = baseline(diameter, aim).total
    told = {"air_f": 70.0, "faster": 1.0, "elevation_ft": 0.0, "preheat_min": 18.0} | more
    return cook(
        way="bake",
        coals=count,
        exact=count,
        aim_f=aim,
        diameter_in=diameter,
        depth="shallow",
        food_kg=kg if kg is not None else usual_kg(diameter),
        **told,
    )


@pytest.mark.parametrize(
    "cell", [cell for d in (8, 10, 12, 14, 16) for cell in column(d)], ids=lambda c: c.id
)
def test_a_usual_pot_on_the_charts_coals_comes_to_the_charts_temperature(cell) -> None:
    """Its hottest moment, warmed as long as pots are, is the printed figure: the printed count wins over the physics."""
    course = temperatures(bake(cell.diameter_in, float(cell.temp_f)), minutes=50)
    assert max(point.iron_f for point in course) == pytest.approx(cell.temp_f, abs=1)


def test_half_of_a_pots_loss_goes_with_half_of_its_coals() -> None:
    day = {"aim_f": 350.0, "diameter_in": 12, "depth": "shallow", "air_f": 70.0, "faster": 1.0}
    assert held_loss(coals=12.5, **day) < held_loss(coals=25.0, **day)


def test_a_simmer_starts_at_the_boil_and_holds_the_food() -> None:
    pot = cook(
        way="simmer", coals=13, exact=12.8, aim_f=212, diameter_in=12, depth="shallow", air_f=70, faster=1,
        elevation_ft=5000, food_kg=4,
    )  # fmt: skip
    assert pot.holds == "food"
    assert pot.start.food_f == pytest.approx(202.9, abs=0.2)
    assert pot.high_f - pot.low_f == pytest.approx(15)


def test_a_stew_at_an_oven_temperature_holds_the_iron() -> None:
    pot = cook(
        way="simmer", coals=25, exact=25, aim_f=350, diameter_in=12, depth="shallow", air_f=70, faster=1,
        elevation_ft=0, food_kg=4,
    )  # fmt: skip
    assert (pot.holds, pot.low_f, pot.high_f) == ("iron", 325, 375)


def test_the_course_of_temperatures_tells_iron_food_and_heat() -> None:
    course = temperatures(bake(), minutes=30, every_min=10)
    assert [point.at_min for point in course] == [0, 10, 20, 30]
    assert course[-1].food_f > course[0].food_f
    assert course[0].heat_w > course[-1].heat_w


def test_a_usual_pot_is_two_fifths_full() -> None:
    """A 12-inch pot holds 6 quarts, 5.7 liters."""
    assert usual_kg(12) == pytest.approx(0.4 * 5.7, rel=0.05)
