"""The evidence that is worked out and not read: one small question a feature, by the name in `families.toml`."""

from __future__ import annotations

from collections.abc import Callable

from rules.facts import DOUGH_BELOW, FLESH, POURS_ABOVE, SOLID, THICKENS_ABOVE, THIN, Facts
from rules.method.graph import OPEN_FIRE

#: A simmer as long as this makes a stew of a sauce [min].
LONG_SIMMER_MIN = 15.0
#: A joint in the oven for so long is pot-roasted [min].
LONG_OVEN_MIN = 100.0
#: So much liquid braises a piece of meat [g].
BRAISE_G = 200.0
#: A piece of meat this heavy is a joint [g].
JOINT_G = 900.0
#: So much milk makes a pudding of rice and sugar [g].
PUDDING_MILK_G = 250.0
#: Grain above this much is a body, not a garnish [g].
BODY_GRAIN_G = 60.0
#: Sugar per flour by weight above which a dough or batter is sweet.
SWEET_RATIO = 0.35
#: Sugar per flour by weight below which a dough is plain.
UNSWEET = 0.12
#: Canned beans that are only warmed make no bean pot [min].
BEANS_MIN = 10.0
#: Sauce from this share of the pot on makes it wet.
SAUCE_SHARE = 0.3
#: Beans are the body from this share of the pot on.
BEANS_SHARE = 0.33
#: Fat per flour by weight above which an unleavened dough is pastry.
RICH_RATIO = 0.3
#: Waiting as long as this, unheated and outside the fridge, ferments what holds no flour [min].
FERMENT_MIN = 8 * 60.0
#: Most of the foods end in the oven.
MOST = 0.5
#: More thin liquid than this is no dry heat [g].
MUCH_LIQUID_G = 240.0


def no_fire(facts: Facts) -> bool:
    """There is a method, and nothing in it meets a fire."""
    return bool(facts.actions) and not facts.fire


def ferments(facts: Facts) -> bool:
    """It is left to ferment, or sealed in jars."""
    long = facts.waits_min >= FERMENT_MIN and not facts.has_body and not facts.holds(*FLESH)
    return facts.does("ferment", "can") or long


def bakes_last(facts: Facts) -> bool:
    """Most of it ends in the oven."""
    return facts.oven and facts.baked_share >= MOST


def no_oven(facts: Facts) -> bool:
    """No oven at all."""
    return not facts.oven


def bakes_flour(facts: Facts) -> bool:
    """Flour is the body, and it ends in the oven."""
    return bakes_last(facts) and facts.has_body


def pours(facts: Facts) -> bool:
    """More water than flour."""
    return facts.hydration is not None and POURS_ABOVE < facts.hydration <= THICKENS_ABOVE


def is_between(facts: Facts) -> bool:
    """Between a batter and a dough."""
    return facts.hydration is not None and DOUGH_BELOW <= facts.hydration <= POURS_ABOVE


def is_stiff(facts: Facts) -> bool:
    """A dough by weight."""
    return facts.hydration is not None and facts.hydration < DOUGH_BELOW


def is_sweet(facts: Facts) -> bool:
    """Much sugar for its flour."""
    return facts.has_body and facts.grams("sugar", "syrup") >= SWEET_RATIO * max(facts.flour_g, 1.0)


def is_rich(facts: Facts) -> bool:
    """Unleavened dough with much fat."""
    plain = bakes_flour(facts) and not facts.leavened and not facts.yeasted and is_stiff(facts)
    return plain and facts.grams("fat") > RICH_RATIO * facts.flour_g


def is_shaped(facts: Facts) -> bool:
    """Shaped in small pieces, sweet, baked, without meat."""
    small = facts.does("shape", "roll") or "cookie" in facts.made
    sweet = facts.holds("sugar", "syrup")
    return bakes_last(facts) and small and sweet and not facts.yeasted and not facts.holds(*FLESH)


def is_flat(facts: Facts) -> bool:
    """A batter or flat dough cooked in a pan."""
    body = facts.has_body or facts.grams("oats") >= BODY_GRAIN_G
    bare = not facts.yeasted and not facts.holds("grain", *FLESH)
    wet = facts.does("boil", "steam")
    return body and bare and facts.fire and not facts.oven and not facts.deep and not wet


def is_pan_bread(facts: Facts) -> bool:
    """A yeast dough cooked in a pan."""
    return facts.yeasted and facts.has_body and facts.fire and not facts.oven and not facts.deep


def is_sweet_biscuit(facts: Facts) -> bool:
    """What is called a biscuit and is as sweet and stiff as a cookie, as in Britain and Australia."""
    named = any(word in facts.title.split() for word in ("biscuit", "biscuits"))
    return named and is_sweet(facts) and is_shaped(facts) and not pours(facts)


