"""Whatever the words: look-up never fails, is the same twice, and weights grow with amounts."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.foods import catalogue, grams
from rules.foods.names import plain
from rules.recipe import Amount

FOODS = tuple(catalogue())
UNITS = (
    None,
    "cup",
    "tablespoon",
    "gram",
    "ounce",
    "can",
    "clove",
    "slice",
    "bunch",
    "pinch",
    "package",
    "zorkmid",
)
NAMES = tuple(food.name for food in FOODS)
letters = st.text(alphabet="abcdefghijklmnopqrstuvwxyz ,-éñ’", max_size=40)


@settings(max_examples=200, deadline=None)
@given(letters, st.sampled_from(UNITS), st.lists(letters, max_size=2), st.none() | letters)
def test_no_name_makes_the_look_up_fail(
    name: str, unit: str | None, state: list[str], prep: str | None
) -> None:
    found = catalogue().find(name, unit=unit, state=state, prep=prep)
    assert (found.food is None) == (found.how == "none")
    assert found == catalogue().find(name, unit=unit, state=state, prep=prep)


@given(st.text(max_size=200))
def test_plain_names_are_plain(name: str) -> None:
    said = plain(name)
    assert plain(said) == said
    assert said == " ".join(said.split())


@given(
    st.sampled_from(NAMES), st.sampled_from(("large", "ripe", "chopped", "fresh", "organic", "your favorite"))
)
def test_a_word_of_state_in_front_never_finds_a_food_of_another_hazard(name: str, word: str) -> None:
    """Fresh ginger is another food than ginger, but raw meat never hides behind a word."""
    food = catalogue().find(f"{word} {name}").food
    assert food is not None
    assert not food.is_raw_meat or catalogue().get(name).is_raw_meat


@settings(max_examples=300)
@given(st.sampled_from(FOODS), st.sampled_from(UNITS), st.floats(0.1, 50), st.floats(1, 4))
def test_weight_grows_in_step_with_the_amount(
    food: object, unit: str | None, value: float, factor: float
) -> None:
    once = grams(Amount(low=value, high=value, unit=unit), food)  # type: ignore[arg-type]
    more = grams(Amount(low=value * factor, high=value * factor, unit=unit), food)  # type: ignore[arg-type]
    assert (once is None) == (more is None)
    if once is not None and more is not None:
        assert once > 0
        assert abs(more - once * factor) <= 1e-6 * more
