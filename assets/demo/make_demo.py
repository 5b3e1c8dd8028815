#!/usr/bin/env python3
"""Writes the demo surveys of Quillwater Frozen Foods, Plant 2, an invented site.

    python3 make_demo.py        writes the three files beside this script
    python3 make_demo.py --check   fails if a committed file differs

Each reading is given twice, as it was read with a metric tape and with an inch tape; the two surveys hold the values of the tape,
so they differ by its fractions. half-read.json is the metric survey with three readings missing.
"""

import copy
import json
import pathlib
import sys
from fractions import Fraction

HERE = pathlib.Path(__file__).parent

# --- units: whole numbers of the file's unit, exact before rounding --------------------------------------------------------
LENGTH = {"mm": Fraction(10**6), "m": Fraction(10**9), "in": Fraction(25_400_000), "ft": Fraction(304_800_000)}
MASS = {"kg": Fraction(1000), "lb": Fraction("453.59237")}
DURATION = {"s": Fraction(1000), "min": Fraction(60_000), "h": Fraction(3_600_000), "d": Fraction(86_400_000)}
SPEED = {"m/s": Fraction(10**6), "mph": Fraction(447_040), "km/h": Fraction(10**6) / Fraction("3.6")}


def number(text):
    """'5 1/2' and '0.75' alike."""
    return sum((Fraction(word) for word in text.split()), Fraction(0))


def whole(value):
    return int(value + Fraction(1, 2)) if value >= 0 else -int(-value + Fraction(1, 2))


def scaled(text, units):
    amount, _, unit = text.rpartition(" ")
    return whole(number(amount) * units[unit])


def kelvin(text):
    amount, _, unit = text.rpartition(" ")
    celsius = number(amount) if unit == "°C" else (number(amount) - 32) * Fraction(5, 9)
    return whole((celsius + Fraction("273.15")) * 1000)


def kelvin_step(text):
    amount, _, unit = text.rpartition(" ")
    return whole(number(amount) * 1000 * (1 if unit == "°C" else Fraction(5, 9)))


class Both:
    """A member that differs between the two surveys."""

    def __init__(self, si, us):
        self.si, self.us = si, us


def reading(key, texts, convert, tolerances, convert_tolerance, methods, known):
    rows = []
    for text, tolerance, method in zip(texts, tolerances, methods):
        row = {f"value_{key}": convert(text), f"tolerance_{key}": convert_tolerance(tolerance), "as_entered": text, "known": known}
        if method:
            row["method"] = method
        rows.append(row)
    return Both(*rows)


def how(known, measured_with):
    """The method beside a reading: the instrument, or nothing where there was none."""
    return measured_with if known == "measured" else ("", "")


def length(si, us, known="measured", tol=None):
    long = scaled(si, LENGTH) > 500_000_000
    usual = {"measured": ("10 mm", "1/2 in") if long else ("1 mm", "1/16 in"), "by_eye": ("50 mm", "2 in") if long else ("5 mm", "1/4 in"),
             "told": ("50 mm", "2 in") if long else ("3 mm", "1/8 in"), "copied": ("1 mm", "1/16 in")}
    convert = lambda text: scaled(text, LENGTH)
    return reading("nm", (si, us), convert, tol or usual[known], convert, how(known, ("tape 1 mm", "tape 1/16 in")), known)


def mass(si, us, known="measured", tol=None):
    convert = lambda text: scaled(text, MASS)
    return reading("g", (si, us), convert, tol or {"measured": ("2 kg", "5 lb")}.get(known, ("10 kg", "20 lb")), convert,
                   how(known, ("floor scale 1 kg", "floor scale 2 lb")), known)


def temperature(si, us, known="measured", tol=("1 °C", "2 °F")):
    return reading("millikelvin", (si, us), kelvin, tol, kelvin_step, how(known, ("probe", "probe")), known)


def duration(text, known="told", tol="0 min"):
    convert = lambda value: scaled(value, DURATION)
    return reading("ms", (text, text), convert, (tol, tol), convert, ("", ""), known)


