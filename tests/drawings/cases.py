"""The drawings that the render test asks for: every barrier, every role, both systems, narrow and wide, long labels."""

import datetime
import math

BARRIERS = ["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"]
ROLES = ["exit", "obstruction_outside", "obstruction_inside", "between_leaves", "arming", "closing", "presence"]
WIDTHS = ["3 ft", "3.5 m", "16 ft", "7.2 m", "40 ft", "18.3 m"]
VEHICLES = ["passenger_car", "pickup", "high_bed_truck", "tractor_trailer", "small_motorcycle", "large_motorcycle", "bicycle"]
# Ways of pairs to the unit: past the edge, short of it, with a home run, each apart.
WAYS = {
    "all in the slab": {"length": "90 ft", "in_slot": "90 ft"},
    "past the edge": {"length": "90 ft", "in_slot": "60 ft"},
    "short of the edge": {"length": "90 ft", "in_slot": "1 ft"},
    "home run": {"length": "500 ft", "gauge": "18 AWG"},
    "loose pairs": {"length": "90 ft", "pair": "loose"},
}
HOSTILE = "<script>alert(1)</script>&\"'\u0007\u202e" + "W" * 20


def plans():
    """Names and loop-sizing requests."""
    for barrier in BARRIERS:
        for width in WIDTHS:
            yield f"{barrier} {width}", {"opening": {"width": width, "barrier": barrier}}
        for width in ["3 ft", "7.2 m", "60 ft"]:
            yield f"{barrier} {width} all roles", {
                "opening": {"width": width, "barrier": barrier}, "roles": ROLES, "vehicles": VEHICLES,
            }
    for role in ROLES:
        for width in ["12 ft", "10 m"]:
            yield f"{role} alone {width}", {"opening": {"width": width, "barrier": "swing_gate_pair"}, "roles": [role]}
            yield f"{role} in a lane {width}", {"opening": {"width": width, "barrier": "none"}, "roles": [role]}
    for width in ["120 ft", "200 ft", "60.9 m"]:
        yield f"widest {width}", {"opening": {"width": width, "barrier": "slide_gate"}}
    for count, vehicles in enumerate([["high_bed_truck"], ["tractor_trailer", "bicycle"], ["small_motorcycle"]]):
        for width in ["30 ft", "14 m"]:
            yield f"rows {count} {width}", {"opening": {"width": width, "barrier": "slide_gate"}, "vehicles": vehicles}
    for name, lead_in in WAYS.items():
        yield f"way {name}", {"opening": {"width": "24 ft", "barrier": "slide_gate"}, "lead_in": lead_in}
        yield f"way of rows {name}", {
            "opening": {"width": "14 m", "barrier": "slide_gate", "unit_side": "left"}, "lead_in": lead_in, "vehicles": ["small_motorcycle"],
        }
    yield "exit far away", {
        "opening": {"width": "24 ft", "barrier": "slide_gate", "approach_speed": "30 mph", "opening_time": "12 s"},
    }
    yield "exit at the end of the world", {
        "opening": {"width": "3 m", "barrier": "swing_gate", "approach_speed": "95 km/h", "opening_time": "120 s"},
    }
    yield "everything in the way", {
        "opening": {"width": "24 ft", "barrier": "slide_gate"}, "surface": "existing_concrete",
        "site_hazards": ["reinforcing_mesh", "post_tensioned_slab", "bridge_deck", "snow_melt_cable", "snow_melt_pipe",
                         "overhead_power_line", "buried_power_line", "adjacent_traffic", "freezing_climate",
                         "pavement_joint", "cracked_pavement", "old_loop_cut"],
        "lead_in": {"length": "3000 ft"}, "roles": ["closing", "exit"],
    }
    for surface in ["gravel", "pavers"]:
        yield f"buried in {surface}", {"opening": {"width": "5 m", "barrier": "swing_gate"}, "surface": surface}
    yield "from stock, with a hostile number", {
        "opening": {"width": "7.2 m", "barrier": "slide_gate"},
        "stock": [{"sku": HOSTILE, "along_travel": "1.8 m", "across_lane": "6 m", "lead_in_length": "60 m"}],
    }


