"""The functions of the trade, written out from standbook-plan(5) and from the sources it names."""
from __future__ import annotations

from fractions import Fraction as F

# Of each: its parameters, and what it comes to of them. `material` and what ends with it are materials.
FUNCTIONS: dict[str, list[tuple[list[str], str]]] = {
    # Heywood, Internal Combustion Engine Fundamentals, ch. 2: V_d = π/4·B²·L; r_c = (V_d + V_c)/V_c
    "swept volume": [(["bore", "stroke"], "bore * bore * stroke * pi / 4")],
    # the chamber, the disc of the gasket, the disc above the piston at the top, its dish
    "clearance volume": [
        (["chamber", "gasket bore", "gasket", "bore", "deck", "dish"],
         "chamber + dish + (gasket bore^2 * gasket + bore^2 * deck) * pi / 4")],
    "compression ratio": [(["swept", "clearance"], "swept / clearance + 1")],
    # ISO 286-1:2010: what the hole is larger by
    "clearance": [(["hole", "shaft"], "hole - shaft")],
    # common practice: a hole wears larger, a shaft smaller
    "hole wear": [(["now", "new"], "now - new")],
    "shaft wear": [(["now", "new"], "new - now")],
    # common practice: a shim thicker by what the gap is found too wide
    "shim wanted": [(["fitted", "found", "aim"], "fitted + (found - aim)")],
    "bolt stretch": [(["tight", "free"], "tight - free")],
    # Shigley, 9th ed., ch. 8: δ = F·l / (A·E)
    "elastic stretch": [(["force", "length", "area", "modulus"], "force / area / modulus * length")],
    # ISO 898-1:2013: π/4·(d - 0.9382·P)²
    "stress area": [(["diameter", "pitch"],
                     "(diameter - 0.9382 * pitch) * (diameter - 0.9382 * pitch) * pi / 4")],
    # what the load rises by for what the spring is shortened by
    "spring rate": [(["short load", "long load", "short", "long"],
                     "(short load - long load) / (long - short)")],
    # what is left between the coils at full lift
    "bind margin": [(["installed", "lift", "solid"], "installed - (lift + solid)")],
    "midpoint": [(["one side", "other side"], "one side / 2 + other side / 2")],
    # ISO 1:2022: the length at 20 °C, and what a gauge that is warm itself shows too little
    "at20": [(["length", "temperature", "material"],
              "length / (1 + material / 1 K * (temperature - 20 °C))"),
             (["length", "temperature", "material", "gauge temperature", "gauge material"],
              "length / (1 + material / 1 K * (temperature - 20 °C))"
              " * (1 + gauge material / 1 K * (gauge temperature - 20 °C))")],
}
# Linear expansion for each kelvin, and its U, k = 2.
MATERIALS = {name: (F(grows), F(doubt)) for name, grows, doubt in (
    ("steel", "0.0000115", "0.000001"), ("iron", "0.0000105", "0.000001"),
    ("aluminium", "0.000023", "0.000002"), ("brass", "0.000019", "0.0000015"),
    ("bronze", "0.000018", "0.0000015"), ("magnesium", "0.000026", "0.000001"),
    ("titanium", "0.0000086", "0.0000005"))}


def function(name: str, count: int) -> tuple[list[str], str] | None:
    """The form of a function that takes so many arguments."""
    return next((form for form in FUNCTIONS[name] if len(form[0]) == count), None)


def is_material(parameter: str) -> bool:
    return parameter.endswith("material")


def material(tree: tuple) -> tuple:
    """A quantity whose ± is one source however often a formula names the material."""
    if tree[0] != "name" or tree[1] not in MATERIALS:
        raise ValueError(f"{tree} is no material")
    grows, doubt = MATERIALS[tree[1]]
    return ("quantity", grows, F(1), doubt, ("material", tree[1]), None)


def filled(tree: tuple, given: dict[str, tuple]) -> tuple:
    """A tree with what is given in the place of its names."""
    if tree[0] == "name":
        return given.get(tree[1], tree)
    return tuple(filled(part, given) if isinstance(part, tuple) and part and
                 isinstance(part[0], str) else part for part in tree)
