#!/usr/bin/env python3
"""Writes catalogue.json, the invented catalogue that ships with Sillwalk.

Everything here is invented: no maker's list was copied, and no wheel, bearing or rig of these ids can be bought. The rules are
plain so that each figure can be traced: change a rule, run `python3 make_catalogue.py > catalogue.json`, commit both.
A test checks that the committed file is what the rules give.

Sizes and ball bearings follow the trade's usual inch and metric steps and the boundary dimensions of ISO 15 (12 x 28 x 8 and
15 x 35 x 11 mm; from memory). Ratings follow one rule per construction, kilograms per square millimetre of diameter times tread
width, so that a rating always rises with size. The rated minimum of -40 degF, the impact floor of -20 degF and the maximum of
180 degF of one-piece urethane are common practice, no published source.
"""

import json
import sys

INCH = 25.4
SOURCE = "invented"

# --- sizes ---------------------------------------------------------------------------------------------------------------
# (diameter, tread width): narrow treads go on a light rig, wide ones on a heavy rig.
NARROW_INCH = [(3, 1.25), (3.5, 1.25), (4, 1.25), (5, 1.25)]
MIDDLE_INCH = [(4, 1.5), (5, 1.5), (6, 1.5)]
WIDE_INCH = [(4, 2), (5, 2), (6, 2), (8, 2)]
NARROW_METRIC = [(75, 30), (80, 30), (100, 35), (125, 35)]
WIDE_METRIC = [(125, 40), (150, 40), (160, 50), (200, 50)]
LIGHT = {"hub_bore_mm": 28, "hub_length_mm": 40}
HEAVY = {"hub_bore_mm": 35, "hub_length_mm": 61}


def text_of(number):
    return f"{number:g}"


def exact(number):
    """Millimetres without the noise of binary fractions: 76.2, 31.75, 100."""
    value = round(number, 4)
    return int(value) if value == int(value) else value


class Size:
    def __init__(self, system, diameter, width, heavy):
        self.system, self.heavy = system, heavy
        unit = INCH if system == "inch" else 1
        self.diameter_mm, self.width_mm = exact(diameter * unit), exact(width * unit)
        self.diameter_text = f"{text_of(diameter)}{'in' if system == 'inch' else 'mm'}"
        self.diameter_words = f"{text_of(diameter)} {'in' if system == 'inch' else 'mm'}"
        self.id = f"{text_of(diameter)}x{text_of(width)}{'in' if system == 'inch' else 'mm'}"
        self.words = f"{text_of(diameter)} x {text_of(width)} {'in' if system == 'inch' else 'mm'}"
        self.series = f"{'heavy' if heavy else 'light'}-{system}"


def sizes(pairs, system, heavy):
    return [Size(system, diameter, width, heavy) for diameter, width in pairs]


NARROW = sizes(NARROW_INCH, "inch", False) + sizes(NARROW_METRIC, "metric", False)
WIDE = sizes(MIDDLE_INCH + WIDE_INCH, "inch", True) + sizes(WIDE_METRIC, "metric", True)
ALL = NARROW + WIDE
AT_LEAST_100 = [size for size in ALL if size.diameter_mm >= 100]

# --- bearings offered in a wheel -------------------------------------------------------------------------------------------
PLAIN, ROLLER, STAINLESS_ROLLER = "plain-acetal", "roller", "roller-stainless"
BALL, STAINLESS_BALL = "ball", "ball-stainless"

