"""Whom a mention means at its place: the remaining ones, those of this part, the one that is not named elsewhere.

`mentions.py` finds which foods of the list some words fit; here the place in the method decides between them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.reader.clauses import Clause
from assistant.reader.deeds import lexicon
from assistant.reader.frame import CLOSES
from assistant.reader.known import singular_words, without_states
from assistant.reader.mentions import Foods, Mention, thing_words
from assistant.reader.scene import HANDLING
from assistant.reader.shares import REST, Shares, is_all_of
from assistant.reader.sheet import Sheet
from rules.foods.names import plain, singulars
from rules.recipe import Deed, Ingredient
from rules.roles import POURED_AGAIN

#: "Scrape up everything brown" is what sticks to the pot, and no food of the list.
LOOSENS = frozenset({"scrape", "scraping", "loosen", "loosening"})
#: "Over the hot butter" is the butter that was put there.
HEATED = frozenset({"hot", "melted", "foaming", "sizzling", "bubbling", "browned", "warm", "cooled"})
DEFINITE = frozenset({"the", "this", "that", "these", "those"})
#: Before a bare "ingredients": what shows that all of them are meant, and not "the dressing ingredients".
ALL_OF = frozenset(
    {"all", "the", "these", "", "mix", "combine", "add", "blend", "of", "together", "your", "following"}
)
#: Deeds that do not take of a food a second time.
NO_MORE: frozenset[Deed] = HANDLING | {"serve", "bake", "rest"}
NEAR_BEFORE, NEAR_AFTER = 3, 6
#: "Everything but the rice", up to the food.
ALL_BUT = re.compile(r"\b(?:everything|all|ingredients) (?:but|besides)(?: the)?$")
#: Words of a part's name that tell no part.
SMALL_WORDS = frozenset(
    {"the", "and", "of", "for", "all", "a", "mix", "dry", "wet", "other", "ingredient", "or", "with", "to"}
)
BESIDE = re.compile(
    r"(?:for|to|as) (?:topping|serv\w{1,4}|garnish\w{0,4}|finish\w{0,4}|decorat\w{1,4})|on the side|(?:a|the) garnish"
)
SEVERAL_PARTS = 2
#: A part is named at most so many tokens before its food.
PART_BACK = 12
#: States that tell one line of a food from another.
STATES = (
    frozenset({"cold", "chilled"}),
    frozenset({"softened", "soft"}),
    frozenset({"melted"}),
)
DENIAL, EXCEPTED, PURPOSE = 5, 3, 6


class Referring:
    """Settles mentions against what was taken so far."""

    def __init__(self, foods: Foods, shares: Shares, title: str | None) -> None:
        self.foods = foods
        self.shares = shares
        self.listed = len(foods.ingredients)
        #: ingredients that the method names somewhere by words that fit no other
        self.named: frozenset[int] = frozenset()
        #: the words of the dish's own name, singular
        self.title = frozenset(singulars(plain(title or "")).split())
        #: ingredients that a group word means somewhere ("the vegetables")
        self.grouped: frozenset[int] = frozenset()
        self.components = tuple(dict.fromkeys(i.component for i in foods.ingredients if i.component))
        self.part_names = tuple(" ".join(singular_words(component)) for component in self.components)
        #: the words of the names of its parts
        self.parts = frozenset(
            word for component in self.components for word in singulars(plain(component)).split()
        )

    def look_ahead(self, mentions: Iterable[Mention]) -> None:
        """Learn from the whole method which ingredients it names by themselves."""
        named: set[int] = set()
        grouped: set[int] = set()
        for mention in mentions:
            if mention.sort == "food" and len(mention.who) == 1:
                named.add(mention.who[0])
            elif mention.sort == "group":
                grouped.update(mention.who)
        self.named, self.grouped = frozenset(named), frozenset(grouped)

    def who(self, sheet: Sheet, mention: Mention, held: tuple[int, ...] = ()) -> tuple[int, ...]:
        """The ingredients that a mention means here; `held` is what was cut or washed last."""
        if mention.sort in ("all", "rest"):
            return self._all_left(sheet, mention)
        if mention.sort == "unlisted":
            # The method may have named it before.
            return self.foods.find(singular_words(mention.words))
        if mention.sort == "group":
            meant = dict.fromkeys(mention.who)
            if mention.words == "vegetable" and set(held) & set(mention.who):
                # What was just cut for it counts among "the vegetables", the lemon too.
                meant |= dict.fromkeys(held)
            return self._of_begun_parts(mention.who, meant)
        if len(mention.who) > 1:
            return self._one_of(sheet, mention)
        return (
            self._in_that_state(sheet, mention)
            or self._namesake(sheet, mention)
            or self._of_that_part(sheet, mention)
            or mention.who
        )

    def _of_begun_parts(self, group: Iterable[int], meant: Iterable[int]) -> tuple[int, ...]:
        """Of a group what is left of the parts that are begun: a cake's dry ingredients hold no sugar of its frosting."""
        known = self.foods.ingredients
        left = tuple(index for index in meant if not self.shares.entered(index))
        begun = {known[index].component for index in range(self.listed) if self.shares.begun(index)}
        own = tuple(index for index in left if known[index].component in begun)
        return own if own or any(self.shares.begun(index) for index in group) else left

    def _all_left(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        left = tuple(index for index in range(self.listed) if not self.shares.entered(index))
        excepted = self._excepted(sheet, mention)
        left = tuple(index for index in left if index not in excepted)
        # What is strewn on or served beside it is no part of everything that goes in.
        left = tuple(index for index in left if not _is_beside(self.foods.ingredients[index])) or left
        part = self._component_near(sheet, mention)
        if part:
            return tuple(index for index in left if self.foods.ingredients[index].component == part)
        if mention.words == "ingredients" and sheet.low(mention.start - 1) not in ALL_OF:
            # "The dressing ingredients", where the list has no such part: those that the text never names.
            return tuple(index for index in left if index not in self.named | self.grouped)
        own = tuple(
            index
            for index in left
            if sheet.component and self.foods.ingredients[index].component == sheet.component
        )
        return own or left

    def _excepted(self, sheet: Sheet, mention: Mention) -> frozenset[int]:
        """What "all ingredients except the eggs" leaves out."""
        near = [sheet.low(index) for index in range(mention.end, mention.end + 3)]
        if not {"except", "but", "excluding", "besides"} & set(near):
            return frozenset()
        return frozenset(
            index for other in sheet.mentions_in(mention.end, mention.end + 10) for index in other.who
        )

    def _component_near(self, sheet: Sheet, mention: Mention) -> str | None:
        """The part that a group is of: "all the ingredients in the Meatballs section", "dressing ingredients"."""
        near = {
            singulars(plain(sheet.low(index)))
            for index in range(max(0, mention.start - NEAR_BEFORE), mention.end + NEAR_AFTER)
        }
        whole = next((c for c in self.components if set(singulars(plain(c)).split()) <= near), None)
        partly = [c for c in self.components if set(singulars(plain(c)).split()) & near - SMALL_WORDS]
        # "All loaf ingredients" are those of the meat loaf.
        return whole or (partly[0] if len(partly) == 1 else None)

    def _one_of(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """Words that fit several ingredients alike: those of this part, those still there."""
        own = tuple(
            index
            for index in mention.who
            if sheet.component and self.foods.ingredients[index].component == sheet.component
        )
        several = self._said_so(sheet, mention) or self._divided(sheet, mention) or own or mention.who
        unnamed = tuple(index for index in several if index not in self.named)
        several = unnamed or several
        fresh = tuple(index for index in several if not self.shares.entered(index))
        if len({self.foods.ingredients[index].name for index in several}) == 1:
            # One food on two lines: the first that is still there.
            return fresh[:1] or several[:1]
        return fresh or several

    def _namesake(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """The onion of this part, where the onion of another part is used up."""
        known = self.foods.ingredients
        first = mention.who[0]
        if not self.shares.entered(first) or len(self.components) < SEVERAL_PARTS:
            return ()
        if REST & {sheet.low(at) for at in range(mention.start - NEAR_BEFORE, mention.start)}:
            return ()
        others = self.foods.namesakes(singular_words(mention.words), mention.who)
        return tuple(
            at
            for at in others
            if known[at].component != known[first].component and not self.shares.entered(at)
        )[:1]

    def _said_so(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """Of one food on several lines that in the state or of the amount or part that stands before it."""
        known = self.foods.ingredients
        if len({known[index].name for index in mention.who}) > 1:
            return ()
        state = next((state for state in STATES if state & self._before(sheet, mention)), None)
        stated = tuple(index for index in mention.who if state and _is_said(known[index], state))
        offset = sheet.offset(mention.start)
        told = tuple(
            i for i in mention.who if is_all_of(known[i], sheet.amounts, sheet.paragraph.text, offset)
        )
        part = self._part_said(sheet, mention)
        of_part = tuple(index for index in mention.who if part and known[index].component == part)
        company = self._part_beside(sheet, mention)
        beside = tuple(index for index in mention.who if company and known[index].component == company)
        return next((one for one in (told, stated, of_part, beside) if 0 < len(one) < len(mention.who)), ())

    def _part_beside(self, sheet: Sheet, mention: Mention) -> str | None:
        """The part of all the foods near it in its sentence that can only be of one part."""
        start, end = next(
            ((a, b) for a, b in sheet.frame.sentences if a <= mention.start < b), (mention.start, mention.end)
        )
        near = sheet.mentions_in(max(start, mention.start - PART_BACK), min(end, mention.end + PART_BACK))
        parts = {
            self.foods.ingredients[other.who[0]].component
            for other in near
            if other.sort == "food" and len(other.who) == 1 and not self.shares.entered(other.who[0])
        }
        return parts.pop() if len(parts) == 1 else None

    def _divided(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """Of "the remaining oil" that of which some was taken, and not the oil that is whole."""
        if not REST & {sheet.low(at) for at in range(mention.start - NEAR_BEFORE, mention.start)}:
            return ()
        return tuple(i for i in mention.who if self.shares.begun(i) and not self.shares.entered(i))

    def _before(self, sheet: Sheet, mention: Mention) -> frozenset[str]:
        return frozenset(sheet.low(at) for at in range(mention.start - 2, mention.end))

    def _in_that_state(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """The cold butter for the dough, where the words alone fit the melted butter for the top as well or better."""
        known = self.foods.ingredients
        state = next((state for state in STATES if state & self._before(sheet, mention)), None)
        if state is None or not mention.who or _is_said(known[mention.who[0]], state):
            return ()
        others = self.foods.namesakes(without_states(singular_words(mention.words)), mention.who)
        return tuple(at for at in others if _is_said(known[at], state))[:1]

    def _of_that_part(self, sheet: Sheet, mention: Mention) -> tuple[int, ...]:
        """The whole milk of the dough, where the milk is that of an icing which is not begun yet."""
        if not self.components or not mention.who:
            return ()
        known = self.foods.ingredients
        own = known[mention.who[0]].component
        part = sheet.component or self._part_said(sheet, mention)
        others = self.foods.namesakes(singular_words(mention.words), mention.who)
        if part in self.components:
            return tuple(at for at in others if known[at].component == part != own)[:1]
        if own not in self.components or any(
            self.shares.begun(index) for index in range(self.listed) if known[index].component == own
        ):
            return ()
        earlier = self.components[: self.components.index(own)]
        there = tuple(at for at in others if known[at].component in earlier)
        fresh = tuple(at for at in there if not self.shares.begun(at))
        return (fresh or (there if sheet.low(mention.start - 1) in DEFINITE else ()))[:1]

    def _part_said(self, sheet: Sheet, mention: Mention) -> str | None:
        """The part that the sentence speaks of before the food: "for the syrup, bring the sugar to a boil"."""
        start = max((begin for begin, _ in sheet.frame.sentences if begin <= mention.start), default=0)
        said = {
            singulars(plain(sheet.low(at)))
            for at in range(max(start, mention.start - PART_BACK), mention.start)
        }
        said &= self.parts
        return (
            next((c for c in self.components if said & set(singulars(plain(c)).split())), None)
            if said
            else None
        )

    def again(self, sheet: Sheet, mention: Mention, index: int, deed: Deed) -> bool:
        """Whether a food that was taken is taken a second time: fat, salt, sugar, without "the"."""
        if self.foods.known[index].role not in POURED_AGAIN or deed in NO_MORE:
            return False
        before = mention.start - 1
        while before >= 0 and sheet.low(before) in HEATED:
            before -= 1
        return sheet.low(before) not in DEFINITE

    def is_no_object(self, sheet: Sheet, clause: Clause | None, mention: Mention) -> bool:
        """Whether a food is only spoken of: "everything can go in", "not to burn the paste", the dish's own name."""
        before = [sheet.low(index) for index in range(max(0, mention.start - DENIAL), mention.start)]
        denied = next(
            (
                index
                for index, word in enumerate(before)
                if word in ("not", "don't", "without", "never", "avoid")
            ),
            None,
        )
        if {"except", "excluding"} & set(before[-EXCEPTED:]) or ALL_BUT.search(" ".join(before)):
            return True
        if mention.sort == "all" and clause and LOOSENS & set(clause.verb.words.split()):
            return True
        if denied is not None and not {",", ".", "and", ";"} & set(before[denied:]):
            return True
        if (
            clause
            and clause.verb.deed == "rinse"
            and mention.who
            and self.foods.known[mention.who[0]].role == "water"
        ):
            return True
        if (
            mention.sort == "all"
            and clause
            and mention.end <= clause.verb_start
            and mention.words == "everything"
        ):
            return True
        if self._is_purpose(sheet, clause, mention):
            return True
        said = frozenset(singulars(plain(mention.words)).split())
        is_dish = mention.sort == "food" and said <= self.title and said <= thing_words()
        other = all(self.foods.known[index].name[-1:] != tuple(said) for index in mention.who)
        return is_dish and other and sheet.low(mention.start - 1) in DEFINITE

    def _is_purpose(self, sheet: Sheet, clause: Clause | None, mention: Mention) -> bool:
        """Whether a food stands in what a deed is for: "fold to combine the salt"."""
        for at in range(mention.start - 2, max(0, mention.start - PURPOSE), -1):
            if sheet.low(at) in CLOSES:
                return False
            if sheet.low(at) == "to" and not (clause and clause.verb_start <= at < clause.verb_end):
                verb = lexicon().get(sheet.low(at + 1))
                return verb is not None and verb.form == "plain" and not verb.food
        return False

    def part_named(self, name: str) -> tuple[int, ...]:
        """The ingredients of the part that a thing's name calls, where the method names them nowhere else."""
        part = next(
            (c for c, whole in zip(self.components, self.part_names, strict=True) if whole == name), None
        )
        if part is None and name in thing_words():
            part = next((c for c in self.components if name in singular_words(c)), None)
        if part is None:
            return ()
        own = tuple(i for i in range(self.listed) if self.foods.ingredients[i].component == part)
        free = tuple(i for i in own if i not in self.named and not self.shares.entered(i))
        return free if len(free) * 2 > len(own) else ()


def _is_said(ingredient: Ingredient, state: frozenset[str]) -> bool:
    """Whether the line says that the food is in this state."""
    said = " ".join(filter(None, (*ingredient.state, ingredient.prep, ingredient.notes))).lower()
    return bool(state & set(said.replace(",", " ").split()))


def _is_beside(ingredient: Ingredient) -> bool:
    """Whether the list says of a food that it comes on top or beside it in the end."""
    return bool(BESIDE.search(ingredient.notes or ""))
