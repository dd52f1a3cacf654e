"""Simulated engines to set by trial, as tests/bench/setting/engine.c has them: the same engine, met by
another builder. An engine answers moves and is read by a gauge that rounds; what it is by itself is
for whoever keeps the score, never for the builder.
"""
import math

MASK = (1 << 64) - 1
PLACES = 4


class Random:
    """A stream of numbers (splitmix64, G. Steele and others 2014), from a state."""

    def __init__(self, state):
        self.state = state

    def bits(self):
        self.state = z = (self.state + 0x9E3779B97F4A7C15) & MASK
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        return z ^ (z >> 31)

    def uniform(self, least, most):
        return least + (most - least) * ((self.bits() >> 11) * 2.0 ** -53)

    def normal(self):
        length = math.sqrt(-2 * math.log(1 - self.uniform(0, 1)))
        return length * math.cos(2 * math.pi * self.uniform(0, 1))


def whole(number):
    """The nearest whole number, halves away from 0 as round(3) has it."""
    return int(math.copysign(math.floor(abs(number) + 0.5), number))


class Stand:
    """An engine of `drawn` (a line of bench_setting --draws) at a stand: turn, tighten, read."""

    def __init__(self, drawn):
        self.drawn, self.job = drawn, drawn["job"]
        self.random = Random(drawn["random"])
        self.turned = self.repeat = 0.0
        self.moves = 0

    def turn(self, turns):
        """By so many turns, as well as the hand can."""
        if turns:
            turns += self.drawn["hand"] * self.random.normal()
        self.turned += turns
        self.moves += 1

    def tighten(self):
        self.repeat = self.drawn["repeat"] * self.random.normal()

    def read(self, place, tight):
        """In whole graduations: one reading (n,), or the two of a difference, forth and back."""
        graduation = self.job["graduation"]
        value = self._value(place, tight)
        if not self.job["difference"]:
            return (whole(value / graduation),)
        under = self.random.uniform(0, graduation)
        return (whole((value + under) / graduation), whole(under / graduation))

    def _value(self, place, tight):
        drawn = self.drawn
        path = drawn["slope"] * self.turned
        path *= 1 + drawn["curve"] * self.turned / drawn["travel"] / 2
        loose = drawn["level"] + drawn["places"][place]
        if not tight:
            return loose + path
        return loose + drawn["ratio"] * path + drawn["shift"] * (1 + self.repeat)

    # For whoever keeps the score ------------------------------------------------------------

    def least(self):
        """The value itself at the tightest place, as tightened last; mm."""
        return min(self._value(place, True) for place in range(PLACES))

    def most(self):
        return max(self._value(place, True) for place in range(PLACES))
