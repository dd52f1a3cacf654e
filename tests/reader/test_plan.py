"""The expansion of plans into requirements, orders of bolts, limits."""
import unittest
from collections import Counter
from fractions import Fraction as F
from pathlib import Path

from formula import Context, evaluate
from labels import criss_cross, in_row, labels, order_of
from limits import parse_limits
from plan import Plan, load
from units import parse_unit

ROOT = Path(__file__).parents[2]
DEMO = load(str(ROOT / "demo-data/hathersey-h23.yaml"))


class Expansion(unittest.TestCase):
    def test_demo_by_sort(self):
        asked = DEMO.asked()
        self.assertEqual(Counter(one.sort for one in asked),
                         {"read": 419, "look": 53, "bolt": 307, "wait": 1, "fit": 96, "sign": 56})
        self.assertEqual(len({one.words() for one in asked}), len(asked))

    def test_names(self):
        names = {one.words() for one in DEMO.asked()}
        for name in ("read main clearance[3]", "bolt main caps in Crank[4], stage 2",
                     "sign Crank, 1", "sign Receive, 2", "fit main shells[2, upper]",
                     "wait head nuts in Head on, stage 4", "look no leaks",
                     "read inlet lash in Cold retorque[2]", "read clearance by grade[1]",
                     "bolt rod bolts in Fit pistons[1, a], stage 2", "read main strip[2]",
                     "fit flywheel bolts[6]", "read cam lift[in, 4]"):
            self.assertIn(name, names)

    def test_places_of_formulas(self):
        axes = {name: DEMO.checks[name].axes for name in ("drag added", "bolt stretch", "evenness dry")}
        self.assertEqual(axes["drag added"], [("pistons", ("2", "3", "4"))])
        self.assertEqual([axis[0] for axis in axes["bolt stretch"]], ["rod", "side"])
        self.assertEqual(axes["evenness dry"], [])

    def test_units_of_limits(self):
        self.assertEqual(DEMO.checks["clearance volume"].unit, parse_unit("cc"))
        self.assertEqual(DEMO.checks["idler wear"].unit, parse_unit("mm"))
        self.assertEqual(DEMO.checks["evenness dry"].unit, parse_unit("%"))
        self.assertEqual(DEMO.checks["found bore wear"].wear, F("0.00015"))
        self.assertEqual(DEMO.checks["seconds to pressure"].doubt, 1)

    def test_given_doubts(self):
        self.assertEqual(DEMO.doubts[("±", ("given", "piston dish", ""), 0)], F("0.2") / 10**6)
        self.assertEqual(DEMO.given["added wall"].axes, [("grade", ("A", "B"))])

    def test_what_is_read_for_a_setting(self):
        plan = load(str(ROOT / "tests/scenarios/chain.yaml"))
        self.assertEqual([one.name for one in plan.read_for(plan.checks["chain slack"])],
                         ["chain play"])
        backlash = DEMO.checks["idler backlash"]
        self.assertEqual(DEMO.read_for(backlash), [backlash])

    def test_gates_hold_until_the_next(self):
        self.assertEqual(DEMO.steps["Crank"].gate, "first start")
        self.assertEqual(DEMO.steps["Hand over"].gate, "hand over")
        one = Plan({"plan": "x", "steps": {"A": {}}})
        self.assertEqual(one.steps["A"].gate, "hand over")


class Notation(unittest.TestCase):
    def test_labels(self):
        self.assertEqual(labels("L1..L3/R2..R1/top"), ("L1", "L2", "L3", "R2", "R1", "top"))

    def test_limits(self):
        millimetre = parse_unit("mm")
        ends = {}
        for text in ("0.050..0.080", "-2.0..2.0 °", "8 ± 2 °", "at most 0.05", "≤ 90 %", "at least 1 bar"):
            limits = parse_limits(text, millimetre)
            ends[text] = tuple(side and evaluate(side, Context(dict().__getitem__))[()].value
                               for side in (limits.lower, limits.upper))
        self.assertEqual(ends, {
            "0.050..0.080": (F("0.00005"), F("0.00008")), "-2.0..2.0 °": (-2, 2), "8 ± 2 °": (6, 10),
            "at most 0.05": (None, F("0.00005")), "≤ 90 %": (None, F("0.9")),
            "at least 1 bar": (100000, None)})
        for text in ("0.05 to 0.08", "0.05-0.08", "0.05 - 0.08 mm", "0.05–0.08", "0.065 +- 0.015",
                     "0,05 - 0,08 mm", "0.05...0.08", "0.05…0.08", "between 0.05 and 0.08 mm",
                     "From 0.05 to 0.08", "0.06 +0.02 -0.01", "0.06 -0,01/+0,02 mm",
                     "0.05 mm +30 µm 0", "0.05 +0.03/0 mm", "0.09 -0.01 −0.04"):
            limits = parse_limits(text, millimetre)
            self.assertEqual([evaluate(side, Context(dict().__getitem__))[()].value
                              for side in (limits.lower, limits.upper)],
                             [F("0.00005"), F("0.00008")], text)
        self.assertIsNone(parse_limits("min 0.03", millimetre).upper)
        self.assertIsNone(parse_limits("max 0.1", millimetre).lower)
        for text in ("> 40 psi", ">40 psi", "Min. 40 psi", "40 psi min", "40 psi minimum"):
            self.assertIsNone(parse_limits(text, millimetre).upper)
        for text in ("< 0.1", "max. 0.1", "0.1 mm MAX", "up to 0.1", "10 min max"):
            self.assertIsNone(parse_limits(text, millimetre).lower)
        for text in ("0.03/0.065 mm", "0.03 0.065 mm", "80 +0.02", "40 min", "80 0 0"):
            with self.assertRaises(ValueError, msg=text):
                parse_limits(text, millimetre)
        self.assertEqual(parse_limits("= 3", None).wanted, "3")
        with self.assertRaises(ValueError):
            parse_limits("2-5/8", millimetre)
        self.assertEqual(parse_limits("dry of dry/damp/wet", None).choices, ("dry", "damp", "wet"))
        self.assertEqual(parse_limits("exactly 4", None).wanted, "4")

    def test_orders(self):
        for count, order in ((4, "1-3-2-4"), (5, "1-3-5-2-4"), (6, "1-4-3-6-5-2"),
                             (8, "1-5-3-7-2-6-4-8"),
                             (16, "1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16")):
            self.assertEqual("-".join(str(i + 1) for i in criss_cross(count)), order)
        self.assertEqual([i + 1 for i in in_row(8)], [4, 5, 3, 6, 2, 7, 1, 8])
        bolts = [("bolt", labels("1..10"))]
        spiral = order_of("spiral", "1 2 3 4 5 / 6 7 8 9 10", bolts, [])
        self.assertEqual("-".join(place[0] for place in spiral), "3-8-4-7-2-9-5-6-1-10")

    def test_each_has_the_order_for_itself(self):
        nuts = [("cylinder", labels("a/b")), ("stud", labels("1..4"))]
        self.assertEqual("-".join(map("".join, order_of("criss-cross", None, nuts, ["cylinder"]))),
                         "a1-a3-a2-a4-b1-b3-b2-b4")


if __name__ == "__main__":
    unittest.main()
