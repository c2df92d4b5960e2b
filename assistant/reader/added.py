"""Foods that only the method names: water for the pasta, oil for the pan, a pinch of salt.

They become ingredients "from the method", with an amount only where the text gives one. What the dish is, what it is
like, and what goes well beside it are no ingredients.
"""

from __future__ import annotations

from bisect import bisect_right

from assistant.reader import words
from assistant.reader.clauses import Clause
from assistant.reader.known import is_food
from assistant.reader.lines import read_line
from assistant.reader.mentions import Mention, thing_words
from assistant.reader.referring import Referring
from assistant.reader.sheet import Sheet
from assistant.reader.things import GIVES
from rules.foods import catalogue
from rules.foods.names import plain, singulars
from rules.recipe import Amount, Deed, Ingredient
from rules.roles import Role, role_of

#: Deeds on food that is there already, or for which what is named is a help and no food of the dish.
NOT_TAKING: frozenset[Deed] = frozenset(
    {
        "rinse", "drain", "strain", "store", "cool", "turn", "preheat", "line", "peel", "grate", "can", "other",
        "chop", "chill", "freeze", "rest", "rise",
    }
)  # fmt: skip
#: Foods of these groups may be the dish itself: the bread of "Overnight Bread". The chicken of a sandwich is bought.
DISHES = frozenset({"bread", "sauce", "condiment", "sweet", "stock", "other", "canned"})
#: Foods that every kitchen has: "the salt" may be named without having been listed.
ALWAYS_THERE: frozenset[Role] = frozenset({"fat", "salt", "pepper", "spice", "herb"})
DEFINITE = frozenset({"the", "this", "that", "these", "those", "its", "their"})
SERVED = frozenset({"with", "over", "on", "some", "of", "beside", "alongside"})
LOOK_BACK = 4
#: An amount belongs to a food at most this many words after it.
NEAR = 3


def added(
    sheet: Sheet, clause: Clause | None, mention: Mention, deed: Deed, *, known: Referring
) -> Ingredient | None:
    """The ingredient that an unlisted food becomes, None if the cook does not take it here."""
    name = singulars(plain(mention.words))
    food = catalogue().find(mention.words).food
    served = deed == "serve"
    if mention.words.endswith(("-sized", "-size")):
        # "Walnut-sized balls" are a measure, and nobody's allergy.
        return None
    if food is None or deed in NOT_TAKING or _is_of_the_dish(name, known, served=served):
        return None
    table = words.groups("refer.toml")
    before = [sheet.low(index) for index in range(max(0, mention.start - LOOK_BACK), mention.start)]
    if set(before) & set(table["hedge"]) or sheet.low(mention.end) in table["goes_with"]:
        return None
    role = role_of(Ingredient(line=0, text="", name=name), food)
    if role == "water" and deed == "melt":
        return None
    if before and before[-1] in DEFINITE and role not in ALWAYS_THERE:
        return None
    if _is_made_here(before):
        return None
    if served and not (clause and clause.verb.words == "serve" and set(before) & SERVED):
        return None
    if mention.start in sheet.frame.brackets:
        return None
    if clause is not None and not clause.told and clause.verb.form != "ing":
        return None
    name, state = _name_and_state(mention.words)
    line = sheet.paragraph.lines[sheet.paragraph.line_at(sheet.offset(mention.start))]
    said = sheet.said(clause.start, clause.end) if clause else sheet.text.text.lower()
    return Ingredient(
        line=line.number,
        text=line.body,
        component=line.component,
        amounts=_amounts(sheet, mention),
        name=name,
        food=food.name,
        state=state,
        optional=served or any(phrase in said for phrase in table["if_wanted"]),
        to_taste="to taste" in said and role in ("salt", "pepper"),
        notes="to serve" if served else None,
        from_="method",
    )


def _is_of_the_dish(name: str, known: Referring, *, served: bool) -> bool:
    """Whether a name is that of an intermediate thing, of the dish, of one of its parts, of a part of a food."""
    said = name.split()
    if name in thing_words() and not served:
        return True
    food = catalogue().find(name).food
    dish = food is None or food.group in DISHES
    if dish and (frozenset(said) <= known.title or frozenset(said) <= known.parts):
        return True
    made = words.groups("refer.toml")["made"]
    if len(said) < 2 or said[-1] not in made or said[-1] == "juice" or name in ("egg white", "egg yolk"):
        return False
    # Pasta water is made of what is there; salted water is not.
    return bool(known.foods.find(tuple(said[:-1]))) or is_food(" ".join(said[:-1]))


def _is_made_here(before: list[str]) -> bool:
    """Whether "a" or "an" and a word of making stand before: "to create a thick tomato sauce"."""
    for article in ("a", "an"):
        if article in before:
            at = before.index(article)
            return at > 0 and before[at - 1] in GIVES and "of" not in before[at:]
    return False


def _name_and_state(written: str) -> tuple[str, tuple[str, ...]]:
    """The food's name as a line of the list would give it: the water of "hot water"."""
    read = read_line(written, line=0)
    if len(read) == 1 and read[0].name:
        return read[0].name, read[0].state
    return written, ()


def _amounts(sheet: Sheet, mention: Mention) -> tuple[Amount, ...]:
    """The amount right before a food, if the text gives one."""
    offset = sheet.offset(mention.start)
    last = bisect_right(sheet.amounts, offset, key=lambda quantity: quantity.end)
    for quantity in sheet.amounts[max(0, last - 1) : last]:
        between = sheet.paragraph.text[quantity.end : offset]
        near = len(between) < 60 and len(between.split()) <= NEAR
        if quantity.sort == "amount" and near and not set(between) & set(",.;") and " and " not in between:
            return (Amount(low=quantity.low, high=quantity.high, unit=quantity.unit, approx=quantity.approx),)
    return ()
