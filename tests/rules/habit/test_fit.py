"""The fit against synthetic cooks whose bias is known, and against numpy's and scipy's solvers."""

from __future__ import annotations

import math
from random import Random
from statistics import mean

import numpy as np
import pytest
from scipy.optimize import lsq_linear

from rules.circumstances import Habit
from rules.habit.evidence import evidence, own_minutes, pot_heat, spread
from rules.habit.figures import bound, figure
from rules.habit.fit import fit, inverse
from tests.rules.habit.kitchen import Bias, error, one_cook, season

SEEDS = range(40)
BIASES = {
    "a hot pot": Bias(pot=0.2),
    "a weak charcoal": Bias(charcoal=-0.2),
    "a slow cook": Bias(minutes=0.25),
    "a quick cook": Bias(minutes=-0.2),
    "a hot pot, a weak charcoal and a slow cook": Bias(pot=0.1, charcoal=-0.25, minutes=0.15),
    "a cold pot in a sea of noise": Bias(pot=-0.2, noise=0.3),
    "a slow cook in a sea of noise": Bias(minutes=0.3, noise=0.3),
    "a pot in which time follows heat twice as much": Bias(pot=0.15, per_heat=3.0),
    "a pot in which time follows heat half as much": Bias(pot=0.3, per_heat=0.75),
    "a pot beyond the bounds of the coals": Bias(pot=0.45),
}


@pytest.mark.parametrize("with_reading", [False, True], ids=["minutes alone", "with a thermometer"])
@pytest.mark.parametrize("bias", BIASES.values(), ids=BIASES.keys())
def test_after_five_meals_less_than_half_of_the_error_is_left(bias: Bias, with_reading: bool) -> None:
    """The mean over 40 seasons of one cook, each season with its own noise."""
    errors = [season(bias, seed, with_reading=with_reading) for seed in SEEDS]
    first, last = (mean(run[place] for run in errors) for place in (0, 5))
    assert first == pytest.approx(abs(bias.minutes - bias.per_heat * (bias.pot + bias.charcoal)))
    assert last < first / 2


@pytest.mark.parametrize("bias", BIASES.values(), ids=BIASES.keys())
def test_more_meals_never_teach_the_worse(bias: Bias) -> None:
    """Ten meals leave on the average no more error than three."""
    errors = [season(bias, seed, meals=10) for seed in SEEDS]
    assert mean(run[10] for run in errors) <= mean(run[3] for run in errors)


@pytest.mark.parametrize("noise", [0.05, 0.1, 0.3])
def test_noise_alone_never_costs_more_than_the_noise_of_one_cook(noise: float) -> None:
    """Nothing is wrong with the chart: what the log makes up stays below one cook's own scatter, and fades."""
    errors = [season(Bias(noise=noise), seed, meals=10) for seed in SEEDS]
    assert all(mean(run[after] for run in errors) < noise for after in range(1, 11))
    assert mean(run[10] for run in errors) < mean(run[1] for run in errors) / 2
    widest = math.log(bound("minutes").high / bound("minutes").low)
    assert max(max(run) for run in errors) < widest


def test_before_the_first_meal_nothing_is_learnt() -> None:
    assert fit(()) is None
    assert error(Bias(), None) == 0


def test_minutes_that_cannot_be_teach_nothing() -> None:
    """Ten times the planned minutes: the fire went out, or a slip of the pen."""
    odd = one_cook(Bias(minutes=math.log(10)), None, Random(1), with_reading=False)
    assert fit([odd]) is None


def test_the_means_are_those_of_a_general_least_squares_solver() -> None:
    """The posterior mean is the ridge solution: scipy's solver on the equations with one row more for each spread."""
    chance = Random(7)
    cooks = [one_cook(Bias(pot=0.2, minutes=0.1), None, chance, with_reading=True) for _ in range(6)]
    habit = fit(cooks)
    assert isinstance(habit, Habit)
    told = [equation for cook in cooks for equation in evidence(cook)]
    means = dict(zip(habit.effects, habit.mean, strict=True))
    missed = [(e.value - sum(w * means[n] for n, w in e.weights.items())) / e.noise for e in told]
    scatter = (figure("noise weight") + sum(m * m for m in missed)) / (figure("noise weight") + len(told))
    rows, values = [], []
    for equation in told:
        sure = 1 / (equation.noise * math.sqrt(scatter))
        rows.append([sure * equation.weights.get(name, 0.0) for name in habit.effects])
        values.append(sure * equation.value)
    for place, name in enumerate(habit.effects):
        rows.append([float(place == other) / spread(name) for other in range(len(habit.effects))])
        values.append(0.0)
    solved = lsq_linear(np.array(rows), np.array(values))
    # The scatter is found by turns, which stop within a thousandth of its fixed point.
    assert np.array(habit.mean) == pytest.approx(solved.x, rel=1e-3, abs=1e-6)
    covariance = np.linalg.inv(np.array(rows).T @ np.array(rows))
    assert np.array(habit.covariance) == pytest.approx(covariance, rel=5e-3, abs=1e-8)


def test_the_inverse_is_that_of_numpy() -> None:
    """Twenty random symmetric, positive definite matrices of the size that a log gives."""
    chance = np.random.default_rng(3)
    for size in range(1, 11):
        for _ in range(2):
            half = chance.normal(size=(size, size))
            matrix = half @ half.T + np.eye(size)
            assert np.array(inverse(matrix.tolist())) == pytest.approx(np.linalg.inv(matrix))


def test_the_order_of_the_log_teaches_nothing() -> None:
    chance = Random(2)
    cooks = [one_cook(Bias(pot=0.1), None, chance, with_reading=True) for _ in range(5)]
    first, second = fit(cooks), fit(cooks[::-1])
    assert first is not None
    assert second is not None
    assert first.mean == pytest.approx(second.mean)


def test_every_meal_makes_surer() -> None:
    chance = Random(2)
    cooks = [one_cook(Bias(noise=0.05), None, chance, with_reading=True) for _ in range(6)]
    fits = [fit(cooks[:meals]) for meals in range(1, 7)]
    for effect in (pot_heat(12, "shallow"), own_minutes("bake")):
        spreads = []
        for habit in fits:
            assert habit is not None
            place = habit.effects.index(effect)
            spreads.append(habit.covariance[place][place])
        assert spreads == sorted(spreads, reverse=True)
        assert spreads[0] < spread(effect) ** 2


def test_a_thermometer_tells_the_pot_from_the_cook() -> None:
    """With readings a hot pot is called hot; without them its minutes may as well be the cook's."""
    bias = Bias(pot=0.2, noise=0.05)
    shares = {}
    for with_reading in (False, True):
        chance = Random(4)
        habit = fit([one_cook(bias, None, chance, with_reading=with_reading) for _ in range(5)])
        assert habit is not None
        shares[with_reading] = sum(
            habit.mean[place] for place, name in enumerate(habit.effects) if name.startswith("heat")
        )
    assert shares[True] == pytest.approx(0.2, abs=0.03)
    assert shares[False] < shares[True]
