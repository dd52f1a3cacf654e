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

    def test_below_zero(self):
        self.assertEqual(work("-40 °C"), {(): F("233.15")})
        self.assertEqual(work("2 K - -40 °F"), {(): F("-231.15")})

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


class Trade(unittest.TestCase):
    """Functions of the trade; the figures are those of the sources that trade.py names."""

    def test_figures(self):
        for text, value, digits in (
                ("swept volume(86 mm, 86 mm)", "0.000499557214", 12),
                ("clearance volume(45 cc, 87 mm, 0.70 mm, 86 mm, 0.20 mm, 3 cc)", "0.000053323036", 12),
                ("clearance volume(62 cc, 97 mm, 1.20 mm, 96 mm, 0 mm - 0.10 mm, 0 cc - 12 cc)",
                 "0.000058143951", 12),
                ("compression ratio(500 cc, 50 cc)", "11", 30),
                ("stress area(10 mm, 1.5 mm)", "0.0000579895", 10),
                ("elastic stretch(9054.4 lbf, 1.60 in, 0.0878 in², 30000000 psi) / 1 in", "0.00550", 5),
                ("at20(62.000 mm, 12 °C, steel)", "0.0620057045", 10),
                ("at20(86.012 mm, 28 °C, aluminium, 24 °C, steel)", "0.0860001325", 10),
                ("spring rate(700 N, 250 N, 30 mm, 40 mm)", "45000", 0),
                ("shim wanted(2.50 mm, 0.38 mm, 0.30 mm)", "0.00258", 9),
                ("bind margin(36 mm, 9.5 mm, 25 mm)", "0.0015", 9),
                ("hole wear(80.05 mm, 80 mm) + shaft wear(59.95 mm, 60 mm)", "0.0001", 9),
                ("clearance(50 mm, 49.991 mm) + bolt stretch(60.1 mm, 60 mm)", "0.000109", 9),
                ("midpoint(350 °, 390 °)", "370", 9)):
            self.assertLessEqual(abs(work(text)[()] - F(value)), F(1, 2 * 10**digits), text)

    def test_a_material_is_one_doubt(self):
        doubts = {}
        context = Context(VALUES.__getitem__, source="a", doubts=doubts)
        array = evaluate(parse("at20(62 mm, 12 °C, steel) - at20(62 mm, 12 °C, steel)"), context)
        self.assertEqual(set(array[()].weights.values()), {F(0)})
        self.assertEqual(doubts, {("±", "a", ("material", "steel")): F("0.000001")})

    def test_places_go_through(self):
        self.assertEqual(work("clearance(bore, skirt)")[("2", "rear")], 20)
        self.assertEqual(names(parse("clearance(bore, skirt)")), ["bore", "skirt"])

    def test_refused(self):
        for text in ("swept volume(86 mm)", "at20(62 mm, 12 °C, cheese)", "midpoint(1 °, 2 °"):
            with self.assertRaises((Fault, ValueError), msg=text):
                parse(text)


if __name__ == "__main__":
    unittest.main()
