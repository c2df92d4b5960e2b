"""A planned fire holds its band for any pot, any temperature, any weather, 20 minutes to 6 hours; its sums are right."""

from __future__ import annotations

import itertools

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from rules.circumstances import Day
from rules.coals.burn import State
from rules.coals.cook import Cook, temperatures, usual_kg
from rules.coals.counts import coals
from rules.coals.drafts import Draft
from rules.coals.fire import Fire, Pot, after_fresh, laid, left_by, over, trimmed
from rules.coals.load import Load
from rules.coals.schedule import Timed, fired

days = st.builds(
    Day,
    air_f=st.integers(0, 100),
    wind=st.sampled_from(("calm", "breezy", "windy")),
    ground=st.sampled_from(("dry", "damp", "snow")),
    screen=st.booleans(),
    elevation_ft=st.sampled_from((0.0, 5000.0, 9000.0)),
)
#: From a thin layer of flour and sugar to a pot filled to three quarters with broth.
loads = st.tuples(st.floats(0.1, 0.75), st.floats(1800, 4200))
sizes = st.sampled_from((("shallow", 5), ("shallow", 8), ("shallow", 10), ("shallow", 12), ("shallow", 14),
                         ("shallow", 16), ("deep", 8), ("deep", 10), ("deep", 12), ("deep", 14)))  # fmt: skip
minutes = st.integers(20, 360).map(float)
temps = st.sampled_from((300.0, 325.0, 350.0, 375.0, 400.0, 425.0, 450.0))
ways = st.sampled_from(("bake", "roast", "gentle"))


def pot_of(size: tuple[str, int], load: tuple[float, float]) -> Pot:
    depth, diameter = size
    full = usual_kg(diameter, depth) / 0.4
    return Pot(diameter_in=diameter, depth=depth, load=Load(kg=full * load[0], j_kg_k=load[1]))


def planned(drafts: list[Draft], pot: Pot, day: Day) -> list[Timed]:
    its = [
        coals(one.way, diameter_in=pot.diameter_in, depth=pot.depth, day=day, temp_f=one.temp_f)
        for one in drafts
    ]
    stages, _ = fired(drafts, its, rest_min=10, pot=pot, day=day)
    return stages


def warmed_bake(
    way: str, temp_f: float, pot: Pot, day: Day, last: float, *, fat: bool = False
) -> tuple[list[Timed], list[tuple[Cook, list[tuple[float, float]]]]]:
    """A bake after its warming, and every stage's pot with the fresh coals that go on, as the plan has them."""
    warm = Draft(kind="warm", way=way, low_min=10, high_min=10, temp_f=temp_f, look="warm")
    heat_fat = Draft(kind="heat fat", way=way, low_min=3, high_min=5, temp_f=temp_f, look="heat fat")
    bake = Draft(kind="bake", way=way, low_min=last, high_min=last, temp_f=temp_f, look="bake")
    stages = planned([warm, *([heat_fat] if fat else []), bake], pot, day)
    first = stages[0]
    fire = laid(Fire(at_min=first.starts_at_min, iron_f=day.air_f), first.coals.total)
    cooks = []
    for stage in stages:
        fire = trimmed(fire, stage.coals.total)
        this = over(stage.draft.kind, stage.draft.way, stage.coals, fire, pot, day)
        fresh = [(more.at_min - stage.starts_at_min, more.top + more.under) for more in stage.refresh]
        cooks.append((this, fresh))
        fire = left_by(this, stage.draft.kind, fire, stage.draft.high_min, fresh)
    return stages, cooks


@given(ways, temps, sizes, loads, days, minutes, st.booleans())
@settings(max_examples=120, deadline=None)
def test_the_iron_is_within_a_pair_of_coals_of_its_aim_from_the_end_of_the_warming_to_the_end(
    way, temp_f, size, load, day, last, fat
) -> None:
    """25 °F, one pair of briquettes, at every minute of the bake: nothing is left out at its beginning."""
    _, cooks = warmed_bake(way, temp_f, pot_of(size, load), day, last, fat=fat)
    this, fresh = cooks[-1]
    course = temperatures(this, minutes=last, fresh=fresh, every_min=1.0)
    assert max(abs(point.iron_f - temp_f) for point in course) <= 25 + 1e-6


@given(sizes, st.tuples(st.floats(0.3, 0.75), st.floats(3300, 4200)), days, minutes)
@settings(max_examples=80, deadline=None)
def test_a_simmer_after_its_boil_stays_within_fifteen_degrees_of_it(size, load, day, last) -> None:
    pot = pot_of(size, load)
    boil = Draft(kind="boil", way="bring up", low_min=20, high_min=25, look="bring up")
    simmer = Draft(kind="simmer", way="simmer", low_min=last, high_min=last, look="simmer")
    _, stage = planned([boil, simmer], pot, day)
    # As the plan has it: the simmer's own coals at its start, all of them fresh or older, then its fresh ones.
    its = stage.coals
    fire = laid(Fire(at_min=0.0, iron_f=212, food_f=212), its.total)
    this = over("simmer", "simmer", its, fire, pot, day)
    course = temperatures(this, minutes=last, fresh=_fresh(stage), every_min=1.0)
    assert max(point.food_f for point in course) <= this.high_f + 1e-6
    assert min(point.food_f for point in course) >= this.low_f - 1e-6


