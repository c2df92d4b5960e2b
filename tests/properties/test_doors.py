"""Every door, whatever comes in: no fault but a Problem, no broken promise, no sign that steers a terminal, an end.

The promises themselves are checked by `rules.promises` inside `camp`; a broken one would be a BrokenInvariant, which
nothing here lets pass.
"""

from __future__ import annotations

import json
import re
from importlib import resources

import msgspec
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assistant.batch import Job, results, sources
from assistant.chat.session import Session
from assistant.options import day as day_of
from assistant.reader.read import read
from assistant.show.forms import WRITERS, Kind, Look, written
from rules.circumstances import DIAMETERS_IN, Day, PotOwned, Swap
from rules.convert import camp
from rules.foods import catalogue
from rules.problem import UsageProblem
from rules.recipe import Recipe, Struct

STEERS = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
RECIPES = [
    file.read_text(encoding="utf-8")
    for file in sorted((resources.files("corpus") / "recipes").iterdir(), key=str)
    if file.name.endswith(".txt")
]
LINES = sorted({line for text in RECIPES for line in text.split("\n")})
FOODS = sorted(catalogue().names())
NUMBERS = st.sampled_from(
    ["", "0", "1", "2", "1/2", "½", "1 1/2", "1½", "2-3", "1/0", "0/3", "99999", "3.5", "1,000", "a", "two", "a dozen",
     "half", "1-", "-1", "1/2/3", "9" * 30, "1e9", "1 (14 oz)", "#10"]
)  # fmt: skip
UNITS = st.sampled_from(
    ["", "cup", "cups", "tsp", "Tbsp", "oz", "lb", "g", "kg", "ml", "can", "stick", "pinch", "F", "C", "minutes",
     "hours", "days", "weeks", "inch", "people", "servings", "mugfuls"]
)  # fmt: skip
ODD = st.sampled_from(
    [*"½⅓⁄()[]{}<>/\\-–—*•°º%#@!?\"'.,;:&|~^`\t\r\0\x1b\u202e\u2066\u200b\ufeff\u0301\U0001f600\ud800",
     "\x1b[31m", "350F", "9x13", "½½", "\r\n", "((", ")))", " or ", " and ", " plus ", "&amp;", "<li>"]
)  # fmt: skip
AMOUNTS = st.builds(
    "{} {} {}{}".format,
    NUMBERS,
    UNITS,
    st.sampled_from(FOODS),
    st.sampled_from(["", ", chopped", " (optional)", " or butter", " and salt", ", divided", " to taste"]),
)
ORDERS = st.builds(
    "{} {} {} {} {}.".format,
    st.sampled_from(
        ["Bake", "Simmer", "Mix", "Fry", "Brown", "Let rise", "Boil", "Marinate", "Chill", "Grease", "Soak", "Grill",
         "Preheat oven to", "Deep fry", "Cut in", "Reserve", "Cover", "Serve"]
    ),
    st.sampled_from(["", "it", "half the butter", "the remaining dough", "the meat", "the pan"]),
    st.sampled_from(["", "for", "at", "until", "in"]),
    NUMBERS,
    UNITS,
)  # fmt: skip
ANY_LINE = st.one_of(
    st.sampled_from(LINES),
    AMOUNTS,
    ORDERS,
    st.lists(ODD, max_size=12).map("".join),
    st.text(max_size=60),
    st.sampled_from(
        ["Ingredients", "METHOD:", "For the sauce:", "## Topping", "Serves 0", "Makes 1/0 loaves", "---"]
    ),
)


@st.composite
def bent(draw: st.DrawFn) -> str:
    """A recipe with pieces lost, doubled or exchanged for odd signs."""
    text = draw(st.sampled_from(RECIPES))
    for _ in range(draw(st.integers(1, 8))):
        start = draw(st.integers(0, len(text)))
        end = start + draw(st.integers(0, 40))
        text = text[:start] + draw(st.one_of(ODD, NUMBERS, st.just(text[start : end + 20]))) + text[end:]
    return text


TEXTS = st.one_of(st.text(max_size=200), st.lists(ANY_LINE, max_size=25).map("\n".join), bent())
DAYS = st.builds(
    Day,
    people=st.one_of(st.none(), st.integers(1, 200)),
    scale=st.one_of(st.none(), st.floats(0.1, 20)),
    pots=st.lists(
        st.builds(
            PotOwned,
            diameter_in=st.sampled_from(DIAMETERS_IN),
            depth=st.sampled_from(["shallow", "deep"]),
            count=st.integers(1, 12),
        ),
        max_size=3,
    ).map(tuple),
    temp_f=st.one_of(st.none(), st.floats(200, 550)),
    air_f=st.floats(-40, 120),
    wind=st.sampled_from(["calm", "breezy", "windy"]),
    ground=st.sampled_from(["dry", "damp", "snow"]),
    screen=st.booleans(),
    elevation_ft=st.floats(-1400, 20000),
    eat=st.sampled_from([None, "18:30", "00:00", "2027-07-03T18:30", "2027-03-14T02:30"]),
    zone=st.sampled_from([None, "UTC", "America/Boise"]),
    trip_hours=st.one_of(st.none(), st.floats(0, 336)),
    trip_air_f=st.one_of(st.none(), st.floats(-40, 130)),
    cooler_quarts=st.one_of(st.none(), st.floats(4, 400)),
    freezer=st.booleans(),
    charcoal=st.booleans(),
    units=st.sampled_from(["us", "metric"]),
    swaps=st.lists(
        st.builds(
            Swap,
            food=st.sampled_from(["butter", "egg", "milk", "flour", "nothing known"]),
            to=st.sampled_from([None, "oil", "water", "chestnut"]),
        ),
        max_size=2,
    ).map(tuple),
)


