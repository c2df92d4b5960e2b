"""The room of the trip: takes meals, pots and people as they are told, plans the whole, answers, writes files."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from typing import Any

import msgspec

from assistant.chat.acts import Meant
from assistant.chat.beyond.cookbook import Cookbook, Dish
from assistant.chat.beyond.draft import Draft, DraftMeal, trip
from assistant.chat.beyond.hearing import Hearing, hear, left_over, phrases
from assistant.chat.beyond.itinerary import pieces
from assistant.chat.beyond.meals import opened
from assistant.chat.beyond.parts import TABLE, Piece, light
from assistant.chat.beyond.rooms import Host, Part
from assistant.chat.beyond.taking import taken_over, usual
from assistant.chat.beyond.trip_asked import TripAsked, begun, of_the_trip
from rules.plan import Plan
from rules.trip.model import Trip, TripPlan

replace = msgspec.structs.replace
#: Writes a trip: as its own file, or its plan in a form; gives what was written, in words.
ExportTrip = Callable[[Trip, str | None, str | None], str]
NO_MEAL = "The trip has no meal yet. Say for example: Friday supper chili, Saturday breakfast biscuits."
#: Acts about one dish that mean the whole trip while no dish is talked about.
FOR_THE_TRIP = {
    "shopping": "shopping", "kit": "packing", "cold": "cold", "fresh": "cold", "coals": "coals", "timeline": "calendar",
    "allergens": "diets", "steps": "home",
}  # fmt: skip


class Tripper:
    """The room; the trip is undone step by step, like the day."""

    says = (
        ("plan a trip called Canyon", "begin a trip"),
        ("Friday supper chili", "give it a meal"),
        ("one of us can't have nuts", "say who avoids what"),
        ("we leave Friday at 9", "say when the car leaves"),
        ("move Friday supper to 7", "move a meal, or drop it"),
        ("plan the trip", "join everything up"),
        ("shopping for the trip", "ask for one list of it"),
        ("open Friday supper", "talk about one meal of it"),
        ("save the trip as trip.toml", "write it to a file, or its plan"),
    )

    def __init__(
        self, host: Host, cookbook: Cookbook, today: Callable[[], date], export: ExportTrip | None
    ) -> None:
        self._host = host
        self._cookbook = cookbook
        self._today = today
        self._export = export
        self._draft = Draft()
        self._plans: dict[Trip, TripPlan] = {}

    @property
    def is_under_way(self) -> bool:
        """Whether a trip is being talked about."""
        return self._draft.is_active

    def hear(self, utterance: str) -> Part | None:
        """What a sentence tells of a trip, or asks of the one at hand."""
        hearing = hear(utterance, TABLE)
        if not hearing.words:
            return None
        new = begun(hearing)
        if new is not None:
            return self._begin(hearing, new)
        if self._draft.is_active:
            asks = of_the_trip(hearing) or self._of_no_dish(utterance)
            if asks is not None:
                return Part((Meant(act=asks.act, slots=asks.slots),), "", lambda _before: self._answer(asks))
            meal = opened(hearing, self._knows)
            if meal is not None and not self._is_kept(hearing) and self._meant_by(meal):
                return Part((Meant(act="trip open", slots=meal),), "", lambda _before: self._open(meal))
        is_other = hearing.phrase(0, "other") is not None and hearing.phrase(0, "drop", "move") is None
        if is_other or hearing.words[-1] == "?" or hearing.phrase(0, "ask") is not None:
            return None
        found = self._pieces(hearing, is_active=self._draft.is_active)
        return self._part(hearing, found, is_sure=self._draft.is_active) if found else None

    def _pieces(self, hearing: Hearing, *, is_active: bool) -> list[Piece]:
        last = self._draft.meals[-1].day if self._draft.meals else None
        return pieces(hearing, self._knows, is_active=is_active, last_day=last)

    def _knows(self, said: str) -> bool:
        return self._dish(said) is not None

    def _dish(self, said: str) -> Dish | None:
        """The recipe that is talked about, for "this one"; else one of the cookbook."""
        recipe = self._host.recipe
        if said.lower() in phrases(TABLE).words("this"):
            day = self._host.day
            return Dish(recipe.title or "this one", recipe, day) if recipe is not None else None
        return self._cookbook.find(said)

    def _part(self, hearing: Hearing, found: Sequence[Piece], *, is_sure: bool) -> Part:
        rest = left_over(hearing, [span for piece in found for span in piece.spans], light())
        return Part(tuple(_meant(found)), rest, lambda _before: self._take(found), is_sure)

    def _begin(self, hearing: Hearing, new: TripAsked) -> Part:
        found = self._pieces(hearing, is_active=True)
        taken = [*new.spans, *(span for piece in found for span in piece.spans)]
        meant = (Meant(act=new.act, slots=new.slots), *_meant(found))
        name = new.slots.get("name", "Trip")

        def do(_before: Plan | None) -> str:
            self._become(Draft(name=name, is_begun=True))
            if not found:
                return f"{name} begins. Tell me its meals: Friday supper chili, Saturday breakfast biscuits."
            return self._take(found)

        return Part(meant, left_over(hearing, taken, light()), do)

    def _of_no_dish(self, utterance: str) -> TripAsked | None:
        """A question that means one dish where there is one, and the trip where there is none."""
        from assistant.chat.acts import understand

        if self._host.recipe is not None:
            return None
        meant = understand(utterance, self._host.context())
        about = FOR_THE_TRIP.get(meant[0].act) if len(meant) == 1 else None
        return TripAsked("trip show", {"about": about}, ()) if about else None

    # What is told

    def _take(self, found: Sequence[Piece]) -> str:
        draft, told = taken_over(self._draft, found, self._dish, self._cookbook.names)
        if draft != self._draft:
            self._become(draft)
        return "\n".join(told)

    # What is asked

    def _answer(self, asks: TripAsked) -> str:
        if asks.act == "trip name":
            self._become(replace(self._draft, name=asks.slots["name"]))
            return f"The trip is called {asks.slots['name']}."
        if asks.act == "trip forget":
            self._become(Draft())
            return "The trip is forgotten; undo brings it back."
        if not self._draft.meals:
            return NO_MEAL
        told = trip(self._draft, self._host.day, self._today())
        if asks.act == "trip save":
            if self._export is None:
                return "Nothing can be written from here."
            return self._export(told, asks.slots.get("as"), asks.slots.get("path"))
        from assistant.chat.beyond.trip_answers import answer

        return answer(asks.slots["about"], self._plan(told))

    def _is_kept(self, hearing: Hearing) -> bool:
        """Whether a sentence ends in the name of a kept meal, which is opened as ever."""
        said = hearing.text.lower().rstrip(".!")
        return any(said.endswith(f" {name.lower()}") for name in self._host.context().kept)

    def _meant_by(self, said: dict[str, Any]) -> list[DraftMeal]:
        """The dishes of the trip on that day, at that meal, of that name, as far as each was said."""
        dish = self._dish(said["dish"]) if "dish" in said else None
        return [
            one
            for one in self._draft.meals
            if one.day == said["day"]
            and ("meal" not in said or usual(one.meal) == usual(said["meal"]))
            and (dish is None or one.recipe == dish.recipe)
        ]

    def _open(self, said: dict[str, Any]) -> str:
        """Talk about one dish of the trip from now on, in the circumstances that the trip gives it."""
        from assistant.chat.answers import in_short

        meal = self._meant_by(said)[0]
        plan = self._plan(trip(self._draft, self._host.day, self._today()))
        dish = next(
            one for one in plan.dishes if one.meal == meal.name and one.plan.recipe.title == meal.recipe.title
        )
        self._host.become(meal.recipe, dish.day)
        return f"{meal.name}. {in_short(dish.plan, dish.day)}"

    def _plan(self, told: Trip) -> TripPlan:
        from rules.trip.plan import plan as planned  # loads when a trip is first planned: most talks never do

        if told not in self._plans:
            self._plans.clear()
            self._plans[told] = planned(told)
        return self._plans[told]

    def _become(self, draft: Draft) -> None:
        before = self._draft

        def back() -> None:
            self._draft = before

        self._draft = draft
        self._host.become(self._host.recipe, self._host.day, back=back)


def _meant(found: Sequence[Piece]) -> list[Meant]:
    """The pieces as acts, those of one kind together."""
    kinds = dict.fromkeys(piece.what for piece in found)
    return [Meant(act=f"trip {kind}", slots={kind: _slots(kind, found)}) for kind in kinds]


def _slots(kind: str, found: Sequence[Piece]) -> list[object]:
    return [msgspec.to_builtins(piece.says) for piece in found if piece.what == kind]
