"""What every plan of the corpus holds from the shop to the cold ash: its day, its lists, its kit and its cooler."""

from __future__ import annotations

import re
from collections import defaultdict
from datetime import datetime
from functools import cache
from zoneinfo import ZoneInfo

import pytest

from assistant.reader.read import read
from rules import table
from rules.circumstances import Day
from rules.convert import camp
from rules.foods import Item, weigh
from rules.plan import Moment, Plan
from rules.shopping import bought_as
from rules.shopping.packages import Package
from rules.units import to
from tests.gold import slugs, text

SLUGS = slugs()
ZONE = "America/Boise"
#: The same weekend told four ways: by minutes, by a clock, by a date and a zone, without a freezer in the heat.
DAYS = {
    "relative": Day(),
    "clock": Day(people=9, eat="18:30", trip_hours=30),
    "date and zone": Day(people=9, eat="2027-07-03T18:30", zone=ZONE, trip_hours=30, trip_air_f=85),
    "breakfast": Day(eat="2027-11-07T08:00", zone=ZONE, trip_hours=16),
    "no freezer, hot": Day(freezer=False, trip_hours=72, trip_air_f=105, cooler_quarts=48),
    "no trip": Day(trip_hours=0),
}
CASES = [(slug, day) for slug in SLUGS for day in DAYS]
every_plan = pytest.mark.parametrize(("slug", "day"), CASES, ids=lambda value: str(value).replace(" ", "-"))


@cache
def plan(slug: str, day: str) -> Plan:
    return camp(read(text(slug), file=f"{slug}.txt"), DAYS[day])


def first(moments: tuple[Moment, ...], *words: str) -> float | None:
    """The first moment that says one of these words."""
    return next((one.at_min for one in moments if any(word in one.do for word in words)), None)


def last(moments: tuple[Moment, ...], *words: str) -> float | None:
    return first(moments[::-1], *words)


# The day


@every_plan
def test_the_day_runs_forwards_from_shop_to_ash(slug: str, day: str) -> None:
    moments = plan(slug, day).timeline
    order = [
        first(moments, "Shop."),
        first(moments, "Kitchen work"),
        first(moments, "Lay flat", "Into the freezer"),
        first(moments, "Pack the"),
        first(moments, "Leave."),
        first(moments, "Wash hands"),
        first(moments, "Light "),
        first(moments, "It may be done"),
        first(moments, "Off the coals"),
        first(moments, "Serve and eat."),
        first(moments, "Coals out"),
        last(moments, "Feel the ash"),
    ]
    known = [at for at in order if at is not None]
    assert known == sorted(known)
    assert [one.at_min for one in moments] == sorted(one.at_min for one in moments)
    assert first(moments, "Serve and eat.") == 0
    assert all(one.kind is not None and one.do.strip() for one in moments)


@every_plan
def test_every_stage_of_the_coal_plan_is_in_the_day_at_its_minute(slug: str, day: str) -> None:
    made = plan(slug, day)
    moments = [(one.at_min, one.do) for one in made.timeline]
    for stage in made.heat.stages if made.heat else ():
        if stage.kind == "light":
            continue
        told = f"{stage.under} under the pot" if stage.top else f"{stage.under} briquette"
        words = "rise" if stage.kind == "rise" else told
        assert any(at == stage.starts_at_min and words in do for at, do in moments), stage
        for fresh in stage.refresh:
            assert any(at == fresh.at_min and do.startswith("Fresh coals on") for at, do in moments)


@every_plan
def test_coals_are_lit_before_they_are_wanted_and_none_is_lit_for_nothing(slug: str, day: str) -> None:
    made = plan(slug, day)
    lit = {one.at_min for one in made.timeline if one.kind == "light"}
    if made.heat is None:
        assert not lit
        return
    assert lit == {batch.light_at_min for batch in made.heat.fuel.batches}
    burning = [stage for stage in made.heat.stages if stage.top + stage.under]
    wanted = [stage.starts_at_min for stage in burning]
    wanted += [fresh.at_min for stage in burning for fresh in stage.refresh]
    for stage in burning:
        for fresh in stage.refresh:
            # A chimney takes 15 to 20 minutes (common practice, no source).
            assert fresh.at_min - fresh.light_at_min >= 15
            assert fresh.light_at_min in lit
    assert min(lit) <= min(at for at in wanted if at is not None) - 15


