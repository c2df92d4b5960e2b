from __future__ import annotations

import pytest

from rules.circumstances import Day
from tests.build import amount, doing, kinds, line, mates, minutes, packed, reasons, recipe, step

CAKE = (
    line("flour", amount(2, "cup")),
    line("sugar", amount(1, "cup")),
    line("baking powder", amount(2, "teaspoon")),
    line("salt", amount(0.5, "teaspoon")),
    line("milk", amount(1, "cup")),
    line("eggs", amount(2)),
    line("raisins", amount(0.5, "cup")),
    line("walnuts", amount(0.5, "cup"), prep="chopped"),
    line("nutmeg", amount(0.25, "teaspoon")),
    line("active dry yeast", amount(1, "packet")),
    line("instant yeast", amount(1, "teaspoon")),
)
do = doing(*CAKE)
RIVER_CAKE = recipe(
    *CAKE[:9],
    steps=(
        step(do("mix", "flour", "baking powder", "salt", vessel="bowl")),
        step(do("beat", "eggs", "sugar", vessel="another bowl"), do("add", "milk")),
        step(do("pour", things=("egg mixture", "dry ingredients"), word="pour"), do("fold", "raisins")),
        step(do("bake", minutes=minutes(30)), do("top", "walnuts"), do("top", "nutmeg")),
    ),
)


def test_flour_leavener_and_salt_share_one_dry_mix() -> None:
    packs = packed(RIVER_CAKE, "batter bake")
    assert {"flour", "baking powder", "salt"} <= mates(packs, RIVER_CAKE, "flour")[0]


def test_sugar_beaten_with_the_eggs_rides_dry_all_the_same() -> None:
    packs = packed(RIVER_CAKE, "batter bake")
    assert kinds(packs, RIVER_CAKE)["sugar"] == {"dry mix"}
    assert "sugar" in mates(packs, RIVER_CAKE, "flour")[0]


def test_leavener_never_shares_a_bag_with_a_liquid() -> None:
    packs = packed(RIVER_CAKE, "batter bake")
    assert not mates(packs, RIVER_CAKE, "baking powder")[0] & {"milk", "eggs"}


def test_raisins_folded_in_ride_in_the_mix_and_nuts_on_top_in_a_bag_of_their_own() -> None:
    packs = packed(RIVER_CAKE, "batter bake")
    assert "raisins" in mates(packs, RIVER_CAKE, "flour")[0]
    assert mates(packs, RIVER_CAKE, "walnuts") == [{"walnuts"}]


def test_a_spice_for_the_top_is_a_bag_of_its_own() -> None:
    packs = packed(RIVER_CAKE, "batter bake")
    assert mates(packs, RIVER_CAKE, "nutmeg") == [{"nutmeg"}]


def test_two_parts_of_a_dish_are_two_bags() -> None:
    foods = (
        line("flour", amount(2, "cup"), component="cake"),
        line("baking soda", amount(1, "teaspoon"), component="cake"),
        line("rolled oats", amount(1, "cup"), component="topping"),
        line("brown sugar", amount(0.5, "cup"), component="topping"),
    )
    of = recipe(*foods)
    packs = packed(of, "batter bake")
    assert mates(packs, of, "flour") == [{"flour", "baking soda"}]
    assert "flour" not in mates(packs, of, "brown sugar")[0]


def test_a_heading_that_only_says_dry_is_no_part() -> None:
    foods = (
        line("flour", amount(2, "cup"), component="dry ingredients"),
        line("sugar", amount(1, "cup"), component="wet ingredients"),
        line("milk", amount(1, "cup"), component="wet ingredients"),
    )
    mix = doing(*foods)
    of = recipe(*foods, steps=(step(mix("mix", "flour", "sugar", "milk", vessel="bowl"), mix("bake")),))
    assert mates(packed(of, "batter bake"), of, "flour") == [{"flour", "sugar"}]


