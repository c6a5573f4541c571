"""An estimator's script on the generated Python client. It runs against the instance at INSTANCE, and every kept request of the
folder EXAMPLES must come back, through the generated models, as its kept answer. `clients` generates the client and runs this."""

import json
import os
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parent / "generated"))
from loopwright import Client, models
from loopwright.api.calculations import (assess_existing_loop, characterize_loop, check_detector, estimate_materials, find_fault,
                                         guide_cure, plan_installation, plan_installations, respond_to_vehicle, size_loops, summarize_loops,
                                         summarize_plan)
from loopwright.api.drawings import draw_plan, export_bill, link_plan, print_job_sheet
from loopwright.api.reference import list_barriers
from loopwright.api.service import check_live, check_ready, read_metrics, read_problem_page
from loopwright.types import UNSET, File

EXAMPLES = pathlib.Path(os.environ["EXAMPLES"])
CALCULATIONS = {
    "loop-characteristics": (characterize_loop, models.LoopCharacteristicsRequest),
    "vehicle-response": (respond_to_vehicle, models.VehicleResponseRequest),
    "loop-sizing": (size_loops, models.LoopSizingRequest),
    "detector-compatibility": (check_detector, models.DetectorCompatibilityRequest),
    "material-estimate": (estimate_materials, models.MaterialEstimateRequest),
    "cure-guidance": (guide_cure, models.CureGuidanceRequest),
    "existing-loop": (assess_existing_loop, models.ExistingLoopRequest),
    "fault-finding": (find_fault, models.FaultFindingRequest),
    "installation-plan": (plan_installation, models.InstallationPlanRequest),
}
SUMMARIES = {"loop-sizing": summarize_loops, "installation-plan": summarize_plan}
# An answer that the description does not have is an error of its own.
CLIENT = Client(base_url=os.environ["INSTANCE"], raise_on_unexpected_status=True)
calls = 0


def kept(name):
    return json.loads((EXAMPLES / f"{name}.json").read_text())


def same(what, one, other):
    if one != other:
        raise SystemExit(f"consumer.py: {what}: {one!r} is not {other!r}")


def ask(operation, kind, status=200, **arguments):
    """The parsed answer of an operation, which must have this status and type."""
    global calls
    calls += 1
    answer = operation.sync_detailed(client=CLIENT, **arguments)
    same(f"the status of {operation.__name__}", (answer.status_code, type(answer.parsed)), (status, kind))
    return answer.parsed


def text(document):
    """What is in a drawing, a page or a table, which come as files of bytes."""
    return document.payload.read().decode()


def differences(one, other, place="#"):
    """The places where two JSON values differ."""
    if isinstance(one, dict) and isinstance(other, dict):
        for name in one.keys() | other.keys():
            yield from differences(one.get(name), other.get(name), f"{place}/{name}")
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        for index, (left, right) in enumerate(zip(one, other)):
            yield from differences(left, right, f"{place}/{index}")
    elif one != other:
        yield f"{place} is {one!r} instead of {other!r}"


def calculations():
    folders = sorted(folder.name for folder in EXAMPLES.iterdir())
    same("the calculations with examples", folders, sorted(CALCULATIONS))
    for name, (operation, request) in CALCULATIONS.items():
        compare(name, operation, request, getattr(models, request.__name__.replace("Request", "Report")))
        if name in SUMMARIES:
            compare(f"{name}/summary", SUMMARIES[name], request, models.JobSummary)


def compare(folder, operation, request, report):
    """Asks the kept questions of a folder."""
    files = sorted((EXAMPLES / folder).glob("*.request.json"))
    same(f"whether {folder} has examples", files != [], True)
    for file in files:
        example = f"{folder}/{file.name.removesuffix('.request.json')}"
        answer = ask(operation, report, body=request.from_dict(kept(f"{example}.request")))
        same(example, list(differences(answer.to_dict(), kept(f"{example}.answer"))), [])


