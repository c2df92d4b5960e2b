"""Words for lists and packs that several rooms show: names in a row, a pack's short name, masses in the cook's units."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rules import units
from rules.circumstances import Units
from rules.plan import Pack

#: Names in a text stay a list that one can read.
MOST_NAMES = 5


def listed(names: Iterable[str]) -> str:
    """Names as a cook would list them, each once: "butter, milk and egg"."""
    unique = list(dict.fromkeys(names))
    if len(unique) > MOST_NAMES:
        unique = [*unique[: MOST_NAMES - 1], f"{len(unique) - MOST_NAMES + 1} more"]
    if len(unique) < 2:
        return "".join(unique)
    return f"{', '.join(unique[:-1])} and {unique[-1]}"


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
