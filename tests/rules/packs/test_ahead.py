from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from tests.build import amount, doing, line, packed, recipe, step

FOODS = (
    line("plums", amount(2, "pound")),
    line("sugar", amount(1, "cup")),
    line("onion", amount(1), prep="chopped"),
)
do = doing(*FOODS)
OF = recipe(*FOODS, steps=(step(do("mix", "plums", "sugar", vessel="bowl"), do("bake")),))


def ahead(day: Day) -> dict[str, str | None]:
    return {pack.kind: pack.make_ahead for pack in packed(OF, "batter bake", day)}


def test_a_frozen_fruit_bag_is_made_weeks_before() -> None:
    assert "freeze lying down" in (ahead(Day())["wet mix"] or "")


def test_without_a_freezer_it_is_made_two_days_before() -> None:
    assert ahead(Day(freezer=False))["wet mix"] == "up to 2 days before, kept cold"


def test_raw_meat_without_a_freezer_keeps_as_long_as_its_row_says() -> None:
    of = recipe(line("ground beef", amount(1, "pound"), prep="cut"))
    (pack,) = packed(of, "roast", Day(freezer=False))
    assert pack.make_ahead == "at most 1 day before, kept cold"


def test_what_comes_from_the_shop_is_not_made() -> None:
    (pack,) = packed(recipe(line("milk", amount(1, "cup"))), "soup")
    assert pack.make_ahead is None


def test_the_ledger_tells_how_long_before() -> None:
    ledger = Ledger()
    packed(OF, "batter bake", ledger=ledger)
    assert any(reason.rule == "packs.ahead" for reason in ledger.reasons)


def test_fresh_crumbs_keep_in_the_cold_and_dry_ones_a_month() -> None:
    def told(crumbs: str) -> str | None:
        foods = (line(crumbs, amount(1, "cup")), line("salt", amount(1, "teaspoon")), line("ground beef"))
        mix = doing(*foods)
        of = recipe(*foods, steps=(step(mix("mix", crumbs, "salt", "ground beef")), step(mix("bake"))))
        (dry,) = (pack for pack in packed(of, "roast") if pack.kind == "dry mix")
        return dry.make_ahead

    assert told("fresh breadcrumbs") == "up to 2 days before, kept cold, or weeks before in the freezer"
    assert told("dry bread crumbs") == "up to a month before, kept dry"