def speed(si, us, known="measured", tol=("0.1 m/s", "0.2 mph")):
    convert = lambda text: scaled(text, SPEED)
    return reading("um_per_s", (si, us), convert, tol, convert, how(known, ("stopwatch over 10 m", "stopwatch over 30 ft")), known)


def plain(key, value, tolerance, text, known):
    row = {f"value_{key}": whole(value), f"tolerance_{key}": whole(tolerance), "as_entered": text, "known": known}
    return Both(row, row)


def slope(text, known="measured", tolerance="0.005"):
    value = Fraction(1, int(text[2:])) if text.startswith("1:") else Fraction(text.lstrip("-").rstrip(" %")) / 100
    row = plain("ppm", value * 10**6, Fraction(tolerance) * 10**6, text, known)
    if known == "measured":
        row = Both(*({**each, "method": "spirit level"} for each in (row.si, row.us)))
    return row


def share(text, tolerance="0", known="told"):
    unit = Fraction(1, 100) if text.endswith("%") else Fraction(1, 10**6)
    return plain("ppm", Fraction(text.split()[0]) * unit * 10**6, Fraction(tolerance) * 10**6, text, known)


def per_day(count, tolerance=0, known="told", text=None):
    return plain("per_day_millionths", Fraction(count) * 10**6, Fraction(tolerance) * 10**6, text or f"{count} per day", known)


def count(value, tolerance="0", known="told"):
    return plain("thousandths", Fraction(value) * 1000, Fraction(tolerance) * 1000, value, known)


def choice(value, known="measured"):
    return {"value": value, "known": known}


# --- rooms -----------------------------------------------------------------------------------------------------------------
def room(id, name, air, humidity, movement, wetness, floor, hygiene, notes=""):
    row = {"id": id, "name": name, "air": air, "humidity": humidity, "air_movement": choice(movement), "wetness": choice(wetness),
           "floor": choice(floor), "hygiene": choice(hygiene, "told"), "cleanroom_class": choice(0, "told")}
    if notes:
        row["notes"] = notes
    return row


ROOMS = [
    room("blast", "Blast freezer", temperature("-32 °C", "-25 °F"), share("85 %", "0.05"), "blast", "dry", "resin-mortar-textured",
         "non_food", "Fans run all the time. Racks stand here loaded for hours."),
    room("holding", "Holding freezer", temperature("-25 °C", "-13 °F"), share("80 %", "0.05"), "fans", "dry", "resin-mortar-textured",
         "non_food"),
    room("dock", "Dock", temperature("4 °C", "39 °F"), share("75 %", "0.1"), "natural", "damp", "concrete", "non_food"),
    room("raw", "Raw-side processing", temperature("10 °C", "50 °F"), share("90 %", "0.05"), "natural", "wet",
         "resin-mortar-textured", "splash", "Washed down every night: foam, rinse, then peracetic acid left to dry."),
    room("cook", "Cook room", temperature("35 °C", "95 °F"), share("95 %", "0.05"), "natural", "wet", "quarry-tile", "splash",
         "Steam from the cookers; the floor is rinsed at 82 °C."),
    room("pack", "Packing", temperature("16 °C", "61 °F"), share("55 %", "0.1"), "natural", "dry", "sealed-concrete", "non_food"),
    room("dry", "Dry store", temperature("18 °C", "64 °F"), share("45 %", "0.1"), "still", "dry", "sealed-concrete", "non_food"),
]

# --- crossings -------------------------------------------------------------------------------------------------------------
NONE = {"rise": length("0 mm", "0 in", tol=("0 mm", "0 in")), "gap": length("0 mm", "0 in", tol=("0 mm", "0 in")),
        "slot": length("0 mm", "0 in", tol=("0 mm", "0 in")), "lip_height": length("0 mm", "0 in", tol=("0 mm", "0 in")),
        "slope": slope("0 %", tolerance="0.002"), "slope_length": length("0 mm", "0 in", tol=("0 mm", "0 in"))}


