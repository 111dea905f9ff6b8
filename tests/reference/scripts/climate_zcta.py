"""Middles of the five-digit ZIP areas whose three-digit prefix spreads over more than 250 km.

usage: python climate_zcta.py zctas.gz > ../climate/us_zip5_centroids.csv

zctas.gz is Debian's weather-util-data 2.4.4-2 (ISC), /usr/share/weather-util/zctas.gz, made from
the US Census Bureau's 2022 Gazetteer of ZIP code tabulation areas (public domain); us_zip3_centroids.csv
is of the same file. A prefix of Alaska or of the deserts is too wide for one middle.

99701 is altered: the Gazetteer puts its point 290 km north of Fairbanks, into land without houses;
the point here is that of the town's airport, as in embed_us.csv.
"""
import csv
import gzip
import math
import os
import re
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
WIDE_KM = 250
ALTERED = {"99701": (64.82, -147.85)}


def main(path):
    with open(os.path.join(HERE, "../climate/us_zip3_centroids.csv"), newline="") as file:
        wide = {row["zip3"] for row in csv.DictReader(file) if int(row["spread_km"]) > WIDE_KM}
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["zip", "lat", "lon"])
    code = None
    for line in gzip.open(path, "rt"):
        if heading := re.match(r"\[(\d{5})\]", line):
            code = heading[1]
        elif (point := re.match(r"centroid = \((\S+), (\S+)\)", line)) and code[:3] in wide:
            degrees = tuple(math.degrees(float(radians)) for radians in point.groups())
            latitude, longitude = ALTERED.get(code, degrees)
            out.writerow([code, f"{latitude:.2f}", f"{longitude:.2f}"])


main(*sys.argv[1:])
