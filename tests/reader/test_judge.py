"""Verdicts of small stories: each test is one rule of the record."""
import unittest
from fractions import Fraction as F

import yaml

from bolts import longest_run
from judge import Judge, counts
from ledger import Entry, ranked, settle_strikes
from plan import Plan

PLAN = """
plan: Small twin
units: [mm, N·m, °, bar]
axes: {end: front/rear, grade: A/B}
given: {added wall: {A: 0, B: 0.013}}
consumables: {gasket sealant: {kind: silicone, fit within: 12 min, run after: 24 h}}
steps:
  Clearance:
    gate: first start
    fasteners:
      caps: {bolts: 1..4, order: 2-3-1-4, stages: 30 > 50, then off: yes}
    checks:
      bore: {at: end, decimals: 3, with: caps}
      journal: {at: end, limits: 44.98..45.00}
      by grade = bore - journal - 2 * added wall: {limits: 0.020..0.060, choose: grade}
      found bore: {limits: at most 45.1, settled by: [clear]}
      clear = max(bore) - min(journal): at most 0.08
    hold: {grades chosen: second person}
  Crank:
    retighten: {caps: as before}
    fit: {shells: {at: end, use: new, track: lot}}
    checks:
      float: {limits: 0.05..0.25, wear: 0.30, rests on: caps}
      flange free of cracks: yes
  Head:
    fasteners:
      nuts: {bolts: 1..2, stages: 30 > wait 10 min > +60°, use: once}
      cover: {bolts: 1..3, stages: 5 > 8, lubricant: gasket sealant}
    checks:
      lash: {limits: 0.27..0.33, rests on: nuts}
  Run:
    begins: run
    retighten: {nuts: 75}
    read again: [lash]
"""


class Story:
    """Entries made by hand, judged against the plan above."""

    plan = PLAN

    def __init__(self):
        self.entries = []
        self.minutes = 0
        self.wrench("W0", 1)

    def say(self, kind, minutes=1, by="MO", after=None, **body):
        self.minutes += minutes
        at = f"2025-03-{3 + self.minutes // 1440:02}T{self.minutes // 60 % 24:02}:{self.minutes % 60:02}:00"
        body = {key.rstrip("_"): value for key, value in body.items()}
        self.entries.append(Entry("b", len(self.entries) + 1, kind, 1, by, at, None, after, body))
        return len(self.entries)

    def read(self, check, value, *place, step=None, tool=None, after=None):
        body = {"check": check, "value": {"value": str(F(value.lstrip("<>"))), "unit": "mm",
                                          "typed": value}}
        if value[0] in "<>":
            body["value"]["value"] = value[0] + body["value"]["value"]
        body |= {"place": list(place)} if place else {}
        body |= {"step": step} if step else {}
        body |= {"tool": tool, "calibration": tool + "-1"} if tool else {}
        return self.say("read", after=after, **body)

    def tick(self, group, stage, *bolts, step, minutes=1, tool="W0"):
        body = {"tool": tool, "calibration": tool + "-1"} if tool else {}
        return self.say("tick", minutes, tightening=group, step=step, stage=stage,
                        bolts=list(bolts), **body)

    def caps(self, step):
        for stage in (1, 2):
            self.tick("caps", stage, "2", "3", "1", "4", step=step)

    def slacken(self, group, *bolts, step):
        return self.say("slacken", tightening=group, step=step, bolts=list(bolts))

    def take(self, what, kind="take", **body):
        return self.say(kind, what=what, format=1, seq=1, body=body)

    def wrench(self, name="W", least=10):
        self.take("tool", id=name, label=name, sort="click wrench", greatest=newtons(100),
                  least=newtons(least))
        self.take("calibration", id=name + "-1", tool=name, date="2025-01-01", due="2025-12-31",
                  found="good")

    def judge(self):
        settle_strikes(self.entries)
        judge = Judge(Plan(yaml.load(self.plan, Loader=yaml.BaseLoader)), ranked(self.entries))
        verdicts = judge.all()
        total = sum(counts(verdicts).values())
        assert total == judge.planned + judge.added - sum(v.withdrawn for v in verdicts)
        return {v.asked.words(): v for v in verdicts}

    def verdict(self, name):
        found = self.judge()[name]
        return f"{found.verdict} {found.reason}".strip()


