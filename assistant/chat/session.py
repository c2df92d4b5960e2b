"""One talk about one meal: what is said changes the circumstances, the plan is made anew, every step can be undone.

The session knows no terminal and no files: it is handed a store for kept meals and a writer for exports.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby
from typing import Any, Protocol

import msgspec

from assistant.chat import answers
from assistant.chat import changes as changes_of
from assistant.chat.acts import CHANGES, NOT_UNDERSTOOD, Meant, nearest_acts, understand
from assistant.chat.apply import Refused, applied
from assistant.chat.beyond.rooms import Opens, Part
from assistant.chat.beyond.rooms import turn as turn_beyond
from assistant.chat.context import Context
from assistant.show import words
from assistant.show.forms import Look, written
from assistant.show.kinds import Turn
from assistant.show.plain import printable
from rules.circumstances import Day
from rules.convert import camp
from rules.plan import Plan, Stage
from rules.problem import Problem
from rules.recipe import Recipe, Struct


class Meals(Protocol):
    """Where meals are kept; `assistant.keep.Store` is one."""

    def keep(self, name: str, recipe: Recipe, day: Day) -> bool:
        """Keep a meal; True when it replaced one."""
        ...

    def names(self) -> tuple[str, ...]:
        """The names of all kept meals."""
        ...

    def get(self, name: str) -> Any:
        """The kept meal, with `recipe` and `day`."""
        ...

    def forget(self, name: str) -> str:
        """Forget a meal."""
        ...

    def notice(self) -> str:
        """What the cook has to know of the store, said once; empty when all is well."""
        ...


#: Writes a plan in a form, to a path or to one of its own; gives the path.
Export = Callable[[Plan, Day, str | None, str | None], str]


class State(Struct, frozen=True, kw_only=True):
    """Where a talk stands: the recipe as read or changed, and the day; no recipe before the first one."""

    recipe: Recipe | None = None
    day: Day = Day()


class Session:
    """A talk. `say` takes a sentence and gives the turn; `load` takes a recipe that was pasted."""

    def __init__(
        self,
        recipe: Recipe | None = None,
        day: Day | None = None,
        *,
        meals: Meals | None = None,
        export: Export | None = None,
        look: Look | None = None,
        rooms: Sequence[Opens] = (),
    ) -> None:
        self._state = State(recipe=recipe, day=day or Day())
        self._before: list[State] = []
        self._meals = meals
        self._export = export
        self._look = look or Look()
        self._last = Meant(act="camp") if recipe else None
        self._plans: dict[State, Plan] = {}
        #: What else is taken back with a change, by the number of changes before it is taken back.
        self._backs: dict[int, Callable[[], None]] = {}
        self.turns = 0
        self._rooms = tuple(opens(self) for opens in rooms)

    @property
    def recipe(self) -> Recipe | None:
        """The recipe that is talked about."""
        return self._state.recipe

    @property
    def day(self) -> Day:
        """The circumstances so far."""
        return self._state.day

    @property
    def plan(self) -> Plan | None:
        """The plan as it stands.

        Raises:
            Problem: no plan can be made of this recipe and day.
        """
        return self._plan(self._state)

    def load(self, recipe: Recipe) -> str:
        """Talk about another recipe from now on, on the same day; the answer is the plan in short."""
        self._move(
            State(recipe=recipe, day=msgspec.structs.replace(self.day, swaps=(), temp_f=None, scale=None))
        )
        self._last = Meant(act="camp")
        plan = self.plan
        return answers.in_short(plan, self.day) if plan is not None else ""

    def say(self, utterance: str) -> Turn:
        """Understand a sentence, do what it says, answer."""
        self.turns += 1
        part = self._beyond(utterance)
        told = turn_beyond(self, utterance, part) if part else self.of_the_plan(utterance)
        for depth in sorted((depth for depth in self._backs if depth > len(self._before)), reverse=True):
            self._backs.pop(depth)()
        notice = self._meals.notice() if self._meals else ""
        return msgspec.structs.replace(told, answer=f"{notice}\n{told.answer}") if notice else told

    def takes_early(self, utterance: str, *, is_typed: bool) -> bool:
        """Whether a room beyond the plan knows a sentence for its own before there is a recipe.

        A line that was not typed for a sentence might be a recipe's first: then the room has to be sure.
        """
        part = self._beyond(utterance)
        return part is not None and (is_typed or part.is_sure)

    @property
    def is_under_way(self) -> bool:
        """Whether something beyond one plan is being talked about, such as a trip."""
        return any(room.is_under_way for room in self._rooms)

    def _beyond(self, utterance: str) -> Part | None:
        return next((part for room in self._rooms if (part := room.hear(utterance))), None)

    def safe_plan(self) -> Plan | None:
        """The plan as it stands, None where none can be made."""
        return self._safe_plan()

    def context(self) -> Context:
        """What a sentence about the plan is understood against."""
        return self._context()

    def become(self, recipe: Recipe | None, day: Day, *, back: Callable[[], None] | None = None) -> None:
        """Go on with another recipe or day; `back` is called when this is undone."""
        self._move(State(recipe=recipe, day=day))
        if back is not None:
            self._backs[len(self._before)] = back

    def of_the_plan(self, utterance: str) -> Turn:
        """Hear a sentence with the plan's own ears alone."""
        context = self._context()
        meant = understand(utterance, context)
        if not meant:
            return Turn(
                said=utterance,
                did=(NOT_UNDERSTOOD,),
                answer=answers.not_understood(nearest_acts(utterance, context)),
                file=self._file,
            )
        before = self._safe_plan()
        told: list[str] = []
        undone = len(self._before)
        changes = [one for one in meant if one.act in CHANGES]
        for is_change, group in groupby(meant, key=lambda one: one.act in CHANGES):
            if is_change:
                told += self._change(list(group))
            else:
                told += [self._answer(one, utterance) for one in group]
        self._last = meant[-1]
        after = self._safe_plan()
        changed = changes_of.changed_parts(before, after)
        if changes and (len(self._before) > undone or not told):
            told.insert(0, printable(changes_of.change(changes, before, after, self.day)))
        slots = {name: value for one in meant for name, value in one.slots.items()}
        return Turn(
            said=utterance,
            did=tuple(one.act for one in meant),
            with_=slots,
            answer="\n".join(part for part in told if part),
            changed=changed,
            file=self._file,
        )

    def _change(self, changes: Sequence[Meant]) -> list[str]:
        """Take over what was said about the day or the recipe; sentences about what cannot be."""
        refused: list[str] = []
        state = self._state
        for one in changes:
            if one.act not in CHANGES or not one.slots:
                refused.append(answers.circumstance(one.act, self._safe_plan(), self.day))
                continue
            try:
                recipe, day = applied(one, state.recipe, state.day, self._safe_plan())
                wanted = State(recipe=recipe, day=day)
                self._plan(wanted)
                state = wanted
            except (Problem, Refused) as problem:
                refused.append(answers.refusal(problem))
        if state != self._state:
            self._move(state)
        return refused

    def _answer(self, one: Meant, utterance: str) -> str:
        special: dict[str, Callable[[], str]] = {
            "undo": lambda: self._undo(one),
            "new": self._new,
            "keep": lambda: self._keep(one),
            "kept": self._kept,
            "open": lambda: self._open(one),
            "forget": lambda: self._forget(one),
            "export": lambda: self._write(one),
            "help": self._help,
            "show": lambda: self._show(one),
        }
        try:
            if one.act in special:
                return special[one.act]()
            plan = self.plan
            if plan is None:
                return answers.NO_RECIPE
            return printable(answers.answer(one, plan, self.day, utterance))
        except Problem as problem:
            return answers.refusal(problem)

    def _undo(self, one: Meant) -> str:
        if not self._before:
            return "There is nothing to take back."
        left, said = self._state, one.slots.get("steps", 1)
        steps = said if isinstance(said, int) else len(self._before)
        for _ in range(min(steps, len(self._before))):
            self._state = self._before.pop()
        return changes_of.undone(left.day, self._state.day, same_recipe=left.recipe == self._state.recipe)

    def _new(self) -> str:
        self._move(State(day=msgspec.structs.replace(self.day, swaps=(), temp_f=None, scale=None)))
        return "Paste the next recipe. The day stays as you told it; undo brings the last recipe back."

    def _help(self) -> str:
        beyond = [f"  {example:<32.32}  {does}" for room in self._rooms for example, does in room.says]
        return "\n".join([answers.help_text(), *beyond])

    def _keep(self, one: Meant) -> str:
        if self._meals is None:
            return answers.NO_STORE
        if self.recipe is None:
            return answers.NO_RECIPE
        name = str(one.slots.get("name") or self.recipe.title or "this meal")
        replaced = self._meals.keep(name, self.recipe, msgspec.structs.replace(self.day, habit=None))
        return f'Kept as "{name}"' + (", over the one of that name." if replaced else ".")

    def _kept(self) -> str:
        names = self._meals.names() if self._meals else ()
        if not names:
            return "Nothing is kept yet. Say: keep this as Friday."
        return f"{len(names)} kept: {words.joined(names)}."

    def _open(self, one: Meant) -> str:
        if self._meals is None:
            return answers.NO_STORE
        kept = self._meals.get(str(one.slots.get("name", "")))
        self._move(State(recipe=kept.recipe, day=msgspec.structs.replace(kept.day, habit=self.day.habit)))
        plan = self.plan
        return f'Here is "{kept.name}". {answers.in_short(plan, self.day) if plan else ""}'

    def _forget(self, one: Meant) -> str:
        if self._meals is None:
            return answers.NO_STORE
        name = one.slots.get("name") or (self._last.slots.get("name") if self._last else None)
        if name is None:
            return f"Say which one to forget. {self._kept()}"
        return f'Forgot "{self._meals.forget(str(name))}".'

    def _write(self, one: Meant) -> str:
        plan = self.plan
        if plan is None:
            return answers.NO_RECIPE
        if self._export is None:
            return "Nothing can be written from here."
        form, path = one.slots.get("as"), one.slots.get("path")
        written = self._export(plan, self.day, str(form) if form else None, str(path) if path else None)
        return f"Wrote {written}."

    def _show(self, one: Meant) -> str:
        plan, look = self.plan, msgspec.structs.replace(self._look, day=self.day)
        if plan is None:
            return answers.NO_RECIPE
        is_recipe = one.slots.get("what") == "recipe"
        return written("recipe", plan.recipe, look) if is_recipe else written("plan", plan, look)

    def _move(self, state: State) -> None:
        self._before.append(self._state)
        self._state = state

    def _plan(self, state: State) -> Plan | None:
        if state.recipe is None:
            return None
        plan = self._plans.get(state)
        if plan is None:
            plan = camp(state.recipe, state.day)
            if len(self._plans) > 32:
                self._plans.clear()
            self._plans[state] = plan
        return plan

    def _safe_plan(self) -> Plan | None:
        try:
            return self.plan
        except Problem:
            return None

    def _context(self) -> Context:
        plan = self._safe_plan()
        stage = words.main_stage(plan) if plan else None
        served = self.recipe.servings if self.recipe else None
        scale = plan.scale if plan else 1.0
        people = self.day.people or (round((served.low + served.high) / 2 * scale) if served else None)
        return Context(
            recipe=self.recipe or Recipe(),
            day=self.day,
            temp_f=self._baking_f(stage),
            people=people,
            pot_in=plan.pot.diameter_in if plan and plan.pot else None,
            last=self._last.act if self._last else None,
            last_slots=self._last.slots if self._last else {},
            kept=self._kept_names(),
        )

    def _kept_names(self) -> tuple[str, ...]:
        """The names of kept meals; none where the store cannot be opened, which is told when it is used."""
        try:
            return self._meals.names() if self._meals else ()
        except Problem:
            return ()

    def _baking_f(self, stage: Stage | None) -> float | None:
        """What a "bit hotter" starts from: the recipe's own temperature, else the plan's [°F]."""
        oven = self.recipe.oven if self.recipe else None
        return (
            oven.temp_f if oven is not None and oven.temp_f is not None else stage.temp_f if stage else None
        )

    @property
    def _file(self) -> str | None:
        return self.recipe.file if self.recipe else None