def _fresh(stage: Timed) -> list[tuple[float, float]]:
    return [(more.at_min - stage.starts_at_min, more.top + more.under) for more in stage.refresh]


@given(ways, temps, sizes, loads, days, st.integers(20, 240).map(float))
@settings(max_examples=25, deadline=None)
def test_the_closed_form_is_what_scipy_integrates(way, temp_f, size, load, day, last) -> None:
    """The two nodes of a planned bake by scipy's DOP853 at tight tolerances, fresh coals as they go on: within 1 °F."""
    _, cooks = warmed_bake(way, temp_f, pot_of(size, load), day, last)
    for this, fresh in cooks[-1:]:
        end = after_fresh(this, last, fresh)
        iron_f, food_f = _integrated(this, last, fresh)
        assert abs(end.iron_f - iron_f) <= 1.0
        assert abs(end.food_f - food_f) <= 1.0


def _integrated(this: Cook, last: float, fresh: list[tuple[float, float]]) -> tuple[float, float]:
    body, glow = this.body, this.ember
    marks = [0.0, *(at for at, _ in fresh), last]
    temps = np.array([this.start.iron_f, this.start.food_f])
    rates = [order / glow.tau_min for order in range(1, glow.steepness + 1)]

    def heat(minute: float) -> float:
        first = sum(mode * np.exp(-rate * minute) for mode, rate in zip(this.start.modes, rates, strict=True))
        more = sum(n * glow.reaching_w * glow.left(minute - at) for at, n in fresh if at <= minute)
        return float(first + more)

    def change(minute: float, now: np.ndarray) -> list[float]:
        iron, food = now
        across = body.contact_w_k * (iron - food) / 1.8
        warms = 0.0 if food >= body.boil_f and across > 0 else across / body.food_j_k
        lost = body.loss_w_k * (iron - body.air_f) / 1.8
        return [(heat(minute) - lost - across) / body.iron_j_k * 108, warms * 108]

    for begin, end in itertools.pairwise(marks):
        if end > begin:
            found = solve_ivp(
                change, (begin, end), temps, method="DOP853", rtol=1e-7, atol=1e-6, max_step=1.0
            )
            temps = found.y[:, -1]
            temps[1] = min(temps[1], body.boil_f)
    return float(temps[0]), float(temps[1])


@given(ways, temps, sizes, loads, days, st.integers(20, 360).map(float))
@settings(max_examples=40, deadline=None)
def test_heat_in_is_heat_stored_and_lost(way, temp_f, size, load, day, last) -> None:
    """Over warming and bake together, fresh coals included: within 0.1 %."""
    stages, cooks = warmed_bake(way, temp_f, pot_of(size, load), day, last)
    for stage, (this, fresh) in zip(stages, cooks, strict=True):
        heat, stored, lost = _books(this, stage.draft.high_min, fresh)
        assert abs(heat - stored - lost) <= 1e-3 * heat


def _books(this: Cook, last: float, fresh: list[tuple[float, float]]) -> tuple[float, float, float]:
    """Heat in, stored, lost with what boils off [J], by Gauss and Legendre between the moments at which coals go on."""
    nodes, weights = np.polynomial.legendre.leggauss(24)
    body = this.body
    heat = lost = 0.0
    marks = [0.0, *(at for at, _ in fresh), last]
    for begin, end in itertools.pairwise(marks):
        pieces = max(int((end - begin) / 5), 1)
        for piece in range(pieces):
            low = begin + (end - begin) * piece / pieces
            half = (end - begin) / pieces / 2
            for node, weight in zip(nodes, weights, strict=True):
                state = after_fresh(this, low + half * (1 + node), fresh)
                heat += weight * half * 60 * state.heat_w
                lost += weight * half * 60 * _lost(state, this)
    end_state = after_fresh(this, last, fresh)
    stored = body.iron_j_k * (end_state.iron_f - this.start.iron_f) / 1.8
    stored += body.food_j_k * (end_state.food_f - this.start.food_f) / 1.8
    return heat, stored, lost


def _lost(state: State, this: Cook) -> float:
    body = this.body
    boils = body.food_j_k and state.food_f >= body.boil_f and state.iron_f >= body.boil_f
    steam = body.contact_w_k * (state.iron_f - body.boil_f) / 1.8 if boils else 0.0
    return body.loss_w_k * (state.iron_f - body.air_f) / 1.8 + steam
