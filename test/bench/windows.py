"""
The yardstick of windows.ts: when each hundredth of the seed of each sowing is up, by one cumulative sum over the record
and one search for all sowings.

Reads from the folder it is given: the hourly temperatures (`hourly`); the bends of the crop's curve (`bends`: where, rate
an hour, share) and how fast seed is by its share, at even steps (`speed`); the way each cohort has to make (`due`), the
hours of the sowings (`sow`) and of the count (`within`). For every line on its standard input it works all out once and
answers with the milliseconds of CPU that took. At the end it leaves `up`, `first`, `half` and `most` in the folder.
"""

import sys
import time

import numpy

folder = sys.argv[1]
hourly = numpy.fromfile(f"{folder}/hourly", numpy.float64)
bends_c, rates, shares = numpy.fromfile(f"{folder}/bends", numpy.float64).reshape(3, -1)
speed = numpy.fromfile(f"{folder}/speed", numpy.float64)
due = numpy.fromfile(f"{folder}/due", numpy.float64)
sow = numpy.fromfile(f"{folder}/sow", numpy.int32)
within = int(numpy.fromfile(f"{folder}/within", numpy.int32)[0])


def pace():
    """How far each hour carries seed of middling speed, and how many cohorts it moves."""
    rate = numpy.interp(hourly, bends_c, rates)
    share = numpy.interp(hourly, bends_c, shares)
    awake = numpy.where(rate > 0, numpy.floor(100 * share + 0.5 + 1e-9), 0).astype(numpy.uint8)
    place = share * (len(speed) - 1)
    below = numpy.minimum(place.astype(numpy.int32), len(speed) - 2)
    between = speed[below] + (place - below) * (speed[below + 1] - speed[below])
    return numpy.where(awake > 0, rate * between, 0), awake


def all_sowings():
    step, awake = pace()
    up_h = numpy.empty((len(due), len(sow)))
    moved = numpy.empty(len(step))
    way = numpy.zeros(len(step) + 1)
    for cohort in range(len(due)):
        numpy.multiply(step, awake > cohort, out=moved)
        numpy.cumsum(moved, out=way[1:])
        goal = way[sow] + due[cohort]
        after = numpy.searchsorted(way, goal)
        last = numpy.minimum(after, len(step)) - 1
        with numpy.errstate(divide="ignore", invalid="ignore"):
            hours = last + (goal - way[last]) / moved[last] - sow
        up_h[cohort] = numpy.where(after <= len(step), hours, numpy.inf)
    up = (up_h <= within).sum(axis=0)

    def of(share):
        cohort = numpy.maximum(numpy.ceil(share * up).astype(int), 1) - 1
        return numpy.where(up > 0, numpy.take_along_axis(up_h, cohort[None, :], axis=0)[0], numpy.nan)

    return up, of(0.1), of(0.5), of(0.9)


up, first, half, most = all_sowings()
for _ in sys.stdin:
    before = time.process_time()
    up, first, half, most = all_sowings()
    print(1000 * (time.process_time() - before), flush=True)
up.astype(numpy.uint8).tofile(f"{folder}/up")
for name, hours in (("first", first), ("half", half), ("most", most)):
    hours.tofile(f"{folder}/{name}")