def newtons(value):
    return {"value": str(value), "unit": "N·m", "typed": str(value)}


def doubtful(story, group, step, stage, bolts="1234", reason="order"):
    judged = story.judge()
    return [b for b in bolts if judged[f"bolt {group} in {step}[{b}], stage {stage}"].reason == reason]


class Order(unittest.TestCase):
    def test_longest_run(self):
        for sequence, kept in (([0, 1, 2, 3], [0, 1, 2, 3]), ([0, 2, 1, 3], [0, 2, 3]),
                               ([1, 2, 3, 0], [0, 1, 2]), ([0, 2, 3], [0, 1, 2])):
            self.assertEqual(longest_run(sequence), kept)

    def test_the_early_one_of_two_swapped(self):
        story = Story()
        story.tick("caps", 1, "2", "1", "3", "4", step="Clearance")
        self.assertEqual(doubtful(story, "caps", "Clearance", 1), ["1"])

    def test_a_stage_needs_the_one_before_on_all(self):
        story = Story()
        story.tick("caps", 1, "2", "3", "1", step="Clearance")
        story.tick("caps", 2, "2", "3", step="Clearance")
        self.assertEqual(doubtful(story, "caps", "Clearance", 2), ["2", "3"])

    def test_done_again_among_themselves(self):
        story = Story()
        story.caps("Crank")
        story.slacken("caps", "2", "3", step="Crank")
        self.assertEqual(story.verdict("bolt caps in Crank[2], stage 1"), "open")
        for stage in (1, 2):
            story.tick("caps", stage, "2", "3", step="Crank")
        self.assertEqual(doubtful(story, "caps", "Crank", 1) + doubtful(story, "caps", "Crank", 2), [])

    def test_taken_down_as_foreseen(self):
        story = Story()
        story.caps("Clearance")
        story.slacken("caps", "1", step="Clearance")
        self.assertEqual(story.verdict("bolt caps in Clearance[1], stage 2"), "pass")
        story.tick("caps", 1, "1", step="Clearance")
        self.assertEqual(story.verdict("bolt caps in Clearance[1], stage 2"), "open")

    def test_wait_and_spent(self):
        story = Story()
        story.tick("nuts", 1, "1", "2", step="Head")
        story.say("waited", 9, tightening="nuts", step="Head", stage=2)
        self.assertEqual(story.verdict("wait nuts in Head, stage 2"), "in doubt window")
        story.say("waited", 1, tightening="nuts", step="Head", stage=2)
        self.assertEqual(story.verdict("wait nuts in Head, stage 2"), "pass")
        story.tick("nuts", 3, "1", "2", step="Head")
        story.slacken("nuts", "1", step="Head")
        story.tick("nuts", 1, "1", step="Head")
        self.assertEqual(story.verdict("bolt nuts in Head[1], stage 1"), "in doubt spent")
        story.slacken("nuts", "1", step="Head")
        story.say("fit", part="nuts", place=["1"], use="new")
        story.tick("nuts", 1, "1", step="Head")
        self.assertEqual(story.verdict("bolt nuts in Head[1], stage 1"), "pass")


class Windows(unittest.TestCase):
    def test_fit_within_and_run_after(self):
        story = Story()
        story.say("laid", consumable="gasket sealant", tightening="cover", step="Head")
        story.tick("cover", 1, "1", "2", step="Head", minutes=12)
        self.assertEqual(story.verdict("bolt cover in Head[1], stage 1"), "pass")
        story.tick("cover", 1, "3", step="Head")
        self.assertEqual(story.verdict("bolt cover in Head[3], stage 1"), "in doubt window")
        story.say("sign", step="Run", signature=1)
        self.assertEqual(story.verdict("sign Run, 1"), "in doubt window")
        story.say("sign", 1440, step="Run", signature=1)
        self.assertEqual(story.verdict("sign Run, 1"), "pass")

    def test_expired_and_clock(self):
        story = Story()
        story.say("laid", consumable="gasket sealant", tightening="cover", step="Head",
                  expires="2025-03-02")
        story.tick("cover", 1, "1", step="Head")
        self.assertEqual(story.verdict("bolt cover in Head[1], stage 1"), "in doubt part")
        story.tick("cover", 1, "2", step="Head", minutes=-5)
        self.assertEqual(story.verdict("bolt cover in Head[2], stage 1"), "in doubt part")
        self.assertIn("clock", story.judge()["bolt cover in Head[2], stage 1"].doubts)


