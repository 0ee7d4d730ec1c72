"""The catalogue as it was when codec 1 was made. It is a copy, and never follows the other.

A kind in a link is written as what differs from its namesake here; were this changed, old
links would come back as something else. The figures judge nothing and need no source.
"""

from typing import Any

Kind = dict[str, Any]


def _cable(one: str, name: str, **size: float) -> Kind:
    return {
        "id": one,
        "name": name,
        **size,
        "stranded": True,
        "tinned": False,
        "metal": "copper",
        "inductance_uh_per_m": 0.63,
        "capacitance_pf_per_m": 63.0,
    }


def _area(area_mm2: float) -> Kind:
    one = f"mm2_{area_mm2:g}".replace(".", "_")
    return {**_cable(one, f"{area_mm2:g} mm²", area_mm2=area_mm2), "class": 5}


def _loudspeaker(one: str, name: str, *, mount: str, taps_w: list[float], **more: Any) -> Kind:
    sensitivity_db, (horizontal_deg, vertical_deg) = more["sensitivity_db"], more["spread_deg"]
    row_100 = [{"w": tap_w, "at_v": 100.0} for tap_w in taps_w]
    row_70 = [{"w": tap_w / 2, "at_v": 70.7} for tap_w in taps_w]
    straight = [{"ohm": 8.0, "at_v": 70.7}] if more.get("straight") else []
    return {
        "id": one,
        "name": name,
        "mount": mount,
        "rated_w": taps_w[0],
        "taps": row_100 + row_70 + straight,
        "tap_means": "drawn",
        "sensitivity_db": sensitivity_db,
        "coverage_h_deg": horizontal_deg,
        "coverage_v_deg": vertical_deg,
    }


def _control(one: str, name: str, *, rated_w: float, override: bool) -> Kind:
    return {
        "id": one,
        "name": name,
        "rated_w": rated_w,
        "rated_at_v": 100.0,
        "insertion_db": 0.5,
        "form": "autotransformer",
        "override": override,
        **({"override_sense": "power_bypasses"} if override else {}),
    }


# Only ever add behind the last of a family.
STOCK: dict[str, tuple[Kind, ...]] = {
    "cables": (
        *(_cable(f"awg_{awg}", f"{awg} AWG", awg=awg) for awg in (22, 20, 18, 16, 14, 12, 10)),
        *(_area(area_mm2) for area_mm2 in (0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0)),
    ),
    "loudspeakers": (
        _loudspeaker(
            "ceiling_6w",
            "ceiling 6 W, 90°",
            mount="ceiling",
            taps_w=[6.0, 3.0, 1.5],
            sensitivity_db=90.0,
            spread_deg=(90.0, 90.0),
        ),
        _loudspeaker(
            "ceiling_20w",
            "ceiling 20 W, 90°",
            mount="ceiling",
            taps_w=[20.0, 10.0, 5.0, 2.5],
            sensitivity_db=91.0,
            spread_deg=(90.0, 90.0),
            straight=True,
        ),
        _loudspeaker(
            "wall_10w",
            "wall 10 W, 120°",
            mount="wall",
            taps_w=[10.0, 5.0, 2.5],
            sensitivity_db=89.0,
            spread_deg=(120.0, 120.0),
        ),
        _loudspeaker(
            "column_30w",
            "column 30 W, 120° × 40°",
            mount="wall",
            taps_w=[30.0, 15.0, 7.5],
            sensitivity_db=93.0,
            spread_deg=(120.0, 40.0),
        ),
        _loudspeaker(
            "horn_30w",
            "horn 30 W, 60°",
            mount="pole",
            taps_w=[30.0, 15.0, 7.5, 3.75],
            sensitivity_db=106.0,
            spread_deg=(60.0, 60.0),
            straight=True,
        ),
        _loudspeaker(
            "pendant_15w",
            "pendant 15 W, 120°",
            mount="pendant",
            taps_w=[15.0, 10.0, 7.5, 5.0],
            sensitivity_db=90.0,
            spread_deg=(120.0, 120.0),
        ),
    ),
    "attenuators": (
        _control("control_10w", "wall control 10 W", rated_w=10.0, override=False),
        _control(
            "control_35w", "wall control 35 W, overridden by a page", rated_w=35.0, override=True
        ),
        _control(
            "control_100w", "wall control 100 W, overridden by a page", rated_w=100.0, override=True
        ),
    ),
}
