"""Settling the takings once the whole method is known: shares, hot or cold, who meets whom.

Whether butter melts for a pan or for a batter shows only later in the text; so does what waits as a marinade.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace

from rules.method.graph import FIRE, STOVE, Event, Taking, Thing, parts
from rules.method.words import kind_of
from rules.recipe import Action, Use
from rules.roles import Role

FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat", "tofu"})
#: Minutes for which seasoned meat must wait before it counts as marinated.
MARINADE_MIN = 10.0


@dataclass(frozen=True)
class Raw:
    """A taking as it was followed: shares, groups and fire are settled after the last action."""

    use: Use
    at: int
    step: int
    action: Action
    thing: int
    vessel: str | None
    spell: int
    cooked: int
    beside: tuple[int, ...]
    laid: bool
    guessed: bool = False


def settle(raws: Sequence[Raw], things: Sequence[Thing], roles: Sequence[Role]) -> tuple[Taking, ...]:
    """The takings with their shares, groups and fire."""
    raws = [replace(raw, laid=False) if _is_mixed_in_after(raw, things) else raw for raw in raws]
    shares = _shares(raws)
    inside: defaultdict[int, list[Raw]] = defaultdict(list)
    for raw in raws:
        inside[raw.thing].append(raw)
    hot = [_is_hot(raw, things) or _stands_in_a_pot(raw, inside[raw.thing], things, roles) for raw in raws]
    groups = _groups(raws, things, hot)
    marinated = _marinated(raws, things, hot, groups, roles)
    return tuple(
        Taking(
            ingredient=raw.use.ingredient,
            share=share,
            at=raw.at,
            step=raw.step,
            does=raw.action.does,
            word=raw.action.word,
            thing=raw.thing,
            group=group,
            vessel=raw.vessel,
            beside=raw.beside,
            hot=is_hot,
            laid=raw.laid,
            marinade=raw.at <= marinated.get((group, raw.thing), -1),
            guessed=raw.guessed,
            ahead=raw.action.ahead,
        )
        for raw, share, is_hot, group in zip(raws, shares, hot, groups, strict=True)
    )


def _is_mixed_in_after(raw: Raw, things: Sequence[Thing]) -> bool:
    """Sprinkled on and then mixed in: "sprinkle the soda over the batter and stir"."""
    if not raw.laid or raw.cooked:
        return False
    after = [event for event in things[raw.thing].events if event.at > raw.at]
    return (
        bool(after)
        and after[0].does in ("mix", "beat", "fold")
        and raw.action.does in ("top", "coat", "spread")
    )


def _shares(raws: Sequence[Raw]) -> list[float]:
    """What the text says of halves and rests, made to add up; equal parts where it says nothing."""
    of: defaultdict[int, list[int]] = defaultdict(list)
    for number, raw in enumerate(raws):
        of[raw.use.ingredient].append(number)
    shares = [0.0] * len(raws)
    for numbers in of.values():
        left = 1.0
        for number in numbers:
            asked = raws[number].use.share
            shares[number] = left if asked >= 1 else min(asked, left)
            left -= shares[number]
        if any(shares[number] <= 1e-9 for number in numbers):
            for number in numbers:
                shares[number] = 1 / len(numbers)
        else:
            shares[numbers[-1]] += left
    return shares


def _is_hot(raw: Raw, things: Sequence[Thing]) -> bool:
    """Over the fire when taken: what cooked before is still cooking, or what only warmed goes on to cook."""
    events = things[raw.thing].events
    before = [event for event in events if event.at <= raw.at and _is_fire(event)]
    if not before:
        return False
    if any(_is_stove(event) for event in before):
        cooled = [
            event.at
            for event in events
            if event.at <= raw.at and event.does in ("cool", "chill", "bake", "roast")
        ]
        return not cooled or max(cooled) < before[-1].at
    return any(_is_stove(event) for event in events if event.at >= raw.at)


def _stands_in_a_pot(
    raw: Raw, company: Sequence[Raw], things: Sequence[Thing], roles: Sequence[Role]
) -> bool:
    """Put into a pan or pot, or begun with fat alone, that goes on the fire without a batter having been made in it."""
    thing = things[raw.thing]
    stove = [event.at for event in thing.events if _is_stove(event) and event.at >= raw.at]
    if raw.laid or not stove or raw.cooked:
        return False
    if kind_of(raw.vessel or "") in ("pot", "pan"):
        return True
    inside = [other for other in company if other.at <= stove[0]]
    batter = any(roles[other.use.ingredient] in ("flour", "egg", "leavener") for other in inside)
    alone = all(roles[index] == "fat" for index in inside[0].beside)
    waited = any(event.at < stove[0] and _waits(event) for event in thing.events if event.at >= raw.at)
    return not batter and alone and not waited


def _is_fire(event: Event) -> bool:
    return event.does in FIRE or parts(event.does, event.word)


def _is_stove(event: Event) -> bool:
    return event.does in STOVE or (event.does == "other" and parts(event.does, event.word))


def _groups(raws: Sequence[Raw], things: Sequence[Thing], hot: Sequence[bool]) -> list[int]:
    """One number for all that meet cold in one mixture, or enter one pot between two spells."""
    homes = [_cold_home(index, things) for index in range(len(things))]
    keys: dict[tuple[object, ...], int] = {}
    groups = []
    for raw, is_hot in zip(raws, hot, strict=True):
        key: tuple[object, ...]
        if raw.laid:
            key = ("laid", raw.thing, raw.at)
        elif is_hot:
            key = ("hot", raw.thing, raw.spell)
        else:
            key = ("cold", homes[raw.thing] if raw.cooked == 0 else raw.thing, raw.cooked)
        groups.append(keys.setdefault(key, len(keys)))
    return groups


def _cold_home(index: int, things: Sequence[Thing]) -> int:
    """The mixture that a thing is mixed into while nothing has cooked yet."""
    seen = set()
    while index not in seen:
        seen.add(index)
        thing = things[index]
        into = thing.into
        if into is None or not thing.mixed_in or any(_is_stove(event) for event in thing.events):
            return index
        if things[into].events and any(_is_stove(event) for event in things[into].events):
            joined = min((event.at for event in things[into].events if _is_stove(event)), default=0)
            own = max((event.at for event in thing.events), default=joined)
            if joined <= own or any(_is_fire(event) for event in things[into].events if event.at <= own):
                return index
        index = into
    return index


def _marinated(
    raws: Sequence[Raw],
    things: Sequence[Thing],
    hot: Sequence[bool],
    groups: Sequence[int],
    roles: Sequence[Role],
) -> dict[tuple[int, int], int]:
    """Where raw flesh waits with what seasons it, before any fire: (group, thing) and until which action."""
    foods: defaultdict[int, set[int]] = defaultdict(set)
    for raw, group in zip(raws, groups, strict=True):
        foods[group].add(raw.use.ingredient)
    found: dict[tuple[int, int], int] = {}
    for raw, is_hot, group in zip(raws, hot, groups, strict=True):
        if roles[raw.use.ingredient] not in FLESH or is_hot or raw.cooked or len(foods[group]) < 2:
            continue
        events = [event for event in things[raw.thing].events if event.at >= raw.at]
        fire = min((event.at for event in events if _is_fire(event)), default=None)
        waits = [event.at for event in events if _waits(event) and (fire is None or event.at < fire)]
        if waits:
            for thing in (raw.thing, *things[raw.thing].holds):
                found[group, thing] = max(waits[0], found.get((group, thing), -1))
    return found


def _waits(event: Event) -> bool:
    if event.does == "marinate":
        return True
    return event.does in ("rest", "chill", "soak", "store") and (
        event.ahead or event.minutes_low >= MARINADE_MIN
    )
