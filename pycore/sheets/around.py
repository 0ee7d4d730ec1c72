"""What stands around the tables of a test sheet: whose job, what else is kept, who measured."""

from collections.abc import Iterator

from pycore.calc.reading import taken_of
from pycore.ground.units import show_typed
from pycore.jobs import Amplifier, Job, Output
from pycore.sheets.filing import Filing
from pycore.sheets.tables import Cell, Head, Table
from pycore.sheets.wording import Words

SIGNED = ("name", "date", "signature")


def head_table(job: Job, words: Words) -> Table:
    """The job, its place, the day, and what its lines hang on; what is not known is a line."""
    told = (("job", job.name), ("place", job.place), ("day", words.manner.today))
    rows = [(Cell(words.say(f"head_{code}")), _text(text)) for code, text in told]
    rows += [(Cell(one.name), _text(_outputs(one, words))) for one in job.amplifiers]
    return Table(words.say("head"), _heads(words), tuple(rows))


def signature(words: Words, act: str = "sign") -> Table:
    """Lines for who measured, or did another act, and when. It says itself that nothing is
    certified by them."""
    rows = tuple((Cell(words.say(f"sign_{code}")), Cell("", is_line=True)) for code in SIGNED)
    return Table(words.say(act), _heads(words), rows, (words.say(f"{act}_says"),))


def other_readings(filing: Filing, words: Words) -> Iterator[Table]:
    """Kept readings that belong to no line of the sheet, such as what ears heard."""
    others = filing.others()
    if not others:
        return
    heads = ("when", "place", "what", "read", "judged", "instrument")
    rows = tuple(
        (
            Cell(one.at),
            Cell(words.names.get(taken_of(one).place, "")),
            Cell(_what(words.title(one.quantity), words, how=filing.how(one))),
            Cell(filing.shown(one)),
            Cell(filing.judged(one).judged),
            Cell(one.instrument),
        )
        for one in others
    )
    yield Table(words.say("others"), tuple(Head(words.say(f"head_{one}")) for one in heads), rows)


def _what(quantity: str, words: Words, *, how: str) -> str:
    return words.say("kept_what", quantity=quantity, how=how) if how else quantity


def _text(text: str) -> Cell:
    return Cell(text) if text.strip() else Cell("", is_line=True)


def _heads(words: Words) -> tuple[Head, Head]:
    return Head(words.say("head_what")), Head(words.say("head_entry"))


def _outputs(amplifier: Amplifier, words: Words) -> str:
    return "; ".join(_output(one, words) for one in amplifier.outputs)


def _output(output: Output, words: Words) -> str:
    volts = show_typed(output.line_v, "v", manner=words.manner)
    if output.max_w is None:
        return words.say("output_volts", output=output.name, volts=volts)
    watts = show_typed(output.max_w, "w", manner=words.manner)
    return words.say("output", output=output.name, volts=volts, watts=watts)
