"""One briquette in figures."""

from __future__ import annotations

import pytest

from rules.coals.figures import figure
from rules.coals.glow import ember, first_heat_w


def test_a_briquette_gives_no_more_heat_than_it_holds() -> None:
    """24 g of 23 MJ/kg, less the chimney's part, over the burn curve."""
    whole = figure("mass").value / 1000 * figure("heating value").value * 1e6
    given = first_heat_w() * ember().minutes_in_all * 60
    assert given == pytest.approx(whole * (1 - figure("burnt in chimney").value))


def test_the_mean_heat_over_an_hour_is_that_of_a_briquette() -> None:
    """0.5 to 0.6 MJ over an hour are 140 to 170 W (computed from the masses and heating values); the chimney took 15 %."""
    assert 140 * 0.85 * 0.8 < first_heat_w() * ember().mean_left(60) < 170 * 0.85


def test_wind_shortens_the_life_in_step() -> None:
    assert ember(1.2).tau_min == pytest.approx(ember().tau_min / 1.2)
    assert ember(1.2).reaching_w == ember().reaching_w
