"""Dividing a recipe into packs: the rules of where things travel, asked in the order in which they stand here.

For each portion the first rule that speaks decides; then portions with one key become one pack. What the method never
names joins the bag of its own part. Shares of every ingredient add up to one.
"""

from __future__ import annotations

from collections.abc import Hashable

from msgspec.structs import replace

from rules.because import Ledger
from rules.circumstances import Day
from rules.dish import Dish
from rules.foods import Item
from rules.method import Graph
from rules.packs import dry, fresh, wet, whole
from rules.packs.bundle import COLDER, Members, bundles, numbered
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import Place, PlaceRule
from rules.plan import Pack
from rules.recipe import Recipe
from rules.roles import Role

#: The rules of packing, in the order in which they are asked.
ORDER: tuple[PlaceRule, ...] = (
    whole.caustic_travels_alone,
    # what is made at home as a whole
    whole.preserve_is_made_at_home,
    whole.dough_is_made_at_home,
    whole.mix_is_made_at_home,
    whole.water_is_drawn_at_camp,
    # raw flesh and what waits with it
    whole.flesh_travels_alone,
    whole.marinade_travels_with_its_meat,
    # fruit and what is stirred into it
    wet.fruit_and_its_flavours,
    # frozen, and in the shell
    fresh.bought_frozen_stays_frozen,
    fresh.eggs_in_the_shell,
    # fat and what is made with it at home
    dry.cut_in_fat_is_part_of_the_mix,
    wet.creamed_fat_and_sugar_travel_together,
    # dry mixes
    dry.yeast_has_its_packet,
    dry.table_seasoning_stays_on_the_shelf,
    dry.leavener_goes_dry,
    dry.body_goes_dry,
    dry.sugar_and_spice_beside_flour_go_dry,
    dry.mix_ins_go_dry,
    # wet mixes
    wet.sauces_that_enter_together,
    wet.dressing_that_no_step_names,
    wet.loose_fruit_is_bagged,
    # seasoning bags
    dry.seasonings_make_a_bag,
    # as it comes
    fresh.dairy_in_the_cooler,
    fresh.fat_as_it_comes,
    fresh.cheese_is_grated_at_home,
    fresh.cooked_at_home,
    fresh.produce,
    fresh.on_the_shelf,
)


def divide(
    recipe: Recipe,
    items: tuple[Item, ...],
    graph: Graph,
    dish: Dish,
    day: Day,
    ledger: Ledger,
) -> tuple[Pack, ...]:
    """The packs of a recipe, each portion with its reason."""
    kitchen = Kitchen(recipe, items, graph, dish, day)
    placed = placements(kitchen)
    for _, place in placed:
        ledger.note(place.because)
    return bundles(placed, kitchen, ledger)


def placements(kitchen: Kitchen) -> Members:
    """Every portion with its place."""
    return _orphans_join_their_part([(portion, place_of(portion, kitchen)) for portion in kitchen.portions])


class Contents:
    """Which pack holds a food at a moment; the instructions open the packs by it."""

    def __init__(
        self,
        recipe: Recipe,
        items: tuple[Item, ...],
        graph: Graph,
        dish: Dish,
        day: Day,
        packs: tuple[Pack, ...],
    ) -> None:
        by_id = {pack.id: pack for pack in packs}
        self._at: dict[tuple[int, int | None], Pack] = {}
        self._any: dict[int, Pack] = {}
        self._key: dict[str, str] = {}
        for number, members in numbered(placements(Kitchen(recipe, items, graph, dish, day))):
            pack = by_id.get(number)
            if pack is None:
                continue
            self._key[number] = str(members[0][1].key[0])
            for portion, _ in members:
                at = portion.taking.at if portion.taking is not None else None
                self._at[portion.item.index, at] = pack
                self._any.setdefault(portion.item.index, pack)

    def pack(self, ingredient: int, at: int | None = None) -> Pack | None:
        """The pack that holds it when the action `at` takes it; else the first one that holds it."""
        return self._at.get((ingredient, at)) or self._any.get(ingredient)

    def sort(self, pack: Pack) -> str:
        """What sort of bundle a pack is: dry, season, wet, fruit, cut, flesh, dough, mix, creamed, table or alone."""
        return self._key.get(pack.id, "alone")


def place_of(portion: Portion, kitchen: Kitchen) -> Place:
    """The place of one portion: what the first rule that speaks says."""
    for rule in ORDER:
        place = rule(portion, kitchen)
        if place is not None:
            return place
    raise AssertionError("the last rule speaks for everything")


def _orphans_join_their_part(placed: Members) -> Members:
    """Foods that the method never names join the bag of their own part: the dry mix, the dough, the dip."""
    homes: dict[tuple[Hashable, ...], tuple[Portion, Place]] = {}
    for portion, place in placed:
        if portion.taking is not None:
            homes.setdefault((place.key[0], place.part), (portion, place))
            homes.setdefault(place.key, (portion, place))
    return [(portion, _home(portion, place, homes)) for portion, place in placed]


def _home(portion: Portion, place: Place, homes: dict[tuple[Hashable, ...], tuple[Portion, Place]]) -> Place:
    if portion.taking is not None or place.key in homes:
        return place
    sort = place.key[0]
    if sort in ("dry", "season"):
        wanted = ["dough", sort, "dry", "season"] if portion.role == "flour" else [sort, "dry", "season"]
        for name in wanted:
            home = homes.get((name, place.part))
            if home is not None:
                there = home[1]
                colder = max(place.travels, there.travels, key=COLDER.index)
                return replace(place, kind=there.kind, key=there.key, travels=colder)
        return replace(place, key=("dry", place.part, None))
    dip = homes.get(("mix", place.part))
    if dip is not None and place.kind in ("fresh", "prepped") and portion.role in _IN_DIPS:
        return replace(place, kind="prepped", key=dip[1].key, travels="cool")
    return place


#: What joins a dip that is mixed at home.
_IN_DIPS: frozenset[Role] = frozenset({"vegetable", "herb", "cultured", "cheese"})
