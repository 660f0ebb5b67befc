"""
The yardstick of windows.ts: when each hundredth of the seed of each sowing is up, by one cumulative sum over the record
and one search for all sowings.

Reads from the folder it is given: what each hour does (`step`, `awake`), the way each cohort has to make (`due`), the
hours of the sowings (`sow`) and of the count (`within`). For every line on its standard input it works all out once and
answers with the milliseconds of CPU that took. At the end it leaves `up`, `first`, `half` and `most` in the folder.
"""

import sys
import time

import numpy

folder = sys.argv[1]
step = numpy.fromfile(f"{folder}/step", numpy.float64)
awake = numpy.fromfile(f"{folder}/awake", numpy.uint8)
due = numpy.fromfile(f"{folder}/due", numpy.float64)
sow = numpy.fromfile(f"{folder}/sow", numpy.int32)
within = int(numpy.fromfile(f"{folder}/within", numpy.int32)[0])


def all_sowings():
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
