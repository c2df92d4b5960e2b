"""What the packer looks at: every share of every food with its role, its moment and its company.

A `Portion` is the share of one ingredient at one moment of the method. The `Kitchen` answers what a rule asks about
it: what stands in the same bowl, what meets it cold, whether the part of the dish is made at home.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cached_property

from msgspec.structs import replace

from rules.circumstances import Day
from rules.dish import Dish
from rules.fat import Job, jobs
from rules.foods import Food, Item
from rules.method import Graph, Taking
from rules.recipe import Ingredient, Recipe, Struct
from rules.roles import BODY, DAIRY, POURED_AGAIN, SHELF_WET, Role, role_of

#: Words of a sub-heading that names a kind of ingredient and no part of the dish.
GENERIC_PARTS = frozenset(
    [
        "dry",
        "wet",
        "ingredients",
        "ingredient",
        "dry-ingredients",
        "wet-ingredients",
        "main",
        "other",
        "optional",
        "extras",
        "extra",
        "the",
        "and",
        "for",
    ]
)
#: A spice that enters at so many moments is not measured out for each: it joins the bag of its part.
MANY_MOMENTS = 3
#: A spell of waiting, cold or at room temperature, for which the dough is better made at home [min].
LONG_RISE_MIN = 6 * 60

#: What fruit is stewed with.
_COMPOTE: frozenset[Role] = frozenset(
    {
        "fruit",
        "sugar",
        "syrup",
        "juice",
        "zest",
        "acid",
        "spirits",
        "water",
        "spice",
        "starch",
        "extract",
        "salt",
        "mix-in",
    }
)
_WITH_FRUIT = frozenset(
    {
        "batter bake",
        "custard or pudding",
        "pastry or pie",
        "biscuit or quick bread dough",
        "griddle",
        "yeast bread",
    }
)
#: What makes a dough of flour and fat.
WETS_A_DOUGH: frozenset[Role] = DAIRY | {"water", "egg", "juice", "acid", "spirits"}
_MACHINE_DEEDS = frozenset({"puree", "purée", "blitz", "process", "pulse", "liquidize", "liquidise", "whizz"})
_MACHINES = ("blender", "food processor", "processor", "mixer", "beaker")


class Portion(Struct, frozen=True, kw_only=True):
    """The share of an ingredient at one moment. `taking` is None where the method never names it."""

    item: Item
    role: Role
    share: float
    taking: Taking | None = None
    #: where it probably enters, when no action takes it
    guess: Taking | None = None
    job: Job | None = None
    #: the part of the dish that it belongs to, None for the whole dish
    part: str | None = None

    @property
    def entry(self) -> Taking | None:
        """Where it enters, as the method says or as one guesses."""
        return self.taking or self.guess

    @property
    def ingredient(self) -> Ingredient:
        """The line of the recipe."""
        return self.item.ingredient

    @property
    def food(self) -> Food | None:
        """Its row in the catalogue."""
        return self.item.food

    @property
    def name(self) -> str:
        """The food as written."""
        return self.item.ingredient.name

    def is_said(self, *words: str) -> bool:
        """Whether the line says one of these words of the food."""
        said = " ".join(
            filter(None, [*self.ingredient.state, self.ingredient.prep, self.ingredient.notes])
        ).lower()
        return any(word in said for word in words)


class Kitchen:
    """All that is known when the packs are made."""

    def __init__(self, recipe: Recipe, items: tuple[Item, ...], graph: Graph, dish: Dish, day: Day) -> None:
        self.recipe = recipe
        self.items = items
        self.graph = graph
        self.dish = dish
        self.day = day
        self.roles = tuple(self._role(item) for item in items)
        self._guess = {taking.ingredient: taking for taking in graph.guesses}
        self._bowls: defaultdict[tuple[int, bool], list[Taking]] = defaultdict(list)
        self._groups: defaultdict[int, list[Taking]] = defaultdict(list)
        self._inside: dict[int, frozenset[Role]] = {}
        self._dressings: dict[int, bool] = {}
        for taking in (*graph.takings, *graph.guesses):
            self._groups[taking.group].append(taking)
            if not taking.laid:
                self._bowls[(taking.thing, taking.hot)].append(taking)
            else:
                self._bowls[(-taking.at - 1, taking.hot)].append(taking)

    def _role(self, item: Item) -> Role:
        """A citrus fruit of which only juice or zest is used is a juice to the packer."""
        role = role_of(item.ingredient, item.food)
        if role == "fruit" and item.food is not None and item.food.is_acid:
            said = " ".join(
                filter(None, [item.ingredient.prep, item.ingredient.notes, *item.ingredient.state])
            ).lower()
            pressed = self.graph.handled(item.index, "drain", "grate") and not self.graph.handled(
                item.index, "chop"
            )
            if pressed or any(word in said for word in ("juice", "zest", "squeez")):
                return "juice"
        return role

    @cached_property
    def _all_jobs(self) -> tuple[Job, ...]:
        return jobs(self.recipe, self.items, self.graph, self.dish)

    @cached_property
    def _jobs(self) -> dict[tuple[int, int], str]:
        return {(job.ingredient, job.taking.at): job.goes for job in self._all_jobs if job.taking is not None}

    @cached_property
    def portions(self) -> tuple[Portion, ...]:
        """Every share of every ingredient, in the order of the list."""
        fat = defaultdict(list)
        for job in self._all_jobs:
            fat[job.ingredient].append(job)
        made: list[Portion] = []
        for item, role in zip(self.items, self.roles, strict=True):
            part = self._part(item.ingredient.component)
            if role == "fat":
                made += (
                    Portion(item=item, role=role, share=job.share, taking=job.taking, job=job, part=part)
                    for job in fat[item.index]
                )
                continue
            takings = self._divided(item, role)
            if not takings:
                made.append(
                    Portion(item=item, role=role, share=1.0, guess=self._guess.get(item.index), part=part)
                )
            made += (
                Portion(item=item, role=role, share=taking.share, taking=taking, part=part)
                for taking in takings
            )
        return tuple(made)

    def _divided(self, item: Item, role: Role) -> tuple[Taking, ...]:
        """The moments of a food that can be divided; one that has no amount is not measured out in shares."""
        takings = self.graph.moments(item.index)
        dusting = [taking for taking in takings if taking.does == "grease"]
        if dusting and len(dusting) < len(takings):
            takings = _shared(tuple(taking for taking in takings if taking.does != "grease"))
        if len(takings) >= MANY_MOMENTS and role in ("spice", "starch", "dry good"):
            return ()
        if len(takings) > 1 and not item.ingredient.amounts and role in POURED_AGAIN:
            return (_whole(takings[0]),)
        return takings

    def _part(self, component: str | None) -> str | None:
        if component is None:
            return None
        words = [word for word in component.lower().split() if word not in GENERIC_PARTS]
        return component if words else None

    def role(self, taking: Taking) -> Role:
        """The role of what is taken."""
        return self.roles[taking.ingredient]

    def bowl(self, portion: Portion) -> tuple[Taking, ...]:
        """What stands in the same bowl or pot, by itself, before that is joined to anything."""
        taking = portion.entry
        if taking is None:
            return ()
        return tuple(self._bowls[(-taking.at - 1 if taking.laid else taking.thing, taking.hot)])

    def company(self, portion: Portion) -> tuple[Taking, ...]:
        """What meets it cold in one mixture, or enters the pot in the same spell."""
        entry = portion.entry
        return tuple(self._groups[entry.group]) if entry is not None else ()

    def beside(self, portion: Portion) -> frozenset[Role]:
        """The roles of the company."""
        return frozenset(self.role(taking) for taking in self.company(portion))

    def has_body(self, portion: Portion) -> bool:
        """Whether flour, starch, oats or crumbs of its own part are in the company."""
        return any(
            self.role(taking) in BODY and self._same_part(portion, taking) for taking in self.company(portion)
        )

    def _same_part(self, portion: Portion, taking: Taking) -> bool:
        return self._part(self.items[taking.ingredient].ingredient.component) == portion.part

    # What is made at home as a whole -------------------------------------------------------------------------------

    @cached_property
    def home_doughs(self) -> frozenset[int]:
        """The groups that are a dough to be made at home: pastry, a dough that is chilled, one that rises for long."""
        found = set()
        for group, takings in self._groups.items():
            if any(self.role(taking) == "flour" and not taking.hot and not taking.laid for taking in takings):
                events = [event for taking in takings for event in self.graph.after(taking)]
                long = any(
                    event.does in ("rise", "rest", "chill", "ferment")
                    and (event.minutes_low >= LONG_RISE_MIN or event.ahead)
                    for event in events
                )
                chilled = any(event.does == "chill" for event in events)
                if (self.dish.yeasted and long) or (
                    not self.dish.yeasted
                    and (
                        (self.dish.family == "pastry or pie" and self._holds_together(takings))
                        or (self.dish.family in ("cookie", "biscuit or quick bread dough") and chilled)
                    )
                ):
                    found.add(group)
        return frozenset(found)

    def _holds_together(self, takings: list[Taking]) -> bool:
        """Whether flour and fat are wetted, rolled or pressed into a dough, and not left as crumbs.

        A dough with baking powder in it is mixed at camp: it would spend its gas on the way.
        """
        if any(self.role(taking) == "leavener" or self._raises_itself(taking) for taking in takings):
            return False
        if any(self.role(taking) in WETS_A_DOUGH for taking in takings):
            return True
        things = {taking.thing for taking in takings}
        return any(self.graph.things[thing].does("roll", "shape", "knead") for thing in things)

    def _raises_itself(self, taking: Taking) -> bool:
        food = self.items[taking.ingredient].food
        return food is not None and "holds leavener" in food.traits and self.role(taking) == "flour"

    @cached_property
    def home_mixes(self) -> frozenset[int]:
        """The cold groups of a dish without fire that are mixed at home as they are: a dip, a spread, a puree."""
        found = set()
        for group, takings in self._groups.items():
            roles = {self.role(taking) for taking in takings}
            cold = not any(taking.hot for taking in takings)
            machine = self.is_machined(group)
            dip = (
                self.dish.family == "no cook"
                and "cultured" in roles
                and roles & {"vegetable", "herb", "spice"}
            )
            if cold and len(takings) > 1 and (machine or dip) and not self._must_wait(takings):
                found.add(group)
        return frozenset(found)

    def is_machined(self, group: int) -> bool:
        """Whether a machine that camp has not makes this mixture."""
        return any(self._in_machine(taking) for taking in self._groups[group])

    def _in_machine(self, taking: Taking) -> bool:
        vessel = f"{taking.vessel or ''} {self.graph.things[taking.thing].vessel or ''}".lower()
        return taking.word in _MACHINE_DEEDS or any(machine in vessel for machine in _MACHINES)

    def _must_wait(self, takings: list[Taking]) -> bool:
        """Whether the group holds what may not be mixed before camp."""
        roles = {self.role(taking) for taking in takings}
        if roles & {"egg", "meat", "fish", "leavener", "flour", "ice", "yeast"}:
            return True
        return self.curdles(takings)

    def curdles(self, takings: tuple[Taking, ...] | list[Taking]) -> bool:
        """Milk or cream that is not cultured, together with something sour."""
        foods = [self.items[taking.ingredient].food for taking in takings]
        milk = any(
            self.role(taking) in DAIRY and (food is None or not food.is_cultured)
            for taking, food in zip(takings, foods, strict=True)
        )
        sour = any(food is not None and food.is_acid for food in foods)
        return milk and sour

    def _roles_inside(self, thing: int) -> frozenset[Role]:
        """The roles of all that goes into one thing."""
        if thing not in self._inside:
            self._inside[thing] = frozenset(self.role(taking) for taking in self.graph.inside(thing))
        return self._inside[thing]

    def is_compote(self, taking: Taking) -> bool:
        """Whether it goes into fruit that is stewed by itself, with its sugar and flavours, for a bake or a pudding."""
        roles = self._roles_inside(taking.thing)
        return "fruit" in roles and roles <= _COMPOTE and self.dish.family in _WITH_FRUIT

    def is_sugared(self, taking: Taking) -> bool:
        """Whether sugar goes into the same bowl, with no batter in it: the fruit is bagged with it."""
        inside = self._roles_inside(taking.thing)
        return "sugar" in inside and not inside & BODY and "egg" not in inside

    # Wet company ---------------------------------------------------------------------------------------------------

    def wet_mates(self, portion: Portion) -> tuple[Taking, ...]:
        """The sauces, syrups, juices and fruit that may wait together with it in one bottle or bag.

        In a bowl: all that stands in it. In the pot: what one step adds. Over a batter: fruit and its flavours.
        """
        taking = portion.entry
        if taking is None:
            return ()
        cold = tuple(other for other in self.bowl(portion) if other.group == taking.group)
        pool: tuple[Taking, ...] = cold if not taking.hot else self.company(portion)
        if taking.hot or taking.laid:
            pool = tuple(other for other in pool if other.step == taking.step)
        mates = [other for other in pool if self.bottles(other)]
        return tuple(mates)

    def bottles(self, taking: Taking) -> bool:
        """Whether a taking may go into a wet mix: it pours, keeps on the shelf, and is not a shop's whole package."""
        item = self.items[taking.ingredient]
        role = self.role(taking)
        whole = any(
            amount.unit in ("can", "bottle", "jar", "package", "box", "carton")
            for amount in item.ingredient.amounts[:1]
        )
        if whole:
            return False
        if role in SHELF_WET:
            return True
        if role == "mayonnaise":
            return not taking.hot
        return (
            role == "fat"
            and not taking.hot
            and item.food is not None
            and item.food.is_liquid
            and self._jobs.get((taking.ingredient, taking.at)) == "stirred in"
            and self._is_dressing(taking)
        )

    def _is_dressing(self, taking: Taking) -> bool:
        """Oil that is shaken up with something sour or a sauce, with no flour about."""
        if taking.group not in self._dressings:
            roles = {self.role(other) for other in self._groups[taking.group]}
            sour = bool(roles & {"acid", "juice", "sauce", "mayonnaise"})
            self._dressings[taking.group] = sour and not roles & {"flour", "egg"}
        return self._dressings[taking.group]


def _shared(takings: tuple[Taking, ...]) -> tuple[Taking, ...]:
    """The shares stretched so that they add up to all of it."""
    total = sum(taking.share for taking in takings)
    return tuple(replace(taking, share=taking.share / total) for taking in takings)


def _whole(taking: Taking) -> Taking:
    return replace(taking, share=1.0)
