"""The decision rule at its boundaries, strikes, rank, uncertainty."""
import unittest
from fractions import Fraction as F

from arrays import Place
from decision import bounded, decide, disagree
from ledger import Broken, Entry, chain, ranked, read_rows, settle_strikes
from tools import Gauge, variance

TINY = F(1, 10**12)


def entry(seq, kind="note", after=None, **body):
    return Entry("b", seq, kind, 1, "p", "2025-01-01T08:00:00", None, after, body)


class Decision(unittest.TestCase):
    def test_capability_four_is_believed_as_read(self):
        for u2, verdict in ((F(1, 256), "pass"), (F(1, 256) + TINY, "in doubt")):
            self.assertEqual(decide("", F(1), u2, F(0), F(1), None)[0], verdict)
        self.assertEqual(decide("", 1 + TINY, F(1, 256), F(0), F(1), None), ("fail", "high"))
        self.assertEqual(decide("", -TINY, F(1, 256), F(0), F(1), None), ("fail", "low"))

    def test_guard_band_of_one_limit(self):
        u2 = F(4)  # u = 2, so that the band is 3.3 wide
        band = F(33, 10)
        for value, verdict in ((10 - band, "pass"), (10 - band + TINY, "in doubt"),
                               (10 + band - TINY, "in doubt"), (10 + band, "fail")):
            self.assertEqual(decide("", value, u2, None, F(10), None)[0], verdict)

    def test_wear(self):
        for value, reason in ((F(15), "high"), (15 + TINY, "beyond wear"), (F(-1), "low")):
            self.assertEqual(decide("", value, F(0), F(0), F(10), F(15)), ("fail", reason))

    def test_nothing_to_decide(self):
        self.assertEqual(decide("", F(1), F(1), None, None, F(3)), ("noted", ""))

    def test_bounds(self):
        u2 = F(1, 40000)
        self.assertEqual(bounded("<", F("0.03"), u2, None, F("0.05"), None), ("pass", ""))
        self.assertEqual(bounded("<", F("0.03"), u2, F("0.01"), F("0.05"), None)[0], "in doubt")
        self.assertEqual(bounded("<", F("0.03"), F(0), F("0.03"), F("0.05"), None), ("fail", "low"))
        self.assertEqual(bounded(">", F("0.25"), F(0), None, F("0.20"), F("0.25")),
                         ("fail", "beyond wear"))

    def test_disagree_is_beyond_the_doubt_of_the_difference(self):
        self.assertFalse(disagree(F(0), F(4), F(4)))
        self.assertTrue(disagree(F(0), 4 + TINY, F(4)))


class Uncertainty(unittest.TestCase):
    def test_by_gauge(self):
        place = Place("value", F(0), {1: F(1), 2: F(-1), 3: F(1)})
        plain = Gauge("g", F(2), None, F(0))
        self.assertEqual(variance(place, {1: plain, 2: plain, 3: plain}, {}), 3)
        repeats = Gauge("g", F(2), F(1), F(0))
        self.assertEqual(variance(place, dict.fromkeys((1, 2, 3), repeats), {}), F(3 + 3, 4))
        coarse = Gauge("h", None, None, F(6))
        self.assertEqual(variance(place, {1: coarse, 2: plain}, {3: F(4)}), 3 + 1 + 4)


class Ledger(unittest.TestCase):
    def test_strikes(self):
        entries = [entry(1), entry(2, "strike", entry=1), entry(3, "strike", entry=2), entry(4),
                   entry(5, "strike", entry=4)]
        settle_strikes(entries)
        self.assertEqual([e.live for e in entries], [True, False, True, False, True])

    def test_rank(self):
        entries = [entry(1), entry(2), entry(3, after=1), entry(4, after=3), entry(5, after=1)]
        self.assertEqual([e.seq for e in ranked(entries)], [1, 3, 4, 5, 2])

    def test_chain(self):
        line = ('{"ledger":"b","seq":1,"kind":"note","format":1,"by":"p","at":"2025-01-01T08:00:00",'
                '"done":null,"after":null,"body":{"text":"x"}}')
        digest = chain("0" * 64, line)
        self.assertEqual(len(read_rows([f"{digest} {line}\n"])), 1)
        with self.assertRaises(Broken):
            read_rows([f"{digest} {line.replace('x', 'y')}\n"])


if __name__ == "__main__":
    unittest.main()
