"""The method graph: what is combined with what, when, over which fire, in which part of the dish."""

from rules.method.follow import graph
from rules.method.graph import Event, Graph, Taking, Thing

__all__ = ["Event", "Graph", "Taking", "Thing", "graph"]
