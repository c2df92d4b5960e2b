"""The list that is packed from."""

from __future__ import annotations

from msgspec.structs import replace

from assistant.show.boxes import boxes
from rules.plan import Pack, PackItem, Plan
from rules.recipe import Amount


def test_a_bag_stands_by_itself_under_the_name_and_id_that_the_steps_use(river_plan: Plan) -> None:
    bag = next(iter(boxes(river_plan, "us")))
    assert (bag.id, bag.name) == ("dry-1", "Cobbler, dry")
    assert bag.where == "no cooling; 1-gallon zipper bag"
    assert bag.lines == ("1 1/2 cups flour", "2 1/4 teaspoons baking powder")
    assert bag.make_ahead == "Up to a month before"


def test_foods_as_bought_share_a_box_and_keep_their_ids(river_plan: Plan) -> None:
    oil, cans = (
        Pack(id=f"pantry-{at}", kind="pantry", label=name, travels="shelf", items=(item,))
        for at, (name, item) in enumerate(
            [
                ("butter", PackItem(ingredient=0, share=1, amount=Amount(low=1, high=1, unit="stick"))),
                ("flour", PackItem(ingredient=1, share=1)),
            ]
        )
    )
    (box,) = boxes(replace(river_plan, packs=(oil, cans)), "us")
    assert box.id is None
    assert box.name == "From the shelf, as bought"
    assert box.lines == ("1 stick of butter (pantry-0)", "flour (pantry-1)")


def test_a_pack_as_bought_of_several_foods_is_told_food_by_food(river_plan: Plan) -> None:
    (cooler,) = (box for box in boxes(river_plan, "us") if box.travels == "cool")
    assert cooler.id is None
    assert cooler.lines == ("1/2 cup butter (fresh-1)", "1 1/2 cups milk (fresh-1)")


def test_every_item_of_every_pack_is_in_one_box(river_plan: Plan) -> None:
    lines = [line for box in boxes(river_plan, "us") for line in box.lines]
    assert len(lines) == sum(len(pack.items) for pack in river_plan.packs)
