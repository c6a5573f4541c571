"""Requests that take much: long searches, large answers. What they hold stays within the description."""

import datetime
import json

from programs import ROOT

SIZING, PLAN, BATCH = "/v1/loop-sizing", "/v1/installation-plan", "/v1/installation-plan/batch"
SCHEMAS = json.loads((ROOT / "openapi" / "openapi.json").read_text())["components"]["schemas"]
ROLES, VEHICLES = SCHEMAS["Role"]["enum"], SCHEMAS["VehicleClass"]["enum"]
# The days before the work begins are in the weather too.
BEGIN = datetime.datetime(2026, 1, 20, 7)
START = "2026-01-20T12:00:00-05:00"
USUAL_ROLES, USUAL_VEHICLES = ["exit", "obstruction_outside", "obstruction_inside"], ["passenger_car", "high_bed_truck"]


def sizing():
    """All roles and vehicles, the finest step, and as many items of stock as a request may name, nearly all of which would fit."""
    stock = [{"sku": f"TIB-{index}", "along_travel": f"{6 + index % 10 / 2} ft", "across_lane": f"{8 + index // 10 % 13} ft",
              "lead_in_length": "100 ft"} for index in range(SCHEMAS["LoopSizingRequest"]["properties"]["stock"]["maxItems"])]
    return json.dumps({"opening": {"width": "24 ft", "barrier": "slide_gate"}, "roles": ROLES, "vehicles": VEHICLES,
                       "detector": {"threshold_percent": 0.001}, "stock": stock}).encode()


def hours(count=SCHEMAS["Weather"]["properties"]["conditions"]["maxItems"]):
    """So many cold hours on the coast."""
    return {"conditions": [{"time": (BEGIN + datetime.timedelta(hours=hour)).strftime("%Y-%m-%dT%H:%M:%S-05:00"),
                            "air": f"{hour % 24 % 11 - 4} °C", "relative_humidity_percent": 70 + hour % 20,
                            "precipitation_probability_percent": 10} for hour in range(count)]}


def plan(roles, vehicles):
    """A plan with its drawings, that takes the weather beside it."""
    return {"opening": {"width": "24 ft", "barrier": "slide_gate"}, "roles": roles, "vehicles": vehicles, "start": START,
            "include": ["drawings"]}


def batch(plans, **shared):
    """A batch of these plans, and what they share."""
    return json.dumps({"items": [{"id": f"plan-{index}", "request": plan} for index, plan in enumerate(plans)], **shared}).encode()
