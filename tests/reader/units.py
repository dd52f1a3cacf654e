"""Units as people type them, with exact factors (NIST SP 811:2008, appendix B).

A value is held in the base units m, kg, s, degree and K. A kind is the tuple of their exponents.
"""
from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as F

Kind = tuple[int, int, int, int, int]
PURE: Kind = (0, 0, 0, 0, 0)
LENGTH: Kind = (1, 0, 0, 0, 0)
MASS: Kind = (0, 1, 0, 0, 0)
TIME: Kind = (0, 0, 1, 0, 0)
ANGLE: Kind = (0, 0, 0, 1, 0)
TEMPERATURE: Kind = (0, 0, 0, 0, 1)
FORCE: Kind = (1, 1, -2, 0, 0)


@dataclass(frozen=True)
class Unit:
    """base value = number * factor + offset"""
    kind: Kind
    factor: F
    offset: F = F(0)

    def base(self, number: F) -> F:
        return number * self.factor + self.offset

    def width(self, number: F) -> F:
        """Of a difference, a tolerance or a doubt: without the offset."""
        return number * self.factor


INCH = F("0.0254")
POUND = F("0.45359237")
GRAVITY = F("9.80665")
SINGLE: dict[str, Unit] = {
    "m": Unit(LENGTH, F(1)), "cm": Unit(LENGTH, F(1, 100)), "mm": Unit(LENGTH, F(1, 1000)),
    "µm": Unit(LENGTH, F(1, 10**6)), "μm": Unit(LENGTH, F(1, 10**6)),
    "in": Unit(LENGTH, INCH), '"': Unit(LENGTH, INCH), "ft": Unit(LENGTH, 12 * INCH),
    "thou": Unit(LENGTH, INCH / 1000),
    "kg": Unit(MASS, F(1)), "g": Unit(MASS, F(1, 1000)), "mg": Unit(MASS, F(1, 10**6)),
    "lb": Unit(MASS, POUND), "oz": Unit(MASS, POUND / 16),
    "s": Unit(TIME, F(1)), "min": Unit(TIME, F(60)), "h": Unit(TIME, F(3600)),
    "°": Unit(ANGLE, F(1)), "deg": Unit(ANGLE, F(1)), "turn": Unit(ANGLE, F(360)),
    "K": Unit(TEMPERATURE, F(1)), "°C": Unit(TEMPERATURE, F(1), F("273.15")),
    "°F": Unit(TEMPERATURE, F(5, 9), F("459.67") * 5 / 9),
    "N": Unit(FORCE, F(1)), "kN": Unit(FORCE, F(1000)),
    "lbf": Unit(FORCE, POUND * GRAVITY), "kgf": Unit(FORCE, GRAVITY),
    "Pa": Unit((-1, 1, -2, 0, 0), F(1)), "kPa": Unit((-1, 1, -2, 0, 0), F(1000)),
    "MPa": Unit((-1, 1, -2, 0, 0), F(10**6)), "bar": Unit((-1, 1, -2, 0, 0), F(10**5)),
    "mbar": Unit((-1, 1, -2, 0, 0), F(100)),
    "psi": Unit((-1, 1, -2, 0, 0), POUND * GRAVITY / INCH**2),
    "cc": Unit((3, 0, 0, 0, 0), F(1, 10**6)), "ml": Unit((3, 0, 0, 0, 0), F(1, 10**6)),
    "l": Unit((3, 0, 0, 0, 0), F(1, 1000)), "L": Unit((3, 0, 0, 0, 0), F(1, 1000)),
    "%": Unit(PURE, F(1, 100)), "percent": Unit(PURE, F(1, 100)),
    "Nm": Unit((2, 1, -2, 0, 0), F(1)),
}
RAISED = {"²": 2, "³": 3}


def times(one: Kind, other: Kind, sign: int = 1) -> Kind:
    return tuple(a + sign * b for a, b in zip(one, other))  # type: ignore[return-value]


def raised(kind: Kind, exponent: int) -> Kind:
    return tuple(a * exponent for a in kind)  # type: ignore[return-value]


def _part(text: str) -> Unit:
    exponent = RAISED.get(text[-1:], 1)
    word = text[:-1] if exponent != 1 else text
    unit = SINGLE[word]
    return Unit(raised(unit.kind, exponent), unit.factor**exponent, unit.offset)


def parse_unit(text: str) -> Unit:
    """`mm`, `N·m`, `ft-lb`, `kgf/cm²`. KeyError if there is no such unit."""
    if text in SINGLE:
        return SINGLE[text]
    if text in ("ft-lb", "lb-ft", "ft-lbf", "lbf-ft"):
        text = "lbf·ft"
    sign, kind, factor = 1, PURE, F(1)
    for index, piece in enumerate(text.replace("/", "·/").split("·")):
        sign = -1 if piece.startswith("/") else 1
        unit = _part(piece.lstrip("/"))
        kind = times(kind, unit.kind, sign)
        factor = factor * unit.factor**sign
    return Unit(kind, factor)
