"""What a recipe says of its oven: the figure, which of several, what goes in, and what is none of it."""

from __future__ import annotations

import pytest

from assistant.reader.read import read


def heat(step: str, head: str = "") -> tuple[float | None, str | None]:
    oven = read(f"Squares\n{head}\nIngredients\n\n1 lb potatoes\n\nMethod\n\n1. {step}\n").oven
    return (oven.temp_f, oven.vessel) if oven else (None, None)


@pytest.mark.parametrize(
    ("step", "fahrenheit"),
    [
        ("Preheat the oven to 350 F. Bake.", 350),
        ("Bake at 180 C for 20 minutes.", 355),
        ("Bake uncovered @ 350 for 25 min.", 350),
        ("Bake in a slow oven, Reg 2 or 300 F.", 300),
        ("Heat oven to 200C/fan 180C/gas 6.", 390),
        ("Heat oven to 160C fan (180C / gas 4).", 355),
        ("Bake 375 deg. 40-45 min.", 375),
        ("Bake 1 hr. at 350 - test with a straw.", 350),
        ("Bake until the middle reads 165 F.", None),
        ("Heat the oil to 350 F and fry the potatoes.", None),
    ],
)
def test_the_figure_is_the_ovens(step: str, fahrenheit: float | None) -> None:
    assert heat(step)[0] == fahrenheit


def test_the_head_tells_what_the_method_leaves_out() -> None:
    assert heat("Bake it until golden.", "\nOven: 400 F\n")[0] == 400


@pytest.mark.parametrize(
    ("step", "vessel"),
    [
        ("Spread in a 9x13 pan and bake at 350 F.", "9x13 pan"),
        ("Put the pot in the oven at 350 F.", "pot"),
        ("Bake at 350 F.", None),
    ],
)
def test_the_vessel_is_what_goes_in(step: str, vessel: str | None) -> None:
    assert heat(step)[1] == vessel


def test_an_iron_oven_with_a_size_is_a_pot() -> None:
    assert heat('Brown the potatoes in a 12" oven.') == (None, None)
