"""What is kept on the device: no newer state is written over, no number is given twice."""

from playwright.sync_api import Page, expect

from tests.page.hands import expect_kept, open_demo, open_screen, touch

WRITE = """async (over) => {
    const { keeper, Stale } = await import("./ground.js");
    const id = location.hash.split("/")[2];
    const record = await keeper.readJob(id);
    const job = { ...record.job, name: "written over" };
    const refused = (error) => error instanceof Stale;
    const done = keeper.keepJob({ ...record, job }, { over });
    const isRefused = await done.then(() => false, refused);
    return [isRefused, (await keeper.readJob(id)).job.name];
}"""
TAKE = """async () => {
    const { keeper } = await import("./ground.js");
    return keeper.takeNumbers(5);
}"""


def test_a_state_that_grew_from_an_older_one_is_not_written(fresh: Page) -> None:
    open_demo(fresh)
    expect_kept(fresh)
    name = fresh.get_by_role("heading", level=1).inner_text()
    assert fresh.evaluate(WRITE, 0) == [True, name]
    assert fresh.evaluate(WRITE, None) == [True, name]


def test_numbers_for_ids_never_roll_back(fresh: Page) -> None:
    one = fresh.evaluate(TAKE)
    two = fresh.evaluate(TAKE)
    open_screen(fresh, "Jobs")
    touch(fresh, "New job")
    expect_kept(fresh)
    open_screen(fresh, "Jobs")
    touch(fresh, "More for New job")
    touch(fresh, "Delete")
    touch(fresh, "Delete it")
    expect(fresh.locator(".job-line")).to_have_count(0)
    fresh.reload()
    three = fresh.evaluate(TAKE)
    assert one["hand"] == two["hand"] == three["hand"]
    assert len(one["hand"]) == 3
    assert one["first"] + 5 == two["first"]
    assert two["first"] + 5 < three["first"]
