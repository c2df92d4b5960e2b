"""What "cook" does: it bakes in an oven, fries in a pan, boils in water, simmers in what is wet."""

from __future__ import annotations

import re

from assistant.reader.look import Look, pattern
from assistant.reader.scene import FRYING, LIQUID
from rules.recipe import Deed


def cooks(look: Look) -> Deed | None:
    """Cooking by where it happens and what is in there."""
    scene = look.scene
    if look.verb == "continue" and not re.search(r"\b(?:cook|simmer|boil|bak|fry)", look.said):
        return None
    if look.verb == "finish" and not re.search(r"\b(?:cook|bak|oven)", look.said):
        return None
    if look.verb not in ("cook", "finish", "continue", "cook down"):
        return None
    if look.into("oven") or re.search(r"\bbak", look.said):
        return "bake"
    if look.into("grill"):
        return "grill"
    if look.into("pressure") or "pressure" in look.said:
        return "pressure cook"
    if (
        look.says("pasta")
        and not (scene.fire in FRYING and scene.wet)
        and scene.fire not in ("bake", "roast")
    ):
        return "boil"
    if scene.pressure:
        return "pressure cook"
    if _goes_on_baking(look) and not _on_the_stove(look):
        return "bake"
    return _on_a_stove(look)


def _goes_on_baking(look: Look) -> bool:
    scene = look.scene
    return scene.in_tin or scene.fire in ("bake", "roast") or (scene.oven and scene.fire is None)


def _on_the_stove(look: Look) -> bool:
    if look.says("over_fire"):
        return True
    return not look.scene.in_tin and (look.heat is not None or "fat" in look.roles or look.into("pan", "pot"))


def _is_a_liquid(look: Look) -> bool:
    """Whether a clause names a dish that is cooked as a liquid; the soup of a "soup pot" is none."""
    said = look.said
    for place in look.places:
        said = said.replace(place.name.lower(), " ")
    return bool(pattern("simmered").search(said))


def _on_a_stove(look: Look) -> Deed:
    scene = look.scene
    wet = scene.wet or bool(look.roles & LIQUID) or _is_a_liquid(look)
    if look.into("pan") and not look.roles & LIQUID and (look.place is None or look.place.another or not wet):
        wet = False
    if wet:
        if scene.fire == "boil" or (look.says("starchy") and scene.fire not in ("simmer", "reduce")):
            return "boil" if (look.heat or scene.heat) != "low" else "simmer"
        return "simmer"
    if look.verb == "cook down" and scene.fire is None and not look.roles & {"fat"}:
        return "simmer"
    if look.says("starchy") and scene.fire is None and not _on_the_stove(look):
        return "boil"
    gentle = look.tells("soft") and not re.search(r"\bbrown", look.all)
    if gentle:
        return "saute"
    goes_on = scene.fire if scene.fire not in (*FRYING, "bake", "roast", "boil", "simmer") else None
    return goes_on or "fry"
