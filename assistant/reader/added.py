"""Foods that only the method names: water for the pasta, oil for the pan, a pinch of salt.

They become ingredients "from the method", with an amount only where the text gives one. What the dish is, what it is
like, and what goes well beside it are no ingredients.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.reader.clauses import Clause
from assistant.reader.mentions import Mention, _set, things
from rules.foods import catalogue
from rules.foods.names import plain, singulars
from rules.recipe import Amount, Deed, Ingredient
from rules.roles import role_of

if TYPE_CHECKING:
    from assistant.reader.steps import _Page

#: Deeds on food that is there already, or for which what is named is a help and no food of the dish.
NOT_TAKING: frozenset[Deed] = frozenset(
    {
        "rinse",
        "drain",
        "strain",
        "store",
        "cool",
        "turn",
        "preheat",
        "line",
        "peel",
        "grate",
        "can",
        "other",
        "chop",
        "chill",
        "freeze",
        "rest",
        "rise",
    }
)
STAPLES = frozenset({"fat", "salt", "pepper", "spice", "herb", "water", "flour", "sugar"})
DEFINITE = frozenset({"the", "this", "that", "these", "those", "its", "their", "of"})
HEDGES = frozenset(
    {
        "like",
        "such",
        "ideally",
        "e.g",
        "than",
        "prefer",
        "recommend",
        "suggest",
        "resembling",
        "works",
        "goes",
        "consistency",
        "texture",
        "looks",
        "tastes",
        "shape",
        "size",
        "serve",
        "or",
    }
)


def added(
    page: _Page,
    clause: Clause | None,
    mention: Mention,
    deed: Deed,
    *,
    title: frozenset[str],
    listed: Sequence[Ingredient],
) -> Ingredient | None:
    """The ingredient that an unlisted food becomes, None if the cook does not take it here."""
    text = page.text
    words = singulars(plain(mention.words))
    food = catalogue().find(mention.words).food
    if (
        food is None
        or words in things()
        or set(words.split()) <= title
        or words.split()[-1] in _set("made") - {"juice"}
        and words not in ("egg white", "egg yolk")
    ):
        return None
    before = [text[index].lower_ for index in range(max(0, mention.start - 4), mention.start)]
    following = text[mention.end].lower_ if mention.end < len(text) else ""
    if (
        set(before) & HEDGES
        or (deed in NOT_TAKING and not (deed == "chop" and False))
        or following
        in (
            "mixture",
            "mix",
            "pan",
            "bowl",
            "dish",
            "water",
            "paste",
            "slurry",
            "sauce",
            "bath",
            "batter",
            "dough",
        )
    ):
        return None
    role = role_of(Ingredient(line=0, text="", name=words))
    if before and before[-1] in DEFINITE and role not in STAPLES - {"water", "flour", "sugar"}:
        return None
    if deed == "serve" and (
        clause is None
        or clause.verb.words != "serve"
        or not set(before) & {"with", "over", "on", "some", "of"}
    ):
        return None
    if clause is not None and not clause.told and clause.verb.form != "ing":
        return None
    line = page.paragraph.lines[page.paragraph.line_at(page.offset(mention.start))]
    return Ingredient(
        line=line.number,
        text=line.body,
        component=line.component,
        amounts=_amounts(page, mention),
        name=mention.words,
        food=food.name,
        optional=deed == "serve" or bool(clause and clause_optional(page, clause)),
        to_taste="to taste" in text.text.lower() and role in ("salt", "pepper"),
        notes="to serve" if deed == "serve" else None,
        from_="method",
    )


def clause_optional(page: _Page, clause: Clause) -> bool:
    """Whether the words around a deed leave it to the cook."""
    low = page.text[clause.start : clause.end].text.lower()
    return any(
        word in low
        for word in ("optional", "if you like", "if necessary", "if desired", "if needed", "if wanted")
    )


def _amounts(page: _Page, mention: Mention) -> tuple[Amount, ...]:
    offset = page.offset(mention.start)
    for quantity in page.amounts:
        between = page.text.text[quantity.end : offset] if quantity.end <= offset else None
        if (
            quantity.sort == "amount"
            and between is not None
            and len(between.split()) <= 3
            and not any(sign in between for sign in ",.;")
            and " and " not in between
        ):
            return (Amount(low=quantity.low, high=quantity.high, unit=quantity.unit, approx=quantity.approx),)
    return ()
