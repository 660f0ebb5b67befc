import type { Catalogue } from './facts.js';

/** English. */
export const en = {
  curve:
    'Days and stand come from the {crop} seed’s response to constant temperatures ({source}), added up hour by hour. This sum has not been checked against seedlings in beds.',
  'moist-seedbed':
    '{wettedOn, select, none {The seed is taken to lie moist from sowing until it is up. Seed that dries out waits, and every date moves with it.} other {The seed is taken to wait in dry soil until {wettedOn} at noon, and to lie moist from then on.}}',
  'count-day':
    'Only what is up {countDays, plural, one {# day} other {# days}} after sowing counts{isOwn, select, yes {} other {; say countDays to count on another day}}.',
  ranges:
    'The ranges leave open what the weather after the last value may do, and how well the soil is known. Seed lot, seedbed, moisture and the table’s whole days come on top.',
  'beds-against-laboratory':
    'Beds give less, and later, than a laboratory: {stand, select, own {your own share of the stand} taught {the share of the stand that your counts have taught} other {the share of the stand}} and {time, select, own {your own time factor} taught {the time that your counts have taught} other {the crop’s range of times}} are applied beside the laboratory’s figures.',
  depth: 'No depth was given; {depthCm} is taken.',
  lot: 'No germination test of the seed was given; it is taken to be as good as the table’s. Test ten seeds on damp paper if the packet is old.',
  normals:
    'After the last value, on {lastDate}, the soil is taken to go on as the place’s normals make it in a usual year, from today’s soil: no past years are known. The ranges are wide for it.',
  'past-years':
    'After the last value, on {lastDate}, the soil is taken to go on as in each of {years, plural, one {# past year} other {# past years}}, from today’s soil. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.',
  'repeat-last-week': 'After the last value, on {lastDate}, the last week is taken to come again and again.',
  'seasonal-drift':
    'After the last value, on {lastDate}, the soil is taken to follow the season from the level of the last {levelDays, plural, one {# day} other {# days}} or fewer, with the last week’s swing of day and night.',
  daylight: 'No latitude was given; days are taken as twelve hours long, the warmest hour just after noon.',
  'zone-from-stamps': 'No time zone was given; dates are counted at {timeZone}, the offset of the first stamp.',
  'bed-as-measured':
    'The temperatures are taken as measured where the seed lies: what was said of the bed’s kind, cover, shade and water changes nothing in them.',
  'own-rows':
    'Beyond your coldest and warmest rows the curve is taken to fall to nothing within {marginK}, or at the base temperature that the rows imply; heat is taken to hold the seed above {hotThresholdC}.',
  deep: '{depthCm} is more than twice the usual {usualCm}: seedlings come later and weaker, or not at all.',
  'held-week':
    'Much of this forecast rests on the last week coming again. In spring that errs by weeks, too late; in autumn it comes out too early. Send a latitude for the season’s drift, or more temperatures.',
  'thin-record':
    'Fewer than seven days of temperature stand behind what is supposed after them: one warm or cold day weighs heavily.',
  'too-cold-or-hot':
    'At these temperatures the chart promises no seedling within a year, so the count is set to {countDays, plural, one {# day} other {# days}}. Say countDays to look further, or sow when the soil suits the crop.',
  'far-ahead':
    'The sowing lies {daysAhead, plural, one {# day} other {# days}} after the last value. So far ahead this is what the season usually brings rather than a forecast; ask again when later temperatures are known.',
  'share-for-percent':
    'A germination of {germinationPercent} % is taken as sent: {germinationPercent} seeds in a hundred. If {meantPercent} % was meant, send {meantPercent}.',
  'hot-first-day':
    'In its first day the seed lies {hours, plural, one {# hour} other {# hours}} above {hotThresholdC}, when heat stops it most easily. Sow in the evening, in moist soil.',
  extrapolated:
    'For {hours, plural, one {# hour} other {# hours}} the seed lies colder or warmer than the crop was ever tested; a straight line to nothing is drawn there.',
  'killing-heat':
    'Wet seed lies above {limitC} for more than {limitHours, plural, one {# hour} other {# hours}} in all: what is not up by then is taken as dead.',
  slow: 'It comes up more than three times slower than at its best: seed that lies long is open to rot, crusts and pests.',
  'old-test': 'The lot was tested on {testedOn}, over a year before the sowing; test it again.',
} as const satisfies Catalogue;