# --- wheels: one rule per line of wheels -----------------------------------------------------------------------------------
# kg_per_mm2: rated load over diameter times width, rounded down to 5 kg. tread: bonded or moulded-on thickness by diameter.
ONE_PIECE = {
    "construction": "one_piece_urethane", "temperature_min_c": -40, "temperature_max_c": 82.2, "impact_floor_c": -28.9,
    "rating_class": "industrial_hard", "hygiene": [],
}
LINES = [
    {**ONE_PIECE, "id": "urethane-hard", "words": "One-piece moulded hard urethane wheel", "material": "pu-one-piece-70d",
     "hardness": ("shore_d", 70), "kg_per_mm2": 0.050, "sizes": ALL, "bearings": [PLAIN, STAINLESS_BALL]},
    {**ONE_PIECE, "id": "urethane-crowned", "words": "One-piece moulded hard urethane wheel, crowned tread",
     "material": "pu-ether-75d", "hardness": ("shore_d", 75), "crown": 3.0, "kg_per_mm2": 0.044, "sizes": ALL,
     "bearings": [PLAIN, STAINLESS_BALL], "cleanroom_class": 6},
    {**ONE_PIECE, "id": "urethane-nonmarking", "words": "One-piece moulded urethane wheel, light grey, non-marking",
     "material": "pu-ether-60d", "hardness": ("shore_d", 60), "kg_per_mm2": 0.044, "sizes": ALL, "non_marking": True,
     "bearings": [PLAIN, STAINLESS_BALL], "cleanroom_class": 5},
    {**ONE_PIECE, "id": "urethane-antistatic", "words": "One-piece moulded urethane wheel, antistatic",
     "material": "pu-ether-60d", "hardness": ("shore_d", 60), "kg_per_mm2": 0.042, "sizes": AT_LEAST_100[::2],
     "bearings": [STAINLESS_BALL], "resistance_ohm": 2e6, "cleanroom_class": 5},
    {"id": "bonded-polyolefin", "words": "Soft urethane tread bonded on a polyolefin core",
     "construction": "urethane_on_polyolefin", "material": "pu-ether-85a", "core": "polypropylene",
     "hardness": ("shore_a", 85), "tread": 0.05, "kg_per_mm2": 0.036, "sizes": ALL, "non_marking": True,
     "rating_class": "industrial_soft", "temperature_min_c": -40, "temperature_max_c": 65,
     "bearings": [PLAIN, ROLLER, STAINLESS_BALL], "hygiene": ["visible_tread_joint"]},
    {"id": "bonded-iron", "words": "Urethane tread bonded on an iron core", "construction": "urethane_on_iron",
     "material": "pu-ester-95a", "core": "cast-iron", "hardness": ("shore_a", 95), "tread": 0.06, "kg_per_mm2": 0.060,
     "sizes": WIDE, "non_marking": True, "rating_class": "industrial_hard", "rated_speed": 2.5, "temperature_min_c": -40,
     "temperature_max_c": 82.2, "bearings": [ROLLER, BALL], "hygiene": ["visible_tread_joint", "spoked"]},
    {"id": "bonded-iron-soft", "words": "Soft urethane tread bonded on an iron core", "construction": "urethane_on_iron",
     "material": "pu-ether-85a", "core": "cast-iron", "hardness": ("shore_a", 85), "tread": 0.08, "kg_per_mm2": 0.045,
     "sizes": WIDE, "non_marking": True, "rating_class": "industrial_soft", "rated_speed": 1.8, "temperature_min_c": -45,
     "temperature_max_c": 70, "bearings": [BALL, STAINLESS_BALL], "hygiene": ["visible_tread_joint", "spoked"]},
    {"id": "nylon", "words": "Solid nylon wheel", "construction": "nylon", "material": "nylon-6-6",
     "hardness": ("shore_d", 80), "kg_per_mm2": 0.062, "sizes": ALL, "rating_class": "industrial_hard",
     "temperature_min_c": -30, "temperature_max_c": 100, "non_marking": True, "bearings": [PLAIN, STAINLESS_BALL],
     "hygiene": []},
    {"id": "polyolefin", "words": "Solid polyolefin wheel", "construction": "polyolefin", "material": "polypropylene-copolymer",
     "hardness": ("shore_d", 65), "kg_per_mm2": 0.034, "sizes": ALL, "rating_class": "industrial_hard",
     "temperature_min_c": -20, "temperature_max_c": 70, "non_marking": True, "bearings": [PLAIN, STAINLESS_ROLLER],
     "hygiene": []},
    {"id": "phenolic", "words": "Phenolic resin wheel, cloth filled", "construction": "phenolic", "material": "phenolic",
     "hardness": ("shore_d", 90), "kg_per_mm2": 0.058, "sizes": ALL, "rating_class": "industrial_hard",
     "temperature_min_c": -40, "temperature_max_c": 135, "bearings": [ROLLER, STAINLESS_ROLLER], "hygiene": ["open_hub"]},
    {"id": "rubber", "words": "Solid rubber tread moulded on a polyolefin core", "construction": "solid_rubber",
     "material": "natural-rubber", "core": "polypropylene", "hardness": ("shore_a", 75), "tread": 0.09, "kg_per_mm2": 0.024,
     "sizes": ALL, "rating_class": "industrial_soft", "temperature_min_c": -40, "temperature_max_c": 70,
     "non_marking": False, "bearings": [PLAIN, ROLLER], "hygiene": ["visible_tread_joint"]},
    {"id": "tpr", "words": "Thermoplastic rubber tread moulded on a polyolefin core", "construction": "thermoplastic_rubber",
     "material": "thermoplastic-rubber", "core": "polypropylene", "hardness": ("shore_a", 70), "tread": 0.08, "kg_per_mm2": 0.021,
     "sizes": ALL, "rating_class": "institutional", "temperature_min_c": -30, "temperature_max_c": 60,
     "non_marking": True, "bearings": [PLAIN, STAINLESS_BALL], "hygiene": ["visible_tread_joint"]},
    {"id": "tpr-conductive", "words": "Conductive thermoplastic rubber tread moulded on a polyolefin core",
     "construction": "thermoplastic_rubber", "material": "thermoplastic-rubber", "core": "polypropylene", "hardness": ("shore_a", 75),
     "tread": 0.08, "kg_per_mm2": 0.020, "sizes": AT_LEAST_100[1::2], "rating_class": "institutional",
     "temperature_min_c": -30, "temperature_max_c": 60, "non_marking": False, "resistance_ohm": 5e3, "bearings": [BALL],
     "hygiene": ["visible_tread_joint"]},
    {"id": "stainless", "words": "Solid stainless steel wheel", "construction": "stainless", "material": "stainless-304",
     "kg_per_mm2": 0.064, "sizes": AT_LEAST_100, "rating_class": "industrial_hard", "temperature_min_c": -60,
     "temperature_max_c": 230, "bearings": [STAINLESS_ROLLER], "hygiene": [], "resistance_ohm": 10},
]


