"""What axe finds on the screen as it is now, by day and by night."""

from pathlib import Path

from playwright.sync_api import Page

AXE = Path(__file__).resolve().parents[2] / "web" / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]
LOOK = """async (rules) => {
    const { violations } = await axe.run(document, { runOnly: rules });
    return violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html.slice(0, 160))]);
}"""


def expect_nothing_found(page: Page) -> None:
    """Let axe look at what is on the screen now, in the colours of the night and of the day."""
    if not page.evaluate("typeof axe === 'object'"):
        page.evaluate(AXE.read_text(encoding="utf-8") + "\n;0")
    page.emulate_media(color_scheme="dark", reduced_motion="reduce")
    assert page.evaluate(LOOK, RULES) == [], "dark"
    page.emulate_media(color_scheme="light")
    assert page.evaluate(LOOK, RULES) == [], "light"
    page.emulate_media(reduced_motion="null")
