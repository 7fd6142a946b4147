"""Manuals of nothing but linked pages."""

import pytest

from underhoist.links import weave
from underhoist.source import load

PROCEDURE = """---
kind: procedure
title: {id}
summary: For a test.
unit_family: any
area: tests
minutes: 1
who: senior
{keys}
---

## Steps

1. {step}
"""


@pytest.fixture
def web(tmp_path):
    """Weaves procedures given as `id=(keys, step)`."""

    def make(**procedures):
        for id_, (keys, step) in procedures.items():
            text = PROCEDURE.format(id=id_, keys=keys, step=step)
            (tmp_path / f"{id_}.md").write_text(text, encoding="utf-8")
        return weave(load(tmp_path).manual)

    return make