def rated_load(line, size):
    return int(line["kg_per_mm2"] * size.diameter_mm * size.width_mm / 5) * 5


def offered(line, size):
    """A narrow wheel comes with the first bearing of its line only."""
    return line["bearings"] if size.heavy else line["bearings"][:1]


def wheel(line, size):
    row = {
        "id": f"{line['id']}-{size.id}",
        "description": f"{line['words']}, {size.words}",
        "construction": line["construction"],
        "tread_material": line["material"],
        "core_material": line.get("core", line["material"]),
        "diameter_mm": size.diameter_mm,
        "tread_width_mm": size.width_mm,
        "rated_load_kg": rated_load(line, size),
        "rating_class": line["rating_class"],
        "temperature_min_c": line["temperature_min_c"],
        "temperature_max_c": line["temperature_max_c"],
        **(HEAVY if size.heavy else LIGHT),
        "hygiene": sorted(line["hygiene"]),
        "bearings": sorted(f"{kind}-{size.series}" for kind in offered(line, size)),
        "source": SOURCE,
    }
    if "tread" in line:
        row["tread_thickness_mm"] = max(5, round(line["tread"] * size.diameter_mm * 2) / 2)
    if "crown" in line:
        row["crown_radius_mm"] = exact(round(line["crown"] * size.width_mm))
    if "hardness" in line:
        row["hardness"] = {"scale": line["hardness"][0], "value": line["hardness"][1]}
    if "rated_speed" in line:
        row["rated_speed_m_per_s"] = line["rated_speed"]
    for key in ("impact_floor_c", "non_marking", "resistance_ohm", "cleanroom_class"):
        if key in line:
            row[key] = line[key]
    return row


# --- bearings ---------------------------------------------------------------------------------------------------------------
# series: axle, outer diameter, hub length; the bushing's or sleeve's outer diameter carries the plain and roller bearings.
SERIES = {
    "light-inch": {"axle": 9.525, "axle_words": "3/8 in", "outer": 28, "hub": 40, "spanner": 16, "ball_bore": 12, "ball_width": 8,
                   "dynamic": 5.1, "static": 2.36, "roller": (7.0, 8.5)},
    "heavy-inch": {"axle": 12.7, "axle_words": "1/2 in", "outer": 35, "hub": 61, "spanner": 20, "ball_bore": 15, "ball_width": 11,
                   "dynamic": 7.65, "static": 3.75, "roller": (13.0, 17.0)},
    "light-metric": {"axle": 10, "axle_words": "10 mm", "outer": 28, "hub": 40, "spanner": 16, "ball_bore": 12, "ball_width": 8,
                     "dynamic": 5.1, "static": 2.36, "roller": (7.0, 8.5)},
    "heavy-metric": {"axle": 12, "axle_words": "12 mm", "outer": 35, "hub": 61, "spanner": 20, "ball_bore": 15, "ball_width": 11,
                     "dynamic": 7.65, "static": 3.75, "roller": (13.0, 17.0)},
}
STAINLESS_SHARE = 0.8  # of the load of a chrome steel bearing

