from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.because import Ledger
from rules.circumstances import Day
from rules.labels import LINES, WIDTH, labels
from rules.method import graph
from rules.plan import Heat, Pack
from rules.recipe import Recipe
from tests.build import amount, bake, doing, heat, items, line, pack, recipe, step

CAKE = recipe(
    line("flour", amount(2, "cup")),
    line("baking powder", amount(1, "tablespoon")),
    line("blueberries", amount(1, "cup")),
    line("milk", amount(1, "cup")),
    line("eggs", amount(2)),
    line("ground beef", amount(1, "pound")),
    line("rice", amount(1, "cup")),
    title="Blueberry cake for a wet morning",
    family="batter bake",
)
DRY = pack("dry mix", 0, 1, of=CAKE, label="dry mix of flour and baking powder")
FRUIT = pack("wet mix", 2, of=CAKE, travels="frozen", label="fruit: blueberries")
FRESH = pack("fresh", 3, 4, of=CAKE, travels="cool", label="milk and eggs")
MEAT = pack("fresh", 5, of=CAKE, travels="cool", label="raw ground beef")
PANTRY = pack("pantry", 6, of=CAKE, label="rice")


def texts(
    *packs: Pack, of: Recipe = CAKE, over: Heat | None = None, day: Day | None = None
) -> dict[str, list[str]]:
    told = labels(of, items(of), packs, over, day or Day(), Ledger())
    return {label.pack: label.text.split("\n") for label in told}


def test_bags_made_at_home_and_raw_meat_have_labels_and_shop_packages_none() -> None:
    assert set(texts(DRY, FRUIT, FRESH, MEAT, PANTRY)) == {DRY.id, FRUIT.id, MEAT.id}


def test_a_label_says_what_how_long_what_to_add_and_the_coals() -> None:
    told = texts(DRY, FRUIT, FRESH, over=heat(bake()))[DRY.id]
    assert told == [
        "Dry mix (dry-0-1)",
        "Blueberry cake for a wet morning",
        "In it: 2 cups flour,",
        "1 tablespoon baking powder",
        "Keep dry, on the shelf. Use within 30 days.",
        "At camp: add fruit (wet-2), 1 cup milk,",
        "2 eggs",
        "Bake: 17 top, 8 under, 30-40 min, look 20",
    ]


def test_a_label_opens_with_what_the_steps_call_the_bag() -> None:
    steps = ("Light the coals.", f"Take the dry mix ({DRY.id}).", f"Scatter the rest of it ({DRY.id}).")
    told = labels(CAKE, items(CAKE), (DRY,), None, Day(), Ledger(), camp_steps=steps)[0].text.split("\n")
    assert told[0] == f"Dry mix ({DRY.id})"
    assert told[-1] == "Camp step 2 and 3."


def test_an_amount_and_its_food_stay_on_one_line() -> None:
    made = recipe(*(line(f"flour {sign}", amount(1.5, "cup")) for sign in "abcdef"), family="batter bake")
    (told,) = texts(pack("dry mix", *range(6), of=made, label="dry mix"), of=made).values()
    parts = [part for text in told if "cup" in text for part in text.removeprefix("In it: ").split(", ")]
    assert [part.strip(",") for part in parts] == [f"1 1/2 cups flour {sign}" for sign in "abcdef"]


def test_a_dry_mix_names_what_is_stirred_in_and_not_what_lies_under_it() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("baking powder", amount(1, "tablespoon")),
        line("milk", amount(1, "cup")),
        line("vanilla extract", amount(1, "teaspoon")),
        line("butter", amount(1, "stick")),
    )
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(do("melt", "butter", vessel="pan")),
            step(do("mix", "flour", "baking powder", vessel="bowl"), do("add", "milk", "vanilla extract")),
        ),
        family="batter bake",
    )
    dry = pack("dry mix", 0, 1, of=of, label="dry mix of flour and baking powder")
    rest = (
        pack("fresh", 2, of=of, travels="cool", label="milk"),
        pack("pantry", 3, of=of, label="vanilla extract"),
        pack("fresh", 4, of=of, travels="cool", label="butter"),
    )
    told = labels(of, items(of), (dry, *rest), None, Day(), Ledger(), graph=graph(of))[0].text
    assert "add 1 cup milk,\n1 teaspoon vanilla extract" in told
    assert "butter" not in told


def test_raw_meat_is_marked_and_used_within_its_days() -> None:
    told = texts(MEAT)[MEAT.id]
    assert told[2] == "RAW - bottom of the cooler, apart"
    assert "Use within 1 day." in " ".join(told)


def test_a_meal_with_a_date_gives_the_day_to_use_it_by() -> None:
    told = texts(DRY, day=Day(eat="2027-07-03T18:30", trip_hours=30))[DRY.id]
    # Packed on Friday 2 July, 30 days.
    assert "Use by 1 Aug." in " ".join(told)


@settings(max_examples=60, deadline=None)
@given(
    names=st.lists(
        st.text("abcdefghij ", min_size=1, max_size=30).filter(str.strip), min_size=1, max_size=25
    ),
    title=st.text("ABCDEFG hijkl", min_size=1, max_size=90).filter(str.strip),
)
def test_every_label_fits_its_sticker(names: list[str], title: str) -> None:
    made = recipe(
        *(line(name, amount(1, "cup"), food="") for name in names), title=title, family="batter bake"
    )
    dry = pack("dry mix", *range(len(names)), of=made, label="dry mix of " + ", ".join(names))
    for lines in texts(dry, of=made, over=heat(bake(), bake())).values():
        assert len(lines) <= LINES
        assert all(len(text) <= WIDTH for text in lines)


def test_what_is_preserved_keeps_as_its_recipe_says() -> None:
    made = recipe(line("cabbage", amount(1)), title="River kraut", family="preserve or ferment")
    jar = pack("prepped", 0, of=made, travels="cool", label="River kraut made at home")
    assert "as long as its recipe says" in " ".join(texts(jar, of=made)[jar.id])