def is_milk_pudding(facts: Facts) -> bool:
    """A sweet grain in much milk."""
    milk = facts.grams("milk", "shelf milk")
    sweet = facts.holds("sugar", "syrup") and facts.holds("grain") and not facts.has_body
    return (
        sweet
        and milk >= max(PUDDING_MILK_G, facts.grams("grain"))
        and not facts.holds("vegetable", "cheese", *FLESH)
    )


def sets(facts: Facts) -> bool:
    """Eggs set a sweet liquid with little flour."""
    sweet = facts.holds("egg") and facts.holds("sugar", "syrup") and not facts.has_body
    return sweet and facts.fire and not facts.holds("vegetable", *FLESH)


def is_assembled(facts: Facts) -> bool:
    """Filled, layered or topped, then baked."""
    # Pieces of meat arranged in a dish roast there.
    pieces = dry_heat(facts) and facts.holds(*FLESH) and not facts.holds("cheese", "bread", "cooked grain")
    laid = facts.does("fill", "spread") or (facts.does("layer", "top") and not pieces)
    return bakes_last(facts) and laid and not facts.has_body and not facts.holds("dough")


def bakes_grain(facts: Facts) -> bool:
    """Pasta, rice or cheese baked in it."""
    return (
        bakes_last(facts)
        and not facts.has_body
        and not facts.holds("dough")
        and facts.bakes("cheese", "grain", "cooked grain")
    )


def joint_cooks_long(facts: Facts) -> bool:
    """A whole piece of meat for hours in the oven."""
    hours = facts.minutes("bake", "fry", "simmer", "other") >= LONG_OVEN_MIN
    return bakes_last(facts) and facts.has_joint and hours and not facts.bakes("grain")


def joint_simmers_long(facts: Facts) -> bool:
    """Such a piece for hours in its liquid over a fire or in a slow cooker, and nothing soupy."""
    hours = facts.minutes("simmer", "boil", "other") >= LONG_OVEN_MIN
    piece = facts.joint_g >= JOINT_G and not facts.oven and hours and simmers(facts)
    return piece and not is_thin(facts) and not facts.beans_g


def joint_braised(facts: Facts) -> bool:
    """Such a piece under a lid, in liquid."""
    return joint_cooks_long(facts) and facts.grams(*THIN) >= BRAISE_G and facts.covered


def braises_in_oven(facts: Facts) -> bool:
    """Cut meat for long in liquid, in the oven."""
    bare = not facts.has_body and not facts.has_joint and not facts.bakes("grain", "cheese", "egg", "dough")
    long = facts.minutes("bake", "simmer", "other", "fry") >= LONG_OVEN_MIN
    return bakes_last(facts) and bare and long and facts.holds("meat") and facts.grams(*THIN) >= BRAISE_G


def bakes_fish(facts: Facts) -> bool:
    """Fish is most of what goes into the oven."""
    bare = not facts.has_body and not facts.holds("grain", "cheese", "egg", "dough", "cooked grain", "bread")
    fish = facts.grams("fish")
    return bakes_last(facts) and bare and fish > 0 and 2 * fish > facts.grams(*SOLID)


def dry_heat(facts: Facts) -> bool:
    """Meat, fish or roots alone in the oven."""
    alone = (
        not facts.has_body and not facts.holds("dough", "egg", "grain") and facts.grams(*THIN) < MUCH_LIQUID_G
    )
    return bakes_last(facts) and alone and not simmers(facts) and facts.holds("vegetable", *FLESH)


def simmers(facts: Facts) -> bool:
    """It simmers in a liquid of its own."""
    return facts.does("simmer", "reduce", "pressure cook") and facts.wets


def simmers_long(facts: Facts) -> bool:
    """For a quarter of an hour or more, outside the oven."""
    return simmers(facts) and facts.minutes("simmer", "boil") >= LONG_SIMMER_MIN and not bakes_last(facts)


def simmers_briefly(facts: Facts) -> bool:
    """Fried first, and simmered for some minutes only."""
    short = 0 < facts.minutes("simmer", "boil") < LONG_SIMMER_MIN
    return simmers(facts) and fries(facts) and short and not facts.oven


def is_saucy(facts: Facts) -> bool:
    """Sauce or liquid is a large part of the pot."""
    pot = facts.sauce_g + facts.other_solids_g + facts.beans_g + facts.grain_g
    wet = facts.sauce_g > SAUCE_SHARE * pot > 0
    return wet and not facts.oven and not simmers_briefly(facts) and (fries(facts) or facts.cooks)


def is_thin(facts: Facts) -> bool:
    """More thin liquid than food."""
    return facts.grams(*THIN) > facts.grams(*SOLID) > 0 and not facts.oven


def stews(facts: Facts) -> bool:
    """Meat or vegetables simmer in it."""
    return simmers(facts) and not simmers_briefly(facts) and facts.holds("vegetable", *FLESH)