class Basis(unittest.TestCase):
    def test_with_needs_it_final_and_survives(self):
        story = Story()
        story.read("bore", "45.03", "front")
        self.assertEqual(story.verdict("read bore[front]"), "in doubt basis")
        story.caps("Clearance")
        story.read("bore", "45.03", "rear")
        story.slacken("caps", "1", "2", "3", "4", step="Clearance")
        self.assertEqual(story.verdict("read bore[rear]"), "noted")

    def test_a_setting_falls_with_what_it_is_read_with_in_its_own_step(self):
        checks = ("gap: {limits: 1..2, with: nuts, set: {move: screw}}",
                  "sag: {limits: 1..2, with: nuts}",
                  "play: {limits: 1..2, with: cover, set: {move: screw}}",
                  "bow: {limits: 1..2, with: flange, set: {move: screw}}",
                  "tilt: {limits: 1..2, rests on: cover}")
        plan = Plan(yaml.load("steps:\n  Head:\n    fasteners:\n"
                              "      nuts: {bolts: 1..2, stages: 30}\n"
                              "      cover: {bolts: 1..2, stages: 30}\n"
                              "      flange: {bolts: 1..2, stages: 30, then off: yes}\n"
                              "    checks:\n      " + "\n      ".join(checks) +
                              "\n  Run:\n    retighten: {nuts: as before}\n"
                              "    checks:\n      lean: {limits: 1..2, with: nuts, "
                              "set: {move: screw}}\n", Loader=yaml.BaseLoader))
        self.assertEqual({name: found for name, found in plan.names_rested_on().items() if found},
                         {"gap": {"nuts"}, "tilt": {"cover"}})

    def test_rests_on_falls(self):
        story = Story()
        story.caps("Crank")
        story.read("float", "0.10")
        self.assertEqual(story.verdict("read float"), "pass")
        story.slacken("caps", "1", step="Crank")
        self.assertEqual(story.verdict("read float"), "in doubt basis")
        story.say("uphold", asked="read", name="float", step="Crank", doubt="basis", why="x")
        self.assertEqual(story.verdict("read float"), "pass")
        story.slacken("caps", "2", step="Crank")
        self.assertEqual(story.verdict("read float"), "in doubt basis")

    def test_read_again(self):
        story = Story()
        for stage in (1, 3):
            story.tick("nuts", stage, "1", "2", step="Head")
            if stage == 1:
                story.say("waited", 10, tightening="nuts", step="Head", stage=2)
        story.read("lash", "0.30", step="Head")
        story.slacken("nuts", "1", "2", step="Run")
        self.assertEqual(story.verdict("read lash"), "pass")
        story.say("fit", part="nuts", use="new")
        story.tick("nuts", 1, "1", "2", step="Run")
        self.assertEqual(story.verdict("read lash in Run"), "open")
        story.read("lash", "0.31", step="Run")
        self.assertEqual(story.verdict("read lash"), "noted")
        self.assertEqual(story.verdict("read lash in Run"), "pass")

    def test_doubt_travels_until_upheld(self):
        story = Story()
        story.read("bore", "45.05", "front")
        story.read("bore", "45.04", "rear")
        for end in ("front", "rear"):
            story.read("journal", "44.99", end)
        self.assertEqual(story.verdict("read clear"), "in doubt basis")
        story.say("uphold", asked="read", name="bore", step="Clearance", doubt="basis", why="x")
        self.assertEqual(story.verdict("read clear"), "pass")


