"""The patterns' small language: what it takes, what it refuses, how matches are weighed."""

from __future__ import annotations

import pytest

from assistant.chat.context import Context
from assistant.chat.lexicon import Heard, hear
from assistant.chat.patterns import Act, Found, Patterns, acts


def heard(said: str) -> Heard:
    return hear(said, foods=Context().food_marks)


def found(pattern: str, said: str) -> list[Found]:
    act = Act(name="probe", says="probe", example="probe", patterns=(pattern,))
    return Patterns([act]).find(heard(said))


@pytest.mark.parametrize(
    ("pattern", "said"),
    [
        ("HOWMANY COAL", "how many coals"),
        ("HOWMANY COAL", "how many of the coals"),
        ("HOWMANY .. COAL", "how many big round coals"),
        ("bake|cook IT", "cook it"),
        ("ICE NEED?", "ice"),
        ("^ ICE $", "ice, and coals"),
        ("add {food}", "add raisins"),
        ("WHY {whole}", "why is it so"),
    ],
)
def test_a_pattern_is_found(pattern: str, said: str) -> None:
    assert found(pattern, said)


@pytest.mark.parametrize(
    ("pattern", "said"),
    [
        ("HOWMANY COAL", "how many herons and coals"),
        ("HOWMANY .. COAL", "how many very big heavy old round black coals"),
        ("HOWMANY .. COAL", "how many, coals"),
        ("HOWMANY .. COAL", "how many not coals"),
        ("^ ICE $", "ice floes"),
        ("at {oven}", "at 42"),
        ("add {fat}", "add raisins"),
    ],
)
def test_a_pattern_is_not_found(pattern: str, said: str) -> None:
    assert not found(pattern, said)


def test_what_explains_more_weighs_more() -> None:
    less, more = (
        found("HOWMANY COAL", "how many coals on top"),
        found("HOWMANY COAL TOP", "how many coals on top"),
    )
    assert max(one.weight for one in less) < max(one.weight for one in more)


def test_a_gap_costs_and_a_strange_word_costs_more() -> None:
    weights = [
        max(one.weight for one in found("HOWMANY .. COAL", said))
        for said in ("how many coals", "how many bag coals", "how many heron coals")
    ]
    assert weights == sorted(weights, reverse=True)
    assert len(set(weights)) == 3


def test_a_rest_ends_at_a_comma_and_a_whole_goes_over_an_and() -> None:
    (one, *_) = found("why {rest}", "why butter and sugar, then")
    (two, *_) = found("why {whole}", "why butter and sugar, then")
    assert (one.slots["rest"], two.slots["whole"]) == ("butter", "butter and sugar")


@pytest.mark.parametrize(
    ("pattern", "fault"),
    [
        ("HOWMANNY", "unknown group HOWMANNY"),
        ("add {fod}", "unknown slot {fod}"),
        ("a & b", "a sign that means nothing"),
    ],
)
def test_a_wrong_pattern_says_what_is_wrong(pattern: str, fault: str) -> None:
    with pytest.raises(ValueError, match="of probe") as caught:
        found(pattern, "x")
    assert fault in str(caught.value)


def test_every_act_says_what_it_does_and_how_it_is_asked() -> None:
    for act in acts().values():
        assert act.says
        assert act.example
        assert act.sayings()
