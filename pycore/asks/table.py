"""The asks in one table: each has a body, an answer, and the function between them."""

from collections.abc import Callable
from typing import Any, NamedTuple

from pydantic import BaseModel

from pycore.asks import (
    answers,
    cabling,
    carrying,
    comparing,
    diagnosing,
    distancing,
    drawing,
    editing,
    expected_working,
    expecting,
    explain,
    first_testing,
    keeping,
    linking,
    meter_answers,
    meter_bodies,
    papering,
    point_numbers,
    preview,
    qr,
    record_answers,
    recording,
    requests,
    see,
    share_working,
    stock,
    swaps,
    tally,
    what_if,
)
from pycore.ground.units import Manner


class Ask(NamedTuple):
    """What an ask takes (a model), what it answers (a typed dictionary), and who answers."""

    body: type[BaseModel]
    answer: Any
    answered_by: Callable[[Any, Manner], Any]


ASKS: dict[str, Ask] = {
    "version": Ask(requests.NothingBody, stock.VersionAnswer, stock.version),
    "catalogue": Ask(requests.NothingBody, stock.CatalogueAnswer, stock.catalogue),
    "start": Ask(requests.StartBody, answers.SeenJob, editing.start),
    "findings": Ask(requests.JobBody, answers.Seen, see.findings),
    "edit": Ask(requests.EditBody, answers.SeenJob, editing.edit),
    "preview": Ask(requests.PreviewBody, preview.PreviewAnswer, preview.preview),
    "swaps": Ask(swaps.SwapsBody, swaps.SwapsAnswer, swaps.swaps),
    "drawing": Ask(drawing.DrawingBody, drawing.DrawingAnswer, drawing.drawing),
    "point_numbers": Ask(
        point_numbers.PointBody, point_numbers.PointNumbers, point_numbers.point_numbers
    ),
    "choose_cable": Ask(cabling.CableBody, cabling.CableAnswer, cabling.choose),
    "longest_run": Ask(cabling.ZoneBody, cabling.LongestAnswer, cabling.longest),
    "what_if": Ask(what_if.WhatIfBody, what_if.WhatIfAnswer, what_if.what_if),
    "diagnose": Ask(
        meter_bodies.DiagnoseBody, meter_answers.DiagnoseAnswer, diagnosing.diagnose_line
    ),
    "expected": Ask(meter_bodies.ExpectedBody, meter_answers.ExpectedAnswer, expecting.expected),
    "expected_working": Ask(
        meter_bodies.ExpectedWorkingBody, answers.WorkingAnswer, expected_working.expected_working
    ),
    "complaint": Ask(
        meter_bodies.ComplaintBody, meter_answers.ComplaintsAnswer, expecting.complaint
    ),
    "first_test": Ask(
        meter_bodies.FirstTestBody, record_answers.FirstTestAnswer, first_testing.first_test
    ),
    "records": Ask(meter_bodies.RecordsBody, record_answers.RecordsAnswer, recording.records),
    "sheet": Ask(papering.SheetBody, papering.SheetAnswer, papering.sheet),
    "share_working": Ask(
        meter_bodies.ShareWorkingBody, answers.WorkingAnswer, share_working.share_working
    ),
    "distance": Ask(
        meter_bodies.DistanceBody, record_answers.MeasuredDistance, distancing.distance
    ),
    "working": Ask(requests.WorkingBody, answers.WorkingAnswer, explain.working),
    "tally": Ask(requests.TallyBody, tally.TallyAnswer, tally.tally),
    "save": Ask(requests.JobBody, keeping.SavedAnswer, keeping.save),
    "open_saved": Ask(requests.SavedBody, answers.SeenJob, keeping.open_saved),
    "save_all": Ask(carrying.JobsBody, keeping.SavedAnswer, keeping.save_all),
    "open_all": Ask(carrying.TextBody, keeping.OpenedJobs, keeping.open_all),
    "write_link": Ask(linking.LinkBody, linking.LinkAnswer, linking.write_job_link),
    "read_link": Ask(carrying.TextBody, linking.LinkedJob, linking.read_job_link),
    "prints": Ask(carrying.JobsBody, linking.PrintsAnswer, linking.prints),
    "qr": Ask(carrying.TextBody, qr.CodeAnswer, qr.qr),
    "compare": Ask(carrying.CompareBody, comparing.CompareAnswer, comparing.compare_jobs),
    "merge": Ask(carrying.MergeBody, comparing.MergeAnswer, comparing.merge_jobs),
}