def shown(kind: Kind, thing: Struct, day: Day) -> None:
    """Write a thing in every form; nothing in any of them steers a terminal."""
    for form in WRITERS[kind]:
        try:
            text = written(kind, thing, Look(form=form, day=day))
        except UsageProblem:
            assert form == "ics"  # a calendar wants a date
            continue
        assert not STEERS.search(text.replace("\r\n", "\n")), form


@settings(max_examples=60, deadline=None)
@given(TEXTS, DAYS)
@example(" 0 /3 cup (\\135 g) sugar\n\nBake 30 minutes.", Day())
@example(
    "2 cups flour\n\nBake at 350 F.", Day(pots=(PotOwned(diameter_in=5, depth="deep", count=12),), people=200)
)
def test_whatever_is_read_is_planned_and_shown(text: str, day: Day) -> None:
    recipe = read(text, file="any.txt")
    plan = camp(recipe, day)
    shown("recipe", recipe, day)
    shown("plan", plan, day)


@settings(max_examples=40, deadline=None)
@given(TEXTS)
def test_a_recipe_comes_through_its_own_json(text: str) -> None:
    recipe = read(text, file="any.txt")
    assert msgspec.json.decode(written("recipe", recipe, Look(form="json")), type=Recipe) == recipe


UTTERANCES = st.one_of(
    st.text(max_size=60),
    st.lists(ODD, max_size=10).map("".join),
    st.builds(
        "{} {} {} {}".format,
        st.sampled_from(["we are", "why", "leave out", "add", "bake it at", "it is", "double", "undo", "show me", "eat at"]),
        NUMBERS,
        UNITS,
        st.sampled_from(["", "butter", "the plan", "outside", "instead of milk", "coals", "as html", "\ud800"]),
    ),
)  # fmt: skip


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(RECIPES), st.lists(UTTERANCES, max_size=4))
@example(RECIPES[0], ["remove --- - a", "powdered salad, remove - -", "\ud800\x1b[2J"])
def test_whatever_is_said_is_answered(text: str, utterances: list[str]) -> None:
    session = Session(read(text, file="any.txt"), Day())
    for utterance in utterances:
        turn = session.say(utterance)
        assert turn.answer
        shown("turn", turn, Day())


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.one_of(
            st.binary(max_size=80),
            st.recursive(
                st.none() | st.booleans() | st.floats() | st.text(max_size=20),
                lambda inner: (
                    st.lists(inner, max_size=3)
                    | st.dictionaries(st.sampled_from(["id", "text", "more"]), inner, max_size=3)
                ),
            ).map(lambda thing: json.dumps(thing).encode()),
        ),
        max_size=5,
    )
)
def test_any_bytes_as_rows_give_a_result_or_a_sentence_each(
    tmp_path_factory: pytest.TempPathFactory, rows: list[bytes]
) -> None:
    path = tmp_path_factory.mktemp("rows") / "rows.jsonl"
    path.write_bytes(b"\n".join(row.replace(b"\n", b" ") for row in rows))
    made = list(results(sources([str(path)]), Job(kind="plan", look=Look(form="jsonl"))))
    assert len(made) == sum(bool(row.replace(b"\n", b" ").strip()) for row in rows)
    assert all((result.thing is None) != (result.problem is None) for result in made)
    assert not [result.problem for result in made if "stumbled" in (result.problem or "")]


WORDS = st.one_of(
    st.text(max_size=12), NUMBERS, st.sampled_from(["45F", "7C", "18:30", "windy", "7000ft", "2 days", "48L"])
)


@settings(max_examples=150, deadline=None)
@given(
    st.dictionaries(
        st.sampled_from(
            ["people", "temp", "eat", "zone", "air", "wind", "ground", "elevation", "trip_hours", "units"]
        ),
        WORDS,
    )
)
def test_any_words_of_a_day_are_taken_or_refused_by_name(words: dict[str, str]) -> None:
    refused = None
    try:
        day_of(words)
    except UsageProblem as problem:
        refused = problem
    assert refused is None or (refused.option.startswith("--") and refused.wanted)
