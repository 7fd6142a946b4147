"""Blocks that the manual dresses: drawings, tables, and a hazard that stands alone."""

from xml.etree.ElementTree import Element, SubElement

from underhoist.markdown.references import REF


def lone_hazard(element: Element) -> str | None:
    """Return the id of the hazard, where a paragraph holds nothing but a reference to it."""
    if element.tag != "p" or len(element) != 1 or (element.text or "").strip():
        return None
    key = element[0].get(REF, "")
    if not key.startswith("hazard:") or (element[0].tail or "").strip():
        return None
    return key.removeprefix("hazard:")


def dress(element: Element) -> None:
    """Make drawings figures and label the cells of tables, anywhere in the element."""
    for node in list(element.iter()):
        if _is_drawing(node):
            _make_figure(node)
        elif node.tag == "table":
            _label_cells(node)
        elif "align" in node.attrib:
            node.set("class", f"uh-{node.attrib.pop('align')}")  # a style would be refused


def _is_drawing(node: Element) -> bool:
    """Whether a paragraph holds one image and nothing else."""
    return (
        node.tag == "p"
        and len(node) == 1
        and node[0].tag == "img"
        and not (node.text or "").strip()
        and not (node[0].tail or "").strip()
    )


def _make_figure(paragraph: Element) -> None:
    """Turn the paragraph into a figure; the image's title is its caption."""
    paragraph.tag = "figure"
    paragraph.set("class", "uh-drawing")
    title = paragraph[0].attrib.pop("title", None)
    if title:
        SubElement(paragraph, "figcaption").text = title


def _label_cells(table: Element) -> None:
    """Tell each cell the name of its column: on a phone the table becomes a list."""
    names = ["".join(cell.itertext()) for cell in table.iter("th")]
    for row in table.iter("tr"):
        for name, cell in zip(names, row, strict=False):
            if cell.tag == "td" and name:
                cell.set("data-label", name)
                _hold_together(cell)


def _hold_together(cell: Element) -> None:
    """Put mixed text and code of a cell into one element: on a phone each would be a column."""
    tails = [child.tail for child in cell if child.tail and child.tail.strip()]
    if len(cell) and (len(cell) > 1 or tails or (cell.text or "").strip()):
        held = Element("span")
        held.text, cell.text = cell.text, None
        held.extend(cell)
        cell[:] = [held]
