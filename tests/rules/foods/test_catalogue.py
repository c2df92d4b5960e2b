from __future__ import annotations

import pytest

from rules.foods import Catalogue, Food, catalogue


def found(name: str, **line: object) -> tuple[str | None, str]:
    match = catalogue().find(name, **line)  # type: ignore[arg-type]
    return (match.food.name if match.food else None, match.how)


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("butter", "butter"),
        ("Butter", "butter"),
        ("tomatoes", "tomato"),
        ("crème fraîche", "creme fraiche"),
        ("all purpose flour", "all-purpose flour"),
        ("flour, bread", "bread flour"),
        ("leaves of basil", "basil"),
        ("juice of lemons", "lemon juice"),
    ],
)
def test_a_name_is_found_in_any_case_number_and_order(name: str, food: str) -> None:
    assert found(name)[0] == food


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("aubergine", "eggplant"),
        ("courgette", "zucchini"),
        ("caster sugar", "sugar"),
        ("plain flour", "all-purpose flour"),
        ("mince", "ground beef"),
        ("coriander leaves", "cilantro"),
        ("bicarbonate of soda", "baking soda"),
        ("double cream", "heavy cream"),
        ("rapeseed oil", "canola oil"),
        ("passata", "crushed tomatoes"),
        ("stock cube", "bouillon cube"),
        ("spring onions", "green onion"),
        ("gammon", "gammon"),
        ("swede", "rutabaga"),
        ("icing sugar", "powdered sugar"),
        ("cornflour", "cornstarch"),
        ("prawns", "shrimp"),
        ("rocket", "arugula"),
        ("garbanzo beans", "chickpea, canned"),
        ("soya mince", "vegan mince"),
    ],
)
def test_british_and_other_names_are_known(name: str, food: str) -> None:
    assert found(name)[0] == food


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("buttermilk", "buttermilk"),
        ("butternut squash", "butternut squash"),
        ("peanut butter", "peanut butter"),
        ("cream of tartar", "cream of tartar"),
        ("coconut milk", "coconut milk"),
        ("almond milk", "almond milk"),
        ("goat cheese", "goat cheese"),
        ("eggplant", "eggplant"),
        ("ginger ale", "lemon-lime soda"),
        ("baking powder", "baking powder"),
        ("cheddar cheese soup", "condensed cheddar cheese soup"),
        ("chicken stock", "chicken broth"),
        ("lemon pepper", "lemon pepper"),
        ("rice vinegar", "rice vinegar"),
        ("corn syrup", "corn syrup"),
        ("egg noodles", "egg noodles"),
        ("za'atar spice blend", "zaatar"),
    ],
)
def test_the_most_specific_entry_wins(name: str, food: str) -> None:
    assert found(name)[0] == food


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("broccli", "broccoli"),
        ("parsely", "parsley"),
        ("mayonnese", "mayonnaise"),
        ("mozarella", "mozzarella cheese"),
        ("porkchops", "pork chop"),
        ("rasberries", "raspberry"),
        ("tumeric", "turmeric"),
        ("worchestershire sauce", "worcestershire sauce"),
        ("condenced milk", "sweetened condensed milk"),
    ],
)
def test_a_misspelt_name_is_found(name: str, food: str) -> None:
    assert found(name)[0] == food


@pytest.mark.parametrize(
    "name",
    [
        "whatever you like",
        "batter",
        "baking sofa",
        "love",
        "parchment paper",
        "wooden skewers",
        "charcoal",
        "foil",
        "",
    ],
)
def test_what_is_no_food_stays_unknown(name: str) -> None:
    assert found(name) == (None, "none")


@pytest.mark.parametrize(
    "name",
    [
        "pistachio butter",
        "vegan cream cheese",
        "oat butter",
        "dairy-free chocolate",
        "fish cakes",
        "egg salad",
    ],
)
def test_a_food_that_a_word_in_front_makes_another_is_not_guessed(name: str) -> None:
    """A wrong guess here would name the wrong allergen."""
    assert found(name) == (None, "none")


@pytest.mark.parametrize(
    ("name", "line", "food"),
    [
        ("thyme", {"unit": "teaspoon"}, "dried thyme"),
        ("thyme", {"unit": "twig"}, "thyme"),
        ("thyme", {"state": ("dried",)}, "dried thyme"),
        ("thyme", {"unit": "teaspoon", "prep": "chopped"}, "thyme"),
        ("oregano", {"unit": "teaspoon"}, "dried oregano"),
        ("oregano", {"state": ("fresh",)}, "fresh oregano"),
        ("corn", {"unit": "can"}, "corn, canned"),
        ("corn", {"unit": "cup"}, "corn, frozen"),
        ("tomatoes", {"unit": "can"}, "tomato, canned"),
        ("tomatoes", {"state": ("canned",)}, "tomato, canned"),
        ("chickpeas", {"prep": "drained and rinsed"}, "chickpea, canned"),
        ("kidney beans", {"state": ("dried",)}, "kidney bean, dry"),
        ("kidney beans", {"prep": "soaked overnight and drained"}, "kidney bean, dry"),
        ("ginger", {"prep": "grated"}, "fresh ginger"),
        ("ginger", {"unit": "knob"}, "fresh ginger"),
        ("ginger", {"unit": "teaspoon"}, "ginger"),
        ("cinnamon", {"unit": "stick"}, "cinnamon stick"),
        ("cinnamon", {"unit": "teaspoon"}, "cinnamon"),
        ("spinach", {"state": ("frozen",)}, "spinach, frozen"),
        ("pepper", {"state": ("red",)}, "bell pepper"),
        ("chicken", {"state": ("whole",)}, "whole chicken"),
        ("rice", {"state": ("cooked",)}, "cooked rice"),
        ("peanut butter", {"unit": "cup"}, "peanut butter"),
    ],
)
def test_the_other_words_of_the_line_decide_between_two_foods(
    name: str, line: dict[str, object], food: str
) -> None:
    assert found(name, **line)[0] == food


def test_the_match_says_how_sure_it_is() -> None:
    hows = {name: found(name)[1] for name in ("butter", "oleo", "free-range pork belly strips", "broccli")}
    assert hows == {
        "butter": "name",
        "oleo": "alias",
        "free-range pork belly strips": "phrase",
        "broccli": "slip",
    }
    assert found("kalamon olives") == ("olive", "head")


def test_no_name_means_two_foods() -> None:
    foods = tuple(catalogue())
    names = [name for food in foods for name in (food.name, *food.aliases)]
    assert len(names) == len(set(names))


def test_every_name_and_alias_finds_its_own_food() -> None:
    astray = {
        (name, catalogue().find(name).food)
        for food in catalogue()
        for name in (food.name, *food.aliases)
        if catalogue().find(name).food is not food
    }
    assert not astray


def test_an_unknown_key_is_no_food() -> None:
    with pytest.raises(KeyError):
        catalogue().get("unicorn")
    assert not catalogue().knows("unicorn")
    assert catalogue().knows("Tomatoes")


def test_a_catalogue_can_be_made_of_any_foods() -> None:
    pea = Food(
        file="x",
        line=1,
        basis="from memory",
        source="x",
        name="pea",
        group="vegetable",
        form="whole",
        keeps="chilled",
    )
    small = Catalogue([pea])
    assert (len(small), small.names()) == (1, ("pea",))
    assert small.find("peas").food is pea
    assert small.find("pear").food is None
