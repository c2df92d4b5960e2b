"""What rides in which bag, where the fat goes, what is bought, packed, written on the bags."""

from __future__ import annotations

from assistant.chat.acts import Meant
from assistant.chat.tell.question import food_in, groups_of
from assistant.show import parts, words
from rules.circumstances import Day
from rules.plan import Pack, Plan


def mixes(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """The mixes; one kind of bag, or the bags with a food, where the question names them."""
    said = groups_of(utterance)
    wanted = {"DRYBAG": ("dry mix",), "WETBAG": ("wet mix",)}
    kinds = next(
        (kinds for group, kinds in wanted.items() if group in said), ("dry mix", "wet mix", "prepped")
    )
    packs = [pack for pack in plan.packs if pack.kind in kinds]
    named = food_in(utterance, plan)
    if named:
        packs = [pack for pack in plan.packs if _holds(pack, plan, named)] or packs
    if not packs:
        return "Nothing is mixed at home; everything travels as it comes."
    return "\n".join(_pack(pack, plan, day) for pack in packs)


def fresh(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    """What rides cold, raw food at the bottom."""
    packs = [pack for pack in plan.packs if pack.travels in ("cool", "frozen")]
    if not packs:
        return "Nothing has to be kept cold."
    is_raw = any(caution.id in ("raw-meat", "raw-poultry", "raw-fish") for caution in plan.cautions)
    bottom = ["Raw meat and fish lie at the bottom, at 40 °F or below."] if is_raw else []
    return "\n".join([*(_pack(pack, plan, day) for pack in packs), *bottom])


def fat(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    """Where every fat, or the one that was named, goes."""
    named = food_in(utterance, plan)
    uses = [use for use in plan.fat if named is None or named in plan.recipe.ingredients[use.ingredient].name]
    if not (uses or plan.fat):
        return "No fat goes into this."
    told = []
    for use in uses or plan.fat:
        share = "" if use.share >= 1 else f"{words.number(use.share * 100)} % of the "
        told.append(words.sentence(share + parts.fat_said(use, plan.recipe.ingredients[use.ingredient].name)))
    return " ".join(told)


def shopping(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    """What to buy; the line of one food where it is named."""
    named = food_in(utterance, plan)
    lines = [line for line in plan.shopping if named is None or named in line.food] or list(plan.shopping)
    if not lines:
        return "Nothing to buy."
    told = []
    for line in lines:
        rest = f", {line.left_over} left over" if line.left_over else ""
        home = " (look at home first)" if line.likely_at_home else ""
        told.append(f"  {line.food}: {line.buy} for {line.need}{rest}{home}")
    return "\n".join([f"{len(lines)} to buy:", *told])


def kit(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    """The gear for camp and for home."""
    told = []
    if plan.kit.camp:
        told.append(f"For camp: {'; '.join(plan.kit.camp)}.")
    if plan.kit.home:
        told.append(f"For home: {'; '.join(plan.kit.home)}.")
    return "\n".join(told) or "Nothing beyond what is at hand."


def labels(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    """The text of every label."""
    if not plan.labels:
        return "No bag needs a label."
    return "\n".join(label.text.replace("\n", "\n  ") for label in plan.labels)


def _pack(pack: Pack, plan: Plan, day: Day) -> str:
    held = "; ".join(parts.packed(plan, item, day.units) for item in pack.items)
    return f"{parts.pack_name(pack).capitalize()} ({parts.TRAVELS[pack.travels]}): {held}."


def _holds(pack: Pack, plan: Plan, named: str) -> bool:
    return any(named in plan.recipe.ingredients[item.ingredient].name for item in pack.items)
