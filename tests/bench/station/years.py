# Writes a kitchen's years as batch records (JSON Lines): 200 batches a day of two products, the last on the demo day.
"""python3 years.py BATCHES FOLDER, for the demo kitchen and runs at 2026-11-25T18:00."""
import datetime
import json
import sys

A_DAY = 200
A_FILE = 5000  # of the 9,999 numbers that a file has
LAST = datetime.date(2026, 11, 25)


def cooled(day, *readings):
    return [{"at": f"{day} {at}", "core": core} for at, core in readings]


def butter(day):
    return {"product": "chilli-lime-butter", "quantity": "2 kg", "made_at": f"{day} 07:15", "made_to": f"{day} 08:05",
            "by": "MK", "containers": "4 tub 500 g",
            "inputs": [{"item": "butter-unsalted", "supplier_item": "meadowfold-butter-25", "lot": f"MB-{day:%y%m%d}",
                        "use_by": "2027-06-30"}],
            "cooled": cooled(day, ("08:10", "64 °F"), ("09:25", "50 °F"), ("10:30", "40 °F"))}


def dressing(day):
    return {"product": "sesame-slaw-dressing", "quantity": "0.375 gal", "made_at": f"{day} 08:50",
            "made_to": f"{day} 09:30", "by": "RT", "containers": "4 bottle 12 fl oz",
            "inputs": [{"item": "soy-sauce", "supplier_item": "hartwell-soy-sauce-5", "lot": f"HW-{day:%y%m}",
                        "best_before": "2027-11-30"}],
            "cooled": cooled(day, ("09:35", "66 °F"), ("10:50", "52 °F"), ("12:00", "41 °F"))}


def main():
    batches, folder = int(sys.argv[1]), sys.argv[2]
    for begin in range(0, batches, A_FILE):
        with open(f"{folder}/{begin:07}.jsonl", "w", encoding="utf-8") as out:
            for at in range(begin, min(begin + A_FILE, batches)):
                record = (butter, dressing)[at % 2](LAST - datetime.timedelta((batches - 1 - at) // A_DAY))
                out.write(json.dumps({"number": str(at - begin + 1), **record}, ensure_ascii=False) + "\n")


main()