@every_plan
def test_done_comes_before_the_rest_and_the_rest_before_the_meal(slug: str, day: str) -> None:
    made = plan(slug, day)
    if made.heat is None:
        return
    done, off = first(made.timeline, "It may be done"), first(made.timeline, "Off the coals")
    assert done is not None
    assert off is not None
    assert done <= off < 0
    # No turn and no look once the pot is off.
    assert not any(one.do.startswith(("Turn", "First look")) and one.at_min >= off for one in made.timeline)
    # Meat that must rest has its minutes (FoodSafety.gov: three for whole cuts), and so has what the method lets stand.
    assert -off >= max((sign.rest_min or 0 for sign in made.heat.doneness), default=0)


@every_plan
def test_one_cook_can_do_it_or_the_day_says_otherwise(slug: str, day: str) -> None:
    """Browning, frying and hot fat hold the cook; mixing, kneading and filling do too."""
    made = plan(slug, day)
    busy = [
        (stage.starts_at_min, stage.starts_at_min + stage.minutes.high)
        for stage in (made.heat.stages if made.heat else ())
        if (stage.kind in ("brown", "fry") or (stage.kind == "heat fat" and made.recipe.family == "deep fry"))
        and stage.minutes
        and stage.starts_at_min is not None
    ]
    for one in made.timeline:
        if one.do.startswith(("Mix ", "Put together", "Mix and knead")):
            clash = any(begin < one.at_min < end for begin, end in busy)
            assert clash == ("second pair of hands" in one.do), one


@every_plan
def test_turns_and_looks_are_not_two_walks_within_three_minutes(slug: str, day: str) -> None:
    moments = plan(slug, day).timeline
    looks = [one.at_min for one in moments if one.do.startswith("First look")]
    turns = [one.at_min for one in moments if one.do.startswith("Turn")]
    assert not [at for at in looks for turn in turns if 0 < abs(at - turn) < 3]


@every_plan
def test_clock_times_are_those_of_the_zone(slug: str, day: str) -> None:
    """Source of the zone's rules: the IANA time zone database, through the standard library."""
    moments = plan(slug, day).timeline
    told = DAYS[day].eat
    if told is None:
        assert all(one.clock is None for one in moments)
        return
    assert all(one.clock for one in moments)
    if DAYS[day].zone is None:
        return
    meal = datetime.fromisoformat(told).replace(tzinfo=ZoneInfo(ZONE)).timestamp()
    for one in moments:
        there = datetime.fromtimestamp(meal + 60 * one.at_min, ZoneInfo(ZONE))
        assert f"{there:%H:%M}" in str(one.clock)


@every_plan
def test_kitchen_work_is_done_by_day(slug: str, day: str) -> None:
    if DAYS[day].eat is None:
        return
    for one in plan(slug, day).timeline:
        if one.do.startswith(("Kitchen work", "Shop")):
            hour = int(re.findall(r"(\d\d):\d\d", str(one.clock))[0])
            assert 7 <= hour < 22, one


@every_plan
def test_bags_have_their_hours_in_the_freezer(slug: str, day: str) -> None:
    made = plan(slug, day)
    in_it = first(made.timeline, "Lay flat in the freezer", "Into the freezer")
    packed = first(made.timeline, "Pack the cooler")
    if made.cold and made.cold.freeze_hours and in_it is not None and packed is not None:
        assert packed - in_it >= 60 * made.cold.freeze_hours.high - 1e-6


# The list


def bought_by_food(made: Plan) -> dict[str, list[Item]]:
    """What the packs hold, by the food as it is bought; water is drawn."""
    items = weigh(made.recipe, made.scale)
    held: dict[str, list[Item]] = defaultdict(list)
    for index in sorted({part.ingredient for pack in made.packs for part in pack.items}):
        item = items[index]
        name = bought_as(item.food.name if item.food else item.ingredient.name)
        if name != "water":
            held[name].append(item)
    return held


@every_plan
def test_the_list_covers_what_the_packs_need_and_nothing_else(slug: str, day: str) -> None:
    made = plan(slug, day)
    held = bought_by_food(made)
    names = {item.ingredient.name: food for food, items in held.items() for item in items}
    listed = [
        line for line in made.shopping if line.food not in ("charcoal briquettes", "ice for the cooler")
    ]
    on_it = [names[line.food.rpartition(", for ")[2]] for line in listed]
    assert sorted(on_it) == sorted(held), "each food once, and only foods that a pack holds"


