"""What the project says about itself is true: versions, locks, words, terms, commands."""

import json
import re
import tomllib

import build
from tests.house.files import ROOT, list_files
from web.tools.generated import ask_catalogue, make_generated
from web.tools.licences import NPM_TEXTS, write_licences
from web.tools.vendor import COPIES
from web.tools.versions import read_core_version

LOCKS = ROOT / "web" / "locks"
# Put together here so that this file does not name them either.
REGISTRIES = [
    ".".join(parts)
    for parts in (("npmjs", "org"), ("npmjs", "com"), ("pypi", "org"), ("pythonhosted", "org"),
                  ("debian", "org"), ("jsdelivr", "net"), ("unpkg", "com"), ("yarnpkg", "com"))
]  # fmt: skip


def read_lock(name: str) -> dict[str, str]:
    """Read the names and versions of a lock of Python packages."""
    text = (LOCKS / f"{name}.lock").read_text()
    return dict(re.findall(r"^([\w.-]+)==([\w.]+)", text, re.MULTILINE))


def test_every_line_of_a_lock_is_pinned_and_carries_its_hash() -> None:
    for path in LOCKS.glob("*.lock"):
        text = path.read_text().replace("\\\n", "")
        for line in filter(None, text.splitlines()):
            assert re.match(r"[\w.-]+==[\w.]+ .*--hash=sha256:[0-9a-f]{64}", line), line


def test_the_core_runs_on_the_same_packages_everywhere() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    host, browser = read_lock("host"), read_lock("runtime")
    for line in project["dependencies"]:
        name, version = line.split("==")
        assert host[name] == browser[name] == version
    assert {name: host[name] for name in browser} == browser


def test_npm_packages_are_pinned_to_one_version() -> None:
    package = json.loads((ROOT / "web" / "package.json").read_text())
    lock = json.loads((ROOT / "web" / "package-lock.json").read_text())["packages"]
    for name, version in (package["dependencies"] | package["devDependencies"]).items():
        assert re.fullmatch(r"[\d.]+", version)
        assert lock[f"node_modules/{name}"]["version"] == version
    assert all("integrity" in entry for name, entry in lock.items() if name)


def test_no_file_names_a_registry_or_an_address_to_fetch_from() -> None:
    for path in list_files():
        content = (ROOT / path).read_bytes()
        for host in REGISTRIES:
            assert host.encode() not in content, f"{path} names a registry"
        if path.name == "package-lock.json":
            entries = json.loads(content)["packages"].values()
            texts = [text for entry in entries for text in entry.values() if isinstance(text, str)]
            assert not [text for text in texts if "/" in text and ":" in text], path


def test_the_version_is_the_head_of_the_changes() -> None:
    changes = json.loads((ROOT / "web" / "changes.json").read_text())
    assert changes[0]["version"] == read_core_version()
    assert all(entry["changes"] and entry["date"] for entry in changes)


def test_words_and_types_are_those_of_the_core() -> None:
    for path, text in make_generated().items():
        assert path.read_text(encoding="utf-8") == text, f"run `build.py make`: {path.name}"


def test_the_catalogue_of_the_page_needs_no_more_than_the_decimal_sign() -> None:
    for sign in ".,":
        assert ask_catalogue(sign, "ft") == ask_catalogue(sign, "m")
    shown = [
        [tap["shown"] for tap in ask_catalogue(sign)["usual_taps"][1]["taps"]] for sign in ".,"
    ]
    assert shown[0][3].split() == ["7.5", "W"]
    assert shown[1][3].split() == ["7,5", "W"]


def test_the_terms_of_everything_shipped_are_in_one_file() -> None:
    from web.tools.archives import fetch_runtime_wheels

    text = write_licences(fetch_runtime_wheels())
    for name, version in read_lock("runtime").items():
        assert re.search(rf"^{name.replace('-', '_')} {re.escape(version)}$", text, re.MULTILINE)
    vendored = {source.relative_to(ROOT / "web" / "node_modules").parts[0]
                for source, _ in COPIES.values()}  # fmt: skip
    assert vendored == set(NPM_TEXTS)
    for name in vendored:
        assert re.search(rf"^{name} [\d.]+ ", text, re.MULTILINE)
    for words in ("MIT License", "Mozilla Public License", "PYTHON SOFTWARE FOUNDATION", "zlib"):
        assert words in text


def test_the_papers_name_only_real_commands() -> None:
    for name in ("README.md", "DEVELOPERS.md", ".ci/run"):
        named = re.findall(r"build\.py ([a-z]+)", (ROOT / name).read_text(encoding="utf-8"))
        assert named, f"{name} names no command"
        assert set(named) <= set(build.COMMANDS), name


def test_a_clean_machine_runs_the_command_that_the_readme_gives() -> None:
    script = (ROOT / ".ci" / "run").read_text()
    command = re.findall(r"python3 build\.py \w+", script)
    assert command == ["python3 build.py test"]
    assert command[0] in (ROOT / "README.md").read_text(encoding="utf-8")
    assert "set -euo pipefail" in script
