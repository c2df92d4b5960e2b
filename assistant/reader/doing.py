"""What a verb does at its place: "cook" fries in a pan, bakes in an oven, boils in water.

The rules are asked in order, the first answer counts; a verb that means one thing only keeps its deed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from assistant.reader.clauses import Clause
from assistant.reader.cooking import cooks
from assistant.reader.frame import Frame
from assistant.reader.look import Look
from assistant.reader.places import Heat, Place
from assistant.reader.scene import FRYING, LIQUID, Scene
from rules.recipe import Deed

WAITS: frozenset[Deed] = frozenset(
    {"rest", "cool", "cover", "rise", "store", "marinate", "shape", "chill", "roll"}
)
#: How far behind its verb an object may stand [characters].
FAR = 80
KEEPS_ITS_DEED: frozenset[Deed] = frozenset(
    {"rise", "marinate", "freeze", "ferment", "chill", "soak", "thaw"}
)
#: What stands before a pot that nothing was said of before.
EMPTY = re.compile(r"(?:an?|another|(?:the|your) empty|an empty) ")
NOT_BAKED: frozenset[Deed] = frozenset(
    {"rise", "rest", "cool", "preheat", "grease", "broil", "toast", "melt", "roast", "store"}
)


def deed_of(
    clause: Clause,
    *,
    page: Frame,
    place: Place | None,
    places: Sequence[Place],
    roles: frozenset[str],
    heat: Heat | None,
    warm: bool,
    scene: Scene,
) -> Deed:
    """The deed of a clause at its place in the method."""
    tokens = range(clause.start, clause.end)
    look = Look(
        verb=clause.verb.words,
        deed=clause.verb.deed,
        said=" ".join(page.low[index] for index in tokens if index not in page.asides),
        all=" ".join(page.low[index] for index in tokens),
        after=" ".join(
            page.low[index] for index in range(clause.verb_end, min(clause.end, clause.verb_end + 5))
        ),
        place=place,
        places=tuple(places),
        roles=roles,
        heat=heat,
        warm=warm,
        scene=scene,
    )
    return next((deed for rule in RULES if (deed := rule(look))), clause.verb.deed)


def heats_the_oven(look: Look) -> Deed | None:
    """Heating the oven, setting it to 350; heating a pan is no preheating."""
    if look.one_of("starts_oven") and look.into("oven"):
        strong = look.verb in ("preheat", "pre-heat", "turn on", "set", "fire up")
        if look.place and look.place.kind in ("bowl", "tin", "pan", "pot") and not strong:
            return None
        weak = look.verb in ("set", "turn", "bring", "get")
        return None if weak and not look.says("oven_heats") else "preheat"
    if look.deed == "preheat" and look.into("pan", "pot", "grill"):
        return "heat"
    return None


def turns_the_knob(look: Look) -> Deed | None:
    """Reducing the heat is no deed on food, unless it brings to a boil or a simmer."""
    if look.one_of("knob") and look.says("fire") and not look.roles:
        if look.says("boils"):
            return "boil"
        if look.says("simmers"):
            return "simmer"
        if look.verb == "bring":
            return "rest" if "room" in look.said else "heat"
        return "other"
    if look.verb == "turn":
        if re.search(r"\b(?:off|on|down|up)\b", look.after):
            return "other"
        if re.search(r"\b(?:out|onto|into)\b", look.after):
            return "add"
    return None


def brings(look: Look) -> Deed | None:
    """Bringing to a boil, to room temperature, together."""
    if not look.one_of("brings"):
        return None
    if look.tells("boils"):
        return "boil"
    if look.tells("simmers") and look.deed != "rest":
        return "simmer"
    if look.verb in ("bring", "bring to room temperature", "bring together"):
        if "room temp" in look.said:
            return "rest"
        if "together" in look.said:
            return "shape"
        return "grill" if look.into("grill") else "heat"
    return None


def goes_into_the_cold(look: Look) -> Deed | None:
    """Putting in the fridge chills, leaving in the freezer freezes."""
    if look.deed in KEEPS_ITS_DEED or look.verb in ("store", "save"):
        return None
    if not (look.one_of("lays") or look.deed in WAITS):
        return None
    if look.into("freezer"):
        return "freeze"
    if look.into("fridge"):
        return "marinate" if "marinat" in look.all else "chill"
    return None


def puts_by(look: Look) -> Deed | None:
    """Setting aside rests; what is let set rests too; what is set in a tin goes there."""
    if look.verb == "set" and look.into("tin") and not look.warm:
        return "add"
    if look.one_of("lays") and look.into("bowl") and look.says("minutes") and look.says("lid"):
        return "rest"
    if look.one_of("set_by") and look.says("aside"):
        return "rest"
    if look.verb in ("set", "firm up", "set up") and re.search(r"\b(?:let|allow)\b", look.said):
        return "rest"
    return None


def goes_on(look: Look) -> Deed | None:
    """Waiting and keeping going let the fire go on; where there is none, waiting rests."""
    scene = look.scene
    if look.verb in ("keep going", "keep", "carry on", "continue", "release"):
        going = re.search(r"\b(?:going|on|at it|cooking|release)\b", look.said)
        return scene.goes_on("other") if going and scene.fire and not look.roles - {"vegetable"} else None
    if look.verb == "repeat" and look.roles and scene.fire:
        return scene.goes_on("other")
    if look.verb == "process" and re.search(r"\b(?:canner|jars?|water bath)\b", look.said):
        return "boil"
    if look.verb != "wait":
        return None
    long = re.search(r"\b(?:days?|weeks?|months?)\b|\bto (?:set|cool|firm|rest|dry|settle)\b", look.said)
    stands = long or scene.leavened or scene.fire in (None, "bake", "roast")
    return "rest" if stands else scene.goes_on("other")


def rests(look: Look) -> Deed | None:
    """A rest may be a marinade or a rise."""
    if look.deed != "rest":
        return None
    if "marinat" in look.all:
        return "marinate"
    if look.tells("rising") or (look.scene.leavened and look.says("warm_place")):
        return "rise"
    if look.scene.yeast and look.says("warm_spot"):
        return "rise"
    if look.scene.fire and look.verb == "leave" and (look.scene.turned_down or look.says("over_fire")):
        return look.scene.goes_on("other")
    if look.scene.fire in ("bake", "roast") and look.verb == "leave" and look.says("there"):
        return "bake"
    if look.scene.fire in FRYING and look.verb == "leave" and look.tells("crust"):
        return look.scene.goes_on("other")
    if look.verb == "leave" and not (
        look.says("waiting") or look.says("stays") or look.into("fridge", "freezer")
    ):
        return "other"
    return None


def lets(look: Look) -> Deed | None:
    """What is let happen without a verb of its own: "let it come to temperature", "allow 30 minutes"."""
    if look.verb in ("let", "allow") and re.search(r"\bcome (?:up )?to\b", look.said):
        return "heat"
    if look.verb == "give" and look.says("minutes"):
        return _given(look)
    if look.verb in ("let", "allow", "go", "get") and look.tells("soft") and "fat" in look.roles:
        return "saute"
    if look.verb == "dry" and re.search(r"\b(?:let|allow|leave)\b", look.said):
        return "rest"
    if look.verb not in ("let", "allow", "leave", "keep"):
        return None
    if re.search(r"\b(?:boil|bubbl|tick over|ticking|blip|putter|murmur|plop)", look.said):
        return "boil" if "boil" in look.said else "simmer"
    if "simmering" in look.said:
        return "simmer"
    if look.verb != "keep" and look.says("rising"):
        return "rise"
    return "rest" if look.verb != "keep" and look.says("waiting") else None


def _given(look: Look) -> Deed | None:
    """Time given to what is in the oven or in the pan goes on with it; to what comes out of the oven it is a rest."""
    if look.into("oven") or (look.scene.fire is None and look.scene.oven and look.scene.in_tin):
        return "bake"
    goes_on = look.says("longer") or look.says("over_fire") or look.scene.fire not in (None, "bake", "roast")
    return look.scene.goes_on("other") if goes_on and look.scene.fire else "rest"


def goes_into_the_oven(look: Look) -> Deed | None:
    """What is placed in the oven bakes; butter put there melts."""
    if (
        not look.into("oven")
        or look.deed in NOT_BAKED
        or look.verb in ("leave", "keep", "let", "allow", "open", "check")
    ):
        return None
    if _is_empty(look):
        return "heat"
    if look.one_of("lays") or look.deed in ("brown", "heat", "saute"):
        melts = ("melt" in look.all and "fat" in look.roles) or look.tells("melting_fat")
        return "melt" if melts else "bake"
    return None


def _is_empty(look: Look) -> bool:
    """Whether a pot is put in the oven by itself: "put a heavy lidded pot in the oven"."""
    first = look.places[0]
    if look.roles or first.after_preposition or first.kind not in ("pan", "pot", "tin"):
        return False
    return EMPTY.match(look.after) is not None or (look.after.startswith("your ") and not look.scene.begun)


def dips(look: Look) -> Deed | None:
    """What is dipped in boiling water boils, however short."""
    return "boil" if look.one_of("dips") and "boiling water" in look.said else None


def goes_under_the_grill(look: Look) -> Deed | None:
    """What stands under a grill is grilled from above."""
    return (
        "broil"
        if look.says("under_grill") and (look.one_of("lays") or look.deed in ("brown", "grill", "toast"))
        else None
    )


def covers(look: Look) -> Deed | None:
    """Covering with water pours, covering with cheese tops; a lid covers."""
    wet = bool(look.roles & LIQUID)
    if (
        look.verb in ("cover", "fill", "top up", "fill up with")
        and wet
        and look.says("pours_over")
        and not look.into("tin")
    ):
        return "pour"
    if (
        look.verb == "cover"
        and look.roles
        and re.search(r"\b(?:with|in)\b", look.said)
        and not look.says("lid")
    ):
        return "top"
    if look.verb in ("put", "place", "add", "replace", "set", "return") and re.search(
        r"\b(?:the|a|its|with) (?:\w+ )?(?:lid|cover)\b", look.after
    ):
        return "cover"
    return None


def tops(look: Look) -> Deed | None:
    """Adding on top is no mixing in."""
    if look.deed in ("add", "pour") and re.search(r"\b(?:on|over) (?:the )?top\b|\bon top of\b", look.said):
        return "top"
    return None


def drops_in(look: Look) -> Deed | None:
    """Grating over the top tops; cutting into the pot adds."""
    if look.deed not in ("chop", "grate", "peel", "grind"):
        return None
    if re.search(r"\bover (?:the |your )?(?!heat|a |low|medium|high)\w+\b|\bon top\b", look.said):
        return "top"
    head = (
        look.place.name.lower().split()[-1] if look.place and look.into("pan", "pot", "bowl", "tin") else None
    )
    return (
        "add"
        if head and re.search(rf"\b(?:into|over|onto) (?:\w+ ){{0,4}}{re.escape(head)}\b", look.said)
        else None
    )


def fats(look: Look) -> Deed | None:
    """Buttering a tin greases; cutting butter into flour cuts in."""
    vessel = look.place is not None and look.place.kind in ("tin", "pan", "pot", "bowl")
    if look.place and vessel and look.verb in (
        "butter", "oil", "flour", "brush", "coat", "rub", "spray", "dust", "line", "smear", "spread", "wipe"
    ):  # fmt: skip
        if _is_object(look, look.place.name.lower().split()[-1]):
            return "line" if look.verb == "line" else "grease"
        if look.verb == "coat" and look.says("bottom"):
            return "heat" if look.heat else "grease"
    if look.verb == "cut in" or (
        look.verb
        in ("cut", "work in", "rub", "rub in", "cut up", "cut into", "work together", "press", "work")
        and re.search(r"\b(?:in|into|through|together)\b", look.said)
        and "fat" in look.roles
        and ("flour" in look.roles or look.says("dry"))
    ):
        if look.after[:1].isdigit() or re.search(
            r"\b(?:pieces|slices|strips|wedges|rings|half)\b", look.after
        ):
            return "chop"
        return "rub" if look.deed == "rub" else "cut in"
    return None


def _is_object(look: Look, vessel: str) -> bool:
    """Whether a vessel is what the verb is done to: "butter a 9-inch square dish", not "spread it in the dish"."""
    _, _, after = look.all.partition(look.verb)
    between, found, _ = after[:FAR].partition(vessel)
    return bool(found) and not re.search(r"\b(?:in|into|on|onto|over|with|to)\b|,", between)


def lowers(look: Look) -> Deed | None:
    """A boil on a low fire is a simmer; "reduce the heat" is no reduction."""
    if look.deed == "boil" and (look.heat == "low" or "gently" in look.said):
        return "simmer"
    if look.verb == "reduce" and look.says("fire") and not re.search(r"\b(?:sauce|liquid)\b|until", look.all):
        return "other"
    return "other" if look.verb == "set" and "timer" in look.said else None


def fries(look: Look) -> Deed | None:
    """Roasting in a pan over a fire fries; grilling in a pan too; frying on a grill grills."""
    scene = look.scene
    stove = (
        not look.into("oven", "tin")
        and scene.fire in FRYING
        and not (scene.oven or scene.in_tin or look.warm)
    )
    if look.deed in ("bake", "roast") and stove and "oven" not in look.all:
        return "fry"
    if look.deed == "grill" and (look.into("pan") or (scene.vessel == "pan" and scene.fire in FRYING)):
        return "fry"
    if look.deed == "fry" and re.search(r"\bdeep\b.{0,12}\b(?:fat|oil|lard|shortening)\b", look.said):
        return "deep fry"
    if (
        look.verb in ("bubble", "sizzle")
        and scene.fire in FRYING
        and not scene.wet
        and not look.roles & LIQUID
    ):
        # Flour in hot fat bubbles and fries.
        return scene.fire
    if look.deed in ("fry", "saute") and look.into("grill"):
        return "grill"
    if look.deed == "saute" and look.verb in ("sweat", "soften", "wilt") and look.into("oven"):
        return "bake"
    return None


def blooms(look: Look) -> Deed | None:
    """Gelatine and yeast bloom and soften in water; spices bloom in fat."""
    wet = look.roles & LIQUID or re.search(r"\b(?:water|gelatine?|yeast)\b", look.said)
    if look.verb == "soften":
        wet = look.roles & {"yeast"} or re.search(r"\b(?:gelatine?|yeast)\b", look.said)
    return "soak" if look.verb in ("bloom", "soften") and wet else None


def dries(look: Look) -> Deed | None:
    """Patting dry drains; drying spices toasts; squeezing a lemon over is a pouring."""
    if look.verb == "pat" and "dry" in look.said:
        return "drain"
    if (
        look.verb in ("squeeze", "juice")
        and re.search(r"\b(?:over|into|in|on)\b", look.said)
        and look.roles & {"fruit", "juice", "acid"}
    ):
        return "pour"
    return None


RULES: tuple[Callable[[Look], Deed | None], ...] = (
    heats_the_oven, turns_the_knob, brings, goes_into_the_cold, puts_by, goes_on, rests, lets,
    goes_into_the_oven, dips, goes_under_the_grill, covers, tops, drops_in, fats, lowers, cooks,
    fries, blooms, dries,
)  # fmt: skip
