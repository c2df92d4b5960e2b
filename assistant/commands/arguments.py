"""What commands take: files, forms, places to write to, and the options that describe the day."""

from __future__ import annotations

import functools
import inspect
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Annotated, Any, get_args

import typer

if TYPE_CHECKING:
    from rules.circumstances import Day

Files = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="FILE...",
        help='Recipe files, folders of them, rows {"id", "text"} in a .jsonl file; - is standard input.',
    ),
]
Jobs = Annotated[str | None, typer.Option("--jobs", metavar="N", help="Work in N processes at once.")]
Cluster = Annotated[
    str | None, typer.Option("--cluster", metavar="ADDRESS", help="Work on the Dask cluster there.")
]
DoneFile = Annotated[
    str | None, typer.Option("--done", metavar="PATH", help="Note there what is done; go on after a stop.")
]
OneFile = Annotated[str, typer.Argument(metavar="FILE", help="A recipe file; - is standard input.")]
Form = Annotated[
    str | None, typer.Option("--as", metavar="FORM", help="text, json, jsonl, md, html, ics or csv.")
]
Out = Annotated[
    str | None,
    typer.Option("--out", metavar="PATH", help="Write to a file, or a file for each recipe into a folder/."),
]
Force = Annotated[bool, typer.Option("--force", help="Let --out write over a file.")]
Unit = Annotated[str | None, typer.Option("--units", metavar="SYSTEM", help="us or metric.")]

#: The options that describe the day, by their name in `assistant.options.day`.
DAY_OPTIONS: dict[str, Any] = {
    "oven": Annotated[
        list[str] | None,
        typer.Option("--oven", metavar="INCHES", help="The pot: 5, 8, 10, 12, 14 or 16; may be repeated."),
    ],
    "deep": Annotated[bool, typer.Option("--deep", help="The pot is a deep one.")],
    "pots": Annotated[str | None, typer.Option("--pots", metavar="N", help="How many such pots come along.")],
    "people": Annotated[str | None, typer.Option("--people", metavar="N", help="How many eat.")],
    "temp": Annotated[
        str | None, typer.Option("--temp", metavar="TEMP", help="Another oven temperature: 375F, 190C.")
    ],
    "eat": Annotated[
        str | None, typer.Option("--eat", metavar="TIME", help="When you eat: 18:30 or 2027-07-03T18:30.")
    ],
    "zone": Annotated[str | None, typer.Option("--zone", metavar="ZONE", help="Time zone: America/Boise.")],
    "air": Annotated[str | None, typer.Option("--air", metavar="TEMP", help="The air: 45F or 7C.")],
    "wind": Annotated[str | None, typer.Option("--wind", metavar="WORD", help="calm, breezy or windy.")],
    "ground": Annotated[str | None, typer.Option("--ground", metavar="WORD", help="dry, damp or snow.")],
    "screen": Annotated[bool, typer.Option("--screen", help="A windscreen stands around the pot.")],
    "elevation": Annotated[
        str | None, typer.Option("--elevation", metavar="HEIGHT", help="7000ft or 2100m.")
    ],
    "trip_hours": Annotated[
        str | None, typer.Option("--trip-hours", metavar="HOURS", help="Hours in the cooler before the meal.")
    ],
    "trip_air": Annotated[
        str | None, typer.Option("--trip-air", metavar="TEMP", help="The air around the cooler: 85F or 29C.")
    ],
    "cooler_quarts": Annotated[
        str | None, typer.Option("--cooler-quarts", metavar="QUARTS", help="The cooler's size: 48, or 45L.")
    ],
    "no_freezer": Annotated[bool, typer.Option("--no-freezer", help="Nothing can be frozen at home.")],
    "no_charcoal": Annotated[bool, typer.Option("--no-charcoal", help="Charcoal is forbidden or not there.")],
    "curve": Annotated[
        bool, typer.Option("--curve", help="Reckon how warm iron and food get, from first coals to last.")
    ],
    "own": Annotated[bool, typer.Option("--own", help="Plan by what your own log of cooks teaches.")],
    "units": Unit,
}


def _by_the_log(day: Day) -> Day:
    """The day with what the cook's own log teaches."""
    import msgspec

    from assistant.commands.habits import own_habit

    return msgspec.structs.replace(day, habit=own_habit())


def takes_a_day(
    *, options: Iterable[str] = DAY_OPTIONS
) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Give a command the options of the day; it receives them parsed, as its keyword `day`."""

    def adorn(command: Callable[..., None]) -> Callable[..., None]:
        signature = inspect.signature(command, eval_str=True)

        @functools.wraps(command)
        def with_day(**words: Any) -> None:
            from assistant.options import day

            told = {name: words.pop(name) for name in options}
            command(**words, day=_by_the_log(day(told)) if told.get("own") else day(told))

        own = [parameter for name, parameter in signature.parameters.items() if name != "day"]
        of_the_day = [
            inspect.Parameter(
                name,
                inspect.Parameter.KEYWORD_ONLY,
                default=False if get_args(DAY_OPTIONS[name])[0] is bool else None,
                annotation=DAY_OPTIONS[name],
            )
            for name in options
        ]
        with_day.__signature__ = inspect.Signature([*own, *of_the_day])  # type: ignore[attr-defined]
        with_day.__annotations__ = {parameter.name: parameter.annotation for parameter in [*own, *of_the_day]}
        return with_day

    return adorn
