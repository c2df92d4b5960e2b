"""The coals, when to turn, how one knows that it is done, the hours of the day."""

from __future__ import annotations

from assistant.chat.acts import Meant
from assistant.chat.figures import light_figure, minutes_figure
from assistant.chat.reasons import words_of
from assistant.chat.tell.question import groups_of
from assistant.show import parts, words
from assistant.show.fire import FOR
from rules.circumstances import Day
from rules.plan import Moment, Plan, Stage

#: Words that only the coals are begun with; other things start and begin as well.
LIGHTING = ("=light", "=lit", "=lighting", "=light up", "=fire up", "=ignite")
#: Words that name no moment of the day.
NO_MOMENT = frozenset(
    ["when", "time", "coal", "pot", "camp", "home", "hour", "minute", "meal", "first", "day"]
)


def coals(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """The count that was asked for first: on the lid, under, or both; then the other stages and the fuel."""
    if plan.heat is None:
        return f"None. {words.sentence(plan.no_coals_because or '')}"
    said = groups_of(utterance)
    over_coals = [stage for stage in plan.heat.stages if stage.top + stage.under]
    main = words.main_stage(plan)
    told = [_laid(main, said)] if main is not None else []
    told += [
        f"For {FOR.get(stage.kind, stage.kind)}: {words.coals(stage)}."
        for stage in over_coals
        if stage is not main
    ]
    told += [words.sentence(parts.fresh_coals(fresh, day)) for stage in over_coals for fresh in stage.refresh]
    return "\n".join([*told, parts.fuel(plan.heat.fuel, day.units)])


def _laid(stage: Stage, said: frozenset[str]) -> str:
    top = f"{stage.top} on the lid" + (f" ({stage.pattern.top})" if stage.pattern and stage.top else "")
    under = f"{stage.under} under" + (f" ({stage.pattern.under})" if stage.pattern and stage.under else "")
    what = FOR.get(stage.kind, stage.kind)
    if "UNDER" in said and "TOP" not in said:
        return f"{under} for {what}, and {top}."
    if "TOP" in said and "UNDER" not in said:
        return f"{top} for {what}, and {under}."
    return f"{stage.top + stage.under} briquettes for {what}: {top} and {under}."


def turning(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    """How often the lid and the pot are turned, and when to look first; why not, where nothing is turned."""
    stages = plan.heat.stages if plan.heat else ()
    told = [sentence for stage in stages for sentence in _turned(stage, day)]
    if told:
        return " ".join(told)
    if plan.heat is None:
        return words.sentence(plan.no_coals_because or "nothing to turn")
    main = words.main_stage(plan)
    what = FOR.get(main.kind, main.kind) if main else "this"
    if main is not None and main.top:
        return (
            f"Nothing to turn: liquid spreads the heat of {what} by itself. Stir it, and lift the lid seldom."
        )
    return f"Nothing to turn: the heat of {what} comes from below alone."


def _turned(stage: Stage, day: Day) -> list[str]:
    told = []
    if stage.turn_every_min:
        told.append(
            f"Every {stage.turn_every_min} minutes of {FOR.get(stage.kind, stage.kind)}: "
            "the lid a third of a turn one way, the pot a third the other."
        )
    if stage.first_look_min is not None:
        starts = stage.starts_at_min
        clock = f" ({words.when(starts + stage.first_look_min, day)})" if starts is not None else ""
        told.append(f"First look after {stage.first_look_min} minutes{clock}; every look costs heat.")
    return told


def doneness(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    """How long it takes and by what one knows that it is done."""
    if plan.heat is None:
        return words.sentence(plan.no_coals_because or "nothing is cooked here")
    told = [minutes_figure(plan, day) + "."] if minutes_figure(plan, day) else []
    told += [parts.done(check, day.units) for check in plan.heat.doneness]
    stage = words.main_stage(plan)
    if not plan.heat.doneness and stage is not None and stage.look_for:
        told.append(words.sentence(f"look for {stage.look_for}"))
    return " ".join(told)


def timeline(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """All of the day; only the lighting or only the moments of a deed where the question names it."""
    wanted = _moments_of(utterance, plan)
    if _is_lighting(utterance):
        if plan.heat is None:
            return words.sentence(plan.no_coals_because or "nothing is lit")
        batches = sorted(plan.heat.fuel.batches, key=lambda batch: batch.light_at_min)
        lit = (f"{words.when(batch.light_at_min, day)}: light {batch.count}" for batch in batches)
        told = [words.sentence("; ".join(lit))]
    elif wanted:
        told = [_moment(moment, day) for moment in wanted]
    else:
        told = [f"{light_figure(plan, day)}."] if light_figure(plan, day) else []
        told += [f"  {_moment(moment, day)}" for moment in plan.timeline]
    if day.eat is None:
        told.append("Say when you eat, and these become clock times.")
    return "\n".join(told)


def _is_lighting(utterance: str) -> bool:
    said = groups_of(utterance)
    return bool(said & {"CHIMNEY", "COAL", *LIGHTING})


def _moments_of(utterance: str, plan: Plan) -> list[Moment]:
    """The moments whose first words name what was asked for: "when do I brown the meat?", "when do we leave?"."""
    asked = words_of(utterance) - NO_MOMENT
    return [
        moment for moment in plan.timeline if asked & words_of(moment.do.partition(":")[0].partition(";")[0])
    ]


def _moment(moment: Moment, day: Day) -> str:
    return f"{moment.clock or words.when(moment.at_min, day)}  {moment.do}"