def beans_are_most(facts: Facts) -> bool:
    """Beans are a large part of the pot, and they simmer."""
    solids = facts.beans_g + facts.grain_g + facts.other_solids_g
    cooked = facts.minutes("simmer", "boil") >= BEANS_MIN or facts.holds("grain")
    return facts.beans_g > BEANS_SHARE * solids and cooked and (simmers(facts) or facts.does("boil"))


def fries(facts: Facts) -> bool:
    """Something is fried."""
    return facts.does("fry", "saute", "brown", "griddle", "deep fry")


def only_fries(facts: Facts) -> bool:
    """Fried, and nothing simmers in a liquid."""
    return (
        (fries(facts) or facts.cooks or facts.does("simmer")) and not simmers(facts) and not bakes_last(facts)
    )


def finishes_in_oven(facts: Facts) -> bool:
    """Fried, and only a part of it goes into the oven."""
    return fries(facts) and facts.oven and not bakes_last(facts) and not simmers_long(facts)


def boils_grain(facts: Facts) -> bool:
    """Pasta, rice or grain is boiled and is a body."""
    much = facts.grams("grain", "oats", "fresh pasta") >= BODY_GRAIN_G or facts.unweighed(
        "grain", "oats", "fresh pasta"
    )
    return (
        much and not bakes_last(facts) and facts.boiled("grain", "oats", "fresh pasta") and not facts.has_body
    )


def grain_is_most(facts: Facts) -> bool:
    """Pasta, rice or grain is the largest part of the pot."""
    return boils_grain(facts) and facts.grain_g > max(facts.other_solids_g, facts.beans_g)


def is_plain_dough(facts: Facts) -> bool:
    """Leavened, handled as a dough, hardly sweet."""
    plain = (
        facts.has_body
        and facts.leavened
        and not facts.yeasted
        and facts.grams("sugar", "syrup") < UNSWEET * facts.flour_g
    )
    return plain and facts.does("shape", "roll", "knead") and not pours(facts)


def only_boils(facts: Facts) -> bool:
    """Boiled or steamed, nothing fried."""
    return facts.does("boil", "steam") and not fries(facts) and not facts.oven


def boils_and_drains(facts: Facts) -> bool:
    """Boiled in water that is poured away."""
    return facts.does("boil", "steam") and facts.does("drain", "mash") and not fries(facts) and not facts.oven


def grills(facts: Facts) -> bool:
    """Grilled or smoked over an open fire, not in a pan."""
    return facts.does(*OPEN_FIRE) and not any(word in facts.vessels for word in ("pan", "pot", "skillet"))


FEATURES: dict[str, Callable[[Facts], bool]] = {
    "no fire": no_fire,
    "ferments or is jarred": ferments,
    "deep oil": lambda facts: facts.deep,
    "yeast and flour": lambda facts: facts.yeasted and facts.has_body,
    "dough as a food": lambda facts: facts.holds("dough"),
    "oven at the end": bakes_last,
    "no oven": no_oven,
    "baked flour": bakes_flour,
    "pours": pours,
    "between batter and dough": is_between,
    "dough by weight": is_stiff,
    "sweet and fat": is_sweet,
    "chemical leavener": lambda facts: facts.leavened,
    "fat cut in": lambda facts: facts.cuts_fat_in and facts.has_body,
    "rich unleavened dough": is_rich,
    "kneaded or rolled": lambda facts: facts.does("knead", "roll") and facts.has_body,
    "shaped small and baked sweet": is_shaped,
    "flour in a pan": is_flat,
    "yeast dough in a pan": is_pan_bread,
    "eggs set it": sets,
    "sweet biscuit": is_sweet_biscuit,
    "milk pudding": is_milk_pudding,
    "assembled and baked": is_assembled,
    "grain or cheese baked": bakes_grain,
    "joint cooked long": joint_cooks_long,
    "joint braised": joint_braised,
    "joint simmered long": joint_simmers_long,
    "braised in the oven": braises_in_oven,
    "fish baked": bakes_fish,
    "flesh or roots in dry heat": dry_heat,
    "simmered": simmers,
    "simmered long": simmers_long,
    "simmered briefly": simmers_briefly,
    "more liquid than food": is_thin,
    "much sauce": is_saucy,
    "flesh or roots stewed": stews,
    "beans are the body": beans_are_most,
    "fried and not simmered": only_fries,
    "fried somewhere": fries,
    "finished in the oven": finishes_in_oven,
    "grain boiled": boils_grain,
    "grain is most of it": grain_is_most,
    "plain leavened dough": is_plain_dough,
    "boiled and nothing else": only_boils,
    "boiled and drained": boils_and_drains,
    "grilled": grills,
}


def features(facts: Facts) -> frozenset[str]:
    """The names of all features that a dish has."""
    return frozenset(name for name, has in FEATURES.items() if has(facts))
