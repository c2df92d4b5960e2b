"""The labels of the corpus recipes and the marks that a reading and a plan get against them.

A label file stands beside its recipe: `recipe` says what the text states, line by line, `plan` what a careful camp
cook's plan may and must say. Where cooks would do it in two ways, both are listed. Labels were written by hand from
the texts, before any program read them; the figures of bakes are the published chart's for a 12-inch pot, a range
wider than the chart is judgement (common practice, no source).
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from pathlib import Path

import msgspec

from rules.plan import Allergen, CautionId, FatGoes, PackKind, Plan, Stage, StageKind
from rules.recipe import Amount, DurationKind, Family, Ingredient, Package, Recipe, Struct

#: A stage may be so far from the labelled temperature [°F]: half a column of the chart.
DEGREES_OFF = 12.5
RECIPES = Path(__file__).parent.parent / "corpus" / "recipes"


class WantedLine(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An ingredient line as it should be read; `also` holds the further foods that the line asks for."""

    line: int
    amounts: tuple[Amount, ...]
    name: str
    also: tuple[str, ...] = ()
    component: str | None = None
    optional: bool = False
    to_taste: bool = False
    prep: str | None = None
    state: tuple[str, ...] = ()
    alternatives: tuple[str, ...] = ()
    #: "method" for a food that only the method names
    from_: str = msgspec.field(name="from", default="list")


