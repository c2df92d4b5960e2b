"""One deed as a sentence for camp, with the foods that it takes or without any."""

from __future__ import annotations

from rules.instructions.words import deed_words, joined, sign_of, time_of
from rules.method.graph import FIRE, LAYING, parts
from rules.recipe import Action, Deed

#: Deeds that cook in the fat that they take.
IN_FAT: frozenset[Deed] = frozenset({"fry", "saute", "brown", "griddle", "deep fry"})
#: Deeds of one thing on or into another, told with the names of the things.
OVER: frozenset[Deed] = frozenset({"pour", "spread", "top", "layer", "fill", "coat", "add"})
#: Waiting that is not worth a sentence without a time or a sign.
WAITS: frozenset[Deed] = frozenset({"rest", "cool", "chill"})
#: Verbs whose food goes into the thing and not the other way round.
DIPPING = frozenset(["dip", "dunk", "dredge", "roll"])
#: Words for things that say nothing of which thing.
VAGUE = frozenset(["piece", "it", "round", "slice", "side", "one", "half"])


def with_foods(action: Action, foods: list[str], *, first: bool, hot: bool, laid: bool, fats: bool) -> str:
    """The deed with what it takes: "stir in 2 eggs and 1 cup milk until smooth".

    `first`: nothing was in the bowl or pot before; `hot`: it is on the fire; `laid`: it goes on top; `fats`: nothing but
    fat is taken.
    """
    what = joined(foods)
    words = deed_words().get(action.does)
    if fats and action.does in IN_FAT and words and words.bare:
        return f"heat {what} in the pot and {words.bare}{_how_long(action)}"
    if action.does == "coat" and action.word in DIPPING:
        return f"dip {what} in it{_how_long(action)}"
    pattern = (words.opening if first else words.joining) if words else "add {what}"
    where = ""
    if first and not laid:
        where = (
            " in the pot" if hot else " in the bowl" if action.does in ("mix", "beat", "add", "cream") else ""
        )
    return pattern.format(what=what) + where + _how_long(action)


def without_foods(action: Action, *, empty: bool) -> str:
    """The deed alone: "simmer it for 20 minutes". `empty`: nothing is in the pot yet, so there is nothing to do it to."""
    words = deed_words().get(action.does)
    cooks = action.does in FIRE or parts(action.does, action.word)
    if words is None or (action.does == "other" and not cooks) or (cooks and empty):
        return ""
    if action.does in WAITS and not (action.minutes or action.until):
        return ""
    if action.does == "turn" and {"out", "onto"} & set(action.word.split()):
        return ""
    if action.does in OVER:
        return _over(action)
    if words.bare is None:
        return ""
    word = action.does if action.word.endswith(("ing", "ed")) else action.word
    return words.bare.format(word=word) + _how_long(action)


def _over(action: Action) -> str:
    """Things that are named go on one another: "pour the batter over the hot butter"."""
    things = [name for name in action.things if name not in VAGUE]
    if not things or (
        action.does == "add" and action.word not in ("drop", "lay", "heap", "put", "place", "spoon")
    ):
        return ""
    verb = action.word if action.does in LAYING | {"pour"} and " " not in action.word else "put"
    if action.does in ("layer", "fill"):
        return (
            f"{action.does} it with the {joined(things)}"
            if action.does == "fill"
            else f"layer the {joined(things)}"
        )
    if len(things) > 1:
        return f"{verb} the {things[0]} over the {joined(things[1:])}"
    return f"{verb} the {things[0]} in" if action.does == "pour" else f"{verb} it on the {things[0]}"


def _how_long(action: Action) -> str:
    return time_of(action) + sign_of(action)