HAND_CHECK = "Turn the wheel by hand: it must run freely, without grinding and without sticking at any place."
PLAY_CHECK = "Push and pull the wheel along the axle: it must move a little, 0.5 to 1 mm, and no more."
FINAL_CHECK = "Do not send a wheel out that fails the hand check: take it apart and find out why."

PLAIN_FITTING = [
    "Clean the bore of the hub and look for burrs.",
    "Set the first flanged bearing square on the side that carries the mark and press it in until its flange sits.",
    "Use a press; where there is none, use a soft mallet and a flat block over the whole flange.",
    "Turn the wheel over and press in the second bearing.",
    "Slide in the sleeve dry: no grease and no oil on a plain acetal bearing.",
    PLAY_CHECK, HAND_CHECK, FINAL_CHECK,
]
ROLLER_FITTING = [
    "Wipe the bore of the hub clean.",
    "Press one retainer washer into the side that carries the mark until it sits flush.",
    "Pack the roller bearing with the grease named on the order and slide it in from the open side.",
    "Slide the spanner bushing through the rollers.",
    "Press in the second retainer washer with a press or with light, even mallet blows on a flat block.",
    PLAY_CHECK, HAND_CHECK, FINAL_CHECK,
]
BALL_FITTING = [
    "Wipe both seats of the hub clean.",
    "Press the first bearing into the side that carries the mark, pushing on its outer ring only.",
    "Use a press: never drive a precision bearing with a mallet on its inner ring.",
    "Turn the wheel over and put the spacer in.",
    "Press in the second bearing until both inner rings just touch the spacer.",
    "Push the reducing sleeves into the inner rings by hand.",
    "There must be no end play to feel, and no tightness.",
    HAND_CHECK, FINAL_CHECK,
]


def part(name, count, note=""):
    row = {"name": name, "count": count}
    if note:
        row["note"] = note
    return row


def bearing_row(name, series, words, material, **more):
    s = SERIES[series]
    return {
        "description": f"{words}, {s['axle_words']} axle, for a hub {text_of(s['hub'])} mm long",
        "material": material, "axle_diameter_mm": s["axle"], "outer_diameter_mm": s["outer"], "source": SOURCE,
        "id": f"{name}-{series}", **more,
    }


def plain_bearing(series):
    s = SERIES[series]
    return bearing_row(
        PLAIN, series, "Plain acetal bearing, two flanged halves on a stainless sleeve", "acetal-copolymer",
        kind="plain_acetal", bore_mm=s["spanner"], length_mm=s["hub"] / 2, count=2,
        temperature_min_c=-40, temperature_max_c=82.2, sealed=False, grease_exposed=False, grease="none",
        parts=[part("flanged acetal bearing", 2), part("stainless sleeve", 1, f"{s['axle_words']} bore, runs in both halves")],
        fitting=PLAIN_FITTING)


def roller_bearing(series, stainless):
    s = SERIES[series]
    share = STAINLESS_SHARE if stainless else 1
    return bearing_row(
        STAINLESS_ROLLER if stainless else ROLLER, series,
        "Stainless roller bearing in an open cage" if stainless else "Roller bearing in an open cage",
        "stainless-440c" if stainless else "bearing-steel",
        kind="stainless_roller" if stainless else "roller", bore_mm=s["spanner"], length_mm=s["hub"] - 4, count=1,
        dynamic_rating_kn=exact(s["roller"][0] * share), static_rating_kn=exact(s["roller"][1] * share),
        temperature_min_c=-40 if stainless else -20, temperature_max_c=110, sealed=False, grease_exposed=True,
        grease="H1" if stainless else "general",
        parts=[part("roller bearing", 1), part("spanner bushing", 1, f"{s['axle_words']} bore"),
               part("retainer washer", 2)],
        fitting=ROLLER_FITTING)


