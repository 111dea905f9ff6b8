"""Packs the climate stations and the middles of the ZIP areas into the file the page reads.

usage: python climate_pack.py > ../../../public/climate.txt

The format is described in src/engine/src/climate/table.rs. Only the standard library is needed.
"""
import csv
import itertools
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))


def rows(name):
    with open(os.path.join(HERE, "../climate", name), newline="") as file:
        return list(csv.DictReader(file))


def steps(numbers):
    """Each number as its step from the one before: neighbours are alike, and small steps pack well."""
    return ",".join(str(b - a) for a, b in zip([0] + numbers, numbers))


def hundredths(text):
    value = round(float(text) * 100)
    assert abs(value / 100 - float(text)) < 1e-9, text
    return value


def column(table, name, of=int):
    return [of(row[name]) for row in table]


def difference(table, name, less):
    return [int(row[name]) - int(row[less]) for row in table]


def tens(text):
    assert int(text) % 10 == 0, text
    return int(text) // 10


def main():
    stations, wide, zips = (
        rows(f"{name}.csv") for name in ("embed_us", "us_zip3_centroids", "us_zip5_centroids"))
    names = column(stations, "name", str)
    assert not any(sign in name for name in names for sign in ",\\")
    states = [f"{state} {len(list(group))}"
              for state, group in itertools.groupby(column(stations, "st", str))]
    assert len(states) == len({row["st"] for row in stations}), "the stations of a state stand apart"
    lines = [
        "finrun-climate 1",
        ",".join(states),
        ",".join(names),
        steps(column(stations, "lat", hundredths)),
        steps(column(stations, "lon", hundredths)),
        steps(column(stations, "elev_m")),
        steps(column(stations, "t99_f")),
        steps(difference(stations, "t99_f", "t996_f")),
        steps(column(stations, "mean_f")),
        steps(difference(stations, "mean_f", "jan_f")),
        steps(column(stations, "hdd65", tens)),
        steps(column(stations, "wind_mph")),
        steps(column(wide, "zip3")),
        steps(column(wide, "lat", hundredths)),
        steps(column(wide, "lon", hundredths)),
        steps(column(wide, "spread_km")),
        steps(column(zips, "zip")),
        steps(column(zips, "lat", hundredths)),
        steps(column(zips, "lon", hundredths)),
    ]
    sys.stdout.write("\n".join(lines) + "\n")


main()
