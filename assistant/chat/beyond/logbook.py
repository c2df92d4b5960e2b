"""The room of the log: writes down what a cook tells, fits the habit anew, shows it, forgets it, exports it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, Protocol

import msgspec

from assistant.chat.acts import Meant
from assistant.chat.beyond.asked import HabitAsked, asked
from assistant.chat.beyond.log import told
from assistant.chat.beyond.rooms import Host, Part
from assistant.show.habit import HabitReport, Line, finding_text, habit_text, line_text
from rules.circumstances import Habit
from rules.convert import camp
from rules.habit import Told, cooked, fit
from rules.habit.findings import findings
from rules.habit.record import main_stage
from rules.plan import Plan

replace = msgspec.structs.replace
NO_DISH = "There is no recipe to log this for: paste or open the one that was cooked, then tell it again."
NO_COALS = "This dish has no stage over coals, so there is nothing to learn from it."
NO_LOG = "Nothing can be logged from here."


class Log(Protocol):
    """Where cooks are logged; `assistant.keep.Store` is one."""

    def log(self, line: Any, plan: Plan, *, instead_of: int | None = None) -> int:
        """Write a line; its number."""
        ...

    def cooks(self) -> tuple[Any, ...]:
        """All lines, the oldest first."""
        ...

    def unreadable(self) -> int:
        """How many lines cannot be read."""
        ...

    def unlog(self, number: int | None = None) -> tuple[Any, ...]:
        """Take out one line or all."""
        ...

    def log_again(self, lines: Iterable[Any]) -> None:
        """Put lines back."""
        ...


#: Writes a report in a form, to a path or to one of its own; gives the path.
ExportHabit = Callable[[HabitReport, str | None, str | None], str]


def learnt(log: Log) -> Habit | None:
    """What the whole log teaches."""
    return fit(one.cooked for one in log.cooks())


def report(log: Log) -> HabitReport:
    """The log with what it teaches."""
    lines = tuple(Line(cooked_at=one.cooked_at, cooked=one.cooked) for one in log.cooks())
    cooks = [line.cooked for line in lines]
    return HabitReport(cooks=lines, findings=findings(cooks, fit(cooks)), unreadable=log.unreadable())


class _Entry(msgspec.Struct, frozen=True):
    """The line that the next sentence may go on with."""

    number: int
    turn: int
    told: Told
    hand: Plan


class Logbook:
    """The room; what it writes is undone by taking the line out again."""

    def __init__(self, host: Host, log: Log, export: ExportHabit | None) -> None:
        self._host = host
        self._log = log
        self._export = export
        self._last: _Entry | None = None

    is_under_way = False
    says = (
        ("took 35 minutes, bottom dark", "log how it went, and learn from it"),
        ("show me my log", "say what your log teaches"),
        ("reset my log", "forget it"),
        ("export my log to cooks.csv", "write it to a file"),
        ("we burn lump charcoal", "say what burns"),
    )

    def hear(self, utterance: str) -> Part | None:
        """Logs, questions about the log, its reset and export."""
        asks = asked(utterance)
        if asks is not None:
            return Part((Meant(act=asks.act, slots=asks.slots),), "", lambda _before: self._answer(asks))
        found = told(utterance)
        if found is None:
            return None
        slots = dict(found.slots)
        is_metric = self._host.day.units == "metric"
        bare = slots.pop("pot_bare", None)
        if bare is not None:
            slots["pot_f"] = round(float(bare) * 9 / 5 + 32) if is_metric else bare
        if set(slots) == {"charcoal"}:
            burns = Meant(act="charcoal", slots=slots)
            return Part((burns,), found.rest, lambda _before: self._burn(burns))
        meant = Meant(act="log", slots=slots)
        return Part((meant,), found.rest, lambda before: self._write(meant, before))

    def _write(self, one: Meant, before: Plan | None) -> str:
        host = self._host
        last = self._last if self._last and self._last.turn == host.turns - 1 else None
        hand = last.hand if last else before
        if hand is None or host.recipe is None:
            return NO_DISH
        day = replace(host.day, burns=one.slots.get("charcoal", host.day.burns))
        said = _told(one, hand, last.told if last else Told())
        line = cooked(hand, camp(host.recipe, replace(day, habit=None)), day, said)
        if line is None:
            return NO_COALS
        old = [logged for logged in self._log.cooks() if last and logged.number == last.number]
        number = self._log.log(line, hand, instead_of=last.number if last else None)
        self._last = _Entry(number, host.turns, said, hand)
        host.become(
            host.recipe,
            replace(day, habit=learnt(self._log)),
            back=lambda: self._take_out(number, old),
        )
        told_now = [f"Logged. {line_text(line)}.", *_next(hand, host.safe_plan())]
        return "\n".join([*told_now, *(f"- {finding_text(found)}" for found in report(self._log).findings)])

    def _burn(self, one: Meant) -> str:
        host, kind = self._host, one.slots["charcoal"]
        host.become(host.recipe, replace(host.day, burns=kind))
        known = any(
            found.what == "heat" and f"over {kind}" in found.about for found in report(self._log).findings
        )
        told = (
            "your log says how hot they burn"
            if known
            else "the chart means standard ones, so log the first cook"
        )
        return f"You burn {kind}: {told}."

    def _take_out(self, number: int, old: Iterable[Any]) -> None:
        self._log.unlog(number)
        self._log.log_again(old)
        self._last = None

    def _answer(self, asks: HabitAsked) -> str:
        if asks.act == "habit":
            return habit_text(report(self._log))
        if asks.act == "export log":
            if self._export is None:
                return NO_LOG
            form, path = asks.slots.get("as"), asks.slots.get("path")
            return f"Wrote {self._export(report(self._log), form, path)}."
        taken = self._log.unlog()
        self._host.become(
            self._host.recipe,
            replace(self._host.day, habit=None),
            back=lambda: self._log.log_again(taken),
        )
        if not taken:
            return "Nothing was logged, so nothing was learnt."
        return f"Forgot all {len(taken)} of the log; the chart decides again. Undo brings them back."


def _told(one: Meant, hand: Plan, before: Told) -> Told:
    """What is told now on top of what was told in the sentence before."""
    slots: dict[str, Any] = {
        name: value for name, value in one.slots.items() if name in Told.__struct_fields__
    }
    more = one.slots.get("minutes_more")
    stage = main_stage(hand)
    if isinstance(more, int | float) and stage is not None and stage.minutes is not None:
        planned = stage.minutes.high if more > 0 else stage.minutes.low
        slots["minutes"] = max(planned + more, 1.0)
    return replace(before, **slots)


def _next(hand: Plan, plan: Plan | None) -> list[str]:
    """What is different the next time."""
    then, now = main_stage(hand), main_stage(plan) if plan else None
    if then is None or now is None or now.minutes is None or then.minutes is None:
        return []
    same = (then.top, then.under, then.minutes) == (now.top, now.under, now.minutes)
    if same:
        return ["The next plan on a day like this stays as it was."]
    minutes = f"{now.minutes.low:.0f} to {now.minutes.high:.0f}"
    if now.minutes.low == now.minutes.high:
        minutes = f"{now.minutes.low:.0f}"
    return [
        f"Next time on a day like this: {now.top} on the lid and {now.under} below for the {now.kind},"
        f" {minutes} minutes; why is in the plan."
    ]
