"""Which loss fits several readings best: by hand, each weighed by one over its width squared."""

import pytest
from underhoist_calculators.shift_balance import Loss
from underhoist_calculators.shift_lines import SHARPEST, ShiftMap

SHARP, WIDE = Loss(3.0, 2.5, 3.5), Loss(2.0, 1.0, 3.0)


def likeliest(*losses, common):
    class Made(ShiftMap):
        @property
        def losses(self):
            return {str(number): loss for number, loss in enumerate(losses)}

    made = Made(
        lines=(), levels={}, source=16.0, loss=0.0, uncertainty=3.0,
        turn=None, stop_in=None, stop_out=None, unit="km/h",
    )  # fmt: skip
    return made.likeliest(common)


def test_the_sharper_reading_weighs_more():
    assert likeliest(WIDE, SHARP, common=(2.5, 3.0)) == pytest.approx((2 / 4 + 3 / 1) / (1 / 4 + 1))


def test_what_fits_best_is_never_outside_what_fits_all():
    assert likeliest(WIDE, SHARP, common=(2.9, 3.0)) == pytest.approx(2.9)
    assert likeliest(WIDE, SHARP, common=(2.0, 2.5)) == pytest.approx(2.5)


def test_a_reading_without_doubt_counts_as_sharp_as_a_gauge():
    certain = Loss(2.0, 2.0, 2.0)
    narrow = Loss(2.004, 1.999, 2.009)
    by_hand = (2.0 * SHARPEST**-2 + 2.004 * 0.01**-2) / (SHARPEST**-2 + 0.01**-2)
    assert likeliest(certain, narrow, common=(1.0, 3.0)) == pytest.approx(by_hand)
    assert 0.0099 < SHARPEST < 0.01005