SIZES = {word: row for row in table.read("packages.csv", Package) for word in (row.one, row.many)}
COUNTED = re.compile(r"(\d+) (.+?)(?= and \d|$)")


@every_plan
def test_the_packages_hold_what_is_needed_and_the_rest_is_told(slug: str, day: str) -> None:
    made = plan(slug, day)
    held = bought_by_food(made)
    for line in made.shopping:
        counts = [(int(count), SIZES.get(word)) for count, word in COUNTED.findall(line.buy)]
        if not counts or any(row is None for _, row in counts):
            continue
        food = next((f for f, found in held.items() if line.food in {i.ingredient.name for i in found}), None)
        if food is None or {row.unit for _, row in counts if row} != {"g"}:
            continue
        bought = sum(count * row.size for count, row in counts if row)
        grams = [item.grams for item in held[food] if item.ingredient.amounts]
        if not grams or not all(grams):
            continue
        needed = sum(mass for mass in grams if mass)
        assert bought >= 0.98 * needed, line
        # One package less of any size would not do.
        assert all(bought - row.size < needed for _, row in counts if row), line
        ounces = re.fullmatch(r"(?:about )?([\d.]+) oz", line.left_over or "")
        if ounces:
            assert float(ounces.group(1)) == pytest.approx(to(bought - needed, "gram", "ounce"), abs=0.6)


@every_plan
def test_nothing_on_the_list_is_absurd(slug: str, day: str) -> None:
    for line in plan(slug, day).shopping:
        assert not re.search(r"\b0\.\d|\b0 ", line.buy), line
        assert not re.match(r"\d+ \d+/\d+ (?:slice|strip|clove|bunch|head|can|jar|box|bag)", line.buy), line
        figures = [float(figure) for figure in re.findall(r"^\d+", line.buy)]
        assert all(figure <= 40 for figure in figures), line


@every_plan
def test_fuel_and_ice_are_on_list_and_kit(slug: str, day: str) -> None:
    made = plan(slug, day)
    foods = [line.food for line in made.shopping]
    if made.heat:
        count = made.heat.fuel.briquettes
        assert foods[-1] == "charcoal briquettes"
        assert made.shopping[-1].need == f"{count} briquettes"
        assert any(tool.startswith(f"{count} briquettes") for tool in made.kit.camp)
    else:
        assert "charcoal briquettes" not in foods
        assert not any("briquettes" in tool for tool in made.kit.camp)
    wants_ice = bool(made.cold and made.cold.ice_kg)
    assert ("ice for the cooler" in foods) == wants_ice
    assert any(tool.endswith("of ice") for tool in made.kit.camp) == wants_ice


# The kit

POTS = ("oven", "pot", "tin", "pan", "grill")
#: A thing that a step may name, and the words one of which must stand on the kit for it.
NAMED = {
    r"bowls?": ("bowl",),
    r"(?:sauce|frying |soup |roasting )?pans?|skillet|pots?|dutch oven|casserole|griddle|wok|tray|sheet|dish": POTS,
    r"(?<=n )lid": ("lid",),
    r"tins?|loaf pan|pie (?:dish|pan|plate)|muffin|ramekins?|springform": ("tin",),
    r"foil": ("foil",),
    r"parchment|liners?|baking paper": ("liner",),
    r"paper towels?|kitchen paper": ("paper towels",),
    r"whisk|fork": ("whisk", "fork"),
    r"(?:wooden )?spoon(?:fuls?)?": ("spoon", "utensil"),
    r"slotted": ("slotted",),
    r"ladle(?:ful)?": ("ladle",),
    r"spatula|turner": ("spatula", "turner"),
    r"tongs": ("tongs",),
    r"grater|grate": ("grater",),
    r"zest the": ("grater",),
    r"masher|mash": ("masher",),
    r"sieve|strainer|colander|drain": ("strainer",),
    r"skewers|toothpicks?": ("skewer",),
    r"thermometer": ("thermometer",),
    r"brush": ("pastry brush",),
    r"rolling.pin|roll (?:it |the dough )?out": ("rolling pin",),
    r"cutter|cut rounds": ("cutter",),
    r"scissors": ("scissors",),
    r"string|twine": ("string",),
    r"in a jar": ("jar",),
    r"cups?|mug": ("measuring cup", "cup"),
    r"tablespoons?|teaspoons?": ("measuring",),
    r"cans? of": ("can opener",),
    r"knife|slice|chop|dice|carve|slash": ("knife",),
    r"rack": ("rack", "trivet"),
    r"board": ("board",),
    r"plates?|platter": ("plate",),
    r"basket": ("basket",),
    r"(?:tea |kitchen )towel|cloth": ("cloth",),
    r"cling film|plastic wrap": ("film",),
    r"gloves": ("gloves",),
    r"blender|processor": ("masher",),
}
AT_HOME = {
    r"mix|cream|beat|whisk|stir": ("bowl", "mixer"),
    r"measure|cups?|tablespoons?|teaspoons?|ounces|pounds": ("measuring", "scale"),
    r"chop|slice|dice|mince|halve|crush|cut \d": ("knife",),
    r"grate|shred": ("grater",),
    r"toast \d|boil the|fry \d|melt \d": ("pot or pan",),
    r"peel \d": ("peeler",),
    r"freeze": ("freezer",),
    r"cutting the cold": ("pastry cutter",),
    r"board of its own": ("for the raw meat alone",),
    r"label": ("labels",),
}
#: What a recipe says of itself that is no work of the cook's: "the cut onions", "tinned", "whisked eggs" stay out by words.
OUR_OWN = re.compile(r"the cut [a-z ]+|can of worms")


