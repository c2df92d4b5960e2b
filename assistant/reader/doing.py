"""What a verb does at its place: "cook" fries in a pan, bakes in an oven, boils in water.

The rules are asked in order, the first answer counts; a verb that means one thing only keeps its deed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from spacy.tokens import Doc

from assistant.reader.clauses import Clause
from assistant.reader.places import Place
from rules.recipe import Deed
from rules.roles import Role

#: Handwork and the like: what is only handled has not entered anything yet.
HANDLING: frozenset[Deed] = frozenset(
    {
        "chop",
        "grate",
        "peel",
        "grind",
        "rinse",
        "drain",
        "strain",
        "thaw",
        "other",
        "line",
        "turn",
        "preheat",
        "cover",
        "store",
        "can",
    }
)
LAYS = frozenset(
    {
        "put",
        "put in",
        "place",
        "set",
        "set in",
        "slide",
        "pop",
        "transfer",
        "return",
        "move",
        "lay",
        "stick",
        "leave",
        "keep",
        "let",
        "allow",
        "go",
        "bring",
        "take",
        "store",
        "finish",
        "continue",
        "cook",
        "add",
        "add in",
        "bung",
        "chuck",
        "throw",
        "throw in",
        "put it",
    }
)
LIQUIDS: frozenset[Role] = frozenset(
    {"water", "stock", "milk", "shelf milk", "can", "sauce", "juice", "drink", "spirits"}
)
BOILED: frozenset[Role] = frozenset({"grain"})
FATTY: frozenset[Role] = frozenset({"fat"})
FIRE: frozenset[Deed] = frozenset(
    {
        "brown",
        "saute",
        "fry",
        "deep fry",
        "griddle",
        "boil",
        "simmer",
        "reduce",
        "deglaze",
        "steam",
        "pressure cook",
        "bake",
        "roast",
        "broil",
        "grill",
        "smoke",
        "toast",
        "heat",
        "melt",
    }
)
WAIT: frozenset[Deed] = frozenset({"rise", "rest", "chill", "freeze", "marinate", "soak", "cool", "ferment"})
CRISP = (
    "brown",
    "golden",
    "translucent",
    "crisp",
    "fragrant",
    "caramel",
    "glazed",
    "softened",
    "tender-crisp",
    "sizzl",
    "char",
)

#: "350F", "at 350", "350 deg.", "gas 4": what only an oven is set to.
OVEN_FIGURE = re.compile(r"\b\d{3}\s?(?:f|c|deg)\b|\bat \d{3}\b(?! ?(?:g|ml))|\bgas (?:mark )?\d")


@dataclass
class Scene:
    """Where the cook stands: what is over the fire, whether it is wet, what was done last."""

    last: Deed | None = None
    fire: Deed | None = None
    wet: bool = False
    water: bool = False
    pressure: bool = False
    leavened: bool = False
    oven: bool = False

    def after(self, deed: Deed, place: Place | None, roles: Sequence[Role], *, text: str) -> None:
        """Take note of a deed that was done."""
        cold = place is not None and place.kind in ("bowl", "fridge", "freezer", "tin")
        if place and place.kind == "pressure":
            self.pressure = True
        if "yeast" in roles or "starter" in roles:
            self.leavened = True
        if place and place.another and place.kind in ("pan", "pot") and not place.out:
            self.wet = self.water = False
        if (
            deed in ("heat", "melt")
            and any(role in FATTY for role in roles)
            and (place is None or place.kind in ("pan", "pot"))
        ):
            self.wet = self.water = False
            self.fire = "fry"
        if (
            (not cold
            and deed not in HANDLING
            and deed not in ("mix", "season", "beat", "marinate", "coat"))
            or (deed == "mix" and self.fire and not cold)
        ):
            if set(roles) & LIQUIDS:
                self.wet = True
            if set(roles) & {"water", "stock", "milk"} and deed in ("boil", "add", "pour", "heat", "fill"):
                self.water = True
        if deed == "drain" and "water" not in roles:
            self.wet = self.water = False
        if deed in FIRE and deed not in ("heat", "melt"):
            self.fire = deed
            if deed in ("boil", "simmer", "reduce"):
                self.wet = True
            if deed == "boil":
                self.water = self.water or "water" in roles
        if (
            deed in FIRE | WAIT
            or deed in ("knead", "mix", "beat", "blend", "store", "rub")
            or deed == "preheat"
        ):
            self.last = (
                deed
                if not (deed in ("mix", "beat", "preheat") and self.fire and not cold)
                else self.last
                if self.last in FIRE
                else self.fire
            )


def deed_of(
    clause: Clause,
    place: Place | None,
    places: Sequence[Place],
    roles: Sequence[frozenset[str]],
    scene: Scene,
) -> Deed:
    """The deed of a clause at its place in the method."""
    text = clause.doc[clause.start : clause.end].text.lower()
    look = _Look(
        clause,
        clause.verb.words,
        text,
        place,
        tuple(places),
        frozenset(r for group in roles for r in group),
        scene,
    )
    for rule in RULES:
        deed = rule(look)
        if deed:
            return deed
    return clause.verb.deed


@dataclass(frozen=True)
class _Look:
    clause: Clause
    verb: str
    text: str
    place: Place | None
    places: tuple[Place, ...]
    roles: frozenset[str]
    scene: Scene

    @property
    def doc(self) -> Doc:
        return self.clause.doc

    def into(self, *kinds: str) -> bool:
        return any(place.kind in kinds and not place.out for place in self.places)

    def has(self, *words: str) -> bool:
        return any(word in self.text for word in words)


def _preheats(look: _Look) -> Deed | None:
    if look.verb in (
        "heat",
        "heat up",
        "set",
        "turn",
        "turn on",
        "preheat",
        "warm",
        "warm up",
        "light",
        "fire up",
        "start",
        "bring",
        "get",
    ) and look.into("oven"):
        if (
            look.place
            and look.place.kind in ("bowl", "tin", "pan", "pot")
            and look.verb not in ("preheat", "turn on", "set")
        ):
            return None
        if look.verb in ("set", "turn", "bring", "get") and not look.has(
            "°", "degree", "preheat", "heat", "moderate", "hot oven", " to ", "gas", "for "
        ):
            return None
        return "preheat"
    if look.verb in ("preheat", "pre-heat") and not look.into("oven") and look.into("pan", "pot", "grill"):
        return "heat"
    return None


def _turns_the_knob(look: _Look) -> Deed | None:
    if (
        look.verb
        in (
            "reduce",
            "lower",
            "turn",
            "turn down",
            "turn up",
            "increase",
            "raise",
            "decrease",
            "lower in",
            "bring",
        )
        and look.has("heat", "flame", "gas", "temperature", "the fire", "burner")
        and not look.roles
    ):
        if look.has("to a boil", "to boil"):
            return "boil"
        if look.has("to a simmer", "to simmer"):
            return "simmer"
        if look.verb == "bring" and look.has("temperature"):
            return "rest" if look.has("room") else "heat"
        return "other"
    if look.verb == "turn" and look.has(" off", " on ", "down", " up"):
        return "other"
    if look.verb == "turn" and look.has("out", "onto", "into a"):
        return "add"
    return None


def _brings(look: _Look) -> Deed | None:
    if look.verb not in (
        "bring",
        "heat",
        "return",
        "come",
        "allow",
        "let",
        "get",
        "bring together",
        "warm",
        "heat up",
        "raise",
        "turn up",
        "put",
        "set",
        "allow to come",
    ):
        return None
    if look.has(
        "to a boil",
        "to boil",
        "to the boil",
        "rolling boil",
        "to a full boil",
        "to a gentle boil",
        "to a low boil",
        "boiling point",
        "it to boil",
        "until boiling",
        "until it boils",
        "comes to a boil",
        "come to a boil",
        "until it comes to a",
    ):
        return "boil"
    if look.has(
        "to a simmer",
        "to simmer",
        "to a gentle simmer",
        "to a low simmer",
        "to a bare simmer",
        "until simmering",
    ):
        return "simmer"
    if look.verb == "bring":
        if look.has("room temp"):
            return "rest"
        if look.has("together"):
            return "shape"
        return "grill" if look.into("grill") else "heat"
    return None


def _by_cold(look: _Look) -> Deed | None:
    waits = look.clause.verb.deed in (
        "rest",
        "cool",
        "cover",
        "rise",
        "store",
        "marinate",
        "shape",
        "chill",
        "roll",
    )
    if look.clause.verb.deed in ("rise", "marinate", "freeze", "ferment", "chill", "soak", "thaw"):
        return None
    if look.into("freezer") and (look.verb in LAYS or waits):
        return "freeze"
    if look.into("fridge") and (look.verb in LAYS or waits) and look.verb not in ("store", "keep"):
        return "marinate" if look.has("marinat") else "chill"
    return None


def _by_oven(look: _Look) -> Deed | None:
    if not look.into("oven"):
        return None
    if look.clause.verb.deed in (
        "rise",
        "rest",
        "cool",
        "preheat",
        "grease",
        "broil",
        "toast",
        "melt",
        "roast",
        "store",
    ) or look.verb in ("leave", "keep", "turn off", "turn on", "open", "check", "let", "allow"):
        return None
    if look.verb in LAYS or look.verb == "cook" or look.clause.verb.deed in ("brown", "heat"):
        return "melt" if look.has("melt") else "bake"
    return None


def _covers(look: _Look) -> Deed | None:
    if (
        look.verb in ("cover", "fill", "top up")
        and look.has("water", "stock", "broth", "milk", "with liquid")
        and look.roles & {"water", "stock", "milk", "drink"}
        and not look.into("tin")
    ):
        return "pour"
    if look.verb == "cover" and look.roles and look.has("with", " in "):
        return "top"
    if look.verb in ("put", "place", "add") and look.has("the lid", "a lid", "the cover", " lid "):
        return "cover"
    return None


def _fats(look: _Look) -> Deed | None:
    vessel = look.place is not None and look.place.kind in ("tin", "pan", "pot", "bowl")
    if (
        look.verb
        in (
            "butter",
            "oil",
            "flour",
            "brush",
            "coat",
            "rub",
            "spray",
            "dust",
            "line",
            "smear",
            "spread",
            "wipe",
        )
        and vessel
        and not look.into("oven")
    ):
        following = look.doc[look.clause.verb_end : look.clause.verb_end + 5].text.lower()
        if look.place and look.place.words.lower().split()[-1] in following.split():
            return "line" if look.verb == "line" else "grease"
        if look.verb == "coat" and look.has("bottom"):
            return "grease" if not look.has("heat") else "heat"
    if look.verb == "cut in" or (
        look.verb in ("cut", "work in", "rub", "cut up", "cut into", "work together", "press")
        and look.has("into", "in the flour")
        and "fat" in look.roles
        and (look.roles & {"flour"} or look.has("flour", "dry", "mixture"))
    ):
        following = look.doc[look.clause.verb_end].text if look.clause.verb_end < len(look.doc) else ""
        if following[:1].isdigit() or (look.has("pieces", "slices", "strips") and "flour" not in look.text):
            return "chop"
        return "rub" if look.verb == "rub" else "cut in"
    return None


def _waits(look: _Look) -> Deed | None:
    verb = look.clause.verb
    if look.verb in ("set", "put", "lay", "leave", "place", "keep", "move") and look.has(
        "aside", "to one side", "to the side"
    ):
        return "rest"
    if verb.deed == "rest" and look.has(
        "room temperature", "warm place", "warm spot", "double", "doubled", "risen", "draft", "rise"
    ):
        if look.scene.leavened or look.has("double", "rise"):
            return (
                "rise"
                if look.has("double", "rise", "risen", "warm", "room temperature", "increased")
                else None
            )
    if verb.deed == "rest" and look.has("marinat", "marinade"):
        return "marinate"
    if look.verb == "wait":
        return (
            look.scene.fire
            if look.scene.fire in FIRE and look.scene.last in FIRE | {"mix", "cover", None}
            else "rest"
        )
    if look.verb in ("let", "allow", "leave", "keep") and look.has("refrigerator", "fridge"):
        return "chill"
    if look.verb in ("let", "allow", "leave"):
        if look.has("boiling", "bubbl"):
            return "simmer"
        return "rest" if look.has("minute", "hour", "stand", "rest", "min") else None
    if look.verb == "keep" and look.has("boiling", "simmering"):
        return "boil" if look.has("boiling") else "simmer"
    return None


def _boils_low(look: _Look) -> Deed | None:
    if look.clause.verb.deed == "boil" and look.has("low heat", "gentle heat", "gently", "low flame"):
        return "simmer"
    return None


def _reduces(look: _Look) -> Deed | None:
    if (
        look.verb == "reduce"
        and look.has("heat", "temperature", "flame")
        and not look.has("over", "on low", "on medium", "sauce", "liquid", "until")
    ):
        return "other"
    if look.verb == "turn to":
        return "other"
    return None


def _fries(look: _Look) -> Deed | None:
    deed = look.clause.verb.deed
    if (
        deed in ("bake", "roast")
        and not look.into("oven", "tin")
        and look.scene.fire in ("fry", "saute", "brown")
        and not look.scene.oven
        and (look.into("pan") or look.has("side", "flip"))
        and not look.has("°", "oven", "minutes at", "degree")
        and not OVEN_FIGURE.search(look.text)
    ):
        return "fry"
    if deed == "grill" and look.into("pan"):
        return "fry"
    if deed == "fry" and look.into("grill"):
        return "grill"
    if deed == "simmer" and look.verb == "stew":
        return "simmer"
    return None


def _cooks(look: _Look) -> Deed | None:
    if look.verb not in ("cook", "finish", "continue", "cook down"):
        return None
    if look.verb == "continue" and not look.has("cook", "simmer", "boil", "bak", "fry"):
        return None
    if look.verb == "finish" and not look.has("cook", "bak", "oven"):
        return None
    if look.into("oven") or look.has("bake"):
        return "bake"
    if look.into("grill"):
        return "grill"
    if look.into("pressure") or look.has("pressure"):
        return "pressure cook"
    if look.into("pan") and not look.scene.wet:
        return "fry"
    if (
        look.has(
            "pasta",
            "noodle",
            "spaghetti",
            "macaroni",
            "penne",
            "al dente",
            "package direction",
            "package instruction",
            "water",
        )
        or ("grain" in look.roles
        and not look.scene.fire == "fry")
    ):
        return "boil"
    if look.scene.pressure:
        return "pressure cook"
    if look.verb == "cook down":
        return "simmer" if look.scene.wet else "saute"
    if (
        (look.scene.fire in ("bake", "roast")
        and look.scene.last in ("bake", "roast", "rest", None))
        or (look.scene.oven and not look.scene.fire)
    ):
        return "bake"
    if look.scene.wet:
        return "boil" if look.scene.water and look.scene.fire != "fry" else "simmer"
    if look.roles & LIQUIDS and look.scene.fire not in ("fry", "saute", "brown"):
        return "simmer"
    if (
        look.has(*CRISP)
        or look.scene.fire in ("fry", "saute", "brown")
        or "fat" in look.roles
        or look.has("oil", "butter")
    ):
        return (
            "saute"
            if look.roles & {"vegetable", "greens"} or look.has("translucent", "soft", "fragrant")
            else "fry"
        )
    return look.scene.fire or "fry"


def _separates(look: _Look) -> Deed | None:
    if look.verb == "pat" and look.has("dry"):
        return "drain"
    if look.verb in ("sweat", "soften") and look.into("oven"):
        return "bake"
    if look.verb == "double" or (look.verb == "set" and look.has("timer")):
        return "other" if look.verb == "set" else None
    if look.verb == "dry" and look.roles & {"spice"}:
        return "toast"
    if look.verb in ("take", "use", "get", "measure") and look.has(" and ") and False:
        return "add"
    return None


RULES: tuple[Callable[[_Look], Deed | None], ...] = (
    _preheats, _turns_the_knob, _brings, _by_cold, _waits, _by_oven, _covers, _fats, _boils_low, _reduces, _cooks, _fries, _separates,
)  # fmt: skip
