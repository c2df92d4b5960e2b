"""Iron, food and fading coals: the closed form, its limits and its energy."""

from __future__ import annotations

import math

import pytest

from rules.coals.burn import Body, Ember, State, after, history, modes, with_coals

EMBER = Ember(reaching_w=42.0, tau_min=22.0, steepness=10)
POT = Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=7000, contact_w_k=1.8, air_f=70, boil_f=212)
EMPTY = Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=0, contact_w_k=0, air_f=70, boil_f=212)
STEW = Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=15000, contact_w_k=11, air_f=70, boil_f=212)


def start(coals: float, iron_f: float = 70, food_f: float = 60) -> State:
    return State(iron_f=iron_f, food_f=food_f, modes=modes(EMBER, coals))


def test_a_briquette_starts_whole_and_fades() -> None:
    left = [EMBER.left(minutes) for minutes in (0, 15, 45, 60, 90, 240)]
    assert left[0] == 1
    assert left == sorted(left, reverse=True)
    assert left[-1] < 0.01


@pytest.mark.parametrize("minutes", [5.0, 20.0, 60.0, 100.0])
def test_the_age_of_a_coal_is_read_back_from_what_is_left(minutes) -> None:
    assert minutes == pytest.approx(EMBER.age_at(EMBER.left(minutes)), rel=1e-6)


def test_the_mean_is_the_integral_of_what_is_left() -> None:
    steps = [EMBER.left((n + 0.5) * 0.1) for n in range(450)]
    assert EMBER.mean_left(45) == pytest.approx(sum(steps) / len(steps), rel=1e-5)
    assert EMBER.mean_left(1e5) * 1e5 == pytest.approx(EMBER.minutes_in_all, rel=1e-6)


def test_the_modes_of_aged_coals_give_what_is_left_of_them() -> None:
    assert sum(modes(EMBER, 10, age_min=50)) == pytest.approx(10 * 42 * EMBER.left(50))


def test_without_coals_the_pot_cools_to_the_air_and_no_further() -> None:
    cold = after(State(iron_f=350, food_f=200, modes=modes(EMBER, 0)), POT, EMBER, 2000)
    assert cold.iron_f == pytest.approx(70, abs=0.1)
    assert cold.food_f == pytest.approx(70, abs=0.1)


def test_an_empty_pot_follows_the_textbook_exponential() -> None:
    """Newton's cooling: T - air = 280 exp(-loss t / capacity)."""
    warm = after(State(iron_f=350, food_f=60, modes=modes(EMBER, 0)), EMPTY, EMBER, 20)
    assert warm.iron_f == pytest.approx(70 + 280 * math.exp(-4.4 * 1200 / 4800))


def test_many_short_steps_are_one_long_step() -> None:
    long = after(start(25), POT, EMBER, 60)
    short = history(start(25), POT, EMBER, minutes=60, every_min=1)[-1][1]
    assert short.iron_f == pytest.approx(long.iron_f, abs=1e-6)
    assert short.food_f == pytest.approx(long.food_f, abs=1e-6)


def test_food_never_passes_its_boiling_point() -> None:
    course = history(start(40), STEW, EMBER, minutes=240, every_min=2)
    assert max(state.food_f for _, state in course) == pytest.approx(212)


def test_food_leaves_the_boil_when_the_coals_are_spent() -> None:
    course = history(start(24), STEW, EMBER, minutes=300, every_min=5)
    assert course[-1][1].food_f < 200


def test_fresh_coals_are_felt_from_the_minute_they_go_on() -> None:
    plain = history(start(25), POT, EMBER, minutes=60)
    fed = history(start(25), POT, EMBER, minutes=60, fresh=[(30.0, 10)])
    before = [(at, state.iron_f) for at, state in plain if at <= 30]
    assert before == [(at, state.iron_f) for at, state in fed if at <= 30]
    assert fed[-1][1].iron_f > plain[-1][1].iron_f
    assert with_coals(start(25), EMBER, 10).heat_w == pytest.approx(35 * 42)


@pytest.mark.parametrize(
    ("body", "coals", "iron"), [(POT, 25, 200), (STEW, 24, 300), (STEW, 13, 212), (EMPTY, 16, 70)]
)
def test_heat_in_is_heat_stored_and_lost(body, coals, iron) -> None:
    """Within 0.1 %: Simpson's rule over a fine course; steam takes what boiling food cannot store."""
    every, minutes = 0.25, 120.0
    course = history(start(coals, iron_f=iron), body, EMBER, minutes=minutes, every_min=every)
    heat = _simpson([state.heat_w for _, state in course], every * 60)
    lost = _simpson([body.loss_w_k * (state.iron_f - 70) / 1.8 for _, state in course], every * 60)
    steam = _simpson([_steam(state, body) for _, state in course], every * 60)
    first, last = course[0][1], course[-1][1]
    stored = (
        body.iron_j_k * (last.iron_f - first.iron_f) + body.food_j_k * (last.food_f - first.food_f)
    ) / 1.8
    assert heat == pytest.approx(stored + lost + steam, rel=1e-3)


def _steam(state: State, body: Body) -> float:
    is_boiling = body.food_j_k and state.food_f >= body.boil_f and state.iron_f >= body.boil_f
    return body.contact_w_k * (state.iron_f - body.boil_f) / 1.8 if is_boiling else 0.0


def _simpson(values: list[float], step: float) -> float:
    return step / 3 * (values[0] + values[-1] + 4 * sum(values[1:-1:2]) + 2 * sum(values[2:-1:2]))
