"""Small recipes and plans made by hand, for tests of single rules: no text is read here."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable

from rules.because import Ledger
from rules.circumstances import Day
from rules.dish import Dish
from rules.foods import Item, catalogue, weigh
from rules.method import graph
from rules.packs import divide
from rules.plan import Batch, Doneness, Fuel, Heat, Minutes, Pack, PackItem, PackKind, Refresh, Stage, Travels
from rules.recipe import (
    Action,
    Amount,
    Deed,
    Duration,
    DurationKind,
    Family,
    Ingredient,
    Package,
    Recipe,
    Step,
    Use,
)


def amount(low: float, unit: str | None = None, *, of: tuple[float, str] | None = None) -> Amount:
    """An amount; `of` is the size of one container."""
    package = Package(low=of[0], high=of[0], unit=of[1]) if of else None
    return Amount(low=low, high=low, unit=unit, package=package)


def line(name: str, *amounts: Amount, food: str | None = None, **more: object) -> Ingredient:
    """An ingredient; its food is looked up by the name unless another one is named, "" for an unknown one."""
    if food is None:
        unit = amounts[0].unit if amounts else None
        match = catalogue().find(name, unit=unit, state=tuple(more.get("state", ())), prep=more.get("prep"))
        food = match.food.name if match.food else ""
    return Ingredient(line=0, text=name, name=name, amounts=amounts, food=food or None, **more)


def act(does: Deed, *uses: int, word: str | None = None, **more: object) -> Action:
    """A deed on the ingredients with these indices."""
    return Action(does=does, word=word or does, uses=tuple(Use(ingredient=index) for index in uses), **more)


def step(*actions: Action, text: str = "") -> Step:
    """A step of the method."""
    return Step(line=0, text=text, actions=actions)


def recipe(
    *ingredients: Ingredient, steps: tuple[Step, ...] = (), family: Family = "other", **more: object
) -> Recipe:
    """A recipe of these lines."""
    return Recipe(
        title=more.pop("title", "River dish"), ingredients=ingredients, steps=steps, family=family, **more
    )


def dish(family: Family, second: Family | None = None, **more: object) -> Dish:
    """A dish of a family."""
    return Dish(family=family, second=second, **more)


def items(of: Recipe, scale: float = 1.0) -> tuple[Item, ...]:
    """The weighed lines."""
    return weigh(of, scale)


def pack(
    kind: PackKind,
    *indices: int,
    of: Recipe,
    travels: Travels = "shelf",
    label: str | None = None,
    **more: object,
) -> Pack:
    """A pack that holds all of these ingredients."""
    held = tuple(
        PackItem(
            ingredient=index,
            share=1.0,
            amount=of.ingredients[index].amounts[0] if of.ingredients[index].amounts else None,
            grams=weigh(of)[index].grams,
        )
        for index in indices
    )
    key = f"{kind.split()[0]}-{'-'.join(map(str, indices))}"
    return Pack(id=key, kind=kind, label=label or kind, travels=travels, items=held, **more)


def heat(*stages: Stage, doneness: tuple[Doneness, ...] = ()) -> Heat:
    """A coal plan with one batch of 24."""
    fuel = Fuel(lit=24, reserve=6, briquettes=30, kg=0.7, batches=(Batch(light_at_min=-80, count=24),))
    return Heat(stages=stages, fuel=fuel, doneness=doneness)


def bake(low: float = 30, high: float = 40, *, refresh: tuple[Refresh, ...] = ()) -> Stage:
    """A bake that ends ten minutes before eating."""
    return Stage(
        kind="bake",
        minutes=Minutes(low=low, high=high),
        temp_f=350,
        top=17,
        under=8,
        turn_every_min=10,
        first_look_min=20,
        starts_at_min=-high - 10,
        refresh=refresh,
    )


def nothing() -> tuple[Day, Ledger]:
    """A plain day and an empty ledger."""
    return Day(), Ledger()


def doing(*ingredients: Ingredient) -> Callable[..., Action]:
    """Deeds that name their foods: `do("mix", "flour", ("sugar", 0.5), vessel="large bowl")`."""
    index = {ingredient.name: number for number, ingredient in reversed(list(enumerate(ingredients)))}

    def do(does: Deed, *foods: str | tuple[str, float], word: str | None = None, **more: object) -> Action:
        uses = tuple(
            Use(ingredient=index[food])
            if isinstance(food, str)
            else Use(ingredient=index[food[0]], share=food[1])
            for food in foods
        )
        return Action(does=does, word=word or does, uses=uses, **more)

    return do


def minutes(low: float, high: float | None = None, what: DurationKind = "other") -> Duration:
    """A stretch of time."""
    return Duration(what=what, low_min=low, high_min=high if high is not None else low)


def packed(
    of: Recipe, family: Family, day: Day | None = None, ledger: Ledger | None = None, **more: object
) -> tuple[Pack, ...]:
    """The packs of a recipe that is run as this family."""
    return divide(of, items(of), graph(of), dish(family, **more), day or Day(), ledger or Ledger())


def kinds(packs: tuple[Pack, ...], of: Recipe) -> dict[str, set[str]]:
    """The kinds of the packs that hold each food, by the food's name."""
    found: defaultdict[str, set[str]] = defaultdict(set)
    for one in packs:
        for item in one.items:
            found[of.ingredients[item.ingredient].name].add(one.kind)
    return dict(found)


def mates(packs: tuple[Pack, ...], of: Recipe, name: str) -> list[set[str]]:
    """What shares a pack with a food, pack by pack, the food itself included."""
    held = [{of.ingredients[item.ingredient].name for item in one.items} for one in packs]
    return [names for names in held if name in names]


def reasons(of: Recipe, family: Family, name: str, day: Day | None = None, **more: object) -> set[str]:
    """The ids of the rules that placed a food."""
    ledger = Ledger()
    packed(of, family, day, ledger, **more)
    return {reason.rule for reason in ledger.reasons if reason.about == name}
