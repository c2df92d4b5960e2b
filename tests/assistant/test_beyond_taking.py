"""What the pieces of a sentence make of a trip."""

from __future__ import annotations

from typing import Any

from assistant.chat.beyond.cookbook import Dish
from assistant.chat.beyond.draft import Draft
from assistant.chat.beyond.parts import Piece
from assistant.chat.beyond.taking import taken_over, usual
from rules.circumstances import Day, PotOwned, Swap
from rules.recipe import Recipe
from rules.trip.model import Cooler, Person

STEW = Dish("stew", Recipe(title="Stew of Ours"), Day(swaps=(Swap(food="beer"),), temp_f=325))


def take(draft: Draft, *told: tuple[str, dict[str, Any]]) -> tuple[Draft, list[str]]:
    pieces = [Piece(what, says, ((0, 1),)) for what, says in told]
    return taken_over(draft, pieces, lambda name: STEW if name == "stew" else None, lambda: ["stew", "chili"])


def meal(
    day: str = "friday", word: str = "supper", dish: str = "stew", **more: object
) -> tuple[str, dict[str, Any]]:
    return "meal", {"day": day, "meal": word, "clock": "18:30", "dish": dish, **more}


def test_a_meal_takes_the_recipe_with_what_was_settled_about_it() -> None:
    draft, told = take(Draft(), meal())
    (one,) = draft.meals
    assert (one.name, one.clock, one.recipe) == ("Friday supper", "18:30", STEW.recipe)
    assert (one.swaps, one.temp_f) == (STEW.day.swaps, 325)
    assert told == [
        "Friday supper at 18:30: Stew of Ours.",
        '1 dish so far; "plan the trip" joins them up.',
    ]


def test_an_unknown_dish_changes_nothing_and_names_what_is_known() -> None:
    draft, told = take(Draft(), meal(dish="sushi"))
    assert draft.meals == ()
    assert told[0].startswith('Friday supper: I know no recipe called "sushi".')
    assert told[0].endswith("such as stew or chili.")


def test_the_same_dish_twice_at_a_meal_is_one() -> None:
    draft, _ = take(Draft(), meal())
    again, told = take(draft, meal())
    assert again == draft
    assert "stands there already" in told[0]


def test_instead_takes_the_place_of_all_at_that_meal_under_any_of_its_names() -> None:
    draft, _ = take(Draft(), meal(word="dinner"), meal(day="saturday"))
    draft, _ = take(draft, meal(word="supper", instead=True))
    assert [(one.day, one.meal) for one in draft.meals] == [("saturday", "supper"), ("friday", "supper")]


def test_a_meal_is_moved_and_dropped_by_day_and_name() -> None:
    draft, _ = take(Draft(), meal(), meal(word="lunch"), meal(day="saturday"))
    moved, told = take(draft, ("move", {"day": "friday", "meal": "dinner", "clock": "20:00"}))
    assert [one.clock for one in moved.meals] == ["20:00", "18:30", "18:30"]
    assert told == ["Friday dinner is at 20:00 now."]
    dropped, _ = take(draft, ("drop", {"day": "friday"}))
    assert [one.day for one in dropped.meals] == ["saturday"]
    same, told = take(draft, ("drop", {"day": "monday"}))
    assert same == draft
    assert told == ["There is no meal on Monday."]


def test_a_person_is_known_once() -> None:
    draft, _ = take(Draft(), ("person", {"name": "Ada", "avoids": ["milk"]}))
    draft, told = take(draft, ("person", {"name": "Ada", "avoids": ["milk", "egg"]}))
    assert draft.persons == (Person(name="Ada", avoids=("milk", "egg")),)
    assert told == ["Ada: no milk or egg."]


def test_pots_coolers_and_the_road_are_answered_in_words() -> None:
    draft, told = take(
        Draft(),
        ("pots", {"pot": PotOwned(diameter_in=12, count=2)}),
        ("pots", {"pot": PotOwned(diameter_in=10, depth="deep")}),
        ("coolers", {"coolers": [Cooler(quarts=48), Cooler(quarts=25)]}),
        ("drive", {"drive_hours": 3.5}),
        ("leave", {"leave_day": "friday", "leave_clock": "09:00"}),
    )
    assert told == [
        "The drive takes 3.5 hours.",
        "You leave Friday at 09:00.",
        "Pots: two 12-inch pots and a deep 10-inch pot.",
        "Coolers: 48 quarts and 25 quarts.",
    ]
    assert (draft.drive_hours, draft.leave_day, len(draft.coolers)) == (3.5, "friday", 2)


def test_supper_dinner_and_evening_are_one_meal() -> None:
    assert usual("supper") == usual("dinner") == usual("evening") != usual("lunch")