def crossing(id, name, ends, kind, heated=False, notes="", unread=(), **readings):
    row = {"id": id, "name": name, "from": ends[0], "to": ends[1], "kind": choice(kind), "heated": heated, **NONE, **readings}
    if notes:
        row["notes"] = notes
    for member in unread:
        del row[member]
    return row


CROSSINGS = [
    crossing("blast-doorway", "Blast freezer open doorway", ("blast", "holding"), "doorway", gap=length("6 mm", "1/4 in"),
             notes="Joint between the insulated floor panels."),
    crossing("freezer-door", "Freezer sliding door, heated sill", ("holding", "dock"), "sill", heated=True,
             rise=length("19 mm", "3/4 in"), gap=length("32 mm", "1 1/4 in"), wetness=choice("dry"),
             notes="Square edge, kept dry by its heating. Racks have to be lifted over it one end at a time."),
    crossing("dock-plate", "Dock plate to packing", ("dock", "pack"), "dock_plate", slope=slope("8 %"),
             slope_length=length("1.8 m", "71 in"), gap=length("25 mm", "1 in"), rise=length("3 mm", "1/8 in")),
    crossing("dock-plate-raw", "Dock plate to the raw side", ("dock", "raw"), "dock_plate", slope=slope("6 %", "by_eye", "0.02"),
             slope_length=length("1.5 m", "59 in"), rise=length("3 mm", "1/8 in"), unread=("gap",),
             notes="A lorry stood on the plate during the visit: the gap was not read."),
    crossing("trench-drain", "Trench drain at the cook room door", ("raw", "cook"), "drain", slot=length("38 mm", "1 1/2 in"),
             rise=length("2 mm", "1/16 in"), wetness=choice("wet"), notes="The slots of the grating run along the way."),
    crossing("strip-curtain", "Strip-curtain doorway, resin lip", ("raw", "pack"), "doorway", rise=length("6 mm", "1/4 in"),
             wetness=choice("wet")),
    crossing("ramp", "Ramp to the dry store", ("pack", "dry"), "ramp", slope=slope("1:12"), slope_length=length("3 m", "118 in")),
    crossing("dry-joint", "Floor joint, level way to the dry store", ("pack", "dry"), "joint", gap=length("12 mm", "1/2 in"),
             rise=length("1 mm", "1/16 in")),
    crossing("cook-drain", "Cook room drain", ("cook", "pack"), "drain", gap=length("20 mm", "13/16 in"),
             rise=length("3 mm", "1/8 in"), lip_height=length("8 mm", "5/16 in"), lip_slope=slope("1:4", "by_eye", "0.05"),
             wetness=choice("wet")),
    crossing("goods-lift", "Goods lift", ("dry", "dock"), "joint", gap=length("32 mm", "1 1/4 in"),
             rise=length("10 mm", "3/8 in", "by_eye"), notes="The lift does not stop level; the step changes from day to day."),
    crossing("rapid-door", "Rapid door, flush sill", ("holding", "pack"), "doorway", heated=True, rise=length("3 mm", "1/8 in"),
             gap=length("10 mm", "3/8 in"), wetness=choice("frost")),
    crossing("door-rail", "Floor rail of the old freezer door", ("holding", "dock"), "rail", gap=length("35 mm", "1 3/8 in"),
             rise=length("5 mm", "3/16 in"), wetness=choice("ice")),
    crossing("cook-lip", "Cook room side door", ("cook", "raw"), "sill", rise=length("4 mm", "3/16 in", "told"),
             lip_height=length("10 mm", "3/8 in", "told"), lip_slope=slope("1:3", "told", "0.05"), wetness=choice("greasy")),
]

