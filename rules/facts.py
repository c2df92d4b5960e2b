"""What can be worked out about a dish before its family is known: water to flour, fire, oven, body of the pot.

`Facts` answers plain questions about a recipe from its weighed items and its method graph. `features.py` turns them
into the evidence that `dish.py` weighs. Handbook chapter 7.
"""

from __future__ import annotations

import re
from functools import cached_property

from rules.foods import Item
from rules.foods.names import plain
from rules.meat import are_pieces, is_joint
from rules.method import Graph, Taking
from rules.method.graph import OPEN_FIRE, OVEN, STOVE, parts
from rules.method.words import kind_of
from rules.recipe import Action, DurationKind, Recipe
from rules.roles import Role, role_of

#: Above this much water per flour it pours; below the other it is a dough (handbook chapter 7).
POURS_ABOVE = 1.0
DOUGH_BELOW = 0.65
#: Above this the flour only thickens: the thinnest batters have 3 to 4 of water, a custard pudding with meal has 8 or more.
THICKENS_ABOVE = 6.0
#: Flour below this much thickens or dusts; above it is a body [g].
BODY_FLOUR_G = 60.0

WATERY: frozenset[Role] = frozenset(
    {"milk", "cultured", "shelf milk", "egg", "juice", "water", "spirits", "stock", "acid"}
)
#: What makes a dough or batter of flour; juice alone does not.
WETS_A_DOUGH: frozenset[Role] = WATERY - {"juice", "acid", "spirits"}
THIN: frozenset[Role] = frozenset({"water", "stock", "milk", "spirits", "juice"})
SOLID: frozenset[Role] = frozenset(
    {"meat", "fish", "vegetable", "can", "grain", "greens", "tofu", "cured meat"}
)
FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat"})

#: Words after which a title speaks of what goes with the dish.
_BESIDE = (" with ", " in ", " on ", " over ", " for ")
_MOST_TEXT = 4000


