"""Ready lines to open on the page, and getting to them."""

import itertools
import json
from typing import Any

from playwright.sync_api import Page, expect

from tests.page.hands import give_file, paper, touch

# A job that says the same as one that is kept already is not taken in again.
NUMBERS = itertools.count(1)


def speaker(name: str, after: str | None, length_m: float | None, **fitted: Any) -> dict[str, Any]:
    """One loudspeaker of 15 W at 100 V."""
    whole = {
        "is": "loudspeaker",
        "label": name,
        "connected": True,
        "tap_w": 15.0,
        "tap_at_v": 100.0,
    }
    return {
        "id": name.replace(" ", ""),
        "after": after,
        "length_m": length_m,
        "cable": "c",
        "fitted": {**whole, **fitted},
    }


def nave(*, gap: bool = False, limit_db: float = 0.5) -> dict[str, Any]:
    """A nave of six on a long home run, a branch of two, a control in front of the last two."""
    line = [speaker("Nave 1", None, 60.0)]
    line += [speaker(f"Nave {n}", f"Nave{n - 1}", 12.0) for n in range(2, 5)]
    control = {"is": "attenuator", "label": "Nave control", "set_db": -6.0, "off": False}
    control |= {"rated_w": 40.0, "rated_at_v": 100.0, "form": "autotransformer"}
    line.append({"id": "v", "after": "Nave4", "length_m": 3.0, "cable": "c", "fitted": control})
    line += [speaker("Nave 5", "v", 12.0), speaker("Nave 6", "Nave5", 12.0)]
    line += [speaker("Chapel 1", "Nave2", None if gap else 8.0, tap_w=6.0)]
    line += [speaker("Chapel 2", "Chapel1", 8.0, tap_w=6.0)]
    number = next(NUMBERS)
    output = {"id": "o", "name": "A", "line_v": 100.0, "max_w": 150.0}
    return {
        "format": "rungline-job", "version": 1, "rev": 1,
        "id": f"nave{number}", "name": f"St Orsel {number}",
        "limits": {"loss_db": limit_db, "load_fraction": 0.8, "conductor_c": 30.0},
        "kinds": {
            "cables": [{"id": "c", "name": "0.75 mm²", "area_mm2": 0.75, "class": 5,
                        "metal": "copper"}],
            "loudspeakers": [], "attenuators": [],
        },
        "amplifiers": [{"id": "a", "name": "Vestry rack", "pools": [], "outputs": [output]}],
        "zones": [{"id": "z", "name": "Nave", "output": "o", "areas": [], "line": line}],
    }  # fmt: skip


def open_line(page: Page, job: dict[str, Any]) -> None:
    """Take a job in from a file and open its one zone."""
    give_file(page, paper("job.json", json.dumps(job)))
    touch(page, "Keep it")
    expect(page.locator("main.sheet-job")).to_be_visible()
    page.locator(".zone-way").filter(has_text="Nave").first.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Nave")


def look_at(page: Page, view: str) -> None:
    """Go to a way of looking at the line."""
    page.get_by_role("navigation", name="Ways to look at this line").get_by_role(
        "link", name=view, exact=True
    ).tap()
