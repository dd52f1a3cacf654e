"""The decision rule: is a value with its doubt inside its limits? No root is taken."""
from __future__ import annotations

from fractions import Fraction as F

GUARD = F(33, 20)**2
REASONS = ("low", "high", "beyond wear", "look", "gauge", "tool", "order", "basis", "spent", "part",
           "window", "disagree", "clock")


def first_reason(doubts: frozenset[str] | set[str]) -> str:
    return next((reason for reason in REASONS if reason in doubts), "")


def as_read(lower: F | None, upper: F | None, variance: F) -> bool:
    """A capability index of at least 4: T² ≥ 256 u²."""
    return lower is not None and upper is not None and (upper - lower)**2 >= 256 * variance


def sure(distance: F, variance: F, plain: bool) -> bool:
    """Whether a distance from a limit, either way, is beyond doubt."""
    return plain or distance**2 >= GUARD * variance


def exact(value: F, variance: F, lower: F | None, upper: F | None, wear: F | None) -> tuple[str, str]:
    plain = as_read(lower, upper, variance)
    distances = [(value - lower, "low")] if lower is not None else []
    distances += [(upper - value, "high")] if upper is not None else []
    if all(d >= 0 and sure(d, variance, plain) for d, _ in distances):
        return "pass", ""
    for distance, side in distances:
        if distance < 0 and sure(distance, variance, plain):
            return "fail", worn(value, variance, wear, side, plain, upper, lower) or side
    return "in doubt", "gauge"


def worn(value: F, variance: F, wear: F | None, side: str, plain: bool,
         upper: F | None, lower: F | None) -> str:
    """`beyond wear` if the service limit on this side is surely passed too."""
    if wear is None:
        return ""
    if side == "high" and upper is not None and wear >= upper:
        past = value - wear
    elif side == "low" and lower is not None and wear <= lower:
        past = wear - value
    else:
        return ""
    return "beyond wear" if past > 0 and sure(past, variance, plain) else ""


def bounded(bound: str, value: F, variance: F, lower: F | None, upper: F | None,
            wear: F | None) -> tuple[str, str]:
    """`<x` and `>x` decide only where every value they allow decides alike."""
    plain = as_read(lower, upper, variance)
    near, far, side = (upper, lower, "low") if bound == "<" else (lower, upper, "high")
    sign = 1 if bound == "<" else -1
    if near is not None and far is None:
        inside = sign * (near - value)
        return ("pass", "") if inside >= 0 and sure(inside, variance, plain) else ("in doubt", "gauge")
    if far is not None:
        beyond = sign * (far - value)
        if beyond >= 0 and sure(beyond, variance, plain):
            return "fail", bounded_wear(sign, value, variance, wear, far, plain) or side
    return "in doubt", "gauge"


def bounded_wear(sign: int, value: F, variance: F, wear: F | None, far: F, plain: bool) -> str:
    if wear is None or sign * (far - wear) < 0:
        return ""
    past = sign * (wear - value)
    return "beyond wear" if past >= 0 and sure(past, variance, plain) else ""


def decide(bound: str, value: F, variance: F, lower: F | None, upper: F | None,
           wear: F | None) -> tuple[str, str]:
    if lower is None and upper is None:
        return "noted", ""
    if bound:
        return bounded(bound, value, variance, lower, upper, wear)
    return exact(value, variance, lower, upper, wear)


def disagree(one: F, other: F, variance: F) -> bool:
    """Whether two readings differ by more than their doubts allow; `variance` is u_a² + u_b²."""
    return (one - other)**2 > 4 * variance