def profiles():
    """Names and vehicle-response requests."""
    loops = {
        "test loop": {"along_travel": "6 ft", "across_lane": "6 ft", "turns": 3, "corner_cut": "12 in"},
        "yard gate": {"along_travel": "1.8 m", "across_lane": "6 m", "turns": 2},
        "longest": {"along_travel": "100 ft", "across_lane": "6 ft", "turns": 2},
        "shortest": {"along_travel": "0.6 m", "across_lane": "1.5 m", "turns": 5},
        "quadrupole": {"shape": "quadrupole", "along_travel": "1.8 m", "across_lane": "2.4 m", "turns": 2},
    }
    for name, coil in loops.items():
        for vehicle in VEHICLES if name == "test loop" else VEHICLES[::3]:
            yield f"{vehicle} over {name}", {"loop": coil, "lead_in": {"length": "50 ft"}, "vehicle": vehicle}
    coil = loops["test loop"]
    for threshold in [0.001, 0.3, 3.0, 50]:
        yield f"threshold {threshold}", {
            "loop": coil, "lead_in": {"length": "30 m"}, "vehicle": "tractor_trailer", "threshold_percent": threshold,
        }
    for positions in [2, 201]:
        yield f"{positions} positions", {
            "loop": coil, "lead_in": {"length": "30 m"}, "vehicle": "passenger_car", "positions": positions,
        }
    plate = {"width": "4 m", "length": "16 m", "effective_height": "6 ft"}
    yield "a plate", {"loop": loops["shortest"], "lead_in": {"length": "0 ft"}, "plate": plate, "offset_across": "-3 ft"}


def sections():
    """Names and material-estimate requests."""
    us = {"along_travel": "6 ft", "across_lane": "20 ft", "turns": 3}
    metric = {"along_travel": "1.8 m", "across_lane": "2.4 m", "turns": 4}
    jacketed = {**us, "wire": {"over_jacket": "1/4 in"}}
    lead_in = {"length": "15 m"}

    def job(coil, **more):
        place = {key: more.pop(key) for key in ("construction", "slot", "quantity", "label", "lead_in") if key in more}
        return {"loops": [{"label": "drive", "loop": coil, "lead_in": lead_in, **place}], **more}

    yield "usual", job(us)
    yield "metric", job(metric, sealant={"kind": "two_part_reactive", "finish_below_surface": "3 mm"})
    yield "jacketed", job(jacketed, construction="preformed_saw_cut", slot={"width": "3/8 in"})
    yield "jacket not given", job(metric, construction="preformed_saw_cut")
    for form in ["continuous", "none"]:
        yield f"rod {form}", job(us, backer_rod={"form": form}, slot={"width": "1/4 in"})
    for width in ["1/16 in", "1/8 in", "1/2 in", "2 in"]:
        yield f"slot {width}", job(us, slot={"width": width})
    yield "slot too shallow", job({**us, "turns": 7}, slot={"depth": "1/2 in", "cover": "1/4 in"})
    yield "widest and shallowest", job({**us, "turns": 1}, slot={"width": "2 in", "depth": "1/4 in", "cover": "0 in"})
    yield "deepest", job(us, slot={"width": "3/16 in", "depth": "12 in", "cover": "11 in"})
    yield "quadrupole", job({**metric, "shape": "quadrupole", "turns": 2})
    for name, slab in {
        "thick": {"thickness": "12 in", "reinforcement_depth": "3 in"},
        "near": {"thickness": "50 mm", "reinforcement_depth": "45 mm"},
        "cut through": {"thickness": "1-1/4 in", "reinforcement_depth": "1 in"},
        "deep steel": {"thickness": "300 mm", "reinforcement_depth": "200 mm"},
    }.items():
        yield f"slab {name}", job(us if "in" in slab["thickness"] else metric, slab=slab, surface="existing_concrete")
    for surface in ["gravel", "new_concrete"]:
        yield f"buried in {surface}", job(metric if surface == "gravel" else jacketed, surface=surface)
    yield "buried in new asphalt, jacket not given", job(us, surface="new_asphalt", slab={"thickness": "4 in"})
    shared = {"length": "15 m", "in_slot": "6 m", "in_shared_slot": "5 m"}
    for count in [2, 12]:
        yield f"{count} pairs in one slot", job(us, lead_in=shared, quantity=count)
        yield f"{count} jacketed pairs in one slot", job(jacketed, construction="preformed_saw_cut", lead_in=shared, quantity=count)
    yield "several", {
        "loops": [
            {"label": "exit", "loop": us, "quantity": 2}, {"label": "inside", "loop": us},
            {"label": "W" * 64, "loop": us}, {"label": HOSTILE[:60], "loop": us, "lead_in": {"length": "0 ft"}},
            {"label": "window", "loop": jacketed, "construction": "preformed_saw_cut", "slot": {"width": "1/4 in"}},
            {"label": "kerb", "loop": jacketed, "construction": "preformed_direct_burial"},
        ],
        "lead_in_slot": {"width": "1/4 in", "depth": "3 in"}, "surface": "existing_concrete",
    }


