"""Words that several rooms show: amounts with their food, names in a row, a pack's short name, masses in the cook's units."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from msgspec.structs import replace

from rules import units
from rules.circumstances import Units
from rules.plan import Pack
from rules.recipe import Amount

#: Units after which English says "of".
OF = frozenset(
    [
        "clove", "head", "stalk", "leaf", "sprig", "slice", "can", "jar", "package", "bag", "bottle", "bunch", "stick",
        "handful", "knob", "pinch", "dash", "splash", "drizzle", "bulb", "twig", "shoot", "cube", "piece", "box",
        "thumb", "glass", "mug", "block", "spoon", "loaf", "carton", "tin", "tub", "pot", "sachet", "tube", "wedge",
        "rib", "strip", "round", "ball", "sheet", "ear", "fillet", "inch", "centimeter", "lump", "pat", "rasher", "grating",
        "twist", "grind", "scoop", "sliver", "squeeze",
    ]
)  # fmt: skip

#: Names in a text stay a list that one can read.
MOST_NAMES = 5


def joined(names: Collection[str], last: str = "and") -> str:
    """Names in a row as one says it: "milk, eggs and wheat"; `last` stands before the last of them."""
    *most, end = names or ("",)
    return f"{', '.join(most)} {last} {end}" if most else end


def listed(names: Iterable[str]) -> str:
    """Names as a cook would list them, each once: "butter, milk and egg"."""
    unique = list(dict.fromkeys(names))
    if len(unique) > MOST_NAMES:
        unique = [*unique[: MOST_NAMES - 1], f"{len(unique) - MOST_NAMES + 1} more"]
    return joined(unique)


def measured(amount: Amount | None, name: str, *, system: Units, grams: float | None = None) -> str:
    """A food as it is measured: "2 cups flour", "3 cloves of garlic", "2 cans of tomatoes (28 ounces each)"."""
    if amount is None:
        return name
    package = amount.package
    bare = replace(amount, package=None)
    said = units.kitchen(bare, units=system, grams=grams)
    if not said:
        return name
    if amount.unit is not None and amount.unit in name.split():
        # "2 bay leaves" need no second "leaves".
        told = f"{units.number(amount.high)} {name}"
    else:
        told = f"{said} of {name}" if amount.unit in OF else f"{said} {name}"
    if package is None:
        return told
    each = "" if amount.high == 1 else " each"
    return f"{told} ({units.package_size(package, system)}{each})"


def short_names(packs: Sequence[Pack]) -> dict[str, str]:
    """By pack id: what to call a pack in a list, without its contents; its part of the dish where two sound alike."""
    short = {pack.id: _short(pack.label) for pack in packs}
    alike = [name for name in short.values() if list(short.values()).count(name) > 1]
    return {
        pack.id: f"{short[pack.id]} ({pack.component or pack.id})"
        if short[pack.id] in alike
        else short[pack.id]
        for pack in packs
    }


def _short(label: str) -> str:
    """A label without its list of foods; "of" may stand in the name of a dish."""
    name = label.partition(": ")[0].strip() or label
    return name.partition(" of ")[0] if name.startswith(("dry mix of ", "mix of ")) else name


def mass(kg: float, system: Units) -> str:
    """A mass with its other unit behind it: "9 lb (4 kg)"."""
    pounds = units.to(kg, "kilogram", "pound")
    said = f"{pounds:.0f} lb" if pounds >= 3 else f"{pounds:.1f} lb"
    return f"{said} ({kg:g} kg)" if system == "us" else f"{kg:g} kg"