def ball_bearing(series, stainless):
    s = SERIES[series]
    share = STAINLESS_SHARE if stainless else 1
    return bearing_row(
        STAINLESS_BALL if stainless else BALL, series,
        "Stainless precision ball bearing, sealed both sides" if stainless else "Precision ball bearing, sealed both sides",
        "stainless-440c" if stainless else "bearing-steel",
        kind="stainless_precision_ball" if stainless else "precision_ball", bore_mm=s["ball_bore"],
        length_mm=s["ball_width"], count=2,
        dynamic_rating_kn=exact(s["dynamic"] * share), static_rating_kn=exact(s["static"] * share),
        temperature_min_c=-40 if stainless else -30, temperature_max_c=110, sealed=True, grease_exposed=False,
        grease="H1" if stainless else "general",
        parts=[part("precision ball bearing", 2), part("spacer", 1, "between the inner rings"),
               part("reducing sleeve", 2, f"from {s['ball_bore']} mm to the {s['axle_words']} axle")],
        fitting=BALL_FITTING)


def bearings():
    for series in SERIES:
        yield plain_bearing(series)
        for stainless in (False, True):
            yield roller_bearing(series, stainless)
            yield ball_bearing(series, stainless)


# --- rigs -------------------------------------------------------------------------------------------------------------------
PLATES = {"light-inch": "plate-2.375x3.625in", "heavy-inch": "plate-4x4.5in", "light-metric": "plate-105x80mm",
          "heavy-metric": "plate-140x110mm"}
FUNCTIONS = {"swivel": "Swivel rig", "rigid": "Rigid rig", "total-lock": "Swivel rig with total lock"}
FINISHES = {"zinc": ("zinc_plated", "zinc-plated-steel", "zinc-plated"), "stainless": ("stainless", "stainless-304", "stainless")}
TOTAL_LOCK_FROM_MM, TOTAL_LOCK_TO_MM = 100, 160


def rig(size, function, finish):
    axle, hub = SERIES[size.series]["axle"], SERIES[size.series]["hub"]
    rating = 1.1 * size.diameter_mm + (200 if size.heavy else 75)
    word, material, finish_words = FINISHES[finish]
    stainless = finish == "stainless"
    return {
        "id": f"{function}-{finish}-{size.diameter_text}-{'heavy' if size.heavy else 'light'}",
        "description": f"{FUNCTIONS[function]}, {finish_words}, for {size.diameter_words} wheels, "
                       f"{SERIES[size.series]['axle_words']} axle",
        "function": function.replace("-", "_"), "finish": word, "material": material,
        "wheel_diameter_mm": size.diameter_mm, "fork_width_mm": hub + 1.5, "axle_diameter_mm": axle,
        "overall_height_mm": round(size.diameter_mm + (40 if size.heavy else 28)),
        "swivel_lead_mm": 0 if function == "rigid" else round(0.3 * size.diameter_mm),
        "plate_pattern": PLATES[size.series],
        "rated_load_kg": int(rating * (0.9 if stainless else 1) / 5) * 5,
        "temperature_min_c": -40 if stainless else -30,
        "exposed_threads": not stainless, "hollow_back": not stainless and not size.heavy, "source": SOURCE,
    }


def rigs():
    seen = {}
    for size in ALL:
        seen.setdefault((size.diameter_mm, size.series), size)
    for size in seen.values():
        for function in FUNCTIONS:
            total_lock_made = size.heavy and TOTAL_LOCK_FROM_MM <= size.diameter_mm <= TOTAL_LOCK_TO_MM
            if function == "total-lock" and not total_lock_made:
                continue
            for finish in FINISHES:
                yield rig(size, function, finish)


def by_id(rows):
    return sorted(rows, key=lambda row: row["id"])


def catalogue():
    return {
        "format": "sillwalk-catalogue/1",
        "name": "Sillwalk example catalogue (invented)",
        "edition": "2026-11",
        "invented": True,
        "note": "Invented for examples and tests. None of these parts exists. Written by make_catalogue.py.",
        "wheels": by_id(wheel(line, size) for line in LINES for size in line["sizes"]),
        "bearings": by_id(bearings()),
        "rigs": by_id(rigs()),
    }


if __name__ == "__main__":
    sys.stdout.write(json.dumps(catalogue(), indent=2, sort_keys=True) + "\n")