# --- washing ---------------------------------------------------------------------------------------------------------------
WASHINGS = [
    {"id": "foam", "name": "Nightly chlorinated alkaline foam", "agent": choice("chlorinated-alkaline-foam", "told"),
     "strength": share("1.5 %", "0.005"), "temperature": temperature("45 °C", "113 °F", "told", ("5 °C", "9 °F")),
     "contact": duration("15 min", tol="5 min"), "frequency": per_day("1"), "rinsed": choice(True, "told"), "rooms": ["raw"]},
    {"id": "peracetic", "name": "Peracetic acid after the foam", "agent": choice("peracetic-acid", "told"),
     "strength": share("180 ppm", "0.00002"), "temperature": temperature("20 °C", "68 °F", "told", ("5 °C", "9 °F")),
     "contact": duration("10 min", tol="5 min"), "frequency": per_day("1"), "rinsed": choice(False, "told"), "rooms": ["raw"]},
    {"id": "hot-rinse", "name": "Floor rinse at 82 °C", "agent": choice("hot-water"), "strength": share("100 %"),
     "temperature": temperature("82 °C", "180 °F", tol=("0 °C", "0 °F")), "contact": duration("5 min", tol="2 min"),
     "frequency": per_day("2"), "rinsed": choice(False, "told"), "rooms": ["cook"]},
    {"id": "steam", "name": "Steam from the cookers", "agent": choice("saturated-steam", "told"), "strength": share("100 %"),
     "temperature": temperature("100 °C", "212 °F", "told", ("0 °C", "0 °F")), "contact": duration("2 min", tol="1 min"),
     "frequency": per_day("4", 1), "rinsed": choice(False, "told"), "rooms": ["cook"]},
    {"id": "quat", "name": "Weekly quaternary ammonium in packing", "agent": choice("quaternary-ammonium", "told"),
     "strength": share("200 ppm"), "temperature": temperature("25 °C", "77 °F", "told", ("5 °C", "9 °F")),
     "contact": duration("10 min"), "frequency": per_day(Fraction(1, 7), text="once a week"), "rinsed": choice(True, "told"),
     "rooms": ["pack", "dock"]},
]


# --- carts -----------------------------------------------------------------------------------------------------------------
def castors(base, track, functions):
    """Rear left, rear right, front left, front right, in millimetres; functions in that order."""
    places = [(0, track / 2), (0, -track / 2), (base, track / 2), (base, -track / 2)]
    return [{"forward_nm": round(forward * 10**6), "across_nm": round(across * 10**6), "function": function}
            for (forward, across), function in zip(places, functions)]


def stop(room_id, stay, leaves_by, loaded=True):
    row = {"room": room_id, "stay": duration(stay), "loaded": loaded}
    if leaves_by:
        row["leaves_by"] = leaves_by
    return row


def damage(kind, note, size=None):
    return {"kind": kind, "note": note, **({"size": size} if size else {})}


def present(wheel, bearing, rig):
    return {"present_wheel": choice(wheel, "by_eye"), "present_bearing": choice(bearing, "by_eye"), "present_rig": choice(rig, "by_eye")}


def hand(people, push_rate, push_distance, trips):
    return {"moved_by": choice("hand"), "people": count(people), "push_rate": push_rate, "push_distance": push_distance,
            "trips_per_day": trips}


CALLIPER = ("0.2 mm", "1/64 in")
RIGID_REAR = ["rigid", "rigid", "swivel", "swivel"]
ALL_SWIVEL = ["swivel"] * 4

