"""The page shows quantities and computes none, and data never becomes code."""

import re

import pytest

from tests.house.files import ROOT, list_files, list_page
from tests.house.javascript import Token, read_tokens

ARITHMETIC = {"+", "-", "*", "/", "%", "**", "+=", "-=", "*=", "/=", "%=", "**=", "++", "--"}
UNIT = re.compile(r"_(w|v|m|a|db|dba|ohm|hz|c|mm2|km|pct|deg|uh|pf)$")
SINKS = {
    "innerHTML", "outerHTML", "insertAdjacentHTML", "unsafeHTML", "unsafeSVG", "unsafeCSS",
    "document.write", "eval", "createContextualFragment", "setHTMLUnsafe", "srcdoc",
}  # fmt: skip
NUMBER_PRINTERS = {"toFixed", "toPrecision", "toExponential", "toLocaleString", "NumberFormat"}
# manner.js asks the device which decimal mark it uses; it prints nothing with the answer.
ALLOWED = {"web/manner.js": {"NumberFormat"}}


def find_arithmetic(source: str) -> list[str]:
    """Say where an operator stands beside a field named for a unit."""
    tokens = read_tokens(source)
    found = []
    for place, token in enumerate(tokens):
        if token.kind == "mark" and token.text in ARITHMETIC:
            beside = (name_before(tokens, place), name_after(tokens, place))
            units = [name for name in beside if UNIT.search(name)]
            found += [f"line {token.line}: {token.text} beside {name}" for name in units]
    return found


def name_before(tokens: list[Token], place: int) -> str:
    """Name the field that ends just before this operator."""
    if not place:
        return ""
    last = tokens[place - 1]
    if last.text == "]" and place >= 2:
        return tokens[place - 2].text.strip("\"'")
    return last.text if last.kind == "name" else ""


def name_after(tokens: list[Token], place: int) -> str:
    """Name the field that the chain after this operator ends in."""
    name, here = "", place + 1
    while here < len(tokens) and tokens[here].text == "(":
        here += 1
    while here < len(tokens):
        token = tokens[here]
        if token.kind == "name":
            name = token.text
        elif token.text == "[" and here + 2 < len(tokens) and tokens[here + 2].text == "]":
            name, here = tokens[here + 1].text.strip("\"'"), here + 2
        elif token.text not in (".", "?."):
            break
        here += 1
    return name


@pytest.mark.parametrize(
    "source",
    [
        "const sum = tap.tap_w * count;",
        "total += point.load_w",
        "const x = 2 / job.limits['loss_db']",
        "show(`${a.length_m + 1} m`)",
        "left = a?.b?.max_w - b",
        "x = -(found.value_v)",
    ],
)
def test_the_reader_finds_arithmetic_on_a_field_with_a_unit(source: str) -> None:
    assert find_arithmetic(source)


@pytest.mark.parametrize(
    "source",
    [
        "const change = { tap_w: typed, at: count + 1 };",
        "// tap_w * 2\nconst pattern = /tap_w*2/;",
        "say('tap_w + tap_w'); show(point.tap_w, index + 1)",
        "const half = share_fraction * 100;",
    ],
)
def test_the_reader_leaves_other_code_alone(source: str) -> None:
    assert not find_arithmetic(source)


@pytest.mark.parametrize("path", list_page(), ids=str)
def test_the_page_computes_with_no_quantity(path: object) -> None:
    assert find_arithmetic((ROOT / str(path)).read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("path", list_page(), ids=str)
def test_the_page_formats_no_number(path: object) -> None:
    tokens = read_tokens((ROOT / str(path)).read_text(encoding="utf-8"))
    forbidden = NUMBER_PRINTERS - ALLOWED.get(str(path), set())
    assert [token for token in tokens if token.text in forbidden] == []


@pytest.mark.parametrize("path", list_page(), ids=str)
def test_data_never_becomes_markup_or_code(path: object) -> None:
    tokens = read_tokens((ROOT / str(path)).read_text(encoding="utf-8"))
    assert [token for token in tokens if token.kind == "name" and token.text in SINKS] == []
    for name, bracket, text in zip(tokens, tokens[1:], tokens[2:], strict=False):
        if name.text in ("setAttribute", "setAttributeNS") and bracket.text == "(":
            assert not re.match(r"[\"'](style|on\w+|srcdoc)[\"']", text.text), text


def test_no_markup_carries_a_style_or_a_handler_of_its_own() -> None:
    carries = re.compile(r"<[a-z][^<>]*\s(style|on[a-z]+)\s*=", re.IGNORECASE)
    for path in list_files():
        if path.parts[0] == "web" and path.suffix in (".html", ".js", ".svg"):
            found = carries.findall((ROOT / path).read_text(encoding="utf-8"))
            assert found == [], str(path)


def test_parts_do_not_know_each_other() -> None:
    for path in list_page():
        if path.parts[1] == "parts":
            source = (ROOT / path).read_text(encoding="utf-8")
            neighbours = re.findall(r"from \"(\./[^\"]+|\.\./parts/[^\"]+)\"", source)
            assert neighbours == [], f"{path} imports {neighbours}"


def test_the_page_asks_no_other_host() -> None:
    for path in list_files():
        shipped = path.parts[0] == "web" and path.parts[1] not in ("licences", "tools")
        if shipped and path.suffix in (".html", ".js", ".css", ".svg", ".webmanifest"):
            hosts = re.findall(r"\w+://[\w.]+", (ROOT / path).read_text(encoding="utf-8"))
            others = [host for host in hosts if not host.startswith("http://www.w3.org")]
            assert others == [], f"{path} names {others}"
