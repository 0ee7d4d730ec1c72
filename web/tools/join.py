"""Join what a page loads first: its modules into some ten files, its styles into one."""

import re
from pathlib import Path

from web.tools.places import TOOLS
from web.tools.ready_node import find_node
from web.tools.say import Halt, run_program

STYLES = "styles/page.css"
# A style for paper waits for nothing, and nothing waits for it.
LINK = re.compile(r' *<link rel="stylesheet" href="([^"]+)" />\n')


def join_page(target: Path) -> None:
    """Join modules and styles of the page in `target`; what was joined goes."""
    run_program(
        [find_node(), TOOLS / "join.mjs", target],
        what="the modules of the page could not be joined",
        remedy="read the lines above; where files need each other, a folder of web/ imports "
        "from another that imports from it",
    )
    join_styles(target)
    for folder in sorted((path for path in target.rglob("*") if path.is_dir()), reverse=True):
        if not any(folder.iterdir()):
            folder.rmdir()


def join_styles(target: Path) -> None:
    """Put the style sheets that index.html links into one file, in their order."""
    page = target / "index.html"
    text = page.read_text(encoding="utf-8")
    linked = LINK.findall(text)
    if not linked:
        raise Halt("index.html links no styles", remedy="write their links as they were before")
    sheets = [(target / name).read_text(encoding="utf-8") for name in linked]
    for name in linked:
        (target / name).unlink()
    (target / STYLES).write_text("\n".join(sheets), encoding="utf-8")
    first, *others = [match.group() for match in LINK.finditer(text)]
    text = text.replace(first, first.replace(linked[0], STYLES))
    for link in others:
        text = text.replace(link, "")
    page.write_text(text, encoding="utf-8")
