from __future__ import annotations

import pytest

from rules import cautions
from rules.because import RULES, Ledger
from rules.circumstances import Day
from rules.dish import Dish
from rules.plan import Caution, Heat, Minutes, Pack, Stage
from rules.recipe import Family, Ingredient, Recipe
from tests.build import act, amount, bake, dish, heat, items, line, pack, recipe, step

FIRE = {"fire-restrictions", "carbon-monoxide", "hot-iron"}


def given(
    made: Recipe,
    *,
    of: Dish | None = None,
    over: Heat | None = None,
    packs: tuple[Pack, ...] = (),
    day: Day | None = None,
) -> dict[str, Caution]:
    """The cautions of a recipe by id."""
    kind = of or dish(made.family)
    told = cautions.cautions(made, items(made), None, kind, over, packs, day or Day(), Ledger())
    return {caution.id: caution for caution in told}


def stew(*lines: Ingredient, family: Family = "stew or braise") -> Recipe:
    return recipe(*lines, family=family)


SIMMER = Stage(kind="simmer", minutes=Minutes(low=60, high=90), under=12, starts_at_min=-90)


def test_every_coal_plan_warns_of_gas_fire_and_iron_first() -> None:
    told = given(stew(line("onion")), over=heat(SIMMER))
    assert set(list(told)[:3]) == FIRE
    assert "30 briquettes" in told["carbon-monoxide"].text


def test_without_coals_nobody_is_warned_of_them() -> None:
    assert not FIRE & set(given(stew(line("onion"), family="no cook")))


def test_when_charcoal_is_forbidden_the_plan_says_so() -> None:
    told = given(stew(line("onion")), day=Day(charcoal=False))
    assert "lights none" in told["fire-restrictions"].text
    assert "carbon-monoxide" not in told


@pytest.mark.parametrize(
    ("name", "caution"),
    [
        ("chicken thighs", "raw-poultry"),
        ("bacon", "raw-meat"),
        ("shrimp", "raw-fish"),
        ("eggs", "raw-egg"),
        ("red wine", "alcohol"),
        ("bourbon", "alcohol"),
        ("honey", "honey-infant"),
        ("honey mustard", "honey-infant"),
    ],
)
def test_a_caution_names_the_food_that_raised_it(name: str, caution: str) -> None:
    assert name in given(stew(line(name)))[caution].text


@pytest.mark.parametrize(
    ("name", "caution"),
    [
        ("vanilla extract", "alcohol"),
        ("red wine vinegar", "alcohol"),
        ("ginger beer", "alcohol"),
        ("honeydew", "honey-infant"),
        ("eggplant", "raw-egg"),
        ("egg noodles", "raw-egg"),
        ("cornstarch", "raw-flour"),
        ("chicken bouillon cube", "raw-poultry"),
    ],
)
def test_a_word_alone_raises_no_alarm(name: str, caution: str) -> None:
    assert caution not in given(stew(line(name)))


def test_an_optional_drink_counts() -> None:
    assert "alcohol" in given(stew(line("red wine", optional=True)))


def test_beer_without_alcohol_is_no_drink_of_that_kind() -> None:
    assert "alcohol" not in given(stew(line("beer", state=("non-alcoholic",))))
    assert "alcohol" not in given(stew(line("alcohol-free wine", food="wine")))


def test_the_alcohol_that_is_left_goes_by_the_shortest_cooking() -> None:
    assert "25 %" in given(stew(line("red wine")), over=heat(SIMMER))["alcohol"].text
    assert "70 %" in given(stew(line("red wine"), family="no cook"))["alcohol"].text


def test_spirits_are_kept_from_the_coals_and_wine_need_not() -> None:
    assert "catches fire" in given(stew(line("rum")))["alcohol"].text
    assert "catches fire" not in given(stew(line("red wine")))["alcohol"].text


def test_another_meat_to_take_instead_brings_its_own_temperature() -> None:
    told = given(stew(line("ground beef", alternatives=("ground turkey",))))
    assert "ground turkey is done only at 165 °F" in told["raw-meat"].text
    assert "raw-poultry" not in told


def test_meat_that_may_be_taken_instead_of_none_is_warned_of() -> None:
    assert "chicken breast" in given(stew(line("tofu", alternatives=("chicken breast",))))["raw-poultry"].text


@pytest.mark.parametrize("day", [Day(elevation_ft=2900), Day(elevation_ft=0)])
def test_low_ground_raises_no_caution(day: Day) -> None:
    assert "altitude" not in given(stew(line("onion")), day=day)


def test_high_ground_tells_what_changes() -> None:
    told = given(stew(line("flour"), family="batter bake"), day=Day(elevation_ft=7000))["altitude"]
    assert "7,000 feet" in told.text
    assert "14 °F lower" in told.text
    assert "1/4 to 1/2 teaspoon less" in told.text
    assert "teaspoon less" not in given(stew(line("onion")), day=Day(elevation_ft=7000))["altitude"].text


def test_water_drawn_at_camp_is_treated_and_longer_high_up() -> None:
    made = stew(line("water", amount(2, "cup")))
    drawn = (pack("water", 0, of=made, travels="camp"),)
    assert "1 minute," in given(made, packs=drawn)["water-treatment"].text
    assert "3 minutes," in given(made, packs=drawn, day=Day(elevation_ft=7000))["water-treatment"].text
    assert "water-treatment" not in given(made)


