"""Formulas: what is read, and what comes out of it, exactly."""
import unittest
from fractions import Fraction as F

from arrays import Array, Mismatch, Place
from formula import Context, Fault, evaluate, names, parse
from units import parse_unit

MAIN = ("main", ("1", "2"))
END = ("end", ("front", "rear"))


def readings(axes, numbers):
    array = Array(axes)
    for index, (labels, number) in enumerate(zip(array.places, numbers)):
        if number is not None:
            array.places[labels] = Place("value", F(number), {(axes[0][0] if axes else "", index): F(1)})
    return array


VALUES = {
    "bore": readings([MAIN, END], ["10", "11", "20", "22"]),
    "skirt": readings([MAIN], ["1", "2"]),
    "big-end bore": readings([], ["5"]),
    "open one": readings([MAIN], ["1", None]),
    "torque": readings([("pistons", ("1", "2", "3"))], ["4", "6", "9"]),
}


def work(text):
    array = evaluate(parse(text), Context(VALUES.__getitem__))
    return {labels: place.value if place.state == "value" else place.state
            for labels, place in array.places.items()}


class Numbers(unittest.TestCase):
    def test_forms(self):
        for text, value in (("2-5/8", F(21, 8)), ("2 5/8", F(21, 8)), ("2 - 5/8", F(11, 8)),
                            ("1 / 3/8", F(8, 3)), (".25", F(1, 4)), ("-2^2", F(-4)),
                            ("2^-1", F(1, 2)), ("3² + 1", F(10)), ("1 + 2 × 3 − 4 ÷ 2", F(5)),
                            ("sqrt(9/4)", F(3, 2)), ("90 %", F(9, 10)), ("3/8 in", F("0.009525"))):
            self.assertEqual(work(text), {(): value}, text)

    def test_refused(self):
        for text in ("5-3", "2-40/32", "bore[", "1 +", "(1", "3 bananas", "1 2"):
            with self.assertRaises((Fault, ValueError), msg=text):
                parse(text)

    def test_hyphen_belongs_to_the_word(self):
        self.assertEqual(names(parse("big-end bore - max(skirt)")), ["big-end bore", "skirt"])
        self.assertEqual(names(parse("bore-skirt")), ["bore-skirt"])

    def test_root_is_cut_and_pi_has_41_digits(self):
        self.assertEqual(work("sqrt(2)")[()], F(14142135623730950488016887242096980785696, 10**40))
        self.assertEqual(work("pi")[()], F(31415926535897932384626433832795028841971, 10**40))

    def test_units(self):
        self.assertEqual(parse_unit("N·m"), parse_unit("Nm"))
        self.assertEqual(parse_unit("lbf·ft").factor, F("1.3558179483314004"))
        self.assertEqual(parse_unit("°F").base(F(32)), F("273.15"))
        self.assertEqual(parse_unit("kgf/cm²").factor, F("98066.5"))


class Places(unittest.TestCase):
    def test_lining_up(self):
        self.assertEqual(work("bore - skirt")[("2", "rear")], 20)
        self.assertEqual(work("skirt + bore[front]"), {("1",): 11, ("2",): 22})
        self.assertEqual(work("bore[main 2, rear]"), {(): 22})
        with self.assertRaises(Mismatch):
            work("bore[top]")

    def test_folds(self):
        self.assertEqual(work("max(range(bore over end) over main)"), {(): 2})
        self.assertEqual(work("mean(bore)"), {(): F(63, 4)})
        self.assertEqual(work("min(bore, 11)")[("2", "front")], 11)
        self.assertEqual(work("sum(open one)"), {(): "open"})
        with self.assertRaises(Mismatch):
            work("max(skirt over end)")

    def test_neighbour(self):
        self.assertEqual(work("torque - torque[pistons - 1]"), {("2",): 2, ("3",): 3})

    def test_weights(self):
        array = evaluate(parse("bore[front] / skirt"), Context(VALUES.__getitem__))
        self.assertEqual(array[("2",)].weights, {("main", 2): F(1, 2), ("main", 1): F(-5)})


if __name__ == "__main__":
    unittest.main()