@pytest.mark.parametrize("hours", [None, 24.0])
def test_instant_yeast_may_ride_in_the_flour_for_two_days(hours: float | None) -> None:
    of = recipe(*CAKE, steps=(step(do("mix", "flour", "instant yeast", "salt", vessel="bowl")),))
    packs = packed(of, "yeast bread", Day(trip_hours=hours))
    assert "flour" in mates(packs, of, "instant yeast")[0]
    assert reasons(of, "yeast bread", "instant yeast", Day(trip_hours=hours)) == {"dry.instant-yeast"}


def test_on_a_longer_trip_instant_yeast_has_its_packet() -> None:
    of = recipe(*CAKE, steps=(step(do("mix", "flour", "instant yeast", "salt", vessel="bowl")),))
    packs = packed(of, "yeast bread", Day(trip_hours=72))
    assert kinds(packs, of)["instant yeast"] == {"pantry"}


def test_active_dry_yeast_always_has_a_packet_of_its_own() -> None:
    of = recipe(*CAKE, steps=(step(do("mix", "flour", "active dry yeast", "salt", vessel="bowl")),))
    packs = packed(of, "yeast bread")
    assert mates(packs, of, "active dry yeast") == [{"active dry yeast"}]


def test_seasonings_that_enter_together_make_one_bag_and_later_ones_another() -> None:
    foods = (
        line("oil", amount(1, "tablespoon")),
        line("onion", amount(1)),
        line("cumin", amount(1, "teaspoon")),
        line("paprika", amount(2, "teaspoon")),
        line("bay leaf", amount(1)),
        line("rice", amount(1, "cup")),
    )
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                cook("heat", "oil", vessel="pot"),
                cook("saute", "onion"),
                cook("add", "cumin"),
                cook("add", "paprika"),
            ),
            step(
                cook("simmer", minutes=minutes(10)),
                cook("add", "bay leaf", "rice"),
                cook("simmer", minutes=minutes(20)),
            ),
        ),
    )
    packs = packed(of, "stew or braise")
    assert mates(packs, of, "cumin") == [{"cumin", "paprika"}]
    assert mates(packs, of, "bay leaf") == [{"bay leaf"}]
    assert kinds(packs, of)["rice"] == {"pantry"}


def test_salt_and_pepper_without_a_measure_stay_on_the_shelf() -> None:
    foods = (line("beef", amount(1, "pound")), line("salt"), line("pepper"))
    cook = doing(*foods)
    of = recipe(*foods, steps=(step(cook("brown", "beef", vessel="pan"), cook("season", "salt", "pepper")),))
    packs = packed(of, "stew or braise")
    assert mates(packs, of, "salt") == [{"salt", "pepper"}]
    assert kinds(packs, of)["salt"] == {"pantry"}