def test_food_that_travels_cold_because_it_spoils_has_two_hours() -> None:
    made = stew(line("butter"), line("onion"), line("flour"))
    assert "butter" in given(made)["two-hour"].text
    only_cut = stew(line("onion"), line("rice"))
    assert "two-hour" not in given(only_cut)
    cut = (pack("prepped", 0, of=only_cut, travels="cool", label="cut onion"),)
    assert "onion" in given(only_cut, packs=cut)["two-hour"].text


def test_leftovers_of_a_stew_are_cooled_and_bread_needs_no_such_word() -> None:
    assert "two hours" in given(stew(line("onion")))["leftovers"].text
    assert "one hour" in given(stew(line("onion")), day=Day(air_f=95))["leftovers"].text
    assert "leftovers" not in given(stew(line("flour"), family="yeast bread"))


def test_deep_fat_is_warned_of_and_a_shallow_pan_is_not() -> None:
    oil = line("vegetable oil", amount(1, "quart"))
    assert "deep-fry" in given(recipe(oil, steps=(step(act("fry", 0)),), family="pan fry or saute"))
    spoon = line("vegetable oil", amount(2, "tablespoon"))
    assert "deep-fry" not in given(recipe(spoon, steps=(step(act("fry", 0)),), family="pan fry or saute"))
    assert "deep-fry" in given(recipe(spoon, steps=(step(text="Deep-fry in batches."),), family="other"))


def test_jars_put_up_to_keep_and_ferments_are_made_at_home() -> None:
    canned = recipe(line("tomatoes"), steps=(step(text="Process the jars in a boiling-water canner."),))
    assert "botulism" in given(canned)["home-canning"].text
    opened = recipe(line("tomatoes", amount(1, "jar")), steps=(step(text="Open the jar and stir."),))
    assert "home-canning" not in given(opened)
    kraut = recipe(line("cabbage"), steps=(step(act("ferment", 0)),), family="preserve or ferment")
    assert "home-ferment" in given(kraut)
    loaf = recipe(line("flour"), steps=(step(act("ferment", 0)),), family="yeast bread")
    assert "home-ferment" not in given(loaf)


def test_raw_egg_that_nothing_cooks_asks_for_pasteurized_ones() -> None:
    assert "pasteurized" in given(stew(line("eggs"), family="no cook"))["raw-egg"].text
    assert "pasteurized" not in given(stew(line("eggs"), family="batter bake"))["raw-egg"].text


def test_dry_kidney_beans_are_warned_of() -> None:
    assert "30 minutes" in given(stew(line("kidney beans", state=("dried",))))["kidney-beans"].text


def test_wild_animals_are_kept_from_food_that_goes_to_camp() -> None:
    assert "wildlife" in given(stew(line("onion")))
    assert "wildlife" not in given(stew(line("cabbage"), family="preserve or ferment"))


def test_each_caution_is_a_rule_and_each_slot_is_filled() -> None:
    """Every sentence of the table is said once here, so that no slot stays empty."""
    ledger = Ledger()
    everything = recipe(
        *(
            line(name)
            for name in ("ground beef", "chicken thighs", "trout", "eggs", "flour", "honey", "rum", "milk")
        ),
        line("kidney beans", state=("dried",)),
        line("water", amount(1, "cup")),
        steps=(step(act("deep fry", 0), act("ferment", 0), text="Sterilize the jars."),),
        family="batter bake",
    )
    packs = (pack("water", 9, of=everything, travels="camp"),)
    day = Day(elevation_ft=7000)
    told = cautions.cautions(
        everything, items(everything), None, dish("deep fry"), heat(bake()), packs, day, ledger
    )
    assert all("{" not in caution.text for caution in told)
    assert {reason.rule for reason in ledger.reasons} <= set(RULES)
    silent = set(cautions.TEXTS) - {reason.rule.removeprefix("caution.") for reason in ledger.reasons}
    # These four are said of other dishes and days, in the tests above.
    assert silent == {
        "fire-restrictions.forbidden",
        "raw-meat.poultry",
        "raw-egg.uncooked",
        "altitude.leavened",
    }


@pytest.mark.parametrize(
    ("rule", "speaks", "silent"),
    [
        ("caution.alcohol.spirits", stew(line("rum")), stew(line("beer"))),
        (
            "caution.home-ferment",
            recipe(line("cabbage"), steps=(step(act("ferment", 0)),), family="preserve or ferment"),
            recipe(line("flour"), steps=(step(act("ferment", 0)),), family="yeast bread"),
        ),
        (
            "caution.raw-egg.uncooked",
            stew(line("eggs"), family="no cook"),
            stew(line("eggs"), family="griddle"),
        ),
        (
            "caution.raw-meat.poultry",
            stew(line("ground beef", alternatives=("ground turkey",))),
            stew(line("ground beef", alternatives=("ground pork",))),
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_rare_rule_speaks_where_it_applies_and_is_silent_at_a_near_miss(
    rule: str, speaks: Recipe, silent: Recipe
) -> None:
    def rules(made: Recipe) -> set[str]:
        ledger = Ledger()
        cautions.cautions(made, items(made), None, dish(made.family), None, (), Day(), ledger)
        return {reason.rule for reason in ledger.reasons}

    assert rule in rules(speaks)
    assert rule not in rules(silent)