def typed_fields():
    body = models.LoopSizingRequest(opening=models.Opening(width="24 ft", barrier=models.Barrier.SLIDE_GATE))
    sized = ask(size_loops, models.LoopSizingReport, body=body)
    first = sized.loops[0]
    # The numbers of the README's first question.
    same("a loop", (first.role, first.along_travel.ft, first.across_lane.ft, first.turns), ("exit", 6.0, 20.0, 2))
    same("its inductance", first.electrical.terminal_inductance_uh, 94.21)
    coil = models.LoopCharacteristicsRequest.from_dict(kept("loop-characteristics/standard_test_loop.request"))
    measured = ask(characterize_loop, models.LoopCharacteristicsReport, body=coil)
    wanted = kept("loop-characteristics/standard_test_loop.answer")
    same("the wire", measured.wire_length.m, wanted["wire_length"]["m"])


def refusals():
    body = models.LoopSizingRequest.from_dict(
        {"opening": {"width": "7,200 mm", "barrier": "slide_gate"}, "lead_in": {"length": "50"}})
    for operation in (size_loops, draw_plan):
        problem = ask(operation, models.Problem, 422, body=body)
        same("the problem", (problem.status, problem.code), (422, "validation_failed"))
        same("its faults", {fault.pointer: fault.code for fault in problem.errors},
             {"#/opening/width": "decimal_comma", "#/lead_in/length": "unit_missing"})
        same("its hint", problem.errors[0].hint, 'Write "7200 mm", without a separator.')


def batch():
    plan = models.InstallationPlanRequest.from_dict(kept("installation-plan/cafe_drive_through.request"))
    short = models.InstallationPlanRequest.from_dict({"opening": {"width": "1 mm", "barrier": "slide_gate"}})
    items = [models.PlanBatchItem(id="cafe", request=plan), models.PlanBatchItem(id="short", request=short)]
    report = ask(plan_installations, models.PlanBatchReport, body=models.PlanBatchRequest(items=items))
    same("the count", (report.succeeded, report.failed), (1, 1))
    good, bad = report.results
    same("the plan", good.report.to_dict(), kept("installation-plan/cafe_drive_through.answer"))
    same("its problem", good.problem, UNSET)
    same("the other's place", bad.problem.errors[0].pointer, "#/items/1/request/opening/width")


def pages():
    sizing = models.LoopSizingRequest.from_dict(kept("loop-sizing/yard_gate.request"))
    drawing = text(ask(draw_plan, File, body=sizing))
    same("a drawing", (drawing[:5], drawing.rstrip()[-6:]), ("<svg ", "</svg>"))
    link = text(ask(link_plan, File, width="24 ft", barrier=models.Barrier.SLIDE_GATE))
    same("a drawing by its address", (link[:5], link.rstrip()[-6:]), ("<svg ", "</svg>"))
    plan = models.InstallationPlanRequest.from_dict(kept("installation-plan/yard_gate_in_january.request"))
    same("a sheet", text(ask(print_job_sheet, File, body=plan))[:15].lower(), "<!doctype html>")
    same("a bill", text(ask(export_bill, File, body=plan)).count("\n") > 10, True)


def tables():
    answer = list_barriers.sync_detailed(client=CLIENT)
    gate = next(row for row in answer.parsed.rows if row.code == "slide_gate")
    same("a sliding gate", (gate.has_metal_leaf, type(gate.label)), (True, str))
    ask(list_barriers, type(None), 304, if_none_match=answer.headers["etag"])
    ask(list_barriers, models.BarriersTable, if_none_match='"of another release"')


def service():
    same("the instance", ask(check_live, models.CheckLiveResponse200).to_dict(), {"status": "live"})
    same("the instance", ask(check_ready, models.CheckReadyResponse200).to_dict(), {"status": "ready"})
    same("the end of the metrics", text(ask(read_metrics, File))[-6:], "# EOF\n")
    page = text(ask(read_problem_page, File, slug=models.ReadProblemPageSlug.VALIDATION_FAILED))
    same("a page", "<html" in page, True)


for part in (calculations, typed_fields, refusals, batch, pages, tables, service):
    part()
print(f"consumer.py: {calls} calls are answered as the models and the kept answers say")
