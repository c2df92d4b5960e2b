"""The one unit registry (`to`), the measures people own (`rounded`) and the wording of amounts (`kitchen`)."""

from rules.units.convert import UnitProblem, is_loose, is_mass, is_volume, kind, loose_measures, to
from rules.units.own import rounded
from rules.units.sums import by_kind, in_all
from rules.units.words import kitchen, number, package_size, plural

__all__ = [
    "UnitProblem",
    "by_kind",
    "in_all",
    "is_loose",
    "is_mass",
    "is_volume",
    "kind",
    "kitchen",
    "loose_measures",
    "number",
    "package_size",
    "plural",
    "rounded",
    "to",
]
