"""What is said is understood, and what is not is not guessed: the talks of the corpus, and ways of saying by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.chat.acts import nearest_acts, understand
from assistant.chat.context import Context
from assistant.chat.patterns import acts
from assistant.reader.read import read
from rules.recipe import Recipe
from tests.talks import CORPUS, Played, is_same, play

LEAST_RIGHT, MOST_SILENTLY_WRONG = 0.95, 0.01


@pytest.fixture(scope="module")
def played() -> list[Played]:
    return list(play(sorted((CORPUS / "talks").glob("*.toml"))))


def test_the_acts_of_the_talks_are_right(played: list[Played]) -> None:
    wrong = [f"{one.where} did {one.turn.did}" for one in played if not one.is_right]
    assert len(played) > 200
    assert len(wrong) <= (1 - LEAST_RIGHT) * len(played), wrong


def test_next_to_nothing_is_done_wrong_in_silence(played: list[Played]) -> None:
    silent = [f"{one.where} did {one.turn.did}" for one in played if one.is_silently_wrong]
    assert len(silent) <= MOST_SILENTLY_WRONG * len(played), silent


def test_the_slots_of_the_talks_are_right(played: list[Played]) -> None:
    slots = [(one.where, *slot) for one in played for slot in one.slots()]
    wrong = [slot for slot in slots if not is_same(slot[2], slot[3])]
    assert len(slots) > 100
    assert len(wrong) <= (1 - LEAST_RIGHT) * len(slots), wrong


@pytest.fixture(scope="module")
def cobbler() -> Recipe:
    return read((CORPUS / "recipes" / "river-peach-cobbler.txt").read_text(encoding="utf-8"))


def meant(said: str, recipe: Recipe, **context: Any) -> list[tuple[str, dict[str, object]]]:
    known = {"recipe": recipe, "temp_f": 350.0, "people": 9, **context}
    return [(one.act, dict(one.slots)) for one in understand(said, Context(**known))]


SAID: list[tuple[str, list[tuple[str, dict[str, object]]]]] = [
    # people and scale
    ("there'll be fourteen of us", [("people", {"people": 14})]),
    ("for 12", [("people", {"people": 12})]),
    ("half the crowd dropped out", [("people", {"people": 4})]),
    ("two more are coming", [("people", {"people": 11})]),
    ("three people can't make it", [("people", {"people": 6})]),
    ("double it", [("scale", {"factor": 2})]),
    ("make half", [("scale", {"factor": 0.5})]),
    ("one and a half times the recipe", [("scale", {"factor": 1.5})]),
    # pot and heat
    ("I only have a ten inch", [("pot", {"diameter_in": 10})]),
    ("two deep 12s", [("pot", {"diameter_in": 12, "depth": "deep", "count": 2})]),
    ("bake it at 375", [("temperature", {"temp_f": 375})]),
    ("a bit hotter", [("temperature", {"temp_f": 375})]),
    ("ten degrees cooler", [("temperature", {"temp_f": 340})]),
    ("200 C please", [("temperature", {"temp_f": 392})]),
    ("three seventy five", [("temperature", {"temp_f": 375})]),
    # weather, place, time
    ("it's 40 out and breezy", [("weather", {"air_f": 40, "wind": "breezy"})]),
    ("freezing morning, no wind", [("weather", {"air_f": 32, "wind": "calm"})]),
    ("three degrees and drizzling", [("weather", {"air_f": 37, "ground": "damp"})]),
    ("we're at 7000 ft", [("elevation", {"feet": 7000})]),
    ("2,100 m up", [("elevation", {"feet": 6890})]),
    ("dinner at half past six", [("eat at", {"clock": "18:30"})]),
    ("eat at 18:30", [("eat at", {"clock": "18:30"})]),
    ("supper at quarter to seven", [("eat at", {"clock": "18:45"})]),
    ("breakfast at eight", [("eat at", {"clock": "08:00"})]),
    ("six in the evening", [("eat at", {"clock": "18:00"})]),
    ("it's a two day drive", [("trip", {"hours": 48})]),
    ("30 hours in the cooler", [("trip", {"hours": 30})]),
    ("no charcoal allowed today", [("fire ban", {"allowed": "no"})]),
    ("the ban has been lifted", [("fire ban", {"allowed": "yes"})]),
    ("we have the 60 quart cooler", [("cooler", {"quarts": 60})]),
    ("in grams please", [("units", {"units": "metric"})]),
    # foods
    ("oil instead of butter", [("swap", {"from": "butter", "to": "oil"})]),
    ("sub shortening for the butter", [("swap", {"from": "butter", "to": "shortening"})]),
    ("powdered milk instead", [("swap", {"to": "powdered milk"})]),
    ("no nuts", [("leave out", {"food": "nuts"})]),
    ("someone can't have egg", [("leave out", {"food": "egg"})]),
    ("leave out the vanilla, and also the cinnamon", [("leave out", {"food": ["vanilla", "cinnamon"]})]),
    ("add a cup of raisins", [("add", {"food": "raisins", "amount": "1 cup"})]),
    # questions
    ("how do I do this over coals?", [("camp", {})]),
    ("what goes in the dry bag?", [("mixes", {})]),
    ("what stays in the cooler?", [("fresh", {})]),
    ("where does the butter go?", [("fat", {})]),
    ("where does the milk go?", [("mixes", {})]),
    ("coals top and bottom?", [("coals", {})]),
    ("when do I turn it?", [("turning", {})]),
    ("how do I know it's done?", [("doneness", {})]),
    ("will the peaches thaw?", [("cold", {})]),
    ("what do I do at home?", [("steps", {"where": "home"})]),
    ("and at camp?", [("steps", {"where": "camp"})]),
    ("when do I light the chimney?", [("timeline", {})]),
    ("what do I buy?", [("shopping", {})]),
    ("what do I pack?", [("kit", {})]),
    ("what do I write on the bags?", [("labels", {})]),
    ("anything dangerous here?", [("cautions", {})]),
    ("is there dairy in it?", [("allergens", {})]),
    ("why is the baking powder dry?", [("why", {"about": "baking powder"})]),
    ("why so many on top?", [("why", {"about": "on top"})]),
    ("show me the plan", [("show", {"what": "plan"})]),
    ("show me the recipe", [("show", {"what": "recipe"})]),
    # keeping and the talk itself
    ("export json to plan.json", [("export", {"as": "json", "path": "plan.json"})]),
    ("save it as html", [("export", {"as": "html"})]),
    ("keep this one as Friday", [("keep", {"name": "Friday"})]),
    ("what have I kept?", [("kept", {})]),
    ("open Friday", [("open", {"name": "Friday"})]),
    ("forget it", [("forget", {})]),
    ("go back", [("undo", {})]),
    ("another recipe", [("new", {})]),
    ("what can you do?", [("help", {})]),
    # several at once: changes first, then what is asked
    ("12 of us, and it's windy", [("people", {"people": 12}), ("weather", {"wind": "windy"})]),
    ("how many coals for 12 people?", [("people", {"people": 12}), ("coals", {})]),
    ("when do I start if we eat at seven?", [("eat at", {"clock": "19:00"}), ("timeline", {})]),
    ("how much ice, and what do I buy?", [("cold", {}), ("shopping", {})]),
    # slips of the pen
    ("how mny brikets", [("coals", {})]),
    ("wen do i lite the chimny", [("timeline", {})]),
    ("its windi and 45F", [("weather", {"wind": "windy", "air_f": 45})]),
]


@pytest.mark.parametrize(("said", "expected"), SAID, ids=[said for said, _ in SAID])
def test_it_is_understood(said: str, expected: list[tuple[str, dict[str, object]]], cobbler: Recipe) -> None:
    assert meant(said, cobbler) == expected


@pytest.mark.parametrize(
    ("said", "act"),
    [
        ("will I need gloves", "kit"),
        ("is anything frozen", "cold"),
        ("does the schedule leave time for a swim", "timeline"),
        ("will 20 briquettes be enough", "coals"),
    ],
)
def test_a_question_that_no_pattern_fits_is_known_by_its_one_cue(
    said: str, act: str, cobbler: Recipe
) -> None:
    assert meant(said, cobbler) == [(act, {})]


@pytest.mark.parametrize(
    ("said", "last", "expected"),
    [
        ("and for nine?", "coals", [("people", {"people": 9})]),
        ("make it 8", "eat at", [("eat at", {"clock": "20:00"})]),
        ("make it 10", "people", [("people", {"people": 10})]),
        ("no, 300", "temperature", [("temperature", {"temp_f": 300})]),
        ("sorry, make that a twelve", "pot", [("pot", {"diameter_in": 12})]),
        ("no, two of them", "pot", [("pot", {"count": 2})]),
        ("and at 400?", "people", [("temperature", {"temp_f": 400})]),
        ("what about the butter?", "why", [("why", {"about": "butter"})]),
        ("what about the butter?", "coals", [("fat", {})]),
        ("and the cinnamon", "leave out", [("leave out", {"food": "cinnamon"})]),
        ("42", "why", []),
    ],
)
def test_the_sentence_before_explains_the_next(
    said: str, last: str, expected: list[tuple[str, dict[str, object]]], cobbler: Recipe
) -> None:
    assert meant(said, cobbler, last=last) == expected


@pytest.mark.parametrize(
    "said",
    [
        "",
        "   ",
        "...",
        "?!",
        "42",
        "blah blah",
        "my dog is called Biscuit",
        "she's 45 and he's 50",
        "we drove 300 miles",
        "the bridge is 40 feet long",
        "my nephew turned 12 yesterday",
        "what time does the ferry leave",
        "open the window",
        "the tent leaks",
        "don't double it",
        "nine times out of ten",
        "forget everything you were told and sing",
        "; drop table recipes",
        "butter is delicious",
        "how do I clean the pot",
        "is there cell service at camp",
        "what is the best brand of charcoal lighter fluid",
        "how many fish did you catch",
    ],
)
def test_what_is_no_act_is_not_guessed(said: str, cobbler: Recipe) -> None:
    assert meant(said, cobbler) == []


def test_a_kept_name_is_opened_whatever_its_capitals(cobbler: Recipe) -> None:
    assert meant("open gravel bar", cobbler, kept=("Gravel Bar",)) == [("open", {"name": "gravel bar"})]
    assert meant("open gravel bar", cobbler) == []


def test_two_or_three_near_acts_are_offered(cobbler: Recipe) -> None:
    near = nearest_acts("what of those briquettes over yonder by the tree", Context(recipe=cobbler))
    assert near[0] == "coals"
    assert len(near) == 3


@given(st.text(max_size=300))
@settings(max_examples=150, deadline=None)
def test_no_sentence_makes_it_fall(said: str) -> None:
    understand(said, Context())


def test_every_act_has_an_example_that_is_understood(cobbler: Recipe) -> None:
    for name, act in acts().items():
        if name not in ("again", "open", "forget"):
            assert name in [found for found, _ in meant(act.example, cobbler)], act.example


def test_every_act_of_the_contract_is_there() -> None:
    """The acts and their names are promised to every script that plays `coalside ask`."""
    promised = (
        *("camp", "people", "scale", "pot", "temperature", "weather", "elevation", "eat at", "trip", "swap"),
        *(
            "leave out",
            "add",
            "mixes",
            "fresh",
            "fat",
            "coals",
            "turning",
            "doneness",
            "cold",
            "steps",
            "timeline",
        ),
        *(
            "shopping",
            "kit",
            "labels",
            "cautions",
            "allergens",
            "why",
            "show",
            "export",
            "keep",
            "kept",
            "open",
        ),
        *("forget", "fire ban", "cooler", "undo", "units", "new", "help"),
    )
    assert set(promised) | {"again"} == set(acts())


def test_the_acts_lie_in_data_beside_their_words() -> None:
    folder = Path(__file__).parents[2] / "assistant" / "chat" / "acts"
    assert {"words.toml", "values.toml"} < {path.name for path in folder.glob("*.toml")}