class Facts:
    """Plain facts of a dish; weights in grams, times in minutes."""

    def __init__(self, recipe: Recipe, items: tuple[Item, ...], graph: Graph) -> None:
        self.recipe = recipe
        self.items = items
        self.graph = graph
        self.roles = tuple(role_of(item.ingredient, item.food) for item in items)

    # Words ---------------------------------------------------------------------------------------------------------

    @cached_property
    def title(self) -> str:
        """The title without accents and hyphens, in lower case."""
        title = (self.recipe.title or "")[:300]
        # "Bread Dumplings (Semmelknödel)" are dumplings.
        return plain(_BRACKETS.sub(" ", title).strip() or title)

    @cached_property
    def main_title(self) -> str:
        """The title up to what goes with the dish: "trout" of "trout with bean soup"."""
        return self.title[
            : min((at for word in _BESIDE if (at := self.title.find(word)) > 0), default=len(self.title))
        ]

    @cached_property
    def actions(self) -> tuple[Action, ...]:
        """All actions, in order."""
        return tuple(action for step in self.recipe.steps for action in step.actions)

    @cached_property
    def vessels(self) -> str:
        """Every vessel that the method names."""
        named = [action.vessel for action in self.actions if action.vessel]
        if self.recipe.oven and self.recipe.oven.vessel:
            named.append(self.recipe.oven.vessel)
        return " | ".join(map(plain, named))[:_MOST_TEXT]

    @cached_property
    def made(self) -> str:
        """Every intermediate thing that the method names."""
        things = [thing for action in self.actions for thing in (*action.things, action.makes or "")]
        return " | ".join(map(plain, filter(None, things)))[:_MOST_TEXT]

    # Amounts -------------------------------------------------------------------------------------------------------

    def holds(self, *roles: Role) -> bool:
        """Whether a food with one of these roles is in it."""
        return any(role in roles for role in self.roles)

    def grams(self, *roles: Role) -> float:
        """The weight of all foods with these roles, what has no weight left out [g]."""
        return sum(
            item.grams or 0.0 for item, role in zip(self.items, self.roles, strict=True) if role in roles
        )

    def unweighed(self, *roles: Role) -> bool:
        """Whether a food with one of these roles has no weight; an optional one does not count."""
        return any(
            role in roles and item.grams is None and not item.ingredient.optional
            for item, role in zip(self.items, self.roles, strict=True)
        )

    @cached_property
    def flour_g(self) -> float:
        """The flour that makes a batter or dough [g]; flour stirred into a hot pot thickens and does not count."""
        return sum(
            item.grams or 0.0
            for item, role in zip(self.items, self.roles, strict=True)
            if role == "flour" and self._is_body(item.index)
        )

    def _is_body(self, index: int) -> bool:
        takings = self.graph.moments(index)
        return not takings or any(not taking.hot and not taking.laid for taking in takings)

    @cached_property
    def has_body(self) -> bool:
        """Whether flour is the body of it; flour without an amount counts where a dough is handled."""
        if self.hydration is not None and self.hydration > THICKENS_ABOVE:
            return False
        return self.flour_g >= BODY_FLOUR_G or (
            self.unweighed("flour") and self.does("knead", "roll", "shape")
        )

    @cached_property
    def leavened(self) -> bool:
        """Raised by baking powder or soda, by itself or in a mix."""
        return any(
            role == "leavener" or (item.food is not None and "holds leavener" in item.food.traits)
            for item, role in zip(self.items, self.roles, strict=True)
        )

    @cached_property
    def yeasted(self) -> bool:
        """Raised by yeast or a sourdough starter."""
        return self.holds("yeast", "culture")

    @cached_property
    def has_joint(self) -> bool:
        """Whether a whole piece of meat is in it, neither ground nor cut small."""
        return any(
            role == "meat"
            and not (item.food and item.food.group == "ground meat")
            and "ground" not in item.ingredient.name
            and not any(
                word in (item.ingredient.prep or "") for word in ("cube", "dice", "strip", "bite", "minced")
            )
            and not are_pieces(item)
            for item, role in zip(self.items, self.roles, strict=True)
        )

    @cached_property
    def joint_g(self) -> float:
        """The heaviest piece of meat that is not cut small [g]; a chop or a thigh of many is none."""
        return max(
            (
                item.grams or 0.0
                for item, role in zip(self.items, self.roles, strict=True)
                if role == "meat" and is_joint(item)
            ),
            default=0.0,
        )

    @cached_property
    def beans_g(self) -> float:
        """Beans, peas and lentils, as they weigh when cooked [g]."""
        return sum(
            (item.grams or 0.0) * (COOKED_BEANS if item.food.group == "legume" else 1.0)
            for item in self.items
            if item.food is not None and item.food.group in ("canned", "legume") and _is_bean(item.food.name)
        )

    @cached_property
    def sauce_g(self) -> float:
        """Thin liquid, tomatoes and sauces of a can [g]."""
        return sum(
            item.grams or 0.0
            for item, role in zip(self.items, self.roles, strict=True)
            if role in THIN or self._is_sauce(item)
        )

    @cached_property
    def grain_g(self) -> float:
        """Pasta, rice and grain, as they weigh when cooked [g]; dried beans are none."""
        return sum(
            (item.grams or 0.0) * COOKED_GRAIN
            for item, role in zip(self.items, self.roles, strict=True)
            if role in ("grain", "oats", "fresh pasta") and not (item.food and item.food.group == "legume")
        )

    @cached_property
    def other_solids_g(self) -> float:
        """Meat, vegetables and what else is no bean, no grain and no tomato from a can [g]."""
        return sum(
            item.grams or 0.0
            for item, role in zip(self.items, self.roles, strict=True)
            if role in SOLID - {"grain"}
            and not (item.food and (_is_bean(item.food.name) or self._is_sauce(item)))
        )

    @cached_property
    def oil_ml(self) -> float:
        """The largest amount of oil in one line [ml]."""
        return max(
            (
                item.milliliters or 0.0
                for item, role in zip(self.items, self.roles, strict=True)
                if role == "fat" and item.food is not None and item.food.is_liquid
            ),
            default=0.0,
        )

    @cached_property
    def wets(self) -> bool:
        """Whether there is liquid to simmer in: thin liquid, a sauce from a can, tomatoes, or water that a step adds."""
        return self.holds(*THIN) or "water" in self.made or any(map(self._is_sauce, self.items))

    def _is_sauce(self, item: Item) -> bool:
        food = item.food
        if food is None:
            return False
        return "tomato" in food.name or (food.group == "canned" and food.form in ("liquid", "paste"))

    @cached_property
    def hydration(self) -> float | None:
        """Water per flour by weight, over the mixtures that flour goes into; None where an amount is unknown."""
        if self.flour_g < BODY_FLOUR_G:
            return None
        mixtures = {
            taking.group
            for taking in self.graph.takings
            if self.roles[taking.ingredient] == "flour" and not taking.hot
        }
        in_dough = {taking.ingredient for taking in self.graph.takings if taking.group in mixtures}
        known = any(self.roles[index] in WATERY for index in in_dough)
        if not known and not self.holds(*WETS_A_DOUGH):
            # Juice goes with the fruit: the flour stays crumbs.
            return None
        water = 0.0
        for item, role in zip(self.items, self.roles, strict=True):
            if role not in WATERY or item.ingredient.optional or (known and item.index not in in_dough):
                continue
            if item.grams is None:
                return None
            water += item.grams * (item.food.water_pct or 0.0) / 100 if item.food is not None else item.grams
        return water / self.flour_g if water else None

    @property
    def sense(self) -> str:
        """What the hydration means, in words."""
        if self.hydration is None:
            return "unknown"
        if self.hydration > THICKENS_ABOVE:
            return "the flour only thickens it"
        if self.hydration > POURS_ABOVE:
            return "it pours"
        return "a dough" if self.hydration < DOUGH_BELOW else "between a batter and a dough"

    # Fire ----------------------------------------------------------------------------------------------------------

    def does(self, *deeds: str) -> bool:
        """Whether the method does one of these."""
        return any(deed in deeds for deed, _ in self.graph.deeds)

    @cached_property
    def cooks(self) -> bool:
        """Whether something is cooked, the text does not say how."""
        return any(parts(action.does, action.word) and action.does == "other" for action in self.actions)

    @cached_property
    def covered(self) -> bool:
        """Whether a lid is put on."""
        lid = any(action.covered or action.does == "cover" for action in self.actions)
        return lid or "dutch oven" in self.vessels

    @cached_property
    def fire(self) -> bool:
        """Whether anything meets a fire."""
        return self.oven or self.cooks or self.does(*STOVE, *OPEN_FIRE, "heat", "melt")

    @cached_property
    def oven(self) -> bool:
        """Whether an oven is used at all."""
        named = any(
            kind_of(vessel) == "tin"
            for vessel in self.vessels.split(" | ")
            if "baking" in vessel or "tin" in vessel
        )
        return (
            self.does(*OVEN, "line")
            or self.recipe.oven is not None
            or named
            or "oven" in self.vessels.split(" | ")
        )

    @cached_property
    def baked_share(self) -> float:
        """The share of the foods that end in the oven."""
        if not self.oven:
            return 0.0
        solid = [taking for taking in self.graph.takings if self._counts(taking)]
        if not solid or not self.does(*OVEN):
            return 1.0
        return sum(self._bakes_last(taking) for taking in solid) / len(solid)

    def bakes(self, *roles: Role) -> bool:
        """Whether a food of these roles goes into the oven and is not served beside."""
        return any(
            self.roles[taking.ingredient] in roles and self._bakes_last(taking)
            for taking in self.graph.takings
        )

    def _bakes_last(self, taking: Taking) -> bool:
        """Whether the oven is the last fire that a food meets, or by far the longest."""
        # Browning after the oven is what the oven does: "bake until brown".
        fires = [event for event in self.graph.after(taking) if event.does in (OVEN | STOVE) - {"brown"}]
        if not fires or fires[-1].does in OVEN:
            return bool(fires)
        inside = sum(event.minutes_high for event in fires if event.does in OVEN)
        return inside > sum(event.minutes_high for event in fires if event.does in STOVE)

    def _counts(self, taking: Taking) -> bool:
        """Food that makes up the dish: no seasoning, nothing optional, nothing strewn on or served with it."""
        beside = taking.laid and taking.does in ("top", "serve")
        optional = self.items[taking.ingredient].ingredient.optional
        return not beside and not optional and not _seasons(self.roles[taking.ingredient])

    @cached_property
    def cuts_fat_in(self) -> bool:
        """Solid fat is cut into flour, by word or because both are cut up together."""
        if self.does("cut in"):
            return True
        return any(
            role == "fat"
            and item.food is not None
            and not item.food.is_liquid
            and self.graph.handled(item.index, "chop")
            for item, role in zip(self.items, self.roles, strict=True)
        )

    @cached_property
    def deep(self) -> bool:
        """Whether it is fried in a depth of oil."""
        if self.does("deep fry"):
            return True
        return self.does("fry", "brown") and (self.oil_ml >= DEEP_OIL_ML or self._heats_oil_to_a_figure)

    @cached_property
    def _heats_oil_to_a_figure(self) -> bool:
        """Oil whose temperature is told, or that the list wants for deep frying."""
        named = any(
            role == "fat"
            and "deep"
            in " ".join(filter(None, [item.ingredient.name, item.ingredient.notes, item.ingredient.prep]))
            for item, role in zip(self.items, self.roles, strict=True)
        )
        return named or any(
            action.temp_f is not None
            and action.temp_f >= FRYING_F
            and any(
                self.roles[use.ingredient] == "fat" for use in action.uses if use.ingredient < len(self.roles)
            )
            for action in self.actions
            if action.does in ("heat", "fry", "add", "pour")
        )

    def minutes(self, *kinds: DurationKind) -> float:
        """All the time of these kinds that the method states, upper ends [min]."""
        return sum(
            span.high_min for step in self.recipe.steps for span in step.durations if span.what in kinds
        )

    @cached_property
    def waits_min(self) -> float:
        """The longest unheated wait outside the fridge [min]."""
        return max(
            (
                event.minutes_low
                for thing in self.graph.things
                for event in thing.events
                if event.does in ("rest", "ferment")
            ),
            default=0.0,
        )

    def boiled(self, *roles: Role) -> bool:
        """Whether a food with one of these roles goes into a pot that boils or simmers."""
        return any(
            self._boils(taking) for taking in self.graph.takings if self.roles[taking.ingredient] in roles
        )

    def _boils(self, taking: Taking) -> bool:
        thing = self.graph.things[taking.thing]
        if taking.does in ("boil", "steam") or thing.does("boil", "steam", "simmer"):
            return True
        return taking.hot and any(
            self.roles[other.ingredient] in THIN for other in self.graph.inside(taking.thing)
        )


_BRACKETS = re.compile(r"\([^()]{0,200}\)")
#: A pound of dry beans gives 2.3 to 2.6 pounds cooked; dry pasta and rice about as much.
COOKED_BEANS = 2.4
COOKED_GRAIN = 2.4
#: Oil that is brought to this is a bath [°F].
FRYING_F = 300.0
#: Oil from here on is a depth to fry in [ml].
DEEP_OIL_ML = 300.0


def _is_bean(name: str) -> bool:
    return (
        any(head in name for head in ("bean", "lentil", "chickpea", "pea,", "hominy"))
        and "green bean" not in name
    )


def _seasons(role: Role) -> bool:
    return role in ("salt", "pepper", "spice", "fat", "sugar", "water", "herb")