@every_plan
def test_every_tool_that_a_step_names_is_on_the_kit(slug: str, day: str) -> None:
    made = plan(slug, day)
    for steps, kit, named in (
        (made.camp_steps, made.kit.camp, NAMED),
        (made.home_steps, made.kit.home, AT_HOME),
    ):
        told = OUR_OWN.sub("", " ".join(steps).lower())
        for words, tools in named.items():
            found = re.search(rf"\b(?:{words})\b", told)
            assert not found or any(tool in one for one in kit for tool in tools), (
                f'"{found.group()}" wants {tools}; the kit has {kit}'
            )


@every_plan
def test_the_kit_is_the_smallest_that_does_the_job(slug: str, day: str) -> None:
    """No tool without its work: a grater where nothing is grated, a pot at home where nothing is cooked."""
    made = plan(slug, day)
    home, at_camp = " ".join(made.home_steps).lower(), " ".join(made.camp_steps).lower()
    for kit, told, tool, words in (
        (made.kit.home, home, "grater", r"grat|shred|zest"),
        (made.kit.home, home, "pot or pan", r"cook|boil|toast|fry|melt|brown"),
        (made.kit.home, home, "shallow boxes", r"cook"),
        (
            made.kit.home,
            home,
            "knife and cutting board",
            r"cut|chop|slic|dic|minc|halv|quarter|peel|crush|trim|core|pick over|shuck|smash",
        ),
        (made.kit.camp, at_camp, "grater", r"grat|shred|zest"),
        (made.kit.camp, at_camp, "rolling pin", r"roll"),
        (made.kit.camp, at_camp, "pastry brush", r"brush"),
        (made.kit.camp, at_camp, "can opener", r"can|tin"),
    ):
        if any(tool in one for one in kit) and tool != "can opener":
            assert re.search(words, told), f"{tool}: {told}"


@every_plan
def test_no_tool_is_listed_twice(slug: str, day: str) -> None:
    kit = plan(slug, day).kit
    assert len(set(kit.home)) == len(kit.home)
    assert len(set(kit.camp)) == len(kit.camp)


# The cooler


@every_plan
def test_every_cold_pack_lies_in_one_layer_and_raw_flesh_lowest(slug: str, day: str) -> None:
    made = plan(slug, day)
    cooled = sorted(pack.id for pack in made.packs if pack.travels in ("cool", "frozen"))
    if made.cold is None:
        assert not cooled
        return
    laid = [pack for layer in made.cold.layers for pack in layer.packs]
    assert sorted(laid) == cooled
    raw = {pack.id for pack in made.packs if pack.label.startswith("raw ")} & set(laid)
    assert not raw or raw <= set(made.cold.layers[0].packs)


@every_plan
def test_no_raw_flesh_thaws_in_the_open(slug: str, day: str) -> None:
    """USDA FSIS: thaw in the refrigerator, in cold water or not at all; never on the counter."""
    made = plan(slug, day)
    raw = {pack.id for pack in made.packs if pack.label.startswith("raw ")}
    for bag in made.cold.bags if made.cold else ():
        if bag.pack in raw:
            assert bag.outside_min is None
            assert "shade" not in (bag.advice or "")
