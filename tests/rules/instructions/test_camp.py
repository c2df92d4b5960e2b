from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.fat import place
from rules.instructions import write
from rules.method import graph
from rules.packs import divide
from rules.plan import Heat
from rules.recipe import Family, Recipe
from tests.build import amount, bake, dish, doing, heat, items, line, minutes, recipe, step


def camp(of: Recipe, family: Family, over: Heat | None = None) -> tuple[str, ...]:
    made, day = graph(of), Day()
    packs = divide(of, items(of), made, dish(family), day, Ledger())
    fat = place(of, items(of), made, dish(family), day, Ledger())
    return write(of, items(of), made, dish(family), packs, fat, None, over, day, Ledger())[1]


CAKE = (
    line("flour", amount(2, "cup")),
    line("sugar", amount(1, "cup")),
    line("baking powder", amount(2, "teaspoon")),
    line("eggs", amount(2)),
    line("milk", amount(1, "cup")),
    line("butter", amount(0.5, "cup"), state=("melted",)),
    line("blueberries", amount(2, "cup")),
)
do = doing(*CAKE)
RIVER_CAKE = recipe(
    *CAKE,
    steps=(
        step(do("preheat", vessel="oven"), do("line", vessel="cake tin")),
        step(do("beat", "eggs", "sugar", vessel="bowl"), do("mix", "milk", "butter", word="stir in")),
        step(
            do("mix", "flour", "baking powder", word="stir in", until="until just combined"),
            do("fold", "blueberries"),
        ),
        step(do("bake", minutes=minutes(40, 45), until="until a skewer comes out clean")),
    ),
)


def test_a_batter_is_mixed_at_camp_from_its_packs() -> None:
    assert camp(RIVER_CAKE, "batter bake") == (
        "Beat 2 eggs in the bowl. Stir in 1 cup milk and 1/2 cup butter (melted).",
        "Stir in the dry mix (dry-1), until just combined. Fold in the blueberries (prepped-1).",
        "Bake it for 40 to 45 minutes, until a skewer comes out clean.",
    )


def test_the_dry_mix_is_opened_when_its_flour_enters_and_not_for_its_sugar() -> None:
    steps = camp(RIVER_CAKE, "batter bake")
    assert "dry-1" not in steps[0]
    assert steps[1].count("(dry-1)") == 1


def test_the_coals_of_a_stage_are_told_with_its_deed() -> None:
    steps = camp(RIVER_CAKE, "batter bake", heat(bake()))
    assert steps[0].startswith("Light 24 briquettes")
    assert "With 8 coals under the pot and 17 on the lid, bake it" in " ".join(steps)


SKEWERS = (
    line("chicken thighs", amount(2, "pound")),
    line("lemon juice", amount(2, "tablespoon")),
    line("onion", amount(1), prep="sliced"),
    line("mushrooms", amount(8, "ounce")),
    line("salt"),
    line("parsley", amount(1, "bunch"), optional=True),
    line("olive oil", amount(1, "tablespoon")),
)
fry = doing(*SKEWERS)
RIVER_SKEWERS = recipe(
    *SKEWERS,
    steps=(
        step(
            fry("mix", "chicken thighs", "lemon juice", vessel="bowl"), fry("marinate", minutes=minutes(120))
        ),
        step(fry("chop", "onion", "mushrooms")),
        step(
            fry("heat", "olive oil", vessel="skillet"),
            fry("add", "onion", "mushrooms"),
            fry("saute", minutes=minutes(8)),
        ),
        step(
            fry("add", things=("chicken",), word="put"),
            fry("fry", minutes=minutes(12)),
            fry("season", "salt"),
        ),
        step(fry("serve")),
    ),
)


def test_what_was_done_at_home_is_not_told_again() -> None:
    text = " ".join(camp(RIVER_SKEWERS, "pan fry or saute"))
    assert "marinate" not in text
    assert "Cut the mushrooms." in text
    assert "Cut the onion" not in text


def test_raw_meat_is_followed_by_washing() -> None:
    text = " ".join(camp(RIVER_SKEWERS, "pan fry or saute"))
    assert "chicken thighs with its marinade (prepped-" in text
    assert "Wash hands and tools" in text


def test_what_the_method_leaves_out_is_offered_before_the_fire() -> None:
    steps = camp(RIVER_SKEWERS, "pan fry or saute")
    offer = next(
        number for number, said in enumerate(steps) if said.startswith("If wanted, add 1 bunch of parsley")
    )
    assert "for 12 minutes" in steps[offer + 1]


def test_fat_for_a_hot_pot_is_told_so() -> None:
    foods = (
        line("butter", amount(0.5, "cup")),
        line("flour", amount(1, "cup")),
        line("milk", amount(1, "cup")),
    )
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(act("melt", "butter", vessel="baking dish"), act("bake", word="put")),
            step(act("mix", "flour", "milk", vessel="bowl"), act("pour", things=("batter", "butter"))),
            step(act("bake", minutes=minutes(40))),
        ),
    )
    steps = camp(of, "batter bake")
    assert steps[0] == "Put 1/2 cup butter into the hot pot and shut the lid until it sizzles."
    assert "Pour the batter over the butter." in steps[1]


def test_a_dough_made_at_home_is_only_baked() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("butter", amount(1, "cup")),
        line("water", amount(0.25, "cup")),
    )
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                act("mix", "flour", vessel="bowl"),
                act("cut in", "butter"),
                act("add", "water"),
                act("chill", minutes=minutes(60)),
            ),
            step(act("roll", things=("dough",)), act("bake", minutes=minutes(20))),
        ),
    )
    text = " ".join(camp(of, "pastry or pie"))
    assert "Chill" not in text
    assert text == "Bake the dough (prepped-1) for 20 minutes."


def test_a_recipe_without_a_method_is_told_the_usual_way() -> None:
    steps = camp(recipe(line("onion", amount(2)), line("broth", amount(4, "cup")), line("olive oil")), "soup")
    assert steps == (
        "Heat olive oil in the pot.",
        "Add 2 onion and 4 cups broth and simmer it until everything is tender.",
    )
