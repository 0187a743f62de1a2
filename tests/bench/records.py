# Writes a kitchen's busy day as batch records (CSV): so many batches of four products, so many containers each.
"""python3 records.py BATCHES CONTAINERS > FILE.csv, for the demo kitchen and a run at 2026-11-25T18:00."""
import csv
import sys

COLUMNS = ["row", "product", "number", "quantity", "made_at", "made_to", "by", "site", "order", "containers", "item",
           "supplier_item", "lot", "use_by", "best_before", "opened", "thawed", "at", "core", "held"]


def cooled(*readings):
    return [{"row": "cooled", "at": "2026-11-25 " + at, "core": core} for at, core in readings]


# One product for each medium and purpose: what a batch of it says, what one container holds, and the further rows.
KINDS = [
    # A lid for the kitchen's own use.
    ({"product": "chilli-lime-butter", "made_at": "2026-11-25 07:15", "made_to": "2026-11-25 08:05", "by": "MK"},
     (0.5, "kg", "tub", "500 g"),
     [{"row": "input", "item": "butter-unsalted", "supplier_item": "meadowfold-butter-25", "lot": "MB-5521",
       "use_by": "2027-03-15", "opened": "2026-11-25 07:10"},
      {"row": "input", "item": "lime-zest", "lot": "PM-3304"}]
     + cooled(("08:10", "64 °F"), ("09:25", "50 °F"), ("10:30", "40 °F"))),
    # A bottle for sale, with its ingredient statement.
    ({"product": "sesame-slaw-dressing", "made_at": "2026-11-25 08:50", "made_to": "2026-11-25 09:30", "by": "RT"},
     (0.09375, "gal", "bottle", "12 fl oz"),
     [{"row": "input", "item": "sesame-seed-mix", "lot": "A26320SSM02R", "best_before": "2027-05-31"},
      {"row": "input", "item": "soy-sauce", "supplier_item": "hartwell-soy-sauce-5", "lot": "HW-79005",
       "best_before": "2027-11-30"},
      {"row": "input", "item": "lime-juice", "supplier_item": "palemoor-lime-juice", "lot": "PM-3305"},
      {"row": "input", "item": "mustard-dijon", "supplier_item": "hartwell-dijon-9", "lot": "HW-83340",
       "best_before": "2027-06-30"}]
     + cooled(("09:35", "66 °F"), ("10:50", "52 °F"), ("12:00", "41 °F"))),
    # A tray side for whoever cooks it elsewhere.
    ({"product": "smoky-beef-patty", "made_at": "2026-11-25 14:00", "made_to": "2026-11-25 15:00", "by": "RT",
      "site": "harbour-street-cafe", "order": "HS-1183"},
     (20, "pieces", "tray", "20 pieces"),
     [{"row": "input", "item": "ground-beef", "lot": "BM-4471", "use_by": "2026-11-29"},
      {"row": "input", "item": "worcestershire", "supplier_item": "kestrel-worcester-gal", "lot": "KD-5011",
       "best_before": "2028-02-28"}]),
    # A pan in two languages, likewise.
    ({"product": "rice-pudding", "made_at": "2026-11-25 07:00", "made_to": "2026-11-25 08:30", "by": "AB",
      "site": "mill-road-school", "order": "MR-0418"},
     (2.5, "kg", "pan", "2.5 kg"),
     [{"row": "input", "item": "milk-whole", "lot": "MD-8841", "use_by": "2027-01-27", "opened": "2026-11-25"},
      {"row": "input", "item": "raisins", "supplier_item": "kestrel-golden-raisins-30", "lot": "KD-5150",
       "best_before": "2027-05-31"},
      {"row": "cooked", "at": "2026-11-25 08:20", "core": "196 °F", "held": "2 min"}]
     + cooled(("08:45", "140 °F"), ("10:20", "68 °F"), ("12:50", "40 °F"))),
]


def rows(batches, containers):
    for n in range(batches):
        record, (each, unit, kind, holds), further = KINDS[n % len(KINDS)]
        number = 1 + n // len(KINDS)
        yield record | {"number": number, "quantity": f"{round(each * containers, 3)} {unit}",
                        "containers": f"{containers} {kind} {holds}"}
        for row in further:
            yield row | {"product": record["product"], "number": number}


def main():
    out = csv.DictWriter(sys.stdout, COLUMNS, restval="")
    out.writeheader()
    out.writerows(rows(int(sys.argv[1]), int(sys.argv[2])))


main()
