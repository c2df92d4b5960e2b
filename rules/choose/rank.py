"""Every candidate planned for the day and held against what there is; the three that suit best, or what is missing.

A dish that somebody avoids is planned again with the swaps that the book offers; where it offers none, that is what is
missing. Of dishes that fit the best wastes no pot, leaves charcoal, cooler and time over, and asks for nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from rules.because import Ledger
from rules.choose.model import Candidate, Choice, Choices, Means, Need
from rules.choose.needs import figure, needs
from rules.circumstances import Day, Swap
from rules.convert import camp
from rules.plan import Plan
from rules.trip.diets import diets
from rules.trip.model import Diet, Dish, Person
from rules.wording import listed

MOST = 3
NOBODY = "somebody"


def choose(candidates: Iterable[Candidate], means: Means, *, most: int = MOST) -> Choices:
    """The candidates that fit, the best first.

    Raises:
        UsageProblem: a circumstance of the day that cannot be.
    """
    found = [_held(candidate, means) for candidate in candidates]
    fitting = sorted(
        (one for one in found if not one.missing), key=lambda one: (-one.suits, one.name.lower())
    )
    if fitting:
        best = tuple(fitting[:most])
        return Choices(best=best, looked_at=len(found), said=_said(best, len(fitting), len(found)))
    if not found:
        return Choices(said="There is no recipe to choose from: keep one first, or name its file.")
    nearest = min(found, key=_lack)
    return Choices(nearest=nearest, looked_at=len(found), said=_lacking(nearest, len(found)))


def day_for(candidate: Candidate, means: Means, swaps: Sequence[Swap] = ()) -> Day:
    """The day as it is, with what the cook had settled about this recipe."""
    own = candidate.day
    return replace(means.day, scale=None, temp_f=own.temp_f, swaps=(*own.swaps, *swaps))


def _held(candidate: Candidate, means: Means) -> Choice:
    day = day_for(candidate, means)
    plan = camp(candidate.recipe, day)
    verdicts = _before(plan, day, means.avoids)
    wishes = [wish for verdict in verdicts for wish in verdict.wishes]
    if wishes:
        plan = camp(candidate.recipe, day_for(candidate, means, [wish.swap for wish in wishes]))
    found = (*needs(plan, means), *_avoided(verdicts))
    return Choice(
        name=candidate.name,
        title=plan.recipe.title or candidate.name,
        family=plan.recipe.family,
        suits=_suits(plan, found, len(wishes)),
        needs=found,
        wishes=tuple(wish.said for wish in wishes),
    )


def _before(plan: Plan, day: Day, avoids: Sequence[str]) -> tuple[Diet, ...]:
    if not avoids:
        return ()
    dish = Dish(id="1", meal="meal", title=plan.recipe.title or "it", eat="", ready="", day=day, plan=plan)
    return diets([dish], [Person(name=NOBODY, avoids=tuple(avoids))], Ledger())


def _avoided(verdicts: Iterable[Diet]) -> Iterable[Need]:
    for verdict in verdicts:
        foods = listed(verdict.foods)
        if verdict.verdict == "another dish":
            missing = f"a way without {verdict.avoids}: it is made of {foods}"
            yield Need(what="food", said=f"holds {verdict.avoids} ({foods})", missing=missing)
        elif verdict.verdict == "check the label":
            yield Need(what="food", said=f"read the label of the {foods} for {verdict.avoids}")
        elif verdict.verdict != "fits":
            yield Need(what="food", said=f"{verdict.said.rstrip('.')}, for the sake of no {verdict.avoids}")
        else:
            yield Need(what="food", said=f"holds no {verdict.avoids}")


def _suits(plan: Plan, found: Sequence[Need], wishes: int) -> float:
    """From 0 to 1: 1 for a well filled pot that uses little and asks nothing."""
    fill = plan.pot.fill if plan.pot else None
    filled = min(1.0, fill / figure("good fill")) if fill is not None else figure("unknown fill")
    if plan.heat is None:
        filled = figure("without coals")
    used = max((need.share for need in found if need.what in ("charcoal", "cooler", "time")), default=0.0)
    less = figure("use") * min(used, 1.0) + figure("wish") * wishes + figure("asked") * len(plan.questions)
    return round(max(0.0, filled - less), 3)


def _lack(choice: Choice) -> tuple[float, ...]:
    """How far a dish is from fitting: how many things are missing, then how much of the worst."""
    worst = max(need.share or 9.0 for need in choice.missing)
    return len(choice.missing), worst, -choice.suits


def _said(best: Sequence[Choice], fitting: int, looked_at: int) -> str:
    of = f"{fitting} of {looked_at} fit" if looked_at > 1 else "It fits"
    return f"{of}; best {listed(one.title for one in best)}."


def _lacking(nearest: Choice, looked_at: int) -> str:
    missing = [need.missing or "" for need in nearest.missing]
    none = "Nothing fits" if looked_at > 1 else "It does not fit"
    if len(missing) == 1:
        return f"{none}; one thing is missing for {nearest.title}: {missing[0]}."
    return f"{none}; {nearest.title} comes nearest and wants {listed(missing)}."
