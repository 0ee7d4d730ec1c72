"""Jobs that come to a phone from elsewhere, and what a phone has kept."""

import json
from typing import Any

from playwright.sync_api import Page, expect

from pycore.carry.link import write_link
from pycore.jobs import Job
from tests.page.hands import expect_kept, touch
from tests.samples.travellers import make_traveller

MADE_BY = "0.1.0"
READ = """(id) => new Promise((resolve, reject) => {
    const opening = indexedDB.open("rungline");
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
        const base = opening.result;
        const reading = base.transaction("jobs").objectStore("jobs").get(id);
        reading.onsuccess = () => { base.close(); resolve(reading.result ?? null); };
    };
})"""


def make_visitor(job_id: str, name: str, *, loudspeakers: int = 8, **more: Any) -> Job:
    """A job from elsewhere, under an id of its own."""
    raw = make_traveller(loudspeakers, free_labels=False, ticked=False).model_dump(mode="json")
    return Job.model_validate_json(json.dumps({**raw, "id": job_id, "name": name, **more}))


def changed(job: Job, **more: Any) -> Job:
    """The job with other fields, one change later."""
    raw = job.model_dump(mode="json", by_alias=True)
    return Job.model_validate_json(json.dumps({**raw, "rev": job.rev + 1, **more}))


def with_tap(job: Job, point: int, tap_w: float) -> Job:
    """The job with another tap at a point of its first zone."""
    zones = job.model_dump(mode="json", by_alias=True)["zones"]
    zones[0]["line"][point]["fitted"]["tap_w"] = tap_w
    return changed(job, zones=zones)


def fragment_of(job: Job) -> str:
    """What stands behind # in the link of a job."""
    return write_link(job, MADE_BY)


def open_link(page: Page, job: Job, *, address: str) -> None:
    """Open the link of a job, up to its preview."""
    page.goto(f"{address}#{fragment_of(job)}")
    expect(page.locator(".open-preview h2")).to_have_text(job.name)


def take_in(page: Page, job: Job, *, address: str) -> None:
    """Open the link of a job and keep it."""
    open_link(page, job, address=address)
    touch(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text(job.name)
    expect_kept(page)


def read_kept(page: Page, job_id: str) -> dict[str, Any] | None:
    """What the device has of a job."""
    record: dict[str, Any] | None = page.evaluate(READ, job_id)
    return record


def rename(page: Page, name: str) -> None:
    """Give the open job another name, and wait until that is kept."""
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill(name)
    touch(page, "Save")
    expect(page.get_by_role("heading", level=1)).to_have_text(name)
    expect_kept(page)


def open_way(page: Page, name: str) -> None:
    """From a job, go to its share screen or its history."""
    page.get_by_role("link", name=name, exact=True).tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(name)
