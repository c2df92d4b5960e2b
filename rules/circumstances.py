"""What the cook says about the day: people, pots, weather, ground, meal time, cooler.

A `Day` is plain data with defaults; whether its values make sense is checked once, in `checked`, whose sentences
name the allowed values.
"""

from __future__ import annotations

from typing import Literal

from rules.plan import Depth
from rules.problem import UsageProblem
from rules.recipe import Struct

Wind = Literal["calm", "breezy", "windy"]
Ground = Literal["dry", "damp", "snow"]
Units = Literal["us", "metric"]
Charcoal = Literal[
    "briquettes", "hardwood briquettes", "coconut briquettes", "quick-light briquettes", "lump charcoal"
]

#: Camp pots are sold in these diameters [in]; the coal chart speaks of 8 to 16.
DIAMETERS_IN = (5, 8, 10, 12, 14, 16)


class PotOwned(Struct, frozen=True, kw_only=True):
    """A pot that comes along."""

    diameter_in: int = 12
    depth: Depth = "shallow"
    count: int = 1


class Swap(Struct, frozen=True, kw_only=True):
    """A food that the cook wants replaced by another; `to` None leaves it out."""

    food: str
    to: str | None = None


class Habit(Struct, frozen=True, kw_only=True):
    """What the cook's own log of `cooks` meals teaches: effects on logarithms, their means and covariance.

    `rules.habit` fits it, names the effects, and says what is made of them.
    """

    effects: tuple[str, ...]
    mean: tuple[float, ...]
    covariance: tuple[tuple[float, ...], ...]
    cooks: int


class Day(Struct, frozen=True, kw_only=True):
    """The circumstances of one dish. None means: the cook did not say."""

    people: int | None = None
    scale: float | None = None
    #: the pots that come along; empty: a 12-inch shallow one is assumed and said
    pots: tuple[PotOwned, ...] = ()
    temp_f: float | None = None
    air_f: float = 70.0
    wind: Wind = "calm"
    ground: Ground = "dry"
    screen: bool = False
    elevation_ft: float = 0.0
    #: "18:30" or "2027-07-03T18:30"
    eat: str | None = None
    zone: str | None = None
    #: hours that the food spends in the cooler before the meal
    trip_hours: float | None = None
    trip_air_f: float | None = None
    cooler_quarts: float | None = None
    #: the dish rides with others: the ice is counted for all of them together, not in its own plan
    shares_cooler: bool = False
    freezer: bool = True
    charcoal: bool = True
    units: Units = "us"
    swaps: tuple[Swap, ...] = ()
    #: what burns; the chart means standard briquettes
    burns: Charcoal = "briquettes"
    #: what the cook's own log teaches; None: the chart and the recipe alone decide
    habit: Habit | None = None
    #: the course of the fire's temperatures is reckoned and put into the plan too
    curve: bool = False


def checked(day: Day) -> Day:
    """The day itself when every value can be.

    Raises:
        UsageProblem: naming the option, the value found and the values allowed.
    """
    for pot in day.pots:
        if pot.diameter_in not in DIAMETERS_IN:
            allowed = ", ".join(map(str, DIAMETERS_IN))
            raise UsageProblem("--oven", str(pot.diameter_in), f"camp pots come in {allowed} inches")
        if not 1 <= pot.count <= 12:
            raise UsageProblem("--pots", str(pot.count), "write a whole number from 1 to 12")
    if day.people is not None and not 1 <= day.people <= 200:
        raise UsageProblem("--people", str(day.people), "write a whole number from 1 to 200")
    if day.scale is not None and not 0.1 <= day.scale <= 20:
        raise UsageProblem("--scale", f"{day.scale:g}", "write a factor from 0.1 to 20")
    if day.temp_f is not None and not 200 <= day.temp_f <= 550:
        raise UsageProblem(
            "--temp", f"{day.temp_f:g}F", "write an oven temperature from 200F to 550F (93C to 288C)"
        )
    if not -40 <= day.air_f <= 120:
        raise UsageProblem(
            "--air", f"{day.air_f:g}F", "write an air temperature from -40F to 120F (-40C to 49C)"
        )
    if not -1400 <= day.elevation_ft <= 20000:
        raise UsageProblem("--elevation", f"{day.elevation_ft:g}ft", "write a height from -1400ft to 20000ft")
    if day.trip_hours is not None and not 0 <= day.trip_hours <= 336:
        raise UsageProblem("--trip-hours", f"{day.trip_hours:g}", "write hours from 0 to 336 (two weeks)")
    if day.trip_air_f is not None and not -40 <= day.trip_air_f <= 130:
        raise UsageProblem("--trip-air", f"{day.trip_air_f:g}F", "write a temperature from -40F to 130F")
    if day.cooler_quarts is not None and not 4 <= day.cooler_quarts <= 400:
        raise UsageProblem("--cooler-quarts", f"{day.cooler_quarts:g}", "write a size from 4 to 400 quarts")
    return day
