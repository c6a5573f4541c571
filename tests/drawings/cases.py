"""The drawings that the render test asks for: every barrier, every role, both systems, narrow and wide, long labels."""

BARRIERS = ["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"]
ROLES = ["exit", "obstruction_outside", "obstruction_inside", "between_leaves", "arming", "closing", "presence"]
WIDTHS = ["3 ft", "3.5 m", "16 ft", "7.2 m", "23 ft 7 in", "40 ft", "60 ft", "18.3 m"]
VEHICLES = ["passenger_car", "pickup", "high_bed_truck", "tractor_trailer", "small_motorcycle", "large_motorcycle", "bicycle"]
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
        for vehicle in VEHICLES:
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


DRAWINGS = {"plan": plans, "response-profile": profiles}
