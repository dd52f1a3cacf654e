"""Limits worked out from readings, and what people say of requirements: one rule each."""
import unittest

import test_judge

BOUNDS = """
plan: Bounds
units: [mm, N·m]
axes: {side: left/right}
steps:
  Measure:
    fasteners:
      pins: {bolts: 1..2, stages: 20 > 40, then off: yes}
    checks:
      skirt: {decimals: 2, limits: any, rests on: pins}
      bore: {decimals: 2, limits: any, with: pins}
      found play: {decimals: 2, limits: at most 0.005 * skirt, settled by: decision}
      play: {decimals: 2, limits: at most 0.005 * skirt}
      gap: {at: side, limits: any}
      widest = max(gap): {limits: at most 0.25, doubt: 0.01, rests on: pins}
      seal: dry of dry/damp/wet
"""


class Story(test_judge.Story):
    plan = BOUNDS

    def pins(self, *bolts):
        for stage in (1, 2):
            self.tick("pins", stage, *bolts, step="Measure")

    def uphold(self, asked, name, doubt, **where):
        self.say("uphold", asked=asked, name=name, step="Measure", doubt=doubt, **where)


class Bounds(unittest.TestCase):
    def setUp(self):
        self.story = Story()
        self.story.pins("1", "2")
        self.story.read("skirt", "60.00")

    def expect(self, name, verdict):
        self.assertEqual(self.story.verdict(name), verdict)

    def test_a_limit_in_doubt_and_argued_away(self):
        self.story.read("play", "0.20")
        self.story.slacken("pins", "1", step="Measure")
        self.expect("read play", "in doubt basis")
        self.story.uphold("read", "play", "basis")
        self.expect("read play", "pass")
        self.expect("read skirt", "in doubt basis")
        self.story.slacken("pins", "1", step="Measure")
        self.expect("read play", "in doubt basis")

    def test_the_limit_of_a_finding_is_of_what_was_found(self):
        self.story.read("found play", "0.20")
        self.story.slacken("pins", "1", step="Measure")
        self.expect("read found play", "pass")

    def test_the_last_decision_counts(self):
        self.story.read("found play", "0.50")
        self.story.say("decide", check="found play", step="Measure", decision="keep")
        self.expect("read found play", "noted")
        self.story.say("decide", check="found play", step="Measure", decision="look closer")
        self.expect("read found play", "open")

    def test_a_limit_that_is_not_needed_leaves_it_open(self):
        self.story.read("play", "0.20")
        self.story.say("not needed", asked="read", name="skirt", step="Measure")
        self.expect("read play", "open")

    def test_a_bound_under_the_doubt_of_a_method(self):
        self.story.read("gap", "0.10", "left")
        self.story.read("gap", ">0.30", "right")
        self.expect("read widest", "fail high")

    def test_a_formula_falls_with_what_it_rests_on(self):
        self.story.read("gap", "0.10", "left")
        self.story.read("gap", "0.12", "right")
        self.expect("read widest", "pass")
        self.story.slacken("pins", "1", step="Measure")
        self.expect("read widest", "in doubt basis")

    def test_an_amendment_before_the_reading_concedes_nothing(self):
        self.story.say("amend", check="play", step="Measure", limits="at most 0.50")
        self.story.read("play", "0.40")
        self.expect("read play", "pass")
        self.story.say("amend", check="play", step="Measure", limits="at most 0.35")
        self.expect("read play", "fail high")
        self.story.say("amend", check="play", step="Measure", limits="at most 0.45")
        self.expect("read play", "conceded high")

    def test_a_look_is_conceded_as_it_was_answered(self):
        self.story.say("look", check="seal", step="Measure", answer="damp")
        self.story.say("concede", asked="look", name="seal", step="Measure", reasons=["look"])
        self.expect("look seal", "conceded look")
        self.story.say("look", check="seal", step="Measure", answer="wet")
        self.expect("look seal", "fail look")

    def test_a_look_may_be_amended(self):
        self.story.say("look", check="seal", step="Measure", answer="damp")
        self.story.say("amend", check="seal", step="Measure", limits="damp of dry/damp/wet")
        self.expect("look seal", "conceded look")

    def test_a_step_that_is_not_there(self):
        self.story.say("not needed", asked="sign", name="Measure")
        for name in ("look seal", "read play", "bolt pins in Measure[1], stage 1", "sign Measure, 1"):
            self.expect(name, "not needed")


class Pins(unittest.TestCase):
    def test_nobody_waits_for_a_withdrawn_bolt(self):
        story = Story()
        story.say("withdraw", what="tightening", name="pins", place=["1"])
        story.pins("2")
        self.assertEqual(story.verdict("bolt pins in Measure[2], stage 2"), "pass")
        story.read("bore", "60.00")
        self.assertEqual(story.verdict("read bore"), "noted")

    def test_those_ahead_of_one_left_behind_by_a_take_down(self):
        story = Story()
        story.pins("1", "2")
        story.slacken("pins", "1", "2", step="Measure")
        story.pins("1")
        self.assertEqual(story.verdict("bolt pins in Measure[1], stage 2"), "pass")
        story.tick("pins", 1, "2", step="Measure")
        self.assertEqual(story.verdict("bolt pins in Measure[1], stage 2"), "in doubt order")

    def test_what_was_upheld_of_a_bolt_stays_so_for_what_leans_on_it(self):
        story = Story()
        story.tick("pins", 1, "2", "1", step="Measure")
        story.tick("pins", 2, "1", "2", step="Measure")
        story.read("bore", "60.00")
        self.assertEqual(story.verdict("read bore"), "in doubt basis")
        for place in "1", "2":
            story.uphold("bolt", "pins", "order", place=[place], stage=1)
        self.assertEqual(story.verdict("read bore"), "noted")
        story.slacken("pins", "1", "2", step="Measure")
        self.assertEqual(story.verdict("read bore"), "noted")
        story.pins("2", "1")
        story.read("bore", "60.00")
        self.assertEqual(story.verdict("read bore"), "in doubt basis")


if __name__ == "__main__":
    unittest.main()