def test_starch_stays_dry_beside_wet_things() -> None:
    foods = (
        line("soy sauce", amount(2, "tablespoon")),
        line("honey", amount(1, "tablespoon")),
        line("cornstarch", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(*foods, steps=(step(mix("mix", "soy sauce", "honey", "cornstarch", vessel="bowl")),))
    packs = packed(of, "pan fry or saute")
    assert kinds(packs, of)["cornstarch"] == {"dry mix"}
    assert mates(packs, of, "soy sauce") == [{"soy sauce", "honey"}]


def test_fat_cut_in_at_home_makes_the_mix_a_cold_one() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("butter", amount(0.5, "cup")),
        line("milk", amount(0.75, "cup")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods, steps=(step(mix("mix", "flour", vessel="bowl"), mix("cut in", "butter"), mix("mix", "milk")),)
    )
    packs = packed(of, "biscuit or quick bread dough")
    crumbs = next(pack for pack in packs if pack.kind == "dry mix")
    assert mates(packs, of, "butter") == [{"flour", "butter"}]
    assert crumbs.travels == "frozen"
    assert packed(of, "biscuit or quick bread dough", Day(freezer=False))[0].travels == "cool"


def test_a_spice_of_many_moments_is_one_bag_not_four() -> None:
    foods = (line("chicken", amount(1, "pound")), line("chili powder", amount(2, "tablespoon")))
    cook = doing(*foods)
    moments = [step(cook("add", ("chili powder", 0.25)), cook("fry", minutes=minutes(5))) for _ in range(4)]
    of = recipe(*foods, steps=(step(cook("brown", "chicken", vessel="pan")), *moments))
    assert len(mates(packed(of, "pan fry or saute"), of, "chili powder")) == 1


def test_the_rule_of_the_single_measured_food_is_registered() -> None:
    from rules.because import RULES

    assert RULES["dry.measured"].slots == {"food"}


def test_crumbs_of_fresh_bread_are_kept_cold_and_dried_ones_are_not() -> None:
    for foods, travels in (
        (line("breadcrumbs", amount(1, "cup"), state=("fresh",)), "cool"),
        (line("breadcrumbs", amount(1, "cup")), "shelf"),
    ):
        cook = doing(foods)
        of = recipe(foods, steps=(step(cook("top", "breadcrumbs"), cook("bake")),))
        (pack,) = packed(of, "casserole or layered bake")
        assert (pack.kind, pack.travels) == ("dry mix", travels)
        assert ("dry.fresh-crumbs" in reasons(of, "casserole or layered bake", "breadcrumbs")) == (
            travels == "cool"
        )
        assert pack.make_ahead is not None
        assert ("month" in pack.make_ahead) == (travels == "shelf")


def test_chocolate_that_is_melted_does_not_ride_in_the_flour() -> None:
    foods = (line("chocolate", amount(4, "ounce"), food="unsweetened chocolate"), *CAKE[:4])
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(cook("melt", "chocolate", vessel="bowl"), cook("add", "sugar")),
            step(cook("add", "flour", "baking powder", "salt"), cook("bake", minutes=minutes(30))),
        ),
    )
    packs = packed(of, "batter bake")
    assert mates(packs, of, "chocolate") == [{"chocolate"}]
    assert {"sugar", "flour"} <= mates(packs, of, "flour")[0]


def test_cold_fat_that_no_step_names_makes_its_mix_cold_all_the_same() -> None:
    foods = (*CAKE[:1], CAKE[2], CAKE[3], line("butter", amount(6, "tablespoon"), state=("cold",)))
    cook = doing(*foods)
    of = recipe(*foods, steps=(step(cook("mix", "flour", "baking powder", "salt"), cook("bake")),))
    packs = packed(of, "biscuit or quick bread dough")
    assert [pack.travels for pack in packs] == ["frozen"]


def test_a_nutmeg_for_the_top_rides_whole() -> None:
    foods = (line("custard", amount(1, "cup")), line("nutmeg", amount(1, "grating")))
    cook = doing(*foods)
    of = recipe(*foods, steps=(step(cook("grate", "nutmeg"), cook("bake")),))
    assert kinds(packed(of, "custard or pudding"), of)["nutmeg"] == {"pantry"}
    assert "pantry.whole-spice" in reasons(of, "custard or pudding", "nutmeg")


def test_sugar_that_feeds_the_yeast_has_a_bag_of_its_own() -> None:
    foods = (CAKE[0], CAKE[1], CAKE[3], CAKE[9], line("water", amount(1, "cup")))
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(cook("mix", "active dry yeast", "sugar", "water", vessel="bowl")),
            step(cook("add", "flour", "salt"), cook("knead"), cook("bake", minutes=minutes(30))),
        ),
    )
    packs = packed(of, "yeast bread", yeasted=True)
    assert mates(packs, of, "sugar") == [{"sugar"}]
    assert mates(packs, of, "flour") == [{"flour", "salt"}]
    assert "dry.yeast-sugar" in reasons(of, "yeast bread", "sugar", yeasted=True)


def test_a_bay_leaf_for_the_broth_is_no_part_of_the_roux() -> None:
    foods = (
        line("butter", amount(3, "tablespoon")),
        line("flour", amount(3, "tablespoon")),
        line("broth", amount(4, "cup")),
        line("bay leaf", amount(1)),
        line("paprika", amount(1, "teaspoon")),
    )
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(cook("fry", "butter", vessel="pot"), cook("add", "flour", "paprika")),
            step(cook("add", "broth", "bay leaf"), cook("simmer", minutes=minutes(20))),
        ),
    )
    packs = packed(of, "soup")
    assert mates(packs, of, "flour") == [{"flour", "paprika"}]
    assert mates(packs, of, "bay leaf") == [{"bay leaf"}]