def timelines():
    """Names and cure-guidance requests."""
    def hours(count, air, step=1, day=20, hour=0, **more):
        def row(index):
            at = datetime.datetime(2026, 1, day, hour) + datetime.timedelta(hours=index * step)
            swing = math.sin((at.hour - 9) * math.pi / 12)
            degrees, unit = air
            words = f"{round(degrees + (9 if unit == 'F' else 5) * swing, 1)} °{unit}"
            row = {"time": at.isoformat() + "-05:00", "air": words, "relative_humidity_percent": round(75 - 15 * swing)}
            return {**row, **{key: value(at) if callable(value) else value for key, value in more.items()}}
        return {"conditions": [row(index) for index in range(count)]}

    def job(weather, kind="one_part_moisture_cure", start="2026-01-20T12:00:00-05:00", **more):
        return {"sealant": {"kind": kind}, "start": start, "weather": weather, **more}

    shower = {"precipitation_probability_percent": lambda at: 70 if at.hour in (3, 4) else 30 if at.hour in (2, 5, 15) else 5}
    for kind in ["one_part_moisture_cure", "two_part_reactive", "hot_applied"]:
        yield f"{kind} mild", job(hours(48, (15, "C"), **shower), kind, surface_condition="dry")
        yield f"{kind} cold", job(hours(30, (36, "F"), **shower), kind, surface_condition="damp")
    yield "14 days", job(hours(336, (8, "C"), day=10, **shower), start="2026-01-10T05:00:00-05:00")
    yield "14 days with few rows", job(hours(112, (50, "F"), step=3, day=20, hour=21, **shower), start="2026-01-20T22:30:00-05:00")
    yield "a week, measured", job(hours(168, (60, "F"), surface="64 °F"), surface_condition="dry")
    yield "an hour", job(hours(1, (70, "F"), hour=12, surface="70 °F", precipitation_probability_percent=0), "two_part_reactive")
    yield "some hours", job(
        hours(9, (41, "F"), hour=8, surface=lambda at: "44 °F"), "two_part_reactive", surface_condition="dry",
        needed_open_by="2026-01-20T12:10:00-05:00",
    )
    yield "deadline at the end", job(hours(24, (12, "C"), hour=12), needed_open_by="2026-01-21T12:00:00-05:00")
    yield "very cold", job(hours(72, (-25, "C"), **shower))
    yield "very hot", {
        **job(hours(72, (104, "F"), surface="140 °F"), surface_condition="dry"),
        "sealant": {"kind": "two_part_reactive", "made_on": "2025-12-01",
                    "data_sheet": {"minimum_application_temperature": "40 °F", "maximum_application_temperature": "100 °F"}},
    }
    dry = {"surface": lambda at: "75 °F", "precipitation_probability_percent": lambda at: 95 if 6 <= at.hour < 8 and at.day == 20 else 5}
    yield "after rain", job(hours(36, (70, "F"), **dry), "two_part_reactive", start="2026-01-20T09:00:00-05:00", work_duration="67 min")
    yield "damp, once dry", job(hours(36, (70, "F"), surface="75 °F"), "two_part_reactive", surface_condition="damp")
    yield "sets too fast by day", job(
        hours(48, (95, "F"), relative_humidity_percent=35, surface=lambda at: "143 °F" if 10 <= at.hour < 19 else "85 °F"), "two_part_reactive",
        surface_condition="dry", work_duration="3 h",
    )
    yield "wet through", job(hours(60, (2, "C"), relative_humidity_percent=100, precipitation="2 mm"), surface_condition="wet")


def candidates():
    """Names and existing-loop requests."""
    us = {"along_travel": "6 ft", "across_lane": "8 ft", "lead_in": {"length": "50 ft"}}
    sound = {"inductance_uh": 104, "resistance_ohm": 0.47, "insulation_megohm": 300}
    yield "outline alone", {"along_travel": "1.8 m", "across_lane": "3 m"}
    yield "sound", {**us, "readings": sound, "over_steel": False}
    yield "between counts", {**us, "readings": {**sound, "inductance_uh": 131}, "size_uncertainty": "40 %"}
    yield "over steel", {**us, "readings": sound, "reinforcement": {"depth_below_loop": "2 in"}, "role": "obstruction_inside"}
    yield "bad joint", {**us, "readings": {**sound, "resistance_ohm": 12}}
    yield "open and earthed", {**us, "readings": {"resistance_over_range": True, "insulation_megohm": 0.01}, "vehicles": ["bicycle", "bus", "tractor_trailer"]}
    yield "at the tails", {**us, "readings": {**sound, "taken_at": "loop_end"}, "detector": {"inductance_min_uh": 150}, "role": "exit"}


DRAWINGS = {"plan": plans, "response-profile": profiles, "slot-section": sections, "cure-timeline": timelines, "turn-candidates": candidates}

# Those that are shown in pages: one of each kind, rows of loops, and those that stop the job.
IN_PAGES = [
    ("plan", "slide_gate 16 ft"), ("plan", "rows 1 14 m"), ("response-profile", "passenger_car over test loop"), ("slot-section", "usual"),
    ("cure-timeline", "one_part_moisture_cure mild"), ("turn-candidates", "sound"),
]
