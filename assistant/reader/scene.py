"""Where the cook stands while the method is read: what is over the fire, whether it is wet, what goes on."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from assistant.reader import words
from assistant.reader.places import Heat, Place
from rules.recipe import Deed
from rules.roles import Role

#: Handwork and the like: what is only handled has not entered anything yet.
HANDLING: frozenset[Deed] = frozenset(
    {
        "chop", "grate", "peel", "grind", "rinse", "drain", "strain", "thaw", "other", "line", "turn", "preheat",
        "cover", "store", "can",
    }
)  # fmt: skip
LIQUID: frozenset[Role] = frozenset({"water", "stock", "milk", "shelf milk", "juice", "drink", "spirits"})
FIRE: frozenset[Deed] = frozenset(
    {
        "brown", "saute", "fry", "deep fry", "griddle", "boil", "simmer", "reduce", "deglaze", "steam",
        "pressure cook", "bake", "roast", "broil", "grill", "smoke", "toast",
    }
)  # fmt: skip
FRYING: frozenset[Deed] = frozenset({"fry", "saute", "brown", "griddle", "toast", "deglaze"})
WET: frozenset[Deed] = frozenset({"boil", "simmer", "reduce", "steam"})
WAIT: frozenset[Deed] = frozenset({"rise", "rest", "chill", "freeze", "marinate", "soak", "cool", "ferment"})
#: Deeds that go on beside a fire without ending it.
BESIDE: frozenset[Deed] = frozenset(
    {
        "mix", "add", "pour", "season", "turn", "cover", "other", "top", "fold", "mash", "melt", "heat", "coat",
        "chop",
    }
)  # fmt: skip
#: Work that takes time of its own.
WORK: frozenset[Deed] = frozenset({"knead", "beat", "blend", "rub", "cream", "store"})
#: Work on a dough, away from every fire.
AT_THE_BOARD: frozenset[Deed] = frozenset({"knead", "rise", "ferment"})
COLD_PLACES = frozenset({"bowl", "fridge", "freezer", "tin"})


@dataclass
class Scene:
    """What the reader remembers between deeds."""

    #: the last deed that takes time
    last: Deed | None = None
    #: the deed over the fire that goes on
    fire: Deed | None = None
    #: whether something that pours went into the pot
    wet: bool = False
    pressure: bool = False
    leavened: bool = False
    #: the oven is hot
    oven: bool = False
    #: what was put together last stands in a tin
    in_tin: bool = False
    #: the kind of the vessel named last
    vessel: str | None = None
    #: some food was taken
    begun: bool = False
    #: how strong the fire was made last
    heat: Heat | None = None
    #: the fire was turned down, and nothing but a lid came since
    turned_down: bool = False
    #: the list has yeast or a starter
    yeast: bool = False

    def goes_on(
        self, deed: Deed | None, place: Place | None = None, *, wet: bool = False, heat: Heat | None = None
    ) -> Deed | None:
        """The deed that a time beside `deed` belongs to: "add the garlic (1 minute)" fries on."""
        cold = place is not None and place.kind in COLD_PLACES
        if deed == "melt" and place is not None and place.kind == "oven":
            return deed
        if deed == "heat" and (wet or (self.wet and self.fire)) and not cold:
            return "simmer"
        if deed in BESIDE and self.fire and not cold and self.last not in WAIT:
            return "simmer" if self.fire in FRYING and (self.wet or wet) else self.fire
        if self.fire is None and self.oven and self.in_tin and not cold and (deed in BESIDE or deed is None):
            # "Brush the tops. 12 minutes."
            return "bake"
        if self.fire is None and heat and deed == "mix" and not cold:
            return "simmer" if self.wet or wet else "fry"
        return deed

    def after(
        self,
        deed: Deed,
        place: Place | None,
        roles: Collection[Role],
        *,
        heat: Heat | None,
        pours: bool,
        off: bool = False,
        on: bool = False,
    ) -> None:
        """Take note of a deed that was done.

        `pours` says that something wet was named, `off` that the pot comes off the fire, `on` that it goes over it.
        """
        if off:
            self.fire, self.last = None, "rest"
        self.begun = self.begun or bool(roles)
        self._fire_turned(deed, heat)
        kind = place.kind if place and not place.out else None
        self._oven(deed, kind)
        if kind == "pressure":
            self.pressure = True
        if {"yeast", "culture"} & set(roles):
            self.leavened = True
        if kind in ("pan", "pot") and place and place.another and deed not in ("pour", "chop"):
            self.wet, self.fire = False, None
        if self._opens_a_pan(deed, kind or self.vessel, roles):
            self.wet, self.fire = False, "fry"
        elif pours and kind not in COLD_PLACES and self._into_the_pot(deed):
            self.wet = True
        if deed == "drain" and not roles:
            self.wet = False
        self._left_the_fire(deed, roles)
        if deed == "heat" and pours and kind in ("pan", "pot"):
            self.fire = "simmer"
        self.vessel = kind or self.vessel
        if deed == "boil" and (kind == "bowl" or (set(roles) == {"grain"} and self.fire in WET)):
            # Jars are boiled clean, rice cooks beside the stew.
            return
        if deed in FIRE:
            self.fire = deed
            self.wet = self.wet or deed in WET
            self.in_tin = False
        elif heat and self.fire in ("bake", "roast") and deed not in ("other", "preheat"):
            self.fire = "fry"
        elif self.fire is None and kind not in COLD_PLACES and (on or (heat and deed in ("mix", "heat"))):
            self.fire = "simmer" if self.wet or pours else "fry"
        if deed in FIRE | WAIT | WORK or (deed == "mix" and not self.fire):
            self.last = deed
        elif self.fire and deed in BESIDE and kind not in COLD_PLACES:
            self.last = self.fire

    def _left_the_fire(self, deed: Deed, roles: Collection[Role]) -> None:
        """A dough is worked away from every fire; what was dipped in boiling water and is peeled has left it."""
        if deed in AT_THE_BOARD:
            self.fire = None
        if deed == "peel" and not roles and self.fire == "boil":
            self.wet, self.fire = False, None

    def _fire_turned(self, deed: Deed, heat: Heat | None) -> None:
        """Remember how strong the fire is."""
        if heat or deed == "boil":
            self.heat = heat
        if deed == "other" and heat == "low":
            self.turned_down = True
        elif deed not in ("cover", "other"):
            self.turned_down = False

    def _oven(self, deed: Deed, kind: str | None) -> None:
        if deed == "preheat" or (deed in ("bake", "roast") and kind == "oven"):
            self.oven = True
        if kind == "tin" and deed not in ("grease", "line"):
            self.in_tin = True
        elif kind in ("pan", "pot"):
            self.in_tin = False

    def _opens_a_pan(self, deed: Deed, kind: str | None, roles: Collection[Role]) -> bool:
        """Heating a pan, or fat in it, begins a fry."""
        fat_alone = "fat" in roles and not set(roles) & LIQUID
        if deed in ("heat", "melt"):
            return (fat_alone and kind not in ("bowl", "tin", "oven")) or (
                kind == "pan" and not set(roles) & LIQUID
            )
        return deed == "add" and set(roles) == {"fat"} and kind in ("pan", "pot")

    def _into_the_pot(self, deed: Deed) -> bool:
        if deed in HANDLING | {"season", "beat", "marinate", "coat", "serve"}:
            return False
        return deed != "mix" or self.fire is not None


def liquids() -> frozenset[str]:
    """Words for intermediate things that make a pan wet."""
    return frozenset(words.groups("doing.toml")["wet_things"])
