"""What holds for any food and any cooler."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from rules.cold.composition import Composition, conductivity, density, mixture, specific_heat
from rules.cold.cooler import budget, cold_hours
from rules.cold.freezing import enthalpy, freezing_point, ice_fraction
from rules.cold.slab import thaw_hours

SHARES = st.floats(0.0, 1.0)


@st.composite
def foods(draw: st.DrawFn) -> Composition:
    """A moist food: at least a fifth of it is water."""
    parts = [0.25 + draw(SHARES), *(draw(SHARES) * most for most in (0.5, 0.5, 0.5, 0.05, 0.5))]
    total = sum(parts)
    water, protein, fat, carbohydrate, ash, fibre = (part / total for part in parts)
    sugars = carbohydrate * draw(SHARES)
    particles = sugars / 0.25 + 0.2
    return Composition(
        water=water,
        protein=protein,
        fat=fat,
        carbohydrate=carbohydrate,
        ash=ash,
        fibre=fibre,
        sugars=sugars,
        particles=particles,
    )


@given(food=foods(), more=st.floats(0.001, 2.0))
def test_more_sugar_never_raises_the_freezing_point(food: Composition, more: float) -> None:
    sugar = Composition(carbohydrate=1.0, sugars=1.0, particles=1000 / 342.3)
    sweeter = mixture(((food, 1.0), (sugar, more)))
    assert freezing_point(sweeter) <= freezing_point(food) + 1e-9


@given(food=foods(), warmer=st.floats(-39, 40), colder=st.floats(-39, 40))
def test_a_warmer_food_holds_more_heat_and_no_more_ice(
    food: Composition, warmer: float, colder: float
) -> None:
    low, high = sorted((warmer, colder))
    assert enthalpy(food, low) <= enthalpy(food, high) + 1e-6
    assert ice_fraction(food, low) >= ice_fraction(food, high) - 1e-12


@given(food=foods(), temp_c=st.floats(-30, 60))
def test_properties_lie_between_those_of_the_components(food: Composition, temp_c: float) -> None:
    assert (
        1.0 < specific_heat(food, temp_c) < 6.0
    )  # water below freezing, by the same polynomial, rises so far
    assert 850 < density(food, temp_c) < 2450
    assert 0.1 < conductivity(food, temp_c) < 0.75


@given(ice=st.floats(0, 40), more=st.floats(0, 40), air_c=st.floats(3, 45), quarts=st.floats(4, 400))
def test_more_ice_never_shortens_the_cold(ice: float, more: float, air_c: float, quarts: float) -> None:
    few = cold_hours(ice_kg=ice, quarts=quarts, air_c=air_c, warm_kj=300, bags_kj=100)
    assert cold_hours(ice_kg=ice + more, quarts=quarts, air_c=air_c, warm_kj=300, bags_kj=100) >= few


@given(hours=st.floats(0, 300), longer=st.floats(0, 100), air_c=st.floats(-20, 45), hotter=st.floats(0, 20))
def test_a_longer_or_hotter_trip_never_needs_less_ice(
    hours: float, longer: float, air_c: float, hotter: float
) -> None:
    def ice(hours: float, air_c: float) -> float:
        return budget(quarts=48, air_c=air_c, hours=hours, warm_kj=50, bags_kj=200).ice_kg

    assert ice(hours + longer, air_c + hotter) >= ice(hours, air_c) - 1e-9


@given(food=foods(), thickness=st.floats(0.01, 0.07), more=st.floats(0, 0.05), around=st.floats(1, 30))
def test_a_thicker_bag_never_thaws_sooner(
    food: Composition, thickness: float, more: float, around: float
) -> None:
    def hours(thick: float) -> float:
        return thaw_hours(food, thickness=thick, around_c=around, h=8, from_c=-18, share=0.85)

    assert hours(thickness + more) >= hours(thickness)


@given(
    quarts=st.floats(4, 400),
    air_c=st.floats(-20, 45),
    hours=st.floats(0, 336),
    warm=st.floats(0, 5000),
    bags=st.floats(0, 5000),
)
def test_the_energy_balance_closes(
    quarts: float, air_c: float, hours: float, warm: float, bags: float
) -> None:
    spent = budget(quarts=quarts, air_c=air_c, hours=hours, warm_kj=warm, bags_kj=bags)
    assert abs(spent.heat - spent.taken) <= 1e-3 * max(spent.heat, 1e-9)