CARTS = [
    {"id": "tray-rack", "name": "Tray rack", "tare": mass("70 kg", "154 lb"), "payload": mass("240 kg", "529 lb"),
     "castors": castors(700, 480, RIGID_REAR), "sharing": choice("all_but_one"), "length": length("800 mm", "31 1/2 in"),
     "width": length("580 mm", "22 7/8 in"), "cg_forward_loaded": length("350 mm", "13 3/4 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_forward_empty": length("350 mm", "13 3/4 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_height_loaded": length("720 mm", "28 3/8 in", "by_eye"), "cg_height_empty": length("720 mm", "28 3/8 in", "by_eye"),
     "handle_height": length("1050 mm", "41 1/2 in"), "speed": speed("0.85 m/s", "1.9 mph", tol=("0.05 m/s", "0.1 mph")), "parked_loaded": duration("8 h"),
     **hand("1", per_day(24), length("20 m", "66 ft", "by_eye", ("4 m", "13 ft")), count("4")),
     "route": [stop("blast", "240 min", "blast-doorway"), stop("holding", "30 min", "freezer-door"),
               stop("dock", "20 min", "freezer-door", False), stop("holding", "5 min", "blast-doorway", False)],
     "fork_width": length("62 mm", "2 7/16 in", tol=CALLIPER), "axle_diameter": length("12.7 mm", "1/2 in", tol=CALLIPER),
     "overall_height_limit": length("255 mm", "10 in"), "plate_pattern": choice("plate-4x4.5in"),
     "static_ask": choice("none", "told"), "non_marking": choice(False, "told"),
     **present("nylon-5x2in", "plain-acetal-heavy-inch", "swivel-zinc-5in-heavy"),
     "damage": [damage("shattered_rim", "Two of four wheels broken at the rim, both leading.", length("30 mm", "1 3/16 in")),
                damage("chunks", "Pieces out of the running face, sharp edges.", length("8 mm", "5/16 in"))],
     "notes": "The complaint that brought the call: wheels break at the freezer door."},
    {"id": "tub-dolly", "name": "Meat tub dolly", "tare": mass("45 kg", "99 lb"), "payload": mass("180 kg", "397 lb"),
     "castors": castors(560, 560, ALL_SWIVEL), "sharing": choice("all_but_one"), "length": length("700 mm", "27 1/2 in"),
     "width": length("700 mm", "27 1/2 in"), "cg_forward_loaded": length("280 mm", "11 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_forward_empty": length("280 mm", "11 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_height_loaded": length("480 mm", "18 7/8 in", "by_eye", ("30 mm", "1 in")),
     "cg_height_empty": length("350 mm", "13 3/4 in", "by_eye", ("30 mm", "1 in")), "handle_height": length("950 mm", "37 1/2 in"),
     "speed": speed("0.8 m/s", "1.8 mph"), "parked_loaded": duration("4 h"),
     **hand("1", per_day(96), length("12 m", "39 ft", "by_eye", ("2 m", "7 ft")), count("12")),
     "route": [stop("raw", "60 min", "trench-drain"), stop("cook", "20 min", "trench-drain", False)],
     "fork_width": length("62 mm", "2 7/16 in", tol=CALLIPER), "axle_diameter": length("12.7 mm", "1/2 in", tol=CALLIPER),
     "overall_height_limit": length("200 mm", "7 7/8 in"), "plate_pattern": choice("plate-4x4.5in"),
     "static_ask": choice("none", "told"), "non_marking": choice(False, "told"),
     **present("bonded-polyolefin-5x2in", "roller-heavy-inch", "swivel-zinc-5in-heavy"),
     "damage": [damage("tread_off_core", "The tread turns on its core; the edge is open all round.", length("40 mm", "1 9/16 in")),
                damage("rust", "Brown water runs from the rollers.")]},
    {"id": "tote-cart", "name": "Tote cart", "tare": mass("22 kg", "49 lb"), "payload": mass("60 kg", "132 lb"),
     "castors": castors(700, 400, RIGID_REAR), "sharing": choice("all_but_one"), "length": length("850 mm", "33 1/2 in"),
     "width": length("480 mm", "18 7/8 in"), "cg_forward_loaded": length("350 mm", "13 3/4 in", "by_eye", ("30 mm", "1 in")),
     "cg_forward_empty": length("350 mm", "13 3/4 in", "by_eye", ("30 mm", "1 in")),
     "cg_height_loaded": length("550 mm", "21 5/8 in", "by_eye"), "cg_height_empty": length("420 mm", "16 1/2 in", "by_eye", ("30 mm", "1 in")),
     "handle_height": length("1 m", "39 1/2 in"), "speed": speed("1 m/s", "2.2 mph"), "parked_loaded": duration("2 d"),
     **hand("1", per_day(60), length("30 m", "98 ft", "by_eye", ("5 m", "16 ft")), count("15")),
     "route": [stop("dry", "15 min", "dry-joint"), stop("pack", "20 min", "dock-plate"), stop("dock", "10 min", "dock-plate", False),
               stop("pack", "10 min", "dry-joint", False)],
     "fork_width": length("41 mm", "1 5/8 in", tol=CALLIPER), "axle_diameter": length("9.5 mm", "3/8 in", tol=CALLIPER),
     "overall_height_limit": length("160 mm", "6 5/16 in"), "plate_pattern": choice("plate-2.375x3.625in"),
     "static_ask": choice("none", "told"), "non_marking": choice(True, "told"),
     **present("rubber-4x1.25in", "plain-acetal-light-inch", "swivel-zinc-4in-light"),
     "damage": [damage("floor_marks", "Black lines on the floor of the packing room.")]},
    {"id": "ingredient-bin", "name": "Ingredient bin", "tare": mass("38 kg", "84 lb"), "payload": mass("150 kg", "331 lb"),
     "castors": castors(600, 500, ALL_SWIVEL), "sharing": choice("all_but_one"), "length": length("750 mm", "29 1/2 in"),
     "width": length("620 mm", "24 3/8 in"), "cg_forward_loaded": length("300 mm", "11 13/16 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_forward_empty": length("300 mm", "11 13/16 in", "by_eye", ("20 mm", "3/4 in")),
     "cg_height_loaded": length("520 mm", "20 1/2 in", "by_eye"), "cg_height_empty": length("450 mm", "17 3/4 in", "by_eye", ("30 mm", "1 in")),
     "handle_height": length("980 mm", "38 1/2 in"), "speed": speed("0.7 m/s", "1.6 mph"), "parked_loaded": duration("21 d", "measured", "1 d"),
     **hand("1", per_day(Fraction(1, 5), text="one in five days"), length("15 m", "49 ft", "by_eye", ("3 m", "10 ft")), count("0.048")),
     "route": [stop("dry", "20 h", "ramp"), stop("pack", "60 min", "ramp", False)],
     "fork_width": length("42 mm", "1 5/8 in", tol=CALLIPER), "axle_diameter": length("10 mm", "25/64 in", tol=CALLIPER),
     "overall_height_limit": length("160 mm", "6 5/16 in"), "plate_pattern": choice("plate-105x80mm"),
     "static_ask": choice("none", "told"), "non_marking": choice(True, "told"),
     **present("tpr-100x35mm", "plain-acetal-light-metric", "swivel-zinc-100mm-light"),
     "damage": [damage("flat_spot", "All four wheels thump after standing; the flat is easy to feel.", length("2 mm", "1/16 in"))],
     "notes": "Stands loaded for three weeks at a time."},
    {"id": "line-table", "name": "Line-side stainless table", "tare": mass("85 kg", "187 lb"), "payload": mass("40 kg", "88 lb"),
     "castors": castors(1100, 620, ["total_lock", "total_lock", "swivel", "swivel"]), "sharing": choice("all_but_one"),
     "length": length("1.3 m", "51 in"), "width": length("700 mm", "27 1/2 in"),
     "cg_forward_loaded": length("550 mm", "21 5/8 in", "by_eye"), "cg_forward_empty": length("550 mm", "21 5/8 in", "by_eye"),
     "cg_height_loaded": length("780 mm", "30 3/4 in", "by_eye"), "cg_height_empty": length("700 mm", "27 1/2 in", "by_eye"),
     "handle_height": length("900 mm", "35 1/2 in"), "speed": speed("0.5 m/s", "1.1 mph"), "parked_loaded": duration("1 d"),
     **hand("2", per_day(2), length("5 m", "16 ft", "by_eye", ("1 m", "3 ft")), count("1")),
     "route": [stop("raw", "22 h", None)],
     "fork_width": length("62 mm", "2 7/16 in", tol=CALLIPER), "axle_diameter": length("12 mm", "15/32 in", tol=CALLIPER),
     "overall_height_limit": length("175 mm", "6 7/8 in"), "plate_pattern": choice("plate-140x110mm"),
     "static_ask": choice("none", "told"), "non_marking": choice(True, "told"),
     **present("polyolefin-125x40mm", "roller-stainless-heavy-metric", "total-lock-zinc-125mm-heavy"),
     "damage": [damage("rust", "Rig and axle brown; rust runs down the leg."),
                damage("seized_bearing", "Two of four wheels do not turn by hand."),
                damage("wrapped_thread", "Net string around one axle.")]},
    {"id": "tug-train", "name": "Tugged train, each of four carts", "tare": mass("130 kg", "287 lb"), "payload": mass("420 kg", "926 lb"),
     "castors": castors(1200, 700, RIGID_REAR), "sharing": choice("all_but_one"), "length": length("1.5 m", "59 in"),
     "width": length("800 mm", "31 1/2 in"), "cg_forward_loaded": length("600 mm", "23 5/8 in", "by_eye"),
     "cg_forward_empty": length("600 mm", "23 5/8 in", "by_eye"), "cg_height_loaded": length("700 mm", "27 1/2 in", "by_eye"),
     "cg_height_empty": length("450 mm", "17 3/4 in", "by_eye"), "handle_height": length("400 mm", "15 3/4 in"),
     "speed": speed("1.5 m/s", "3.4 mph"), "parked_loaded": duration("12 h"), "moved_by": choice("tug"), "people": count("0"),
     "push_rate": per_day("40"), "push_distance": length("80 m", "262 ft", "by_eye", ("10 m", "33 ft")), "trips_per_day": count("10"),
     "route": [stop("dock", "30 min", "door-rail"), stop("holding", "45 min", "door-rail", False)],
     "fork_width": length("62 mm", "2 7/16 in", tol=CALLIPER), "axle_diameter": length("12.7 mm", "1/2 in", tol=CALLIPER),
     "overall_height_limit": length("260 mm", "10 1/4 in"), "plate_pattern": choice("plate-4x4.5in"),
     "static_ask": choice("none", "told"), "non_marking": choice(False, "told"),
     **present("bonded-iron-8x2in", "ball-heavy-inch", "swivel-zinc-8in-heavy"),
     "damage": [damage("tread_off_core", "Tread lifted over a third of the round on one cart.", length("60 mm", "2 3/8 in")),
                damage("chunks", "Cuts from the rail.", length("5 mm", "3/16 in"))],
     "notes": "Four carts behind one tug; each cart is alike, so one is described."},
    {"id": "dock-cage", "name": "Dock cage", "tare": mass("60 kg", "132 lb", "told"), "payload": mass("200 kg", "441 lb", "told"),
     "castors": castors(650, 550, ALL_SWIVEL), "sharing": choice("all_but_one"), "length": length("800 mm", "31 1/2 in"),
     "width": length("680 mm", "26 3/4 in"), "cg_forward_loaded": length("325 mm", "12 3/4 in", "by_eye", ("30 mm", "1 in")),
     "cg_forward_empty": length("325 mm", "12 3/4 in", "by_eye", ("30 mm", "1 in")),
     "cg_height_loaded": length("700 mm", "27 1/2 in", "by_eye"), "cg_height_empty": length("650 mm", "25 1/2 in", "by_eye"),
     "handle_height": length("1.1 m", "43 1/4 in"), "speed": speed("0.9 m/s", "2 mph", "by_eye"),
     **hand("1", per_day(30), length("15 m", "49 ft", "by_eye", ("3 m", "10 ft")), count("8")),
     "route": [stop("dock", "45 min", "dock-plate-raw"), stop("raw", "30 min", "dock-plate-raw", False)],
     "fork_width": length("62 mm", "2 7/16 in", tol=CALLIPER), "axle_diameter": length("12 mm", "15/32 in", tol=CALLIPER),
     "overall_height_limit": length("245 mm", "9 5/8 in"), "plate_pattern": choice("plate-140x110mm"),
     "static_ask": choice("none", "told"), "non_marking": choice(False, "told"),
     **present("rubber-160x50mm", "roller-heavy-metric", "swivel-zinc-160mm-heavy"),
     "damage": [damage("chunks", "Small cuts.", length("3 mm", "1/8 in"))],
     "notes": "Nobody could say how long a full cage stands."},
    {"id": "waste-bin", "name": "Cook room waste bin", "tare": mass("30 kg", "66 lb", "told"), "payload": mass("90 kg", "198 lb", "by_eye"),
     "castors": castors(500, 450, ALL_SWIVEL), "sharing": choice("all_but_one", "by_eye"),
     "cg_forward_loaded": length("250 mm", "9 7/8 in", "by_eye", ("30 mm", "1 in")),
     "cg_forward_empty": length("250 mm", "9 7/8 in", "by_eye", ("30 mm", "1 in")),
     "cg_height_loaded": length("500 mm", "19 3/4 in", "by_eye"), "cg_height_empty": length("400 mm", "15 3/4 in", "by_eye", ("30 mm", "1 in")),
     "handle_height": length("1 m", "39 1/2 in", "by_eye"), "speed": speed("0.8 m/s", "1.8 mph", "by_eye"), "parked_loaded": duration("1 d"),
     **hand("1", per_day(10), length("25 m", "82 ft", "by_eye", ("5 m", "16 ft")), count("5", "1")),
     "route": [stop("cook", "120 min", "cook-drain"), stop("pack", "20 min", "cook-drain", False)],
     "fork_width": length("41 mm", "1 5/8 in", tol=CALLIPER), "axle_diameter": length("10 mm", "25/64 in", tol=CALLIPER),
     "overall_height_limit": {"known": "not_accessible"}, "plate_pattern": choice("plate-105x80mm", "by_eye"),
     "static_ask": choice("none", "told"), "non_marking": choice(False, "told"),
     **present("polyolefin-100x35mm", "plain-acetal-light-metric", "swivel-zinc-100mm-light"),
     "damage": [damage("flat_spot", "One wheel drags.", length("4 mm", "3/16 in", "by_eye", ("2 mm", "1/16 in")))]},
]

SURVEY = {
    "format": "sillwalk-survey/1", "id": "quillwater-plant-2", "revision": 1,
    "site": "Quillwater Frozen Foods, Plant 2 (invented)", "customer": "Quillwater Frozen Foods (invented)",
    "complaint": "Wheels break at the freezer door. Bearings on the raw side seize within two months.",
    "surveyor": "A. Example (invented)", "invented": True, "made_ms": 1764064800000,
    "rooms": ROOMS, "crossings": CROSSINGS, "washings": WASHINGS, "carts": CARTS,
    "notes": "Invented site. It is used in examples, screenshots and tests.",
}


def resolve(node, system):
    if isinstance(node, Both):
        return getattr(node, system)
    if isinstance(node, dict):
        return {key: resolve(value, system) for key, value in node.items()}
    if isinstance(node, list):
        return [resolve(value, system) for value in node]
    return node


def by_id(rows, wanted):
    return next(row for row in rows if row["id"] == wanted)


def half_read(survey):
    survey = copy.deepcopy(survey)
    survey["id"] = "quillwater-half-read"
    survey["notes"] += " Three readings were taken out of this copy."
    del by_id(survey["rooms"], "blast")["air"]
    del by_id(survey["crossings"], "freezer-door")["rise"]
    del by_id(survey["carts"], "tub-dolly")["payload"]
    return survey


def surveys():
    si, us = resolve(SURVEY, "si"), resolve(SURVEY, "us")
    us["id"] = "quillwater-plant-2-us"
    return {"quillwater.json": si, "quillwater-us.json": us, "half-read.json": half_read(si)}


def main():
    different = []
    for name, survey in surveys().items():
        text = json.dumps(survey, indent=2, sort_keys=True, ensure_ascii=False) + "\n"
        if "--check" not in sys.argv:
            (HERE / name).write_text(text, encoding="utf-8")
        elif (HERE / name).read_text(encoding="utf-8") != text:
            different.append(name)
    if different:
        sys.exit("not what make_demo.py writes: " + ", ".join(different))


if __name__ == "__main__":
    main()
