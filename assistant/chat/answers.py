"""Answers in whole sentences: the figure first, short, the caution where it matters.

Everything said here stands in the plan; nothing is worked out. What changed is told by comparing two plans.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.chat.acts import Meant
from assistant.chat.context import Context
from assistant.chat.figures import coals_figure, fuel_figure, light_figure, minutes_figure, pot_figure, tail
from assistant.chat.lexicon import hear
from assistant.chat.patterns import acts
from assistant.chat.reasons import NoReason, reasons_about
from assistant.chat.values import allergens_of
from assistant.show import parts, words
from rules.circumstances import Day
from rules.foods import catalogue
from rules.plan import Pack, Plan, Stage
from rules.problem import UsageProblem

NO_RECIPE = "There is no recipe yet: paste one first."
NO_STORE = "Nothing can be kept from here."
MOST_REASONS = 4
MOST_ACTS_IN_HELP = 40


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
        return f"{pot_figure(plan, day) or 'No pot: ' + (plan.no_coals_because or 'no coals')}."
    if act == "temperature":
        return f"{minutes_figure(plan, day) or 'No oven heat here'}: {tail(coals_figure(plan, day))}."
    return "Say the figure as well, and the plan follows it."


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


def _pack(pack: Pack, plan: Plan, day: Day) -> str:
    held = "; ".join(parts.packed(plan, item, day.units) for item in pack.items)
    return f"{parts.pack_name(pack).capitalize()} ({parts.TRAVELS[pack.travels]}): {held}."


def _mixes(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    said = _groups(utterance)
    wanted = {"DRYBAG": ("dry mix",), "WETBAG": ("wet mix",)}
    kinds = next(
        (kinds for group, kinds in wanted.items() if group in said), ("dry mix", "wet mix", "prepped")
    )
    packs = [pack for pack in plan.packs if pack.kind in kinds]
    named = _food_in(utterance, plan)
    if named:
        packs = [pack for pack in plan.packs if _holds(pack, plan, named)] or packs
    if not packs:
        return "Nothing is mixed at home; everything travels as it comes."
    return "\n".join(_pack(pack, plan, day) for pack in packs)


def _fresh(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    packs = [pack for pack in plan.packs if pack.travels in ("cool", "frozen")]
    if not packs:
        return "Nothing has to be kept cold."
    is_raw = any(caution.id in ("raw-meat", "raw-poultry", "raw-fish") for caution in plan.cautions)
    bottom = ["Raw meat and fish lie at the bottom, at 40 °F or below."] if is_raw else []
    return "\n".join([*(_pack(pack, plan, day) for pack in packs), *bottom])


def _fat(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    named = _food_in(utterance, plan)
    uses = [use for use in plan.fat if named is None or named in plan.recipe.ingredients[use.ingredient].name]
    if not (uses or plan.fat):
        return "No fat goes into this."
    told = []
    for use in uses or plan.fat:
        share = "" if use.share >= 1 else f"{words.number(use.share * 100)} % of the "
        told.append(words.sentence(share + parts.fat_said(use, plan.recipe.ingredients[use.ingredient].name)))
    return " ".join(told)


def _coals(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    if plan.heat is None:
        return f"None. {words.sentence(plan.no_coals_because or '')}"
    said = _groups(utterance)
    over_coals = [stage for stage in plan.heat.stages if stage.top + stage.under]
    main = words.main_stage(plan)
    told = []
    if main is not None:
        told.append(_laid(main, "UNDER" in said and "TOP" not in said))
    told += [f"For the {stage.kind}: {words.coals(stage)}." for stage in over_coals if stage is not main]
    told += [words.sentence(parts.fresh_coals(fresh, day)) for stage in over_coals for fresh in stage.refresh]
    return "\n".join([*told, parts.fuel(plan.heat.fuel, day.units)])


def _laid(stage: Stage, under_first: bool) -> str:
    top = f"{stage.top} on the lid" + (f" ({stage.pattern.top})" if stage.pattern and stage.top else "")
    under = f"{stage.under} under" + (f" ({stage.pattern.under})" if stage.pattern and stage.under else "")
    halves = (
        [under, top]
        if under_first
        else [f"{stage.top + stage.under} briquettes for the {stage.kind}: {top}", under]
    )
    return f"{' and '.join(halves)}."


def _turning(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    stages = (
        [stage for stage in plan.heat.stages if stage.turn_every_min or stage.first_look_min]
        if plan.heat
        else []
    )
    if not stages:
        return "Nothing to turn here: " + words.sentence(
            plan.no_coals_because or "the heat comes from below alone"
        )
    told = []
    for stage in stages:
        if stage.turn_every_min:
            told.append(
                f"Every {stage.turn_every_min} minutes of the {stage.kind}: the lid a third of a turn one way, the pot a third the other."
            )
        if stage.first_look_min is not None:
            clock = (
                f" ({words.when(stage.starts_at_min + stage.first_look_min, day)})"
                if stage.starts_at_min is not None
                else ""
            )
            told.append(f"First look after {stage.first_look_min} minutes{clock}; every look costs heat.")
    return " ".join(told)


def _doneness(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    if plan.heat is None:
        return words.sentence(plan.no_coals_because or "nothing is cooked here")
    told = [minutes_figure(plan, day) + "."] if minutes_figure(plan, day) else []
    told += [parts.done(check, day.units) for check in plan.heat.doneness]
    stage = words.main_stage(plan)
    if not plan.heat.doneness and stage is not None and stage.look_for:
        told.append(words.sentence(f"look for {stage.look_for}"))
    return " ".join(told)


def _cold(_one: Meant, plan: Plan, day: Day, _utterance: str) -> str:
    lines = parts.cold_lines(plan, day.units)
    if not lines:
        return "No ice is needed: nothing here has to be kept cold."
    lines.sort(key=lambda line: not line.startswith("Ice") and "of ice" not in line)
    return " ".join(lines)


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


def _timeline(_one: Meant, plan: Plan, day: Day, utterance: str) -> str:
    """All of the day; asked for the lighting alone, only when to light how many."""
    told = [f"{light_figure(plan, day)}."] if light_figure(plan, day) else []
    if plan.heat is not None and _groups(utterance) & {"LIGHT", "CHIMNEY"}:
        batches = sorted(plan.heat.fuel.batches, key=lambda batch: batch.light_at_min)
        told = [
            words.sentence(
                "; ".join(f"{words.when(batch.light_at_min, day)}: light {batch.count}" for batch in batches)
            )
        ]
    else:
        told += [
            f"  {moment.clock or words.when(moment.at_min, day)}  {moment.do}" for moment in plan.timeline
        ]
    if day.eat is None:
        told.append("Say when you eat, and these become clock times.")
    return "\n".join(told)


def _shopping(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    named = _food_in(utterance, plan)
    lines = [line for line in plan.shopping if named is None or named in line.food] or list(plan.shopping)
    if not lines:
        return "Nothing to buy."
    told = []
    for line in lines:
        rest = f", {line.left_over} left over" if line.left_over else ""
        home = " (look at home first)" if line.likely_at_home else ""
        told.append(f"  {line.food}: {line.buy} for {line.need}{rest}{home}")
    return "\n".join([f"{len(lines)} to buy:", *told])


def _kit(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    told = []
    if plan.kit.camp:
        told.append(f"For camp: {'; '.join(plan.kit.camp)}.")
    if plan.kit.home:
        told.append(f"For home: {'; '.join(plan.kit.home)}.")
    return "\n".join(told) or "Nothing beyond what is at hand."


def _labels(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    if not plan.labels:
        return "No bag needs a label."
    return "\n".join(f"{label.pack}:\n  " + label.text.replace("\n", "\n  ") for label in plan.labels)


def _cautions(_one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    return "\n".join(f"- {caution.text}" for caution in plan.cautions) or "Nothing beyond ordinary care."


def _allergens(_one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    asked = [
        name
        for word in hear(utterance).words
        if word.value(("allergen",))
        for name in allergens_of(word.text)
    ]
    told = [_one_allergen(name, plan) for name in dict.fromkeys(asked)]
    if not told:
        diet = _diet(plan, utterance)
        told = [diet] if diet else []
        held = words.joined(plan.allergens)
        told.append(
            f"It holds {held}."
            if held
            else "It holds none of the nine declared allergens, as far as the recipe tells."
        )
        told += [
            f"Read the label of the {row.food}: it may hold {words.joined(row.may_hold, 'or')}."
            for row in plan.check_label
        ]
    return " ".join(told)


def _one_allergen(name: str, plan: Plan) -> str:
    """Yes, perhaps, or no; never a plain no while a label has to be read."""
    if name in plan.allergens:
        foods = [item.name for item in plan.recipe.ingredients if _food_holds(item.name, name)]
        return f"Yes, {name}: {words.joined(foods)}." if foods else f"Yes, it holds {name}."
    doubtful = [row.food for row in plan.check_label if name in row.may_hold]
    if doubtful:
        return f"Perhaps {name}: read the label of the {words.joined(doubtful)}."
    return f"No {name} in the foods as written; whoever must avoid it still reads every label."


def _food_holds(name: str, allergen: str) -> bool:
    food = catalogue().find(name).food
    return food is not None and allergen in food.allergens


#: Groups of the food catalogue that a diet leaves out.
_DIETS = {
    "vegan": ("red meat", "ground meat", "poultry", "fish", "shellfish", "cured meat", "egg", "dairy"),
    "vegetarian": ("red meat", "ground meat", "poultry", "fish", "shellfish", "cured meat"),
}


def _diet(plan: Plan, utterance: str) -> str:
    for diet, groups in _DIETS.items():
        if diet in utterance.lower():
            against = [item.name for item in plan.recipe.ingredients if _group(item.name) in groups]
            if against:
                return f"Not {diet}: {words.joined(list(dict.fromkeys(against)))}."
            return f"Nothing in it speaks against a {diet}, as far as the recipe tells."
    if any(word in utterance.lower() for word in ("celiac", "coeliac")):
        return (
            _one_allergen("wheat", plan) + " Barley, rye and oats are not among the nine: look for them too."
        )
    return ""


def _group(name: str) -> str:
    food = catalogue().find(name).food
    return food.group if food else ""


def _why(one: Meant, plan: Plan, _day: Day, _utterance: str) -> str:
    about = str(one.slots.get("about", ""))
    try:
        found = reasons_about(plan, about).why
    except NoReason as nothing:
        some = words.joined(nothing.known[:8])
        return (
            f'I gave no reason about "{about}". I have some about {some}.'
            if some
            else "There are no reasons yet."
        )
    sentences = list(dict.fromkeys(f"{words.because(reason)} ({reason.source})" for reason in found))
    told = sentences[:MOST_REASONS]
    more = len(sentences) - MOST_REASONS
    return "\n".join([*told, *([f"{more} more: coalside why FILE {about}"] if more > 0 else [])])


def _groups(utterance: str) -> frozenset[str]:
    return frozenset(group for word in hear(utterance).words for group in word.groups)


def _food_in(utterance: str, plan: Plan) -> str | None:
    """The food that a question names."""
    context = Context(recipe=plan.recipe)
    heard = hear(utterance, foods=context.food_marks, known=context.known)
    return next((word.text for word in heard.words if word.value(("food",))), None)


def _holds(pack: Pack, plan: Plan, named: str) -> bool:
    return any(named in plan.recipe.ingredients[item.ingredient].name for item in pack.items)


_ANSWERS: dict[str, Callable[[Meant, Plan, Day, str], str]] = {
    "camp": _camp,
    "mixes": _mixes,
    "fresh": _fresh,
    "fat": _fat,
    "coals": _coals,
    "turning": _turning,
    "doneness": _doneness,
    "cold": _cold,
    "steps": _steps,
    "timeline": _timeline,
    "shopping": _shopping,
    "kit": _kit,
    "labels": _labels,
    "cautions": _cautions,
    "allergens": _allergens,
    "why": _why,
}
