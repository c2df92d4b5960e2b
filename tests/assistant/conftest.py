"""One recipe and its plan, written down by hand, for the rooms that show and talk: no rule decides anything here."""

from __future__ import annotations

import pytest

from rules.plan import (
    Batch,
    Caution,
    Cold,
    Doneness,
    FatUse,
    Fuel,
    Heat,
    Hours,
    Kit,
    Label,
    MayHold,
    Minutes,
    Moment,
    Pack,
    PackItem,
    Pattern,
    Plan,
    PotPlan,
    Purchase,
    Question,
    Reason,
    Refresh,
    Stage,
)
from rules.recipe import Amount, Duration, Ingredient, Oven, Recipe, Servings, Step, Unread

COMMON = "common practice, no source"


def cups(value: float) -> Amount:
    return Amount(low=value, high=value, unit="cup")


def food(line: int, text: str, name: str, amount: Amount, **more: object) -> Ingredient:
    return Ingredient(line=line, text=text, name=name, amounts=(amount,), **more)  # type: ignore[arg-type]


@pytest.fixture
def river_recipe() -> Recipe:
    """A peach cobbler for nine."""
    return Recipe(
        title="Gravel Bar Peach Cobbler",
        servings=Servings(low=9, high=9, of="paddlers"),
        ingredients=(
            food(4, "1/2 cup butter", "butter", cups(0.5), food="butter"),
            food(5, "1 1/2 cups flour", "flour", cups(1.5), food="all-purpose flour"),
            food(
                6,
                "2 1/4 teaspoons baking powder",
                "baking powder",
                Amount(low=2.25, high=2.25, unit="teaspoon"),
            ),
            food(7, "1 1/2 cups milk", "milk", cups(1.5), food="milk"),
            food(
                8, "2 pounds peaches, sliced", "peaches", Amount(low=2, high=2, unit="pound"), prep="sliced"
            ),
        ),
        steps=(
            Step(
                line=11,
                text="Melt the butter in a 9x13 pan in a 350 degree oven.",
                uses=(0,),
                temps_f=(350.0,),
            ),
            Step(
                line=12,
                text="Mix the rest, pour over, bake 45 to 50 minutes.",
                uses=(1, 2, 3, 4),
                durations=(Duration(what="bake", low_min=45, high_min=50),),
            ),
        ),
        oven=Oven(temp_f=350, stated="a 350 degree oven", vessel="9x13 pan"),
        family="batter bake",
        file="river.txt",
        unread=(Unread(line=2, text="As made on the gravel bar."),),
    )


@pytest.fixture
def river_plan(river_recipe: Recipe) -> Plan:
    """Its camp plan, complete: every part of a plan has something to show."""
    return Plan(
        recipe=river_recipe,
        people=9,
        pot=PotPlan(diameter_in=12, quarts=6, fill=0.45),
        packs=(
            Pack(
                id="dry-1",
                kind="dry mix",
                label="Cobbler, dry",
                travels="shelf",
                container="1-gallon zipper bag",
                items=(
                    PackItem(ingredient=1, share=1, amount=cups(1.5), grams=188),
                    PackItem(
                        ingredient=2, share=1, amount=Amount(low=2.25, high=2.25, unit="teaspoon"), grams=10
                    ),
                ),
                make_ahead="up to a month before",
            ),
            Pack(
                id="wet-1",
                kind="wet mix",
                label="Cobbler, peaches",
                travels="frozen",
                items=(
                    PackItem(ingredient=4, share=1, amount=Amount(low=2, high=2, unit="pound"), grams=907),
                ),
            ),
            Pack(
                id="fresh-1",
                kind="fresh",
                label="Cooler",
                travels="cool",
                items=(
                    PackItem(ingredient=0, share=1, amount=cups(0.5), grams=113),
                    PackItem(ingredient=3, share=1, amount=cups(1.5), grams=366),
                ),
            ),
        ),
        fat=(FatUse(ingredient=0, goes="hot pot first", when="when the pot is hot"),),
        heat=Heat(
            stages=(
                Stage(
                    kind="light", minutes=Minutes(low=15, high=20), starts_at_min=-85, look_for="ash all over"
                ),
                Stage(kind="heat fat", minutes=Minutes(low=5, high=5), top=0, under=24, starts_at_min=-65),
                Stage(
                    kind="bake",
                    minutes=Minutes(low=45, high=50),
                    temp_f=350,
                    top=17,
                    under=8,
                    turn_every_min=10,
                    first_look_min=30,
                    starts_at_min=-60,
                    look_for="deep gold, bubbling at the edge",
                    pattern=Pattern(
                        top="12 along the flange, 5 spread inside", under="7 in a ring, 1 in the centre"
                    ),
                    refresh=(Refresh(at_min=40, light_at_min=20, top=12, under=6),),
                ),
            ),
            fuel=Fuel(
                lit=43,
                reserve=11,
                briquettes=54,
                kg=1.3,
                batches=(Batch(light_at_min=-85, count=25), Batch(light_at_min=-40, count=18)),
            ),
            doneness=(Doneness(what="cobbler", sign="the edge bubbles", rest_min=15, source=COMMON),),
        ),
        home_steps=("Whisk flour and baking powder, bag them.",),
        camp_steps=(
            "Melt the butter in the hot pot.",
            "Pour the batter over it, the peaches on top, and do not stir.",
        ),
        timeline=(
            Moment(at_min=-1440, clock="18:30 the day before", do="Freeze the peaches flat."),
            Moment(at_min=-85, clock="17:05", do="Light 25 briquettes."),
            Moment(at_min=0, clock="18:30", do="Eat."),
        ),
        cold=Cold(
            frozen_packs=("wet-1",), thaw_hours=Hours(low=9, high=14), ice_kg=4.5, notes=("Keep it shut.",)
        ),
        shopping=(
            Purchase(food="butter", buy="1 stick", need="1/2 cup", aisle="dairy"),
            Purchase(
                food="flour", buy="a 2 lb bag", need="1 1/2 cups", left_over="5 cups", likely_at_home=True
            ),
        ),
        kit=Kit(home=("a whisk",), camp=("54 briquettes", "a chimney")),
        labels=(Label(pack="dry-1", text="COBBLER, DRY\nadd 1 1/2 cups milk"),),
        cautions=(
            Caution(id="carbon-monoxide", text="Coals give off carbon monoxide: outside only.", source="CDC"),
            Caution(id="raw-flour", text="Raw batter is not for tasting.", source="FDA"),
        ),
        allergens=("milk", "wheat"),
        check_label=(MayHold(food="flour", may_hold=("soybeans",)),),
        questions=(Question(about="pot", text="Which pot comes along?", default="a 12-inch one"),),
        why=(
            Reason(
                rule="dry.leavener",
                about="baking powder",
                because="baking powder rides dry: once wet it spends its gas within minutes",
                source=COMMON,
            ),
            Reason(
                rule="coals.share",
                about="top coals",
                because="a bake wants two thirds of the heat above",
                source=COMMON,
            ),
        ),
        file="river.txt",
    )
