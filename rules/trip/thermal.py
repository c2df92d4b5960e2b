"""The cooler as physics over days: what comes in, what ice and frozen bags take up, what is taken out when.

One well-mixed inside (food that is not frozen, melt water) gets heat through walls and lid, gives some to every frozen
bag through its surface and to the ice through that of its cubes. Each step is solved backwards in time for the inside's
temperature, so that no step can overshoot, and every flux is booked once on either side: the heat balances but for
rounding. Temperatures in °C, heat in kJ, heat flows in kW, hours, kilograms. The walls' own heat is left out, as in
`rules.cold.cooler`, whose leak and openings are used here.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from functools import lru_cache

from rules.cold.composition import Composition, conductivity, density, specific_heat
from rules.cold.cooler import KNOWN_DIFFERENCE, KNOWN_QUARTS, SECONDS_PER_HOUR, leak_w_per_k
from rules.cold.freezing import enthalpy, freezing_point
from rules.cold.hours import figure
from rules.cold.thaw import JUST_ABOVE
from rules.recipe import Struct
from rules.trip.times import figure as trip_figure

WATER_KJ = 4.19
#: An empty chest still holds air and wet walls: it never has less heat capacity than this [kJ/K].
LEAST_CAPACITY = 0.5
#: Points of a heat content's curve [°C]: even steps in the cold, and so many more where most of the ice melts, evenly
#: spread over the ice that is left.
COLDEST, COLD_STEP, MELTING_POINTS, MELTING_FROM, WARM_TO = -30, 2, 40, 0.12, 30.0


class Bagged(Struct, frozen=True, kw_only=True):
    """A frozen pack: mass [kg], thickness [m], taken out at `out_h`."""

    key: str
    made_of: Composition
    kg: float
    thick: float
    out_h: float


class Cooled(Struct, frozen=True, kw_only=True):
    """An unfrozen pack: mass [kg], taken out at `out_h`."""

    key: str
    made_of: Composition
    kg: float
    out_h: float


class Load(Struct, frozen=True, kw_only=True):
    """A cooler as it is shut: its size [US quarts], the air around it [°C], ice [kg] and packs, for so many hours."""

    quarts: float
    air_c: float
    hours: float
    ice_kg: float
    frozen: tuple[Bagged, ...] = ()
    cool: tuple[Cooled, ...] = ()


class State(Struct, frozen=True, kw_only=True):
    """One moment: inside temperature, ice left, heat content [kJ/kg] of every frozen pack still inside."""

    at_h: float
    inside_c: float
    ice_kg: float
    bags: tuple[tuple[str, float], ...]


class Course(Struct, frozen=True, kw_only=True):
    """A trip of one cooler: its states, and the heat [kJ] that came in and went where.

    `out` has the heat content [kJ/kg] at which every frozen pack was taken out; `cooled` is what unfrozen food and
    melt water gave up, counted from their temperatures and not from the fluxes.
    """

    states: tuple[State, ...]
    leak: float
    openings: float
    melted_kg: float
    bags: float
    cooled: float
    out: tuple[tuple[str, float], ...]


class Curve:
    """The heat content of one food over temperature as straight pieces, to be read both ways quickly."""

    def __init__(self, food: Composition) -> None:
        begins = freezing_point(food)
        temps = {float(temp) for temp in range(COLDEST, 0, COLD_STEP) if temp < begins}
        if COLDEST < begins < 0:
            # Ice at a temperature goes with begins / temperature: even steps of that are even steps of melting.
            parts = (number / MELTING_POINTS for number in range(1, MELTING_POINTS + 1))
            temps |= {begins / part for part in parts if part >= MELTING_FROM and begins / part > COLDEST}
        temps |= {max(begins, COLDEST) + JUST_ABOVE, WARM_TO}
        self.temps = sorted(temps)
        self.heats = [enthalpy(food, temp) for temp in self.temps]
        self.thawed = self.heat(max(begins, COLDEST) + JUST_ABOVE)
        self.solid = self.heat(figure("freezer").value)

    def heat(self, temp_c: float) -> float:
        """Heat content [kJ/kg] at a temperature."""
        return _read(self.temps, self.heats, temp_c)

    def temp(self, heat_kj: float) -> float:
        """Temperature at a heat content [kJ/kg]."""
        return _read(self.heats, self.temps, heat_kj)

    def capacity(self, heat_kj: float) -> float:
        """What a kelvin takes at that heat content [kJ/(kg K)]: huge while ice melts."""
        place = min(max(bisect_left(self.heats, heat_kj), 1), len(self.heats) - 1)
        rise = self.heats[place] - self.heats[place - 1]
        return rise / (self.temps[place] - self.temps[place - 1])

    def thawed_share(self, heat_kj: float) -> float:
        """How much of the heat that thaws it has come in."""
        whole = self.thawed - self.solid
        return min(1.0, max(0.0, (heat_kj - self.solid) / whole)) if whole > 0 else 1.0


def _read(xs: Sequence[float], ys: Sequence[float], x: float) -> float:
    place = min(max(bisect_left(xs, x), 1), len(xs) - 1)
    share = (x - xs[place - 1]) / (xs[place] - xs[place - 1])
    return ys[place - 1] + share * (ys[place] - ys[place - 1])


@lru_cache(maxsize=256)
def curve(food: Composition) -> Curve:
    """The curve of a food, made once."""
    return Curve(food)


@lru_cache(maxsize=256)
def conductance(food: Composition, kg: float, thick: float) -> float:
    """Heat that a flat bag takes per kelvin through both faces [kW/K].

    Plank's resistances: the film on each face and a quarter of the thickness, with the conductivity of thawed food.
    """
    area = kg / density(food, 0.0) / thick
    resistance = 1 / figure("h_cooler").value + thick / (
        4 * conductivity(food, max(freezing_point(food), 0.0) + 1.0)
    )
    return 2 * area / resistance / 1000


def walls_kw_per_k(quarts: float) -> tuple[float, float]:
    """What comes in per kelvin of difference [kW/K]: through the walls, and with the lid as often as it is opened."""
    walls = leak_w_per_k(quarts) / 1000
    each = figure("opening_kj").value / KNOWN_DIFFERENCE * quarts / KNOWN_QUARTS
    return walls, each * figure("openings_per_day").value / (24 * SECONDS_PER_HOUR)


def run(load: Load) -> Course:
    """The whole trip of one cooler."""
    return _Run(load).all()


class _Run:
    """The state while it runs; heat contents per bag, one inside, one heap of ice."""

    def __init__(self, load: Load) -> None:
        self.load = load
        self.walls, self.lid = walls_kw_per_k(load.quarts)
        self.ice_kw_per_kg = trip_figure("ice_area").value * figure("h_cooler").value / 1000
        self.bags = {bag.key: bag for bag in load.frozen}
        self.curves = {bag.key: curve(bag.made_of) for bag in load.frozen}
        self.takes = {bag.key: conductance(bag.made_of, bag.kg, bag.thick) for bag in load.frozen}
        self.held = {key: one.solid for key, one in self.curves.items()}
        self.capacities = {
            food.key: food.kg * specific_heat(food.made_of, figure("in_cooler").value) for food in load.cool
        }
        self.water_kg = 0.0
        self.inside = figure("warm_food").value if load.cool else 0.0
        self.ice = load.ice_kg
        self.leak = self.openings = self.taken = 0.0
        self.brought = self.capacity() * self.inside
        self.carried = 0.0
        self.out: list[tuple[str, float]] = []

    def capacity(self) -> float:
        """Heat capacity of what is not frozen [kJ/K]; its heat content counts from 0 °C."""
        return LEAST_CAPACITY + sum(self.capacities.values()) + self.water_kg * WATER_KJ

    def all(self) -> Course:
        step = trip_figure("step_h").value
        states = [self.state(0.0)]
        at = 0.0
        self.take_out(at)
        while at < self.load.hours - 1e-9:
            hours = min(step, self.load.hours - at)
            self.pass_time(hours * SECONDS_PER_HOUR)
            at += hours
            self.take_out(at)
            states.append(self.state(at))
        return Course(
            states=tuple(states),
            leak=self.leak,
            openings=self.openings,
            melted_kg=self.load.ice_kg - self.ice,
            bags=self.taken,
            cooled=self.brought - self.carried - self.capacity() * self.inside,
            out=tuple(self.out),
        )

    def pass_time(self, seconds: float) -> None:
        """One step: the inside's new temperature first, then what flows at it."""
        into = {key: self.into_bag(key, seconds) for key in self.held}
        melts = self.ice_kw_per_kg * self.ice
        capacity = self.capacity()
        gets = (self.walls + self.lid) * self.load.air_c
        gets += sum(kw * temp for kw, temp in into.values())
        gives = self.walls + self.lid + melts + sum(kw for kw, _ in into.values())
        inside = (capacity * self.inside + seconds * gets) / (capacity + seconds * gives)
        latent = figure("latent_heat").value
        melted = seconds * melts * max(inside, 0.0) / latent
        if melted > self.ice:
            # The last ice takes what it can; the inside keeps the rest.
            melted = self.ice
            inside = (capacity * self.inside + seconds * gets - melted * latent) / (
                capacity + seconds * (gives - melts)
            )
        elif inside < 0.0:
            # Nothing flows out of ice at 0 °C here: bags colder than that only cool the inside.
            inside = (capacity * self.inside + seconds * gets) / (capacity + seconds * (gives - melts))
        for key, (kw, temp) in into.items():
            heat = seconds * kw * (inside - temp)
            self.held[key] += heat / self.bags[key].kg
            self.taken += heat
        self.leak += seconds * self.walls * (self.load.air_c - inside)
        self.openings += seconds * self.lid * (self.load.air_c - inside)
        self.ice -= melted
        # Melt water comes in at 0 °C: the heat of the inside is shared with it.
        self.water_kg += melted
        self.inside = capacity * inside / self.capacity()

    def into_bag(self, key: str, seconds: float) -> tuple[float, float]:
        """What a bag takes per kelvin over a step [kW/K], slowed as it warms meanwhile, and its temperature."""
        held, bag = self.held[key], self.bags[key]
        stores = bag.kg * self.curves[key].capacity(held)
        kw = self.takes[key]
        return kw / (1 + kw * seconds / stores), self.curves[key].temp(held)

    def take_out(self, at_h: float) -> None:
        for bag in self.load.frozen:
            if bag.key in self.held and bag.out_h <= at_h + 1e-9:
                self.out.append((bag.key, self.held.pop(bag.key)))
        for food in self.load.cool:
            if food.key in self.capacities and food.out_h <= at_h + 1e-9:
                self.carried += self.capacities.pop(food.key) * self.inside

    def state(self, at_h: float) -> State:
        return State(at_h=at_h, inside_c=self.inside, ice_kg=self.ice, bags=tuple(self.held.items()))
