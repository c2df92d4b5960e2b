"""Steps read closely: what each deed takes, by which name, with which share; times, heat, vessels."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.recipe import Action, Recipe

LIST = """Test

Ingredients
{}

Method
1. {}
"""


def recipe(foods: str, *steps: str) -> Recipe:
    items = "\n".join(f"- {food.strip()}" for food in foods.split(";"))
    return read(LIST.format(items, "\n1. ".join(steps)))


def actions(read_: Recipe) -> list[Action]:
    return [action for step in read_.steps for action in step.actions]


def takings(read_: Recipe) -> list[tuple[str, dict[str, float]]]:
    names = [ingredient.name for ingredient in read_.ingredients]
    return [(a.does, {names[u.ingredient]: u.share for u in a.uses}) for a in actions(read_)]


@pytest.mark.parametrize(
    ("foods", "said", "name"),
    [
        ("2 cups all-purpose flour", "the flour", "all-purpose flour"),
        ("4 chicken thighs", "the chicken", "chicken thighs"),
        ("1 cup cheddar cheese, grated", "the cheddar", "cheddar cheese"),
        ("3 tomatoes", "the tomato", "tomatoes"),
        ("2 lb chuck roast", "the beef", "chuck roast"),
        ("1 lb macaroni", "the pasta", "macaroni"),
        ("4 cups chicken broth", "the stock", "chicken broth"),
        ("1/2 cup unsalted butter", "the melted butter", "unsalted butter"),
        ("1 eggplant (aubergine)", "the aubergine", "eggplant"),
        ("1 lemon", "the lemon juice", "lemon"),
        ("2 cups rolled oats", "the oats", "rolled oats"),
    ],
)
def test_a_food_is_known_by_any_usual_name(foods: str, said: str, name: str) -> None:
    found = recipe(foods, f"Add {said} to the pot.")
    assert takings(found) == [("add", {name: 1.0})]
    assert all(ingredient.from_ == "list" for ingredient in found.ingredients)


@pytest.mark.parametrize(
    ("foods", "said"),
    [
        ("2 cups chicken stock", "the chicken"),
        ("1 tsp cayenne pepper", "salt and pepper"),
        ("1 cup peanut butter", "the butter"),
    ],
)
def test_another_food_with_a_like_name_is_not_taken(foods: str, said: str) -> None:
    found = recipe(foods, f"Add {said}.")
    assert 0 not in {use.ingredient for action in actions(found) for use in action.uses}


GROUPS = (
    "2 cups flour; 1 tsp salt; 2 tsp baking powder; 1 cup milk; 2 eggs; 1 tsp paprika; 2 carrots; 1 onion"
)


@pytest.mark.parametrize(
    ("said", "names"),
    [
        ("the dry ingredients", {"flour", "salt", "baking powder", "paprika"}),
        ("the wet ingredients", {"milk", "eggs"}),
        ("the vegetables", {"carrots", "onion"}),
        (
            "all ingredients",
            {"flour", "salt", "baking powder", "milk", "eggs", "paprika", "carrots", "onion"},
        ),
        (
            "all ingredients except the eggs",
            {"flour", "salt", "baking powder", "milk", "paprika", "carrots", "onion"},
        ),
    ],
)
def test_a_group_means_its_members(said: str, names: set[str]) -> None:
    assert set(takings(recipe(GROUPS, f"Mix {said}."))[0][1]) == names


def test_the_remaining_ones_are_those_not_taken_yet() -> None:
    found = takings(recipe(GROUPS, "Mix the flour, salt and milk.", "Add the remaining ingredients."))
    assert set(found[1][1]) == {"baking powder", "eggs", "paprika", "carrots", "onion"}


@pytest.mark.parametrize(
    ("foods", "first", "second", "shares"),
    [
        ("2 cups sugar", "Mix half the sugar.", "Add the remaining sugar.", (0.5, 1.0)),
        ("2 tbsp butter", "Melt 1 tbsp butter.", "Spread with the rest of the butter.", (0.5, 1.0)),
        ("3 eggs", "Beat one egg.", "Add the other eggs.", (0.3333, 1.0)),
        ("1 cup cheese", "Add a third of the cheese.", "Top with the rest of the cheese.", (0.3333, 1.0)),
        ("1 cup cheese", "Add some of the cheese.", "Top with the remaining cheese.", (0.5, 1.0)),
        ("olive oil", "Heat oil in a pan.", "Dress with oil and mix with oil.", (0.3333, 0.3333)),
    ],
)
def test_shares_are_read_where_the_text_divides(
    foods: str, first: str, second: str, shares: tuple[float, float]
) -> None:
    found = recipe(foods, first, second)
    told = [use.share for action in actions(found) for use in action.uses]
    assert tuple(told[:2]) == shares


def test_handwork_takes_nothing_away() -> None:
    found = recipe("2 onions; 1 tbsp oil", "Chop the onions.", "Heat the oil in a pan and fry the onions.")
    assert takings(found) == [("chop", {"onions": 1.0}), ("heat", {"oil": 1.0}), ("fry", {"onions": 1.0})]


def test_what_is_spoken_of_later_is_a_thing() -> None:
    found = recipe("2 onions; 1 cup stock", "Fry the onions.", "Pour the stock over the onions.")
    assert takings(found)[1] == ("pour", {"stock": 1.0})
    assert actions(found)[1].things == ("onion",)


@pytest.mark.parametrize(
    ("steps", "deed"),
    [
        (["Chop the onions and add to the pot."], "add"),
        (["Peel the onions and put them in a pot."], "add"),
        (["Chop the onions. Season with salt."], "season"),
        (["Finely chop the onions.", "Fry them in the oil."], "fry"),
    ],
)
def test_them_and_nothing_mean_what_was_just_cut(steps: list[str], deed: str) -> None:
    found = takings(recipe("2 onions; 1 tbsp oil; salt", *steps))
    assert "onions" in dict(found)[deed]


def test_all_three_are_all_that_were_cut() -> None:
    found = takings(
        recipe(
            "1 cucumber; 1 bunch dill; 1 cup yogurt",
            "Grate the cucumber. Chop the dill.",
            "Add both to the yogurt.",
        )
    )
    assert set(found[-1][1]) == {"cucumber", "dill", "yogurt"}


def test_a_part_named_as_a_whole_takes_all_of_it() -> None:
    found = read(
        "Buns\n\n## Ingredients\n- 2 cups flour\n\n### Glaze\n- 1 cup sugar\n- 2 tbsp milk\n\n"
        "## Method\n1. Bake the flour.\n2. Stir the glaze together and brush it on.\n"
    )
    assert takings(found)[1] == ("mix", {"sugar": 1.0, "milk": 1.0})


def test_one_name_in_two_parts_means_the_one_of_this_part() -> None:
    found = read(
        "Pie\n\n## Ingredients\n\n### Dough\n- 1 cup sugar\n\n### Filling\n- 2 cups sugar\n\n"
        "## Method\n\n### Filling\n1. Mix the sugar.\n"
    )
    assert [found.ingredients[use.ingredient].component for use in actions(found)[0].uses] == ["filling"]


def test_the_salt_in_salt_the_water_is_taken() -> None:
    found = takings(recipe("salt; 1 lb pasta", "Bring a pot of water to a boil and salt the water."))
    assert found == [("boil", {"water": 1.0}), ("season", {"salt": 1.0})]


def test_asides_and_what_is_forbidden_take_nothing() -> None:
    found = takings(recipe("2 onions; 1 tsp salt", "Stir until the onions are soft.", "Do not add the salt."))
    assert all(not uses for _, uses in found)


@pytest.mark.parametrize(
    ("step", "names"),
    [
        ("Cook the beef in a little oil.", ["oil"]),
        ("Boil the beef in 2 cups of water.", ["water"]),
        ("Season the beef with salt and pepper.", ["salt", "pepper"]),
        ("Roll the beef in flour.", ["flour"]),
        ("Rinse the beef under cold water.", []),
        ("Fry the beef until the stew smells of garlic.", []),
        ("Mix to the thickness of cream.", []),
        ("Brown the beef. It tastes like duck.", []),
    ],
)
def test_foods_that_only_the_method_names_are_added(step: str, names: list[str]) -> None:
    found = recipe("1 lb beef", step)
    added = [ingredient for ingredient in found.ingredients if ingredient.from_ == "method"]
    assert [ingredient.name for ingredient in added] == names
    assert all(ingredient.line == found.steps[0].line for ingredient in added)


def test_a_food_of_the_method_has_an_amount_only_where_the_text_gives_one() -> None:
    found = recipe("1 lb beef", "Boil the beef in 2 cups of water with some oil and a pinch of salt.")
    told = {i.name: [(a.low, a.unit) for a in i.amounts] for i in found.ingredients if i.from_ == "method"}
    assert told == {"water": [(2.0, "cup")], "oil": [], "salt": [(1.0, "pinch")]}


def test_what_is_served_beside_it_is_optional() -> None:
    found = recipe("1 lb beef", "Fry the beef.", "Serve with some bread.")
    assert [(i.name, i.optional, i.notes) for i in found.ingredients if i.from_ == "method"] == [
        ("bread", True, "to serve")
    ]


@pytest.mark.parametrize(
    ("step", "deed"),
    [
        ("Bring the milk to a boil.", "boil"),
        ("Heat the milk until it boils.", "boil"),
        ("Cook the beef in the oven for an hour.", "bake"),
        ("Place the beef in the oven.", "bake"),
        ("Put the beef in the fridge.", "chill"),
        ("Leave the beef in the freezer overnight.", "freeze"),
        ("Let the beef rest for 5 minutes.", "rest"),
        ("Set the beef aside.", "rest"),
        ("Cook the beef in a skillet until browned.", "fry"),
        ("Cook the beef in the oil until soft.", "saute"),
        ("Grill the beef in a pan.", "fry"),
        ("Heat the oven to 350F.", "preheat"),
        ("Reduce the heat to low.", "other"),
        ("Cover the beef with milk.", "pour"),
        ("Cover with the lid.", "cover"),
        ("Cut the butter into the flour.", "cut in"),
        ("Butter a loaf tin.", "grease"),
        ("Add the butter on top.", "top"),
        ("Grate the nutmeg over the milk.", "top"),
        ("Simmer the milk.", "simmer"),
        ("Boil the milk on low heat.", "simmer"),
        ("Pat the beef dry.", "drain"),
    ],
)
def test_a_verb_does_what_it_does_at_its_place(step: str, deed: str) -> None:
    found = recipe("1 lb beef; 1 cup milk; 1 tbsp oil; 1 cup butter; 2 cups flour; nutmeg", step)
    assert actions(found)[0].does == deed


def test_cooking_after_a_fry_fries_until_something_wet_comes() -> None:
    found = recipe(
        "1 onion; 2 carrots; 2 cups stock; 1 tbsp oil",
        "Heat the oil in a pot. Add the onion and cook for 5 minutes.",
        "Add the carrots (2 minutes).",
        "Add the stock and cook for 20 minutes.",
    )
    assert [(d.what, d.low_min) for s in found.steps for d in s.durations] == [
        ("fry", 5),
        ("fry", 2),
        ("simmer", 20),
    ]


def test_a_statement_of_time_belongs_to_what_goes_on() -> None:
    found = recipe("1 lb beef", "Bake the beef at 350F until brown. This takes about 40 minutes.")
    assert [(d.what, d.low_min) for s in found.steps for d in s.durations] == [("bake", 40)]


@pytest.mark.parametrize(
    ("step", "does"),
    [
        ("Oven at 450F.", ["preheat"]),
        ("Onions in.", ["add"]),
        ("Parsley over the top.", ["top"]),
        ("Salt and pepper to taste.", ["season"]),
    ],
)
def test_a_sentence_without_a_verb_may_ask_for_something(step: str, does: list[str]) -> None:
    assert [a.does for a in actions(recipe("2 onions; parsley", step))] == does


def test_what_stands_around_a_deed_is_kept_with_it() -> None:
    action = actions(
        recipe(
            "1 lb beef",
            "In a large skillet, brown the beef over high heat, covered, until dark, if you like.",
        )
    )[0]
    assert (action.vessel, action.heat, action.covered, action.until, action.optional) == (
        "large skillet", "high", True, "until dark", True,
    )  # fmt: skip


@pytest.mark.parametrize("label", ["The night before: soak", "Soak overnight", "The day before, soak"])
def test_what_is_done_hours_before_is_marked(label: str) -> None:
    assert actions(recipe("1 lb beans", f"{label} the beans."))[0].ahead


@pytest.mark.parametrize(
    ("step", "makes"),
    [
        ("Mix the flour to a dough.", "dough"),
        ("Stir until a batter forms.", "batter"),
        ("Make the sauce.", "sauce"),
        ("Roll into balls.", "ball"),
    ],
)
def test_what_a_deed_makes_is_named(step: str, makes: str) -> None:
    assert actions(recipe("2 cups flour", step))[0].makes == makes


def test_wrapped_lines_are_steps_of_their_own_and_read_as_one() -> None:
    found = read(
        "Buns\n\nIngredients\n- 2 cups flour\n\nMethod\n1. Bake the\nflour for 20 minutes\nat 350F.\n2. Eat.\n"
    )
    assert [len(step.actions) for step in found.steps] == [1, 0, 0, 1]
    assert [len(step.durations) for step in found.steps] == [0, 1, 0, 0]
    assert found.steps[2].temps_f == (350.0,)
    assert takings(found)[0] == ("bake", {"flour": 1.0})


@pytest.mark.parametrize(
    ("method", "what"),
    [
        ("Bring the rice to the boil. Off the heat, still covered, 10 minutes.", "rest"),
        ("Mix the beef with its marinade and let it sit for 20 minutes.", "marinate"),
        ("Bring the beans to the boil, then cook very gently for 30 minutes.", "simmer"),
        ("Boil the potatoes for 12 minutes.", "boil"),
    ],
)
def test_a_sentence_may_say_that_its_time_rests_soaks_or_only_trembles(method: str, what: str) -> None:
    recipe = read(f"River supper\n\n1 pound beef\n1 cup rice\n1 cup beans\n2 potatoes\n\n{method}\n")
    assert [found.what for step in recipe.steps for found in step.durations] == [what]


def test_a_warning_stays_with_the_sentence_before_it() -> None:
    recipe = read(
        "River cobbler\n\n1 cup flour\n1 cup milk\n2 cups plums\n\n"
        "Mix the flour and milk. Pour the batter into the pan. Do not stir! Scatter the plums over it. Again, do not stir.\n"
    )
    said = [action.says for step in recipe.steps for action in step.actions]
    assert "Pour the batter into the pan. Do not stir!" in said
    assert "Scatter the plums over it. Again, do not stir." in said


@pytest.mark.parametrize(
    ("step", "deeds"),
    [
        ("Mix the flour. Put a heavy lidded pot in the oven.", ["mix", "heat"]),
        ("Put your skillet in the oven.", ["heat"]),
        ("Mix the flour and put the pot in the oven.", ["mix", "bake"]),
        ("Combine wet and dry, just until smooth.", ["mix"]),
        ("Bake until the onion is tender and topping is golden.", ["bake"]),
        ("Heat the oil. When they splutter add flour.", ["heat", "add"]),
        ("Leave in a warm place.", ["rise"]),
        ("Set close together in a greased tin.", ["add"]),
        ("Put the pan under a hot grill.", ["broil"]),
    ],
)
def test_what_stands_around_a_verb_decides_its_deed(step: str, deeds: list[str]) -> None:
    assert [
        action.does for action in actions(recipe("1 cup flour\n1 onion\n1 tsp yeast\n2 tbsp oil", step))
    ] == deeds


@pytest.mark.parametrize(
    ("foods", "step", "names"),
    [
        ("1 cup buttermilk", "Pour the milk in.", {"buttermilk"}),
        ("2 oz suet\n3 tbsp beef dripping", "Heat the dripping in a pot.", {"beef dripping"}),
        ("1 lb beef shin\n4 slices bacon", "Flatten the meat.", {"beef shin"}),
        (
            "1 tsp cumin\n1 tsp paprika\n1 bunch flat-leaf parsley",
            "Stir in the spices.",
            {"cumin", "paprika"},
        ),
        ("1 cup half & half", "Stir in the half and half.", {"half & half"}),
        ("1 cup rice\n2 cups broth\n1 onion", "Add everything but the rice.", {"broth", "onion"}),
        ("2 cups broth\n1 onion\ngreen onions, for topping", "Add everything.", {"broth", "onion"}),
        (
            "1 tbsp fish sauce\n1 tsp sugar\n1 lime",
            "Fish sauce, sugar, lime.",
            {"fish sauce", "sugar", "lime"},
        ),
        ("1 bunch parsley", "Before serving stir in parsley.", {"parsley"}),
        ("1 tsp sichuan peppercorns", "Dust over the peppercorn.", {"sichuan peppercorns"}),
        ("6 bay leaves", "Fish out the bay leaves.", set()),
        ("1 bunch basil", "Discard the herbs and stir in the basil.", {"basil"}),
        ("1/2 cup butter\n1 cup sugar", "For the sauce, cream butter and sugar.", {"butter", "sugar"}),
    ],
)
def test_words_mean_the_food_that_is_there(foods: str, step: str, names: set[str]) -> None:
    found = recipe(foods, step)
    assert {
        found.ingredients[use.ingredient].name for action in actions(found) for use in action.uses
    } == names
    assert all(ingredient.from_ == "list" for ingredient in found.ingredients)


def test_all_of_a_part_that_is_half_named_are_its_own() -> None:
    found = read(
        "Loaf\n\nIngredients\n\nMeat loaf:\n1 lb ground beef\n1 egg\n\nGlaze:\n1/4 cup ketchup\n\n"
        "Method\n\n1. Mix all loaf ingredients.\n"
    )
    assert {found.ingredients[use.ingredient].name for action in actions(found) for use in action.uses} == {
        "ground beef",
        "egg",
    }


def test_an_oven_with_a_size_is_a_pot_on_coals() -> None:
    found = recipe("2 tbsp oil\n1 onion", 'Heat the oil in the 12" oven and fry the onion.')
    assert [action.does for action in actions(found)] == ["heat", "fry"]
    assert found.oven is None


def test_a_label_in_bold_only_sums_the_step_up() -> None:
    text = "Pot\n\nIngredients\n\n1 eggplant\n1 onion\n2 tbsp oil\n\nMethod\n\n{}\n"
    told = read(
        text.format(
            "1. **Brown the vegetables.** Heat the oil, add eggplant and onion and fry until browned."
        )
    )
    assert [action.does for action in actions(told)] == ["heat", "add", "fry"]
    own = read(text.format("1. **Slice the onion.** Heat the oil in a skillet until it shimmers and smokes."))
    assert [action.does for action in actions(own)] == ["chop", "heat"]


def test_repeating_goes_on_with_the_fire() -> None:
    found = recipe(
        "2 zucchini\n1 eggplant\n2 tbsp oil",
        "Fry the eggplant in the oil. Repeat with the zucchini (5 minutes).",
    )
    assert [(action.does, len(action.uses)) for action in actions(found)] == [("fry", 2), ("fry", 1)]
