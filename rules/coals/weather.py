"""From a day's words to factors on the count: cold, wind, ground, a deep pot (handbook chapter 5).

The words become figures by table; the physics is `balance`. The printed chart is straight in the temperature over the
air's, so the cold enters as that difference; wind enters as the ratio of the losses of the same pot, held between
nothing and its table's limit; the ground as the heat that it draws from the coals above it.
"""

from __future__ import annotations

import math
from functools import lru_cache

from rules.because import COMMON, Rule
from rules.circumstances import Day, Ground, Wind
from rules.coals.balance import INCH, MPH, ground_flux, kelvin, loss_ratio, wind_at
from rules.coals.chart import CHART_AIR_F
from rules.coals.figures import figure, ground, wind
from rules.coals.glow import first_heat_w
from rules.coals.vessel import deep_factor, iron
from rules.plan import Depth, Reason
from rules.recipe import Struct

COLD = Rule(
    id="coals.air",
    because="the coals carry the pot over the air: at {air:.0f} °F the count goes times {factor:.2f}",
    source="heat in = heat lost; the printed chart is straight in the temperature over 70 °F air (coal_law.csv)",
)
WIND = Rule(
    id="coals.wind",
    because="{word} air carries heat off the iron: the count goes times {factor:.2f}{screen}, and the coals burn out"
    " that much sooner",
    source="Churchill and Chu 1975, Churchill and Bernstein 1977 (losses in calm air and in wind)",
)
WINDY = Rule(
    id="coals.sparks",
    because="above 20 mph, or when sparks fly, nobody bakes: wait, or move behind shelter that is open to the air",
)
GROUND = Rule(
    id="coals.ground",
    because="{word} ground draws heat from the coals under the pot: {more:.1f} more below; a fire pan or a metal table"
    " saves them",
)
DEEP = Rule(
    id="coals.deep",
    because="a deep pot has more iron to keep hot: the count goes times {factor:.2f}",
    source="computed: outer surface of the deep pot over the shallow one's",
)
HEIGHT = Rule(
    id="coals.height",
    because="at {feet:,.0f} ft the count stays as it is; water boils lower, times grow and leavener works harder",
    source=COMMON,
)


class Factors(Struct, frozen=True, kw_only=True):
    """What the day does to a count: factors on both halves, briquettes more below, and the reasons."""

    air: float = 1.0
    wind: float = 1.0
    deep: float = 1.0
    ground_coals: float = 0.0
    reasons: tuple[Reason, ...] = ()

    @property
    def both(self) -> float:
        """The factor on all the coals."""
        return self.air * self.wind * self.deep


def factors(*, diameter_in: int, depth: Depth, pot_f: float, day: Day, under: float) -> Factors:
    """The day's factors for a pot held at `pot_f` [°F] with `under` briquettes below it on a mild day."""
    cold = (pot_f - day.air_f) / (pot_f - CHART_AIR_F)
    blown = wind_factor(diameter_in, depth, pot_f, day.air_f, day.wind, day.screen)
    deep = deep_factor(diameter_in, depth)
    row = ground(day.ground)
    more = min(
        _ground_coals(diameter_in, day.ground, day.air_f),
        (row.most_factor - 1) * under * cold * blown * deep,
    )
    reasons = []
    about = "coals"
    if day.air_f != CHART_AIR_F:
        reasons.append(COLD.says(about, air=day.air_f, factor=cold))
    if day.wind != "calm":
        screen = " behind the screen" if day.screen else ""
        reasons.append(WIND.says(about, word=day.wind, factor=blown, screen=screen))
    if day.wind == "windy":
        reasons.append(WINDY.says(about))
    if more:
        reasons.append(GROUND.says(about, row, word=_ground_word(day.ground), more=more))
    if deep > 1:
        reasons.append(DEEP.says(about, factor=deep))
    if day.elevation_ft >= 1000:
        reasons.append(HEIGHT.says(about, feet=day.elevation_ft))
    return Factors(air=cold, wind=blown, deep=deep, ground_coals=more, reasons=tuple(reasons))


def _ground_word(word: Ground) -> str:
    return "snowy" if word == "snow" else word


@lru_cache(maxsize=1024)
def wind_factor(
    diameter_in: int, depth: Depth, pot_f: float, air_f: float, word: Wind, screen: bool = False
) -> float:
    """How much more the pot loses in that wind than in calm air of the same temperature, from 1 to the limit."""
    pot = iron(diameter_in, depth)
    calm = wind_at_the_pot("calm", pot.depth_in)
    blowing = wind_at_the_pot(word, pot.depth_in)
    if screen:
        blowing = max(blowing * figure("screen share").value, calm)
    day = {
        "pot_f": pot_f,
        "calm": calm,
        "diameter_m": diameter_in * INCH,
        "height_m": pot.depth_in * INCH,
        "emissivity": figure("emissivity").value,
        "wind_most": figure("wind most").value,
    }
    windy = loss_ratio(air_f=air_f, wind=blowing, **day)
    return windy / loss_ratio(air_f=air_f, wind=calm, **day)


def wind_at_the_pot(word: Wind, depth_in: float) -> float:
    """Wind [m/s] at half the height of a pot that stands on its legs.

    The open land's profile holds down to the height at which a person feels the wind. It says nothing of a few inches,
    which lie inside its roughness: there the profile of the bare ground round the fire goes on.
    """
    felt_m = figure("felt height").value
    felt = wind_at(
        felt_m,
        speed=wind(word).speed_mph * MPH,
        at_m=figure("wind height").value,
        roughness_m=figure("roughness").value,
    )
    return wind_at(
        (depth_in / 2 + figure("legs").value) * INCH,
        speed=felt,
        at_m=felt_m,
        roughness_m=figure("bare roughness").value,
    )


@lru_cache(maxsize=1024)
def _ground_coals(diameter_in: int, word: Ground, air_f: float) -> float:
    """Briquettes whose heat the ground takes beyond what dry ground would take."""
    coals_k, freezing_k = kelvin(figure("coal bed").value), kelvin(32)
    bed = math.pi * (iron(diameter_in, "shallow").bottom_in * INCH / 2) ** 2

    def flux(kind: Ground) -> float:
        row = ground(kind)
        here_k = freezing_k if row.effusivity is None else kelvin(air_f)
        seconds = figure("renew after").value * 60
        return ground_flux(
            coals_k=coals_k,
            ground_k=here_k,
            ash=figure("ash").value,
            effusivity=row.effusivity,
            seconds=seconds,
        )

    return max(flux(word) - flux("dry"), 0.0) * bed / first_heat_w()