class WantedTime(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A stretch of time of the method [minutes]."""

    what: DurationKind
    low: float
    high: float
    line: int


class NoTime(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Words that look like a duration; a reading that reports them is neither praised nor blamed."""

    line: int
    words: str
    why: str


class WantedServings(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How many it feeds; `yield_unit` where it is a yield (biscuits, a loaf)."""

    low: float
    high: float
    yield_unit: str | None = None


class WantedOven(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The kitchen oven [°F], None where the text gives no figure."""

    temp_f: float | None
    stated: str
    vessel: str | None = None


class WantedRecipe(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What the text states. Lines count from 0."""

    title: str
    servings: WantedServings | None
    ingredient_lines: tuple[int, ...]
    header_lines: tuple[int, ...]
    lines: tuple[WantedLine, ...]
    step_lines: tuple[int, ...]
    oven: WantedOven | None
    times_min: tuple[WantedTime, ...]
    times_not_labelled: tuple[NoTime, ...]
    family: Family


class WantedItem(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The pack kinds that are sound for a food, best first; for a fat the destinations that fit."""

    line: int
    name: str
    packs: tuple[PackKind, ...]
    fat: tuple[FatGoes, ...] = ()
    split: bool = False


class WantedStage(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A stage that no sound plan leaves out, for one 12-inch shallow pot; every pair is (low, high)."""

    kind: tuple[StageKind, ...]
    top: tuple[int, int] | None = None
    under: tuple[int, int] | None = None
    minutes: tuple[float, float] | None = None
    #: where the briquette figures are the chart's: the temperature they were read at
    temp_f: float | None = None


class WantedPlan(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What the plan may and must say. `together` and `apart` hold line numbers."""

    family: tuple[Family, ...]
    items: tuple[WantedItem, ...]
    together: tuple[tuple[int, ...], ...]
    apart: tuple[tuple[int, int], ...]
    coal_plan: bool
    stages: tuple[WantedStage, ...]
    cautions: tuple[CautionId, ...]
    no_cautions: tuple[CautionId, ...]
    allergens: tuple[Allergen, ...]


class Gold(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The labels of one recipe."""

    recipe: WantedRecipe
    plan: WantedPlan


def slugs() -> list[str]:
    """The corpus recipes, by file name without ending."""
    return sorted(path.stem for path in RECIPES.glob("*.txt"))


def text(slug: str) -> str:
    """The recipe's text."""
    return (RECIPES / f"{slug}.txt").read_text(encoding="utf-8")


def gold(slug: str) -> Gold:
    """The recipe's labels."""
    return msgspec.json.decode((RECIPES / f"{slug}.json").read_bytes(), type=Gold)


def bag(name: str | None) -> tuple[str, ...]:
    """A name as sorted singular words: "large Eggs" and "egg" differ, "eggs" and "Egg" do not."""
    words = (w for w in re.findall(r"[\w%]+", (name or "").lower()) if w not in {"of", "the", "a", "an"})
    return tuple(sorted(_singular(w) for w in words if w not in {"dried", "dry"}))


def _singular(word: str) -> str:
    for ending, instead in (("ies", "y"), ("oes", "o"), ("ves", "f")):
        if len(word) > 4 and word.endswith(ending):
            return word.removesuffix(ending) + instead
    plural = len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us"))
    return word[:-1] if plural else word


def near(got: float | None, want: float | None) -> bool:
    """The same number, thirds written short included."""
    if got is None or want is None:
        return got is want
    return abs(got - want) <= max(0.006, 0.005 * abs(want))


def same_size(got: Amount | Package | None, want: Amount | Package | None) -> bool:
    """The same range in the same unit."""
    if got is None or want is None:
        return got is want
    return near(got.low, want.low) and near(got.high, want.high) and got.unit == want.unit


class Marks:
    """How many were right of how many, for each measure, with the misses in words."""

    def __init__(self) -> None:
        self.right: Counter[str] = Counter()
        self.asked: Counter[str] = Counter()
        self.misses: dict[str, list[str]] = defaultdict(list)

    def mark(self, measure: str, ok: bool, miss: str) -> None:
        """Count one point of a measure."""
        self.asked[measure] += 1
        self.right[measure] += ok
        if not ok:
            self.misses[measure].append(miss)

    def share(self, measure: str) -> float:
        """The share that was right, 1.0 where nothing was asked."""
        return self.right[measure] / self.asked[measure] if self.asked[measure] else 1.0

    def report(self) -> str:
        """All measures and misses, for the eye."""
        rows: list[str] = []
        for measure in sorted(self.asked):
            rows.append(f"{measure:22s} {self.right[measure]:4d} of {self.asked[measure]:4d}")
            rows += [f"    {miss}" for miss in self.misses[measure]]
        return "\n".join(rows)


def mark_reading(marks: Marks, slug: str, want: WantedRecipe, got: Recipe) -> None:
    """Hold a reading against its labels."""
    listed = {item.line for item in got.ingredients if item.from_ == "list"}
    for number in want.ingredient_lines:
        marks.mark("line found", number in listed, f"{slug}:{number}")
    for number in listed:
        marks.mark("no extra line", number in want.ingredient_lines, f"{slug}:{number}")
    for line in want.lines:
        _mark_line(marks, f"{slug}:{line.line}", line, got)
    steps = {step.line for step in got.steps}
    for number in want.step_lines:
        marks.mark("step found", number in steps, f"{slug}:{number}")
    for number in steps:
        marks.mark("no extra step", number in want.step_lines, f"{slug}:{number}")
    _mark_times(marks, slug, want, got)
    oven, stated = (got.oven.temp_f if got.oven else None), (want.oven.temp_f if want.oven else None)
    right = oven is stated if oven is None or stated is None else abs(oven - stated) <= 5
    marks.mark("oven", right, f"{slug}: got {oven} want {stated}")
    serves = got.servings and (got.servings.low, got.servings.high)
    wanted = want.servings and (want.servings.low, want.servings.high)
    marks.mark("servings", serves == wanted, f"{slug}: got {serves} want {wanted}")
    marks.mark("family", got.family == want.family, f"{slug}: got {got.family} want {want.family}")
    marks.mark("title", bag(got.title) == bag(want.title), f"{slug}: got {got.title} want {want.title}")


def _mark_line(marks: Marks, where: str, want: WantedLine, got: Recipe) -> None:
    items = [i for i in got.ingredients if i.line == want.line and i.from_ == want.from_]
    names = {bag(item.name) for item in items}
    told = [item.name for item in items]
    found = [item for item in items if bag(item.name) == bag(want.name)]
    first = (found or items or [None])[0]
    if want.from_ == "method":
        marks.mark("food of the method", bool(found), f"{where}: got {told} want {want.name}")
        if not want.amounts:
            return
    else:
        wanted = [want.name, *want.also]
        right = all(bag(name) in names for name in wanted) and len(items) == len(wanted)
        marks.mark("name", right, f"{where}: got {told} want {wanted}")
    amounts = first.amounts if first else ()
    main, wanted_main = next(iter(amounts), None), next(iter(want.amounts), None)
    right = first is not None and same_size(main, wanted_main)
    marks.mark("main amount", right, f"{where}: got {main} want {wanted_main}")
    for other in want.amounts[1:]:
        marks.mark("other amount", any(same_size(a, other) for a in amounts[1:]), f"{where}: want {other}")
    if wanted_main and wanted_main.package:
        package = main.package if main else None
        marks.mark("package", same_size(package, wanted_main.package), f"{where}: got {package}")
    optional, component = (first.optional, first.component) if first else (None, None)
    marks.mark("optional", optional == want.optional, f"{where}: got {optional}")
    if want.from_ == "list":
        marks.mark("component", bag(component) == bag(want.component), f"{where}: got {component}")


def _mark_times(marks: Marks, slug: str, want: WantedRecipe, got: Recipe) -> None:
    spans = {step.line: step.durations for step in got.steps}
    for time in want.times_min:
        hits = [
            s for s in spans.get(time.line, ()) if near(s.low_min, time.low) and near(s.high_min, time.high)
        ]
        marks.mark("duration", bool(hits), f"{slug}:{time.line}: want {time.low:g}-{time.high:g} {time.what}")
        if hits:
            kinds = [hit.what for hit in hits]
            marks.mark(
                "duration's kind", time.what in kinds, f"{slug}:{time.line}: got {kinds} want {time.what}"
            )
    allowed = Counter(time.line for time in (*want.times_min, *want.times_not_labelled))
    for line, found in spans.items():
        if found:
            marks.mark("no extra duration", len(found) <= allowed[line], f"{slug}:{line}: got {found}")


def mark_plan(marks: Marks, slug: str, want: WantedPlan, plan: Plan) -> None:
    """Hold a plan, made for one 12-inch shallow pot, against its labels."""
    family = plan.recipe.family
    marks.mark("plan's family", family in want.family, f"{slug}: got {family} want {want.family}")
    kinds, homes = defaultdict(set), defaultdict(set)
    for pack in plan.packs:
        for item in pack.items:
            kinds[item.ingredient].add(pack.kind)
            homes[item.ingredient].add(pack.id)
    goes = defaultdict(set)
    for use in plan.fat:
        goes[use.ingredient].add(use.goes)
    for food in want.items:
        index = _find(plan.recipe.ingredients, food.line, food.name)
        where = f"{slug}:{food.line} {food.name}"
        got = kinds[index] if index is not None else set()
        marks.mark(
            "pack", bool(got) and got <= set(food.packs), f"{where}: got {sorted(got)} want {food.packs}"
        )
        if food.split:
            marks.mark("split", index is not None and len(homes[index]) > 1, where)
        if food.fat:
            fat = goes[index] if index is not None else set()
            right = bool(fat & set(food.fat)) and len(fat) <= 2
            marks.mark("fat", right, f"{where}: got {sorted(fat)} want {food.fat}")
    first = {
        line: _find(plan.recipe.ingredients, line, None)
        for group in (*want.together, *want.apart)
        for line in group
    }
    for group in want.together:
        shared = set.intersection(
            *(homes[first[line]] if first[line] is not None else set() for line in group)
        )
        marks.mark("together", bool(shared), f"{slug}: lines {group}")
    for pair in want.apart:
        packs = [homes[first[line]] if first[line] is not None else set() for line in pair]
        marks.mark("apart", all(packs) and not set.intersection(*packs), f"{slug}: lines {pair}")
    marks.mark("coals or none", bool(plan.heat) == want.coal_plan, f"{slug}: want {want.coal_plan}")
    for stage in want.stages:
        _mark_stage(marks, slug, stage, plan.heat.stages if plan.heat else ())
    given = {caution.id for caution in plan.cautions}
    for caution in want.cautions:
        marks.mark("caution", caution in given, f"{slug}: {caution}")
    for caution in want.no_cautions:
        marks.mark("no false caution", caution not in given, f"{slug}: {caution}")
    for allergen in want.allergens:
        marks.mark("allergen", allergen in plan.allergens, f"{slug}: {allergen}")
    for allergen in plan.allergens:
        marks.mark("no false allergen", allergen in want.allergens, f"{slug}: {allergen}")


def _find(items: tuple[Ingredient, ...], line: int, name: str | None) -> int | None:
    """The ingredient of a line that bears the name, else the line's first."""
    there = [index for index, item in enumerate(items) if item.line == line]
    named = [index for index in there if bag(items[index].name) == bag(name)]
    return next(iter(named or there), None)


def _mark_stage(marks: Marks, slug: str, want: WantedStage, stages: tuple[Stage, ...]) -> None:
    same = [stage for stage in stages if stage.kind in want.kind]
    marks.mark("stage", bool(same), f"{slug}: want {want.kind} got {[s.kind for s in stages]}")
    fitting = [s for s in same if _within(s.top, want.top) and _within(s.under, want.under)]
    if want.top:
        counts = [(s.kind, s.top, s.under) for s in same]
        marks.mark("stage's coals", bool(fitting), f"{slug}: want {want.top} over {want.under} got {counts}")
    if want.temp_f is not None:
        aims = [s.temp_f for s in same]
        right = any(aim is not None and abs(aim - want.temp_f) <= DEGREES_OFF for aim in aims)
        marks.mark("stage's temperature", right, f"{slug}: want {want.temp_f:g} got {aims}")
    if want.minutes:
        middles = [(s.minutes.low + s.minutes.high) / 2 for s in fitting or same if s.minutes]
        right = any(_within(middle, want.minutes) for middle in middles)
        marks.mark("stage's minutes", right, f"{slug}: want {want.kind} {want.minutes} got {middles}")


def _within(value: float, span: tuple[float, float] | None) -> bool:
    return span is None or span[0] <= value <= span[1]