class Words(unittest.TestCase):
    def test_strike_and_placed_behind(self):
        story = Story()
        first = story.read("journal", "45.90", "front")
        second = story.read("journal", "44.99", "front")
        self.assertEqual(story.verdict("read journal[front]"), "in doubt disagree")
        story.say("strike", entry=first, cause="typo")
        self.assertEqual(story.verdict("read journal[front]"), "pass")
        story.say("strike", entry=second, cause="typo")
        self.assertEqual(story.verdict("read journal[front]"), "open")
        story.read("journal", "44.98", "front", after=first)
        self.assertEqual(story.verdict("read journal[front]"), "in doubt gauge")

    def test_choose(self):
        story = Story()
        story.caps("Clearance")
        story.read("bore", "45.05", "front")
        story.read("journal", "44.99", "front")
        self.assertEqual(story.verdict("read by grade[front]"), "open")
        story.say("choose", check="by grade", place=["front"], label="B")
        found = story.judge()["read by grade[front]"]
        self.assertEqual((found.verdict, found.value), ("pass", F("0.000034")))

    def test_finding(self):
        story = Story()
        story.read("found bore", "45.2")
        self.assertEqual(story.verdict("read found bore"), "open")
        story.say("decide", check="found bore", decision="rework", why="hone")
        self.assertEqual(story.verdict("read found bore"), "noted")

    def test_concession_amendment_withdrawal(self):
        story = Story()
        story.caps("Crank")
        story.read("float", "0.31")
        self.assertEqual(story.verdict("read float"), "fail beyond wear")
        story.say("concede", asked="read", name="float", reasons=["beyond wear"], side="high",
                  bound={"value": "8/25", "unit": "mm", "typed": "0.32"}, why="x", who="customer")
        self.assertEqual(story.verdict("read float"), "conceded beyond wear")
        story.say("strike", entry=len(story.entries), cause="typo")
        story.say("amend", check="float", limits="0.05..0.35", why="x")
        self.assertEqual(story.verdict("read float"), "conceded beyond wear")
        story.say("withdraw", what="check", name="float", why="x")
        self.assertTrue(story.judge()["read float"].withdrawn)

    def test_looks_parts_signatures(self):
        story = Story()
        story.say("look", check="flange free of cracks", answer="no")
        self.assertEqual(story.verdict("look flange free of cracks"), "fail look")
        story.say("fit", part="shells", place=["front"], use="reused", label="A", lot="L", evidence="x")
        self.assertEqual(story.verdict("fit shells[front]"), "in doubt part")
        story.say("sign", step="Clearance", signature=1)
        story.say("sign", step="Clearance", signature=2, by="JT")
        self.assertEqual(story.verdict("sign Clearance, 2"), "pass")
        story.say("reopen", step="Clearance", why="x")
        self.assertEqual(story.verdict("sign Clearance, 2"), "open")

    def test_added_and_not_needed(self):
        story = Story()
        story.say("add", what="check", name="face", step="Head", definition="at most 0.05 mm", why="x")
        self.assertEqual(story.verdict("read face"), "open")
        story.say("not needed", asked="read", name="journal", place=["rear"], why="x")
        self.assertEqual(story.verdict("read journal[rear]"), "not needed")


class Tools(unittest.TestCase):
    def test_found_wrong_and_found_good(self):
        for found, verdict in (("wrong", "in doubt tool"), ("good", "pass"), ("adjusted", "pass")):
            story = Story()
            story.wrench()
            story.tick("caps", 1, "2", step="Crank", tool="W")
            story.minutes += 1440
            story.take("calibration", "news", id="W-2", tool="W", date="2025-03-04", found=found)
            self.assertEqual(story.verdict("bolt caps in Crank[2], stage 1"), verdict)

    def test_out_of_range_stays_in_doubt(self):
        story = Story()
        story.wrench()
        story.tick("cover", 1, "1", step="Head", tool="W")  # 5 N·m with one of 10 to 100
        self.assertEqual(story.verdict("bolt cover in Head[1], stage 1"), "in doubt tool")
        story.take("calibration", "news", id="W-2", tool="W", date="2025-03-04", found="good")
        self.assertEqual(story.verdict("bolt cover in Head[1], stage 1"), "in doubt tool")

    def test_overdue_until_found_good(self):
        story = Story()
        story.wrench()
        story.take("calibration", id="W-0", tool="W", date="2025-03-01", due="2025-03-02", found="good")
        story.tick("caps", 1, "2", step="Crank", tool="W")
        self.assertEqual(story.verdict("bolt caps in Crank[2], stage 1"), "in doubt tool")
        story.take("calibration", "news", id="W-2", tool="W", date="2025-03-04", found="good")
        self.assertEqual(story.verdict("bolt caps in Crank[2], stage 1"), "pass")


if __name__ == "__main__":
    unittest.main()
