"""The page travels as a few files: all of its modules are in them, and nothing else changed."""

import re
from collections import Counter
from pathlib import Path

import pytest

from web.tools.join import join_page, join_styles
from web.tools.page_files import list_page_files
from web.tools.say import Halt
from web.tools.vendor import COPIES

PAGE = """<title>small</title>
    <link rel="stylesheet" href="styles/one.css" />
    <link rel="stylesheet" href="styles/two.css" />
    <link rel="stylesheet" href="styles/paper.css" media="print" />
"""
SMALL = {
    "index.html": PAGE,
    "styles/one.css": "a { color: red; }\n",
    "styles/two.css": "a { color: blue; }\n",
    "styles/paper.css": "a { color: black; }\n",
    "py/build.js": 'export const ARCHIVES = [["site.zip", ["site.zip"]]];\n',
    "engine.js": 'import { ARCHIVES } from "./py/build.js";\nexport const engine = ARCHIVES;\n',
    "worker.js": 'import { ARCHIVES } from "./py/build.js";\nconsole.log(ARCHIVES);\n',
    "say.js": "/** @param {string} text */\nexport const say = (text) => text; // said\n",
    "parts/top.js": """import { say } from "../say.js";
/** A comment. */
export const top = () =>
  // another
  `${say("a // b")} /* ${/* none */ say('"')} */ ${/[/*]x*/.test("//")}`;
""",
    "app.js": """import { engine } from "./engine.js";
import { top } from "./parts/top.js";
export { engine, top };
""",
}


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A small page, not yet joined."""
    for name, text in SMALL.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def list_files(folder: Path) -> set[str]:
    """Name every file."""
    paths = folder.rglob("*")
    return {path.relative_to(folder).as_posix() for path in paths if path.is_file()}


def list_joined(dist: Path) -> Counter[str]:
    """Count the headings of the modules in the joined files."""
    heads = re.compile(r"^/\* ([\w/-]+\.js) \*/$", re.MULTILINE)
    texts = [path.read_text(encoding="utf-8") for path in dist.glob("*.js")]
    return Counter(head for text in texts for head in heads.findall(text))


def test_a_folder_becomes_a_file_and_what_was_joined_goes(small: Path) -> None:
    join_page(small)
    assert list_files(small) == {
        "index.html", "styles/page.css", "styles/paper.css",
        "app.js", "engine.js", "ground.js", "parts.js", "worker.js",
    }  # fmt: skip
    assert not (small / "py").exists()


def test_comments_go_and_texts_templates_and_patterns_stay(small: Path) -> None:
    join_page(small)
    assert (
        (small / "parts.js")
        .read_text(encoding="utf-8")
        .endswith(
            '/* parts/top.js */\nconst top = () =>\n  `${say("a // b")} /* ${ say(\'"\')} */ '
            '${/[/*]x*/.test("//")}`;\n\nexport { top };\n'
        )
    )
    ground = (small / "ground.js").read_text(encoding="utf-8")
    assert "@param" not in ground
    assert "// said" not in ground


def test_what_lies_beside_the_folders_travels_with_the_one_it_needs(small: Path) -> None:
    draft = 'import { top } from "./parts/top.js";\nexport const draft = () => top();\n'
    (small / "draft.js").write_text(draft, encoding="utf-8")
    (small / "sheets").mkdir()
    sheet = 'import { draft } from "../draft.js";\nexport const sheet = () => draft();\n'
    (small / "sheets" / "sheet.js").write_text(sheet, encoding="utf-8")
    text = SMALL["app.js"] + 'export { sheet } from "./sheets/sheet.js";\n'
    (small / "app.js").write_text(text, encoding="utf-8")
    join_page(small)
    assert "/* draft.js */" in (small / "parts.js").read_text(encoding="utf-8")
    assert "/* draft.js */" not in (small / "app.js").read_text(encoding="utf-8")


def test_files_that_need_each_other_are_refused(small: Path) -> None:
    # No module needs itself, but the two folders need each other.
    (small / "forms").mkdir()
    form = 'import { top } from "../parts/top.js";\nexport const form = () => top();\n'
    (small / "forms" / "form.js").write_text(form, encoding="utf-8")
    low = 'import { form } from "../forms/form.js";\nexport const low = () => form();\n'
    (small / "parts" / "low.js").write_text(low, encoding="utf-8")
    text = SMALL["app.js"] + 'export { low } from "./parts/low.js";\n'
    (small / "app.js").write_text(text, encoding="utf-8")
    with pytest.raises(Halt, match="could not be joined"):
        join_page(small)


def test_styles_are_joined_in_their_order_and_those_for_paper_stay(small: Path) -> None:
    join_styles(small)
    styles = (small / "styles" / "page.css").read_text(encoding="utf-8")
    assert styles.index("red") < styles.index("blue")
    links = re.findall(r"<link .*/>", (small / "index.html").read_text(encoding="utf-8"))
    assert links == [
        '<link rel="stylesheet" href="styles/page.css" />',
        '<link rel="stylesheet" href="styles/paper.css" media="print" />',
    ]


@pytest.mark.slow
def test_every_module_of_the_page_is_in_one_of_a_few_files(dist: Path) -> None:
    vendor = {
        f"{folder}/{name}" for folder, (_, names) in COPIES.items() for name in names
    }  # fmt: skip
    written = {path.as_posix() for path in list_page_files()} | vendor | {"py/build.js"}
    modules = {name for name in written if name.endswith(".js")} - {"sw.js"}
    joined = list_joined(dist)
    assert set(joined) == modules
    # The worker has what it needs to itself.
    twice = {name for name, count in joined.items() if count > 1}
    assert twice == {"py/build.js", "vendor/idb/index.js"}
    assert len(list(dist.glob("*.js"))) <= 12
    assert not list((dist / "py").glob("*.js"))
