"""Somebody who sets simulated engines at the terminal and follows nothing but what NEXT says: where to
move, what to read, what to tick. Typed are readings, where it stands, ticks, and the digits that answer
(wrench, signature)."""
import fractions
import math
import re

STEPS = 400


class Killed(Exception):
    """The program was killed; it is to be picked up again."""


class Held:
    """One adjuster and what it sets: where it stands by its zero, and whether it is tight."""

    def __init__(self, stand, first):
        self.stand, self.first = stand, first
        self.at, self.tight, self.told = fractions.Fraction(0), False, False
        self.moves = 0


class Setter:
    """Knows of the screen its NEXT (or ASK) and the line of answers.

    stands    what is set: by place where each has an adjuster of its own, else one under ""
    first     turns of the first move, when nothing is known yet
    reach     where the adjuster can stand
    wrenches  by bolt set, as the tools are labelled
    move      what the adjuster is called
    step      the step that is signed, and by whom: the first, and the second or None
    dies      killed behind a second move, at the tick of that number; 0: never
    """

    def __init__(self, stands, *, first, reach, wrenches, move, step, dies=0):
        self.held = {place: Held(stand, first) for place, stand in stands.items()}
        self.reach, self.wrenches, self.dies = reach, wrenches, dies
        self.step, self.signer, self.second = step
        self.player, self.place = None, next(iter(stands))
        self.moves = self.ticks = self.readings = self.ticks_behind = 0
        self.signed = False
        self.does = (
            (r"^ASK +which wrench is in hand\?", self.wrench),
            (r"Enter = tight", self.tick),
            (r"^NEXT +(?:(\d, \w+): )?(?:loosen, )?turn (in|out) ([\d/ ]+)(?: · then type where|, or )",
             self.turn),
            (rf"^NEXT +(?:(\d, \w+): )?(?:loosen, )?move the {move}() ?()· type where it stands", self.turn),
            (r"^NEXT +(loose|tight) at (\d(?:, \w+)?)", self.read),
            (rf"^ASK +sign {self.step}\?", self.sign),
            (rf"^ASK +another person signs {self.step}: who\?", self.sign_too))

    def type(self, text):
        self.player.type(text)
        self.player.settle()
        if self.player.row(-2).startswith("!"):
            self.player.fail(f"`{text}` is not taken")

    def answer(self, pattern):
        """The digit that stands before something."""
        found = re.search(pattern, self.player.row(-3))
        if not found:
            self.player.fail(f"no answer {pattern}")
        self.player.ask("wait 550")
        self.type(found[1])
        self.player.ask("wait 550")
        self.player.settle()

    def wrench(self, _):
        group = next(name for name in self.wrenches if name in self.player.row(2))
        self.answer(rf"(\d+) {self.wrenches[group]}\b(?! with)")

    def turn(self, found):
        """As far as NEXT says, at the place that it names."""
        self.place = found[1] or ""
        held, way, size = self.held[self.place], found[2], found[3]
        if not way and held.told:
            self.player.fail("it does not say how far, though it was told")
        by = fractions.Fraction(size) * (1 if way == "out" else -1) if way else held.first
        to = held.at + by
        shown = f"{math.floor(100 * to + fractions.Fraction(1, 2)) / 100:.2f}"
        if way and not any(re.search(rf"\bto {re.escape(shown)}$", row) for row in self.player.screen()):
            self.player.fail(f"from {float(held.at):.2f} {way} {size} is to {shown}")
        if not self.reach[0] <= to <= self.reach[1]:
            self.player.fail("the adjuster ends before that")
        held.stand.turn(float(by))
        held.at, held.tight, self.ticks_behind = fractions.Fraction(shown), False, 0
        held.moves += 1
        self.moves += 1
        self.type(shown + "\r")

    def read(self, found):
        """At the place that NEXT names, loose or tight."""
        tight, place = found[1] == "tight", found[2]
        apart = place in self.held
        held = self.held[place if apart else ""]
        if apart and place != self.place:
            self.player.fail(f"it moved {self.place} and reads {place}")
        if tight and not held.tight:
            self.player.fail("it asks for a tight reading of what is loose")
        value = held.stand.read(0 if apart else int(place) - 1, tight)[0] / 100
        held.told = True
        self.readings += 1
        self.type(f"{value:.2f}\r")

    def tick(self, _):
        if self.dies and self.moves > 1 and self.ticks_behind == self.dies - 1:
            self.dies = 0
            self.player.signal("KILL")
            self.player.wait_end()
            raise Killed
        held = self.held[self.place]
        if self.place and f"bolt {self.place} " not in self.player.row(-4):
            self.player.fail(f"another nut than that of {self.place}")
        self.ticks += 1
        self.ticks_behind += 1
        if not held.tight:
            held.stand.tighten()
            held.tight = True
        self.type("\r")

    def sign(self, _):
        self.answer(rf"(\d) {self.signer} signs")
        self.signed = self.second is None

    def sign_too(self, _):
        """The plan asks for a second person."""
        self.answer(rf"(\d) {self.second}\b")
        self.signed = True

    def one_step(self):
        row = self.player.row(-4)
        for pattern, method in self.does:
            found = re.search(pattern, row)
            if found:
                return method(found)
        return self.player.fail("NEXT says nothing that can be done")

    def work(self, player):
        """To the signature, or until it is killed."""
        self.player = player
        player.wait_for("who picks up?")
        player.settle()
        self.answer(rf"(\d) {self.signer}\b")
        for _ in range(STEPS):
            if self.signed:
                return
            self.one_step()
        player.fail(f"not signed after {STEPS} steps")
