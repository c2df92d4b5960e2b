"""What the deeds of a method take: of every clause the ingredients that it cuts or that enter there.

Named foods, "them" for what was just cut, all of a part ("stir the glaze together"), the salt in "salt the water".
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.reader.added import added
from assistant.reader.clauses import Clause
from assistant.reader.known import singular_words, word_set
from assistant.reader.mentions import Foods, Mention
from assistant.reader.referring import Referring
from assistant.reader.scene import HANDLING
from assistant.reader.shares import Shares, said_share
from assistant.reader.sheet import Sheet
from rules.recipe import Deed, Ingredient
from rules.roles import Role

#: An ingredient, and the number of its taking.
Taking = tuple[int, int]
#: Things that a clause names, each with its place.
Named = list[tuple[int, str]]

#: Deeds that never mean what was just cut when they name nothing.
OWN_OBJECT: frozenset[Deed] = frozenset({"preheat", "other", "serve", "cover", "line", "grease"})
PRONOUNS = frozenset({"it", "them", "these", "those", "this", "everything", "all", "both", "each"})
#: "All three" are all that were cut, and not only the last.
SEVERAL = frozenset({"both", "all"})
#: After a verb these show that its object is what was just handled: "season with salt", "add to the pot".
NO_OBJECT = frozenset(
    [
        "to",
        "in",
        "into",
        "with",
        "over",
        "on",
        "for",
        "until",
        "at",
        "under",
        "through",
        "aside",
        "together",
        "back",
    ]
)
#: After a verb these show it where the clause names no other food: "chop and fry".
ENDS = frozenset(["", ".", ",", ";", "and", "well", "thoroughly"])
#: Foods that give a verb its name: "salt the water", "butter the tin".
VERB_FOODS: frozenset[Role] = frozenset({"salt", "pepper", "fat", "flour", "spice", "sugar"})
SEASONS: frozenset[Role] = frozenset({"salt", "pepper", "spice", "herb"})
#: After a food that was taken these speak of what it went into: "stir into the flour mixture".
MIXTURES = frozenset({"mixture", "batter", "dough", "filling"})
#: A pronoun stands this near behind its verb [tokens].
NEAR = 3


class Taker:
    """Keeps the accounts while the method is read."""

    def __init__(self, ingredients: Sequence[Ingredient], title: str | None) -> None:
        self.foods = Foods(ingredients)
        self.shares = Shares()
        self.referring = Referring(self.foods, self.shares, title)
        #: what was cut or washed last and has not entered anything yet
        self.held: tuple[int, ...] = ()
        #: all that was cut or washed so far
        self._cut: dict[int, None] = {}

    def of_clause(
        self, sheet: Sheet, clause: Clause, deed: Deed, spoken: list[Mention], made: str | None, named: Named
    ) -> list[Taking]:
        """What a clause takes; what was taken before joins the things in `named`."""
        uses = self._of_the_verb(sheet, clause, deed)
        for mention in spoken:
            uses += self.of_mention(sheet, clause, mention, deed, named)
        if deed == "season":
            uses += self._salt_and_pepper(uses)
        uses += self._of_parts(sheet, clause, made, named)
        uses += self._of_held(sheet, clause, deed, made, named, {at for at, _ in uses})
        self._remember(deed, uses, named)
        return uses

    def of_mention(
        self, sheet: Sheet, clause: Clause | None, mention: Mention, deed: Deed, named: Named
    ) -> list[Taking]:
        """What a mention takes; a food that was taken before becomes a thing."""
        if sheet.aside(mention.start, clause) or self.referring.is_no_object(sheet, clause, mention):
            return []
        said = " ".join(singular_words(sheet.written(mention.start, mention.end)))
        who = self.referring.who(sheet, mention, self.held)
        if mention.sort == "unlisted" and not who:
            ingredient = added(sheet, clause, mention, deed, known=self.referring)
            who = (self.foods.add(ingredient),) if ingredient else ()
        elif not who and mention.sort == "group":
            named.append((mention.start, said))
        if clause and clause.verb.words in word_set("removes"):
            # "Discard the herbs" takes none.
            named += [(mention.start, self.foods.ingredients[at].name) for at in who]
            return []
        taken = []
        for at in who:
            hands = deed in HANDLING or (deed == "grease" and self._is_a_little(clause, mention, at))
            share = None
            if mention.sort == "food":
                offset = sheet.offset(mention.start)
                share = said_share(
                    sheet.frame.low,
                    mention.start,
                    self.foods.ingredients[at],
                    sheet.amounts,
                    sheet.paragraph.text,
                    offset,
                )
            again = self.referring.again(sheet, mention, at, deed)
            inside = self.shares.begun(at) and sheet.low(mention.end) in MIXTURES
            if not inside and self.shares.may_take(at, share, handled=hands, again=again):
                taken.append((at, self.shares.take(at, share, handled=hands)))
            else:
                named.append(
                    (mention.start, said if mention.sort == "food" else self.foods.ingredients[at].name)
                )
        return taken

    def _is_a_little(self, clause: Clause | None, mention: Mention, at: int) -> bool:
        """Whether a tin takes only a little of it: flour that dusts, butter that the verb alone names.

        The food is still there for the dough.
        """
        inside = clause is not None and clause.verb_start <= mention.start < clause.verb_end
        return self.foods.known[at].role == "flour" or inside

    def _of_the_verb(self, sheet: Sheet, clause: Clause, deed: Deed) -> list[Taking]:
        if not clause.verb.food:
            return []
        return [
            taking
            for mention in sheet.mentions_in(clause.verb_start, clause.verb_end)
            if self.foods.role_of(mention.who[0] if mention.who else -1, mention) in VERB_FOODS
            for taking in self.of_mention(sheet, clause, mention, deed, [])
        ]

    def _salt_and_pepper(self, uses: list[Taking]) -> list[Taking]:
        """What "season the fish" takes without saying so: salt and pepper that the text names nowhere."""
        if any(self.foods.known[at].role in SEASONS for at, _ in uses):
            return []
        return [
            (known.at, self.shares.take(known.at, None, handled=False))
            for known in self.foods.known
            if known.role in ("salt", "pepper")
            and known.at not in self.referring.named
            and not self.shares.entered(known.at)
        ]

    def _of_parts(self, sheet: Sheet, clause: Clause, made: str | None, named: Named) -> list[Taking]:
        """All that the list has under a part that is named as a whole: "stir the glaze together"."""
        if not self.referring.components:
            return []
        names = [made or "", *(name for _, name in named)]
        clause_words = f" {' '.join(singular_words(sheet.said(clause.start, clause.end)))} "
        names += [part for part in self.referring.part_names if f" {part} " in clause_words]
        found = dict.fromkeys(at for name in names for at in self.referring.part_named(name))
        return [(at, self.shares.take(at, None, handled=False)) for at in found]

    def _of_held(
        self, sheet: Sheet, clause: Clause, deed: Deed, made: str | None, named: Named, used: set[int]
    ) -> list[Taking]:
        """What was just cut, where a clause says "them" or nothing: "chop the onions and add to the pot"."""
        if deed in OWN_OBJECT:
            return []
        after = [sheet.low(at) for at in range(clause.verb_end, min(clause.end, clause.verb_end + NEAR))]
        inside = [sheet.low(at) for at in range(clause.verb_start, clause.verb_end)]
        pronoun = next((word for word in (*inside, *after) if word in PRONOUNS), None)
        held = self.held
        first = after[0] if after else ""
        if pronoun in SEVERAL and len(after) > 1:
            held = tuple(at for at in self._cut if not self.shares.entered(at)) or held
        elif (not pronoun and (made and not named)) or (
            not pronoun and not (first in NO_OBJECT or (first in ENDS and not used))
        ):
            return []
        return [(at, self.shares.take(at, None, handled=deed in HANDLING)) for at in held if at not in used]

    def _remember(self, deed: Deed, uses: list[Taking], named: Named) -> None:
        if deed in HANDLING and uses:
            self.held = tuple(dict.fromkeys(at for at, _ in uses))
            self._cut |= dict.fromkeys(self.held)
        elif deed not in HANDLING and (uses or named or deed not in ("heat", "melt")):
            self.held = ()
