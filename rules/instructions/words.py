"""Foods, packs and deeds in the words of a step: "2 cups flour", "the dry mix (dry-1)", "fry it gently"."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from rules import table, wording
from rules.circumstances import Units
from rules.packs import Contents
from rules.packs.label import listing
from rules.plan import Pack, PackItem
from rules.recipe import Action, Deed, Ingredient, Recipe
from rules.units import number
from rules.wording import measured

#: States that a food is brought into just before it goes in.
GOES_IN = frozenset(
    [
        "melted",
        "softened",
        "beaten",
        "lightly beaten",
        "warm",
        "warmed",
        "lukewarm",
        "hot",
        "drained",
        "rinsed",
        "drained and rinsed",
    ]
)
HOUR_MIN = 60
#: From here on a time is told in hours [min].
LONG_MIN = 90


class DeedWords(table.Row, frozen=True, kw_only=True):
    """How a deed is told; {what} stands for the foods, {word} for the verb as written."""

    deed: Deed
    opening: str
    joining: str
    bare: str | None = None


class PrepVerb(table.Row, frozen=True, kw_only=True):
    """The verb of a preparation word: "chopped" is done by "chop"."""

    word: str
    verb: str


@cache
def deed_words() -> dict[str, DeedWords]:
    """Every deed with its wording."""
    return {row.deed: row for row in table.read("deed_words.toml", DeedWords)}


@cache
def prep_verbs() -> dict[str, str]:
    """Every preparation word with its verb."""
    return {row.word: row.verb for row in table.read("prep_verbs.csv", PrepVerb)}


def amount_of(item: PackItem, ingredient: Ingredient, units: Units) -> str:
    """The amount and the name: "2 cups flour", "3 cloves of garlic", "salt"."""
    return measured(item.amount, ingredient.name, system=units, grams=item.grams)


def with_state(told: str, ingredient: Ingredient) -> str:
    """The food with the state in which it goes in: "1/2 cup butter, melted"."""
    said = {word for word in (*ingredient.state, ingredient.prep or "") if word in GOES_IN}
    return with_note(told, joined(sorted(said)))


def with_note(told: str, note: str) -> str:
    """A food with a remark in brackets, in those that it has: "1 can of corn (15 ounces, drained)"."""
    if not note:
        return told
    return f"{told[:-1]}, {note})" if told.endswith(")") else f"{told} ({note})"


def contents(pack: Pack, recipe: Recipe, units: Units) -> list[str]:
    """Every food of a pack with its amount."""
    return [amount_of(item, recipe.ingredients[item.ingredient], units) for item in pack.items]


def called(pack: Pack, recipe: Recipe, inside: Contents) -> str:
    """A pack as a step calls it, with its id: "the dry mix (dry-1)"."""
    names = listing(list(dict.fromkeys(recipe.ingredients[item.ingredient].name for item in pack.items)))
    several = len(pack.items) > 1
    match inside.sort(pack):
        case "dry" if several:
            said = "dry mix"
        case "season" if several:
            said = "seasoning"
        case "wet":
            said = "bottled sauce" if several else names
        case "fruit":
            said = "fruit"
        case "dough":
            said = "dough"
        case "mix":
            said = "mix from home"
        case "creamed":
            said = f"creamed {names}"
        case "cut":
            said = f"cut {names}"
        case "flesh":
            said = recipe.ingredients[_flesh(pack, recipe)].name + (" with its marinade" if several else "")
        case _:
            said = names
    part = (
        f" for the {pack.component}"
        if pack.component and inside.sort(pack) in ("dry", "season", "wet")
        else ""
    )
    return f"the {said}{part} ({pack.id})"


def _flesh(pack: Pack, recipe: Recipe) -> int:
    from rules.roles import role_of

    for item in pack.items:
        if role_of(recipe.ingredients[item.ingredient]) in ("meat", "fish", "cured meat", "tofu"):
            return item.ingredient
    return pack.items[0].ingredient


def joined(parts: Iterable[str]) -> str:
    """What there is of a list, each once, as one says it: "a, b and c"."""
    return wording.joined(list(dict.fromkeys(filter(None, parts))))


def sentence(text: str) -> str:
    """A sentence: a capital first, a full stop last, no double blanks."""
    text = " ".join(text.split()).strip(" .,;:")
    stop = "" if text.endswith(("!", "?")) else "."
    return text[:1].upper() + text[1:] + stop if text else ""


def time_of(action: Action) -> str:
    """The time that an action takes: " for 20 to 25 minutes", " for 4 to 5 hours", or nothing."""
    span = action.minutes
    if span is None or span.high_min <= 0:
        return ""
    if span.high_min < 1:
        return f" for {span.high_min * 60:.0f} seconds"
    if span.low_min >= LONG_MIN:
        return f" for {_range(span.low_min / HOUR_MIN, span.high_min / HOUR_MIN)} hours"
    minutes = _range(span.low_min, span.high_min)
    return f" for {minutes} minute{'' if minutes == '1' else 's'}"


def _range(low: float, high: float) -> str:
    return number(low) if low == high else f"{number(low)} to {number(high)}"


def sign_of(action: Action) -> str:
    """The sign to wait for: ", until golden"."""
    return f", {action.until}" if action.until else ""
