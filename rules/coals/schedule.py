"""When each stage starts, which coals lie on it and which are lit for it (handbook chapter 5).

The fire is followed from its first coals: how long the pot takes to warm and the food to boil comes out of what is
there. Then everything is placed backwards from the meal on the high end of every stage, so that nobody waits for a
pot. Coals move from one stage to the next and fade meanwhile; what a stage lacks is lit for it, what a long stage
loses is renewed.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

import msgspec

from rules.because import Rule
from rules.circumstances import Day
from rules.coals.cook import Cook
from rules.coals.counts import Coals
from rules.coals.drafts import Draft
from rules.coals.fire import (
    BOILING,
    EMPTY,
    ON_THE_WAY_MIN,
    Fire,
    Pot,
    after_pause,
    fed,
    left_by,
    over,
    raked,
    trimmed,
    weighed,
)
from rules.coals.fuel import chimney_min
from rules.coals.renew import fresh_coals
from rules.coals.warming import (
    brought_up,
    come_up,
    is_too_cool,
    is_too_hot,
    one_fewer,
    warmed,
    why_come_down,
    why_come_up,
    why_eased,
    why_warmed,
)
from rules.plan import Batch, Reason, Refresh
from rules.recipe import Struct

ASIDE = Rule(
    id="coals.aside",
    because="{back:.0f} of the coals that were raked aside go back: beside the pot they burn on, so nothing is lit for them",
)


class Timed(Struct, frozen=True, kw_only=True):
    """A stage with its coals and its start [min from the meal]; `coals` None where no coals are needed."""

    draft: Draft
    coals: Coals | None
    starts_at_min: float
    refresh: tuple[Refresh, ...] = ()
    reasons: tuple[Reason, ...] = ()

    @property
    def ends_at_min(self) -> float:
        """When the next one begins, on the high end of its minutes."""
        return self.starts_at_min + self.draft.high_min

    def moved(self, minutes: float) -> Timed:
        """The same so many minutes later."""
        return msgspec.structs.replace(
            self,
            starts_at_min=self.starts_at_min + minutes,
            refresh=tuple(
                msgspec.structs.replace(
                    more, at_min=more.at_min + minutes, light_at_min=more.light_at_min + minutes
                )
                for more in self.refresh
            ),
        )


def fired(
    drafts: Sequence[Draft], coals: Sequence[Coals | None], *, rest_min: float, pot: Pot, day: Day
) -> tuple[list[Timed], list[Batch]]:
    """The stages in order of time with their fresh coals, and every lighting; the last ends `rest_min` before the meal."""
    walk = _Walk(pot, day)
    stages = [walk.on(drafts, coals, place) for place in range(len(drafts))]
    later = -rest_min - walk.fire.at_min
    placed = _risen([stage.moved(later) for some in stages for stage in some])
    batches = [Batch(light_at_min=batch.light_at_min + later, count=batch.count) for batch in walk.batches]
    return sorted(placed, key=lambda stage: stage.starts_at_min), batches


def _risen(stages: Sequence[Timed]) -> list[Timed]:
    """A dough rises beside the fire and is ready when the food goes in; one rise after the other."""
    found: list[Timed] = []
    food_in = stages[-1].ends_at_min if stages else 0.0
    end = food_in
    for stage in reversed(stages):
        if stage.draft.kind != "rise":
            found.append(stage)
            food_in = food_in if stage.draft.kind in EMPTY else stage.starts_at_min
            end = food_in
            continue
        end = min(end, food_in)
        found.append(msgspec.structs.replace(stage, starts_at_min=end - stage.draft.high_min))
        end -= stage.draft.high_min
    return found


class _Walk:
    """The fire on its way through the stages; minutes count from the first coals."""

    def __init__(self, pot: Pot, day: Day) -> None:
        self.pot, self.day = pot, day
        self.fire = Fire(at_min=0.0, iron_f=day.air_f)
        self.batches: list[Batch] = []
        #: how many coals that lay aside went back for the stage that begins
        self.back = 0.0

    def on(self, drafts: Sequence[Draft], coals: Sequence[Coals | None], place: int) -> list[Timed]:
        """A draft as a stage, after the one that brings the pot to its heat where food is in it already."""
        draft, its = drafts[place], coals[place]
        if draft.pause_min:
            self.fire = after_pause(self.fire, self.fire.at_min + draft.pause_min, self.day.air_f)
        if draft.kind == "rise":
            return [Timed(draft=draft, coals=None, starts_at_min=self.fire.at_min)]
        if its is None or not its.total:
            return [self._stage(draft, its, None)]
        found = over(draft.kind, draft.way, its, self.fire, self.pot, self.day)
        if is_too_cool(draft, found):
            return self._after_coming_up(draft, its)
        this = self._over(draft, its)
        if draft.look == "warm":
            draft = warmed(draft, drafts[place + 1 :], this)
            return [self._stage(draft, its, this, *why_warmed(draft, this))]
        if draft.look == "bring up" and weighed(self.pot) is not None:
            draft = brought_up(draft, this, partial(self._laid_on, this, draft, its))
        its, this, why = self._eased(draft, its, this)
        return [self._stage(draft, its, this, *why, *why_come_down(draft, this))]

    def _after_coming_up(self, draft: Draft, its: Coals) -> list[Timed]:
        """A bake after the stage that brings a pot which has cooked already to its heat."""
        self._over(draft, its, is_fresh=True)
        this = over("warm", draft.way, its, self.fire, self.pot, self.day)
        before = come_up(draft, this)
        coming = self._stage(before, its, this, why_come_up(draft, before.high_min))
        its, this, why = self._eased(draft, its, self._over(draft, its))
        return [coming, self._stage(draft, its, this, *why)]

    def _eased(self, draft: Draft, its: Coals, this: Cook) -> tuple[Coals, Cook, tuple[Reason, ...]]:
        """A bake's coals, so many fewer that hot food or little of it does not let the iron rise above its band."""
        found = its
        while is_too_hot(draft, this) and found.total > 1:
            found = one_fewer(found)
            self.fire = trimmed(self.fire, found.total)
            this = over(draft.kind, draft.way, found, self.fire, self.pot, self.day)
        why = (why_eased(draft, its.total - found.total),) if found.total < its.total else ()
        return found, this, why

    def _over(self, draft: Draft, its: Coals, *, is_fresh: bool = False) -> Cook:
        """The pot over the coals of this stage, what they lack lit for it."""
        cold = over(draft.kind, draft.way, its, self.fire, self.pot, self.day)
        lit_before = sum(batch.count for batch in self.batches)
        waited = raked(self.fire).waiting
        later = ON_THE_WAY_MIN if draft.way in BOILING else 0.0
        self.fire, lit = fed(self.fire, its.total, lit_before, cold.ember, later_min=later, is_fresh=is_fresh)
        self.back = max(waited - self.fire.waiting, 0.0)
        if lit:
            self.batches.append(Batch(light_at_min=self.fire.at_min - chimney_min(), count=lit))
        return over(draft.kind, draft.way, its, self.fire, self.pot, self.day)

    def _stage(self, draft: Draft, its: Coals | None, this: Cook | None, *why: Reason) -> Timed:
        start = self.fire.at_min
        if its is None or this is None:
            self.fire = msgspec.structs.replace(self.fire, at_min=start + draft.high_min)
            return Timed(draft=draft, coals=its, starts_at_min=start)
        if self.back >= 1:
            why = (*why, ASIDE.says(draft.kind, back=self.back))
            self.back = 0.0
        fresh, laid_on = self._fresh(this, draft, its, draft.high_min)
        self.fire = left_by(this, draft.kind, self.fire, draft.high_min, laid_on)
        self.batches += [
            Batch(light_at_min=start + more.light_at_min, count=more.top + more.under) for more in fresh
        ]
        here = Timed(draft=draft, coals=its, starts_at_min=0.0, refresh=fresh, reasons=why)
        return here.moved(start)

    def _laid_on(self, this: Cook, draft: Draft, its: Coals, minutes: float) -> list[tuple[float, float]]:
        """When how many fresh coals are laid on within so many minutes of the stage."""
        return self._fresh(this, draft, its, minutes)[1]

    def _fresh(
        self, this: Cook, draft: Draft, its: Coals, minutes: float
    ) -> tuple[tuple[Refresh, ...], list[tuple[float, float]]]:
        """Fresh coals within so many minutes of the stage, and when how many are laid on."""
        fresh = fresh_coals(this, its, way=draft.way, minutes=minutes, lying=self.fire.lying)
        return fresh, [(more.at_min, float(more.top + more.under)) for more in fresh]
