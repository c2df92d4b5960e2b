"""A plan for a metric cook: every temperature that its texts give in °F alone, in °C with the °F behind it."""

from __future__ import annotations

import re
from typing import TypeVar

import msgspec

from rules.plan import Plan
from rules.recipe import Struct

Part = TypeVar("Part", bound=Struct)

#: "160 °F", "190 to 205 °F"; what has its °C beside it already is taken whole, so that nothing in it is found again.
_FAHRENHEIT = re.compile(
    r"°C \((?:\d{1,3} to )?\d{1,3} °F\)|\d{1,3} °F \(\d{1,3} °C\)"
    r"|(?<![\d.])(?P<low>\d{1,3})(?: to (?P<high>\d{1,3}))? °F"
)
_BRACKETED = re.compile(r"(?<=°C) \(\d{1,3}(?: to \d{1,3})? °F\)")


def in_celsius(text: str) -> str:
    """The text with its temperatures in °C first: "71 °C (160 °F) inside"."""
    return _FAHRENHEIT.sub(_both, text) if "°F" in text else text


def short(text: str) -> str:
    """The text with its temperatures in °C alone, where there is room for one figure: on a label."""
    return _BRACKETED.sub("", in_celsius(text))


def for_metric(plan: Plan) -> Plan:
    """The plan with the temperatures of all its own texts in °C first; the recipe stays as it was written."""
    heat = plan.heat
    if heat is not None:
        heat = msgspec.structs.replace(
            heat,
            stages=tuple(_told(stage, "look_for") for stage in heat.stages),
            doneness=tuple(_told(check, "sign") for check in heat.doneness),
        )
    cold = plan.cold
    if cold is not None:
        bags = tuple(_told(bag, "advice") for bag in cold.bags)
        cold = msgspec.structs.replace(cold, notes=tuple(map(in_celsius, cold.notes)), bags=bags)
    return msgspec.structs.replace(
        plan,
        heat=heat,
        cold=cold,
        home_steps=tuple(map(in_celsius, plan.home_steps)),
        camp_steps=tuple(map(in_celsius, plan.camp_steps)),
        timeline=tuple(_told(moment, "do") for moment in plan.timeline),
        kit=msgspec.structs.replace(
            plan.kit, home=tuple(map(in_celsius, plan.kit.home)), camp=tuple(map(in_celsius, plan.kit.camp))
        ),
        cautions=tuple(_told(caution, "text") for caution in plan.cautions),
        questions=tuple(_told(_told(ask, "text"), "default") for ask in plan.questions),
        labels=tuple(msgspec.structs.replace(label, text=short(label.text)) for label in plan.labels),
        why=tuple(_told(reason, "because") for reason in plan.why),
    )


def _told(part: Part, field: str) -> Part:
    text = getattr(part, field)
    return msgspec.structs.replace(part, **{field: in_celsius(text)}) if text else part


def _both(found: re.Match[str]) -> str:
    ends = [int(end) for end in found.groups() if end is not None]
    if not ends:
        return found[0]
    celsius = " to ".join(f"{round((end - 32) * 5 / 9)}" for end in ends)
    return f"{celsius} °C ({found[0]})"
