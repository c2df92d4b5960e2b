from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.because import Ledger
from rules.circumstances import Day
from rules.labels import LINES, WIDTH, labels
from rules.plan import Heat, Pack
from rules.recipe import Recipe
from tests.build import amount, bake, heat, items, line, pack, recipe

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
        "Blueberry cake for a wet morning: dry mix",
        "In it: flour 2 cups, baking powder 1",
        "tablespoon",
        "Keep dry, on the shelf. Use within 30 days.",
        "Add at camp: fruit, milk 1 cup, eggs 2",
        "Bake: 17 top, 8 under, 30-40 min, look 20",
    ]


def test_raw_meat_is_marked_and_used_within_its_days() -> None:
    told = texts(MEAT)[MEAT.id]
    assert told[1] == "RAW - bottom of the cooler, apart"
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
    jar = pack("prepped", 0, of=made, travels="cool", label="River kraut, made at home")
    assert "as long as its recipe says" in " ".join(texts(jar, of=made)[jar.id])
