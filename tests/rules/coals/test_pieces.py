"""What a method says of heat, spell by spell."""

from __future__ import annotations

from rules.coals.pieces import pieces
from rules.recipe import Duration
from tests.rules.coals.making import CAKE, STEW, action, items_of, recipe, step

BEANS = {"beans": (2, "cup"), "onion": (1, None), "chicken thigh": (4, None)}


def of(*steps, foods=BEANS, **more):
    made = recipe(foods, *steps, **more)
    return pieces(made, items_of(made))


def test_every_fire_of_a_stew_is_a_spell_in_order() -> None:
    found = pieces(STEW, items_of(STEW))
    assert [piece.kind for piece in found] == ["heat", "brown", "fry", "boil", "simmer"]
    assert found[1].has_flesh
    assert (found[4].low_min, found[4].high_min) == (120, 150)


def test_an_oven_spell_takes_the_preheated_temperature() -> None:
    bake = pieces(CAKE, items_of(CAKE))[-1]
    assert (bake.kind, bake.temp_f) == ("bake", 350)


def test_a_bake_turned_down_afterwards_keeps_the_first_heat_for_its_first_spell() -> None:
    first, second = of(
        step(action("preheat", vessel="oven", temp_f=475.0), temps=(475.0,)),
        step(
            action("bake", "bake", minutes=(15, 15)),
            text="Bake 15 minutes, then reduce the oven to 425.",
            temps=(425.0,),
        ),
        step(action("bake", "bake", minutes=(25, 30))),
    )
    assert (first.temp_f, second.temp_f) == (475, 425)


def test_what_is_optional_is_no_spell() -> None:
    assert of(step(action("bake", "bake", optional=True))) == ()


def test_a_time_names_the_kind_that_a_cook_leaves_open() -> None:
    (piece,) = of(step(action("fry", "cook", minutes=(20, 30), what="simmer")))
    assert piece.kind == "simmer"


def test_a_loose_time_joins_the_spell_before_it() -> None:
    """ "Simmer." and in the next line "start checking after about two hours"."""
    later = Duration(what="other", low_min=120, high_min=120)
    (piece,) = of(step(action("simmer")), step(action("other", "start checking"), times=[later]))
    assert piece.low_min == 120


def test_a_stirring_that_is_timed_as_frying_is_a_spell() -> None:
    (piece,) = of(step(action("mix", "stir", 1, minutes=(5, 10), what="fry")))
    assert (piece.kind, piece.high_min) == ("fry", 10)


def test_a_pan_left_on_a_low_flame_has_the_time_of_the_next_step() -> None:
    hour = Duration(what="other", low_min=60, high_min=60)
    (piece,) = of(step(action("add", "put", 2, heat="low")), step(action("turn", "turn"), times=[hour]))
    assert (piece.kind, piece.heat, piece.low_min) == ("heat", "low", 60)


def test_kneading_takes_no_coals() -> None:
    assert of(step(action("knead", minutes=(10, 10))), foods={"flour": (4, "cup")}) == ()


def test_a_sentence_over_two_lines_is_timed_once() -> None:
    again = Duration(what="bake", low_min=14, high_min=16)
    found = of(step(action("bake", minutes=(14, 16))), step(times=[again]))
    assert len(found) == 1


def test_a_flame_is_no_oven() -> None:
    (piece,) = of(step(action("bake", "cook", 1, minutes=(5, 6), heat="medium")))
    assert piece.kind == "fry"


def test_what_is_said_to_bake_at_an_ovens_heat_is_the_ovens() -> None:
    (piece,) = of(step(action("fry", "bake", minutes=(45, 55)), temps=(350.0,)))
    assert (piece.kind, piece.temp_f) == ("bake", 350)


def test_raw_meat_that_a_step_says_to_cook_is_cooked() -> None:
    (piece,) = of(
        step(action("chop", "dice", 2), text="Dice the chicken and pan cook with oil until fully cooked.")
    )
    assert (piece.kind, piece.has_flesh) == ("fry", True)
    assert of(step(action("add", "add", 2), text="Add the cooked chicken.")) == ()


def test_a_rise_set_the_night_before_is_none_of_the_fires() -> None:
    assert of(step(action("rise", "rise", minutes=(480, 600), ahead=True))) == ()


def test_minutes_a_side_count_for_both() -> None:
    (piece,) = of(step(action("brown", "sear", 2, minutes=(4, 4)), text="Sear 4 minutes a side."))
    assert piece.low_min == 8
    (piece,) = of(
        step(action("brown", "brown", 2, minutes=(15, 15)), text="Brown on every side, 15 minutes.")
    )
    assert piece.low_min == 15


def test_an_oven_turned_down_is_no_sauce() -> None:
    kinds = [
        piece.kind
        for piece in of(
            step(action("bake", minutes=(15, 15)), action("reduce"), action("bake", minutes=(40, 45)))
        )
    ]
    assert kinds == ["bake", "bake"]


def test_a_loose_time_stands_where_the_text_has_it() -> None:
    """ "Cook the onion 8 minutes. Add peppers, 5 minutes. Simmer 30." """
    kinds = [
        (piece.kind, piece.low_min)
        for piece in of(
            step(
                action("fry", "cook", 1, minutes=(8, 8)),
                action("add", "add", minutes=(5, 5), what="fry"),
                action("simmer", minutes=(30, 40)),
            )
        )
    ]
    assert kinds == [("fry", 8), ("fry", 5), ("simmer", 30)]


def test_a_low_flame_boils_nothing() -> None:
    *_, cook = of(step(action("other", "turn", heat="low"), action("boil", "cook", minutes=(20, 25))))
    assert cook.kind == "simmer"


def test_a_time_for_each_batch_is_spent_as_often_as_there_are_batches() -> None:
    def minutes(text: str) -> float | None:
        made = recipe(
            {"beef chuck": (3, "pound")},
            step(action("brown", "brown", 0, minutes=(6, 6), what="fry"), text=text),
        )
        return pieces(made, items_of(made))[0].low_min

    assert minutes("Brown the beef in three batches, about 6 minutes a batch.") == 18
    assert minutes("Brown the beef in 2 batches, 6 minutes per batch.") == 12
    assert minutes("Brown the beef in batches, 6 minutes for each batch.") == 18
    assert minutes("Brown the beef for 6 minutes, in batches if it must be.") == 6


def test_a_flame_that_is_turned_down_is_high_no_longer() -> None:
    made = recipe(
        {"beef chuck": (3, "pound"), "onion": (2, None)},
        step(action("brown", "brown", 0, heat="high"), text="Brown the beef over high heat."),
        step(action("saute", "cook", 1, minutes=(8, 8)), text="Turn the heat down and cook the onions."),
    )
    assert [piece.heat for piece in pieces(made, items_of(made))] == ["high", "medium"]
