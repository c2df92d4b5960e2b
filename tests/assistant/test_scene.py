"""What the reader remembers between deeds: the fire that goes on, whether it is wet, when it ends."""

from __future__ import annotations

import pytest

from assistant.reader.places import Place
from assistant.reader.scene import Scene

PAN = Place("skillet", "pan", False, 0, 1, False, True)
TIN = Place("tin", "tin", False, 0, 1, False, True)
BOWL = Place("bowl", "bowl", False, 0, 1, False, True)


def test_a_fry_goes_on_until_something_wet_comes() -> None:
    scene = Scene()
    scene.after("heat", PAN, ["fat"], heat=None, pours=False)
    assert scene.goes_on("add") == "fry"
    scene.after("pour", None, ["stock"], heat=None, pours=True)
    assert scene.goes_on("add") == "simmer"


def test_beside_a_bowl_nothing_goes_on() -> None:
    scene = Scene(fire="fry")
    assert scene.goes_on("mix", BOWL) == "mix"


def test_off_the_fire_it_rests() -> None:
    scene = Scene(fire="simmer", last="simmer", wet=True)
    scene.after("other", None, [], heat=None, pours=False, off=True)
    assert scene.fire is None
    assert scene.last == "rest"


def test_back_over_the_fire_it_goes_on_as_it_was() -> None:
    scene = Scene(wet=True)
    scene.after("add", None, [], heat="low", pours=False, on=True)
    assert scene.fire == "simmer"


@pytest.mark.parametrize(("deed", "turned"), [("other", True), ("cover", True), ("add", False)])
def test_a_fire_turned_down_is_remembered_until_something_is_done(deed: str, turned: bool) -> None:
    scene = Scene(fire="boil")
    scene.after("other", None, [], heat="low", pours=False)
    scene.after(deed, None, [], heat=None, pours=False)  # type: ignore[arg-type]
    assert scene.turned_down is turned
    assert scene.heat == "low"


def test_what_stands_in_a_tin_bakes_where_the_oven_is_hot() -> None:
    scene = Scene()
    scene.after("preheat", None, [], heat=None, pours=False)
    scene.after("add", TIN, ["flour"], heat=None, pours=False)
    assert scene.goes_on("coat") == "bake"


def test_turning_an_oven_down_ends_no_bake() -> None:
    scene = Scene(fire="bake", oven=True)
    scene.after("other", None, [], heat="low", pours=False)
    assert scene.fire == "bake"
