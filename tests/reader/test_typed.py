"""Readings as typed, worked out by hand."""
import unittest
from fractions import Fraction as F

from typed import read_typed
from units import parse_unit

MM = parse_unit("mm")


def in_mm(text):
    typed = read_typed(text, MM)
    return tuple(None if part is None else part * 1000
                 for part in (typed.value, typed.grain, typed.doubt))


class Typed(unittest.TestCase):
    def test_a_doubt_has_the_unit_of_its_value_or_its_own(self):
        self.assertEqual(in_mm("0.19 ± 0.05"), (F("0.19"), F("0.01"), F("0.05")))
        self.assertEqual(in_mm("10.00 mm +/- 0.001 in"), (10, F("0.01"), F("0.0254")))
        inches = read_typed("1 in ± 1/64", parse_unit("in"))  # the ledger's unit is that typed
        self.assertEqual(inches.doubt * 1000, F("25.4") / 64)

    def test_arithmetic_has_the_coarsest_place_typed_with_a_point(self):
        self.assertEqual(in_mm("(10.05 + 10.1) / 2"), (F("10.075"), F("0.1"), None))
        self.assertEqual(in_mm("2 × 10.05 - 10"), (F("10.1"), F("0.01"), None))
        self.assertEqual(in_mm("10.00 mm + 0.001 in"), (F("10.0254"), F("0.0254"), None))
        self.assertEqual(in_mm("12 - 3 ± 0.5"), (9, 1, F("0.5")))
        self.assertEqual(in_mm("-0.02"), (F("-0.02"), F("0.01"), None))

    def test_words_are_not_worked_out(self):
        self.assertIsNone(read_typed("10 + bore", MM))


if __name__ == "__main__":
    unittest.main()
