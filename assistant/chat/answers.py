"""Answers in whole sentences: the figure first, short, the caution where it matters.

Everything said here stands in the plan; nothing is worked out. What changed is told by comparing two plans.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.chat.acts import Meant
from assistant.chat.figures import coals_figure, fuel_figure, light_figure, minutes_figure, pot_figure, tail
from assistant.chat.patterns import acts
from assistant.chat.tell import care, fire, packs, reason
from assistant.show import words
from assistant.show.fire import FOR
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import UsageProblem

NO_RECIPE = "There is no recipe yet: paste one first."
NO_STORE = "Nothing can be kept from here."


def refusal(problem: Exception) -> str:
    """Why something cannot be, without the name of an option that the talk does not have."""
    if isinstance(problem, UsageProblem):
        return words.sentence(f"{problem.found} cannot be: {problem.wanted}; nothing changed")
    return str(problem)


def not_understood(nearest: Sequence[str]) -> str:
    """What could have been meant, with a way to say each."""
    known = acts()
    offers = [f'{known[name].says} ("{known[name].example}")' for name in nearest]
    return f"I did not understand that, and nothing changed. I can {words.joined(offers, 'or')}."


def help_text() -> str:
    """Everything that can be said, an example each."""
    lines = [f"  {act.example:<32.32}  {act.says}" for act in acts().values() if act.name != "again"]
    return "\n".join(["Say it in your own words, several things at once if you like. For example:", *lines])


def circumstance(act: str, plan: Plan | None, day: Day) -> str:
    """A question about a circumstance that changes nothing: which pot, how hot."""
    if plan is None:
        return NO_RECIPE
    if act == "pot":
        return words.sentence(pot_figure(plan, day) or plan.no_coals_because or "no pot is needed")
    if act == "temperature":
        return _how_hot(plan, day)
    return "Say the figure as well, and the plan follows it."


def _how_hot(plan: Plan, day: Day) -> str:
    """The temperature first, then what it is for and the coals that hold it."""
    stage = words.main_stage(plan)
    if stage is None or stage.temp_f is None:
        told = (
            plan.no_coals_because
            or f"no temperature is held here: {tail(coals_figure(plan, day)) or 'no coals'}"
        )
        return words.sentence(told)
    lasting = f", {words.minutes(stage.minutes)}" if stage.minutes is not None else ""
    what = FOR.get(stage.kind, stage.kind)
    return f"{words.temperature(stage.temp_f, day.units)} for {what}{lasting}: {words.coals(stage)}."


def in_short(plan: Plan, day: Day) -> str:
    """The camp version in a few sentences."""
    title = plan.recipe.title or "Your recipe"
    told = [f"{title}: {plan.recipe.family}, {_amounts(plan)}."]
    if plan.heat is None:
        told.append(words.sentence(plan.no_coals_because or "no coals are needed"))
    else:
        told += [
            f"{figure}."
            for figure in (pot_figure(plan, day), minutes_figure(plan, day), coals_figure(plan, day))
            if figure
        ]
        told.append(f"{fuel_figure(plan, day)}, reserve included.")
        told.append(f"{light_figure(plan, day)}.")
    if any(reason.rule.startswith("habit.") for reason in plan.why):
        told.append("Coals and minutes go by your own log.")
    kinds = [
        f"{sum(pack.kind == kind for pack in plan.packs)} {kind}"
        for kind in dict.fromkeys(pack.kind for pack in plan.packs)
    ]
    if kinds:
        told.append(f"Packs: {words.joined(kinds)}.")
    if plan.questions:
        told.append(f"Left open: {' '.join(one.text for one in plan.questions[:3])}")
    told.append("Coals outside only: they give off carbon monoxide." if plan.heat else "")
    return "\n".join(part for part in told if part)


def _amounts(plan: Plan) -> str:
    if plan.people:
        return f"for {plan.people}"
    served = plan.recipe.servings
    times = f"{words.number(plan.scale)} times the recipe" if plan.scale != 1 else ""
    if served and not times:
        return f"{words.span(served)} {served.of}"
    return times or "as much as the recipe makes"


def answer(one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """The answer to a question about the plan."""
    return _ANSWERS[one.act](one, plan, day, utterance)


def _camp(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    return in_short(plan, day)


def _steps(one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    where = one.slots.get("where")
    told = []
    for name, steps in (("home", plan.home_steps), ("camp", plan.camp_steps)):
        if where in (None, name):
            told += (
                [f"At {name}:", *(f"  {number}. {step}" for number, step in enumerate(steps, start=1))]
                if steps
                else [f"Nothing to do at {name}."]
            )
    return "\n".join(told)


_ANSWERS: dict[str, Callable[[Meant, Plan, Day, str], str]] = {
    "camp": _camp,
    "mixes": packs.mixes,
    "fresh": packs.fresh,
    "fat": packs.fat,
    "coals": fire.coals,
    "turning": fire.turning,
    "doneness": fire.doneness,
    "cold": care.cold,
    "steps": _steps,
    "timeline": fire.timeline,
    "shopping": packs.shopping,
    "kit": packs.kit,
    "labels": packs.labels,
    "cautions": care.cautions,
    "allergens": care.allergens,
    "why": reason.why,
}
