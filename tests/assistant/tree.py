"""A page as a tree, read by the strict parser of the HTML standard: a parse error is an exception."""

from __future__ import annotations

from xml.etree.ElementTree import Element

import html5lib


def parsed(page: str) -> Element:
    """The page's tree."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    assert isinstance(tree, Element)
    return tree


def text(of: Element) -> str:
    """The words of an element on one line."""
    return " ".join("".join(of.itertext()).split())


def having(tree: Element, name: str) -> list[Element]:
    """All elements of a class."""
    return [element for element in tree.iter() if name in element.get("class", "").split()]
