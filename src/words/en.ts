import type { Catalogue } from './facts.js';

/** What faults of fields begin and end with: whether it was sent, and what was. */
const MISSING = '{wasKind, select, missing {is missing; it } other {}}';
const WAS =
  '{wasKind, select, missing {} list {; it was a list of {was}} emptyList {; it was an empty list} object {; it was an object} largeNumber {; it was too large a number to reckon with} other {; it was {was}}}';

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

  // basics: refusals of every kind
  'not-understood.request': 'The request cannot be used.',
  'not-understood.field': 'The request',
  'not-understood.more':
    '({isAtLeast, select, yes {at least {more, number}} other {{more, number}}} more{shown, select, none {} other {; the first {shown} stand}} under "errors")',
  'not-worked-out': 'This was not worked out now.',

  // readings: warnings of a series
  'two-values-at-once':
    '{instants, plural, one {# instant} other {# instants}} came with two different values; the mean of the two is used. Check whether two thermometers, or a changed clock, are mixed in one series.',
  'unit-doubtful':
    'Read in {unit, select, C {°C} F {°F} other {K}} the soil’s mean is {meanC}, which is rare. If the values are {otherUnit, select, C {°C} F {°F} other {K}}, the mean is {otherMeanC}: then send "unit": "{otherUnit}".',
  'unit-against-header':
    'The column "{column}" says {headerUnit, select, C {°C} F {°F} other {K}}, but it was read in {unit, select, C {°C} F {°F} other {K}} as asked. If the header is wrong, correct it in the file.',
  'extremes-for-readings':
    'The column "{column}" seems to hold the {statistic, select, min {lowest} other {highest}} of each stretch of time rather than its mean; it is used as it is.',
  'skipped-hour':
    '{rows, plural, one {# row stands} other {# rows stand}} in an hour that the clocks at the place skip, and {rows, plural, one {is} other {are}} left out. If the logger’s clock is not changed in spring and autumn, send clock=standard.',

  // readings: why a row was dropped or is doubtful, to go on from its value
  'row.no-stamp': 'holds no date and time',
  'row.unexpected-offset': 'has an offset from UTC, which the others have not',
  'row.no-offset': 'has no offset from UTC, as the others have',
  'row.other-width': 'has {cells, plural, one {# cell} other {# cells}}, where the others have {usualCells, number}',
  'row.marked-bad': 'is marked as doubtful or bad by those who keep the record',
  'row.too-short': 'ends before the column of temperatures',
  'row.empty': 'holds no value',
  'row.says-missing': 'says that there is no value',
  'row.missing-mark': 'is a mark for "no value"',
  'row.no-number': 'is not a number',
  'row.cut-off': 'stands on a last line that is cut off',
  'row.no-such-date': 'stands on a date that does not exist',
  'row.no-such-hour': 'stands in the hour that the clocks skip',
  'row.lost-clock': 'was written by a clock that had lost the date',
  'row.no-temperature': 'is no temperature of soil or air',
  'row.same-date': 'comes after another for the same date; the first is used',
  'row.half-a-day': 'has no {lacks, select, min {minimum} other {maximum}} to go with the other',
  'row.min-above-max': 'has a minimum above its maximum',
  'row.too-cold': 'is colder than anything this thermometer can have met',
  'row.too-hot': 'is hotter than anything this thermometer can have met',
  'row.power-on': 'is what a probe answers when it has only just been switched on',
  'row.no-answer': 'is what stands for a probe that does not answer: a loose or broken wire',
  'row.failed-zero': 'is a zero between readings far from it: the probe said nothing',
  'row.spike':
    'stands out from its neighbours by {bound, select, over {more than {spikeK}} under {less than {spikeK}} other {{spikeK}}}',
  'row.jump':
    'comes after a jump of {bound, select, over {more than {jumpK}} under {less than {jumpK}} other {{jumpK}}}',
  'row.stuck':
    'has not changed for {bound, select, over {more than } under {less than } other {}}{days, plural, one {# day} other {# days}}',

  // readings: refusals
  'series.no-stamp': '"{at}" is no date and time. Write it as 2027-08-03T14:30:00-02:00, in the years 1900 to 2199.',
  'series.out-of-range':
    '{value} {unit, select, C {°C} F {°F} other {K}} is no temperature of soil or air.{maybeUnits, select, none {} other { Is the unit {maybeUnits}?}} A thermometer’s mark for "no value" must be left out.',
  'series.no-mean': '{date} needs a mean, or both a min and a max.',
  'series.half-a-day': '{date} has a min or a max without the other: send both, or the mean alone.',
  'series.not-rising': 'On {date} the min, mean and max are not in rising order; check for a swapped column.',
  'series.same-date': '{date} comes twice with different temperatures; keep the right one.',
  'time-zone-needed.stamp': '"{at}" says no offset from UTC. Add one, as in {at}-02:00, or send where.place.timeZone.',
  'time-zone-needed.days': 'Days begin at midnight somewhere: send where.place.timeZone, for example "Etc/GMT+2".',
  'time-zone-needed.days.field': 'A daily series needs the zone of the place, an IANA name.',
  'time-zone-needed.file':
    'The stamps have no offset from UTC, and the file names no zone. Send timeZone, for example timeZone=Etc/GMT%2B2.',
  'time-zone-needed.file.field': 'Stamps without an offset need the zone of the place.',
  'too-few-readings.no-whole-day':
    'No day of the series is complete; send more of each day, or the readings themselves.',
  'not-csv.packed':
    'The file is {kind, select, zip {a zip archive or a spreadsheet} gzip {a gzip archive} bzip2 {a bzip2 archive} xz {an xz archive} 7z {a 7z archive} rar {a rar archive} spreadsheet {a spreadsheet} pdf {a PDF} database {a database} other {a picture}}, not text. Unpack it, or export it as CSV, and send that.',
  'not-csv.not-text': 'The file is not text. Export the readings as CSV, and send that.',
  'not-csv.empty': 'The file is empty. Send the rows of readings under a header line.',
  'not-csv.web-page': 'The file is a web page, not a table of readings. Export the readings as CSV.',
  'not-csv.json':
    'The file is JSON. Send it with Content-Type: application/json in the shape that /docs shows, or export it as CSV.',
  'not-csv.no-table':
    'No table of readings was found in the file. Send rows with a date and time in one column and a temperature in another, parted by commas, semicolons, tabs or blanks, under a line that names the columns.',
  'not-csv.many-columns':
    'The file has {columns, number} columns; at most {maxColumns, number} are taken. Send the columns of stamps and temperatures.',
  'not-csv.long-line':
    'Line {line} is longer than a million characters. Is the file text, with one row of readings to a line?',
  'not-csv.long-line.field': 'The line has no end.',
  'no-readings.no-rows': 'The file has no rows under its header line. Send the readings with it.',
  'no-readings.no-rows.field': 'There are no rows under the header line.',
  'no-readings.no-usable-row':
    'No row of the file has both a stamp and a temperature.{line, select, none {} other { Line {line} ("{value}") is the first that was left out: "errors" says why.}}',
  'no-readings.several-a-day':
    'The file has several rows to a date, and no column with their time of day was found. Write the date and time of each row into one column, as in 2027-08-03 14:30.',
  'no-readings.several-a-day.field': 'Its dates come again and again, without a time of day.',
  'no-readings.half-days':
    'The file holds each day’s {has, select, min {minimum and no maximum} other {maximum and no minimum}}. A day needs both, or its mean: send a file with the two side by side.',
  'no-readings.half-days.field': 'The column "{column}" alone would be taken for the day’s mean.',
  'no-readings.no-temperatures':
    'The column "{column}" holds no temperatures. Send column= with the number or name of another.',
  'no-readings.no-temperatures.field': 'Its values are no temperatures in °C, °F or K.',
  'no-readings.no-temperature-column': 'No column holds numbers that could be temperatures.',
  'no-readings.no-numbers': 'The column "{column}" holds no numbers, so no temperatures.',
  'no-readings.no-numbers.field': 'Name a column of numbers.',
  'no-readings.no-dates': 'The column "{column}" holds no dates and times.',
  'no-readings.no-dates.field': 'Name a column that holds dates.',
  'no-readings.no-date-column': 'No column holds dates and times such as 2027-08-03 14:30.',
  'no-readings.times-of-day': 'The column "{column}" holds times of day without dates. Add the date to each row.',
  'no-readings.times-of-day.field': 'Times of day alone do not say which day.',
  'no-readings.counter':
    'The column "{column}" counts from when the logger was started, and the file does not say when that was. Write the date and time of each row, or send the readings as JSON with their stamps.',
  'no-readings.counter.field': 'A counter says no date.',
  'no-readings.columns': 'The columns are {columns}.',
  'not-understood.no-such-column': 'There is no column "{column}" in the file.',
  'not-understood.no-such-column.field': 'Send a number from 1 to {count, number}, or one of the names {columns}.',
  'not-understood.no-such-block': 'There is no column or block of rows called "{column}" in the file.',
  'not-understood.no-such-block.field': 'Name one of {blocks}, or a column.',

  // readings: what is asked about a file
  'choose-unit.too-hot':
    'The series’ mean would be {meanC}, hotter than any soil stays. Send "unit": "F" if these are degrees Fahrenheit.',
  'choose-unit.unsaid': 'The file does not say whether the column "{column}" is in °C, °F or K.',
  'choose-unit.contradicts':
    'What the file says of the unit of the column "{column}" contradicts itself, or its values.',
  'choose-unit.send': 'Send {ways}.',
  'choose-unit.mean.reads': '{unit, select, C {degrees Celsius} F {degrees Fahrenheit} other {kelvin}}',
  'choose-unit.mean.consequence': 'the mean is {meanC}',
  'choose-unit.choice.reads': '{unit, select, C {degrees Celsius} F {degrees Fahrenheit} other {kelvin}}',
  'choose-unit.choice.consequence': 'minimum {minC}, mean {meanC}, maximum {maxC}',
  'choose-medium': 'Neither the column "{column}" nor the query says whether the thermometer was in soil or in air.',
  'choose-medium.send': 'Send medium=soil or medium=air.',
  'choose-medium.choice.reads': '{medium, select, soil {a probe in the soil} other {a thermometer in air}}',
  'choose-medium.choice.consequence':
    'the values are taken as {medium, select, soil {soil temperatures} other {air temperatures}}',
  'choose-column.late': 'Rows further down are of sensors that the first rows do not show.',
  'choose-column.unsure': 'No column is sure to hold the temperatures asked for.',
  'choose-column.unnamed':
    'No column is named as {medium, select, soil {a temperature of soil} air {a temperature of the air} other {a temperature}}{depthCm, select, none {} other {, {depthCm} deep}}.',
  'choose-column.several': 'More than one column fits what was asked for.',
  'choose-column.several-sensors': 'The rows of that column are of several sensors.',
  'choose-column.several-times': 'More than one column holds dates and times.',
  'choose-column.several-blocks':
    'The file holds several blocks of rows over the same time, each under a title of its own.',
  'choose-column.send': 'Say which with {parameter}.',
  'choose-column.choice.reads':
    '{name, select, none {column {column}} other {{name}}}{lure, select, nothing {} humidity {, humidity} soilMoisture {, soil moisture} battery {, battery} dewPoint {, dew point} wind {, wind} feltTemperature {, felt temperature} wetBulb {, wet bulb} logger {, the logger itself} indoorTemperature {, indoor temperature} pressure {, pressure} position {, position} degreeDays {, degree-days} rainOrLight {, rain or light} alarmLimit {, an alarm limit} qualityMark {, a quality mark} spread {, spread} counter {, a counter} signal {, signal} gas {, gas} other {, another quantity}}{medium, select, soil {, temperature of soil} air {, temperature of the air} other {}}{depthCm, select, none {} other {, {depthCm} deep}}{unit, select, C {, in °C} F {, in °F} K {, in K} other {}}{isAgainst, select, yes {, not {medium, select, soil {air} other {soil}}} other {}}',
  'choose-column.choice.consequence':
    '{label, select, none {column {column}} other {the series of "{label}"}} is used, {min, select, none {empty} other {{max, select, none {empty} other {from {min} to {max}}}}} in the first rows',
  'choose-column.time.reads': '{name, select, none {column {column}} other {{name}}}',
  'choose-column.time.consequence': 'the rows begin at "{firstCell}"',
  'choose-column.block.reads': '“{title}”',
  'choose-column.block.consequence':
    '{rows, plural, one {the # row from line {line} on is used} other {the # rows from line {line} on are used}}',
  'choose-date-order.unproved': 'The dates do not prove whether the day or the month comes first.',
  'choose-date-order.several-offsets':
    'The stamps carry several offsets from UTC, and it is not proved whether day or month comes first.',
  'choose-date-order.send': 'Send {ways}.',
  'choose-date-order.choice.reads':
    '{dateOrder, select, dmy {day before month} mdy {month before day} ymd {year, month, day} other {year, day, month}}',
  'choose-date-order.choice.consequence':
    '{from, select, none {every date is read so} other {{to, select, none {every date is read so} other {the readings run from {from} to {to}}}}}',
  'choose-clock.steady':
    'The stamps run on without a break where the clocks of {timeZone} change, as on {changedOn}: the logger’s clock seems not to be changed.',
  'choose-clock.send': 'Send clock=standard, clock=utc or, if it is changed after all, clock=local.',
  'choose-clock.choice.reads':
    '{clock, select, standard {standard time all year} utc {UTC all year} other {changed in spring and autumn}}',
  'choose-clock.choice.consequence':
    'the first reading is of {firstAt}{clock, select, local {; rows in an hour that the clocks skip are left out} other {}}',
  'choose-decimal-mark.torn': 'The rows have one cell more than there are names: "{cells}" may be one number or two.',
  'choose-decimal-mark.send': 'Send decimalMark=, or decimalMark=. to say which.',
  'choose-decimal-mark.choice.reads':
    '{decimalMark, select, comma {a decimal comma} other {the comma parts two cells}}',
  'choose-decimal-mark.choice.consequence':
    'it is the number {number}{decimalMark, select, comma {} other {, and a column without a name}}',

  // basics: what is wrong with a field
  'field.unknown': 'is not a field known here; check the spelling, or leave it out',
  'field.wrong-kind': `${MISSING}must be {expected, select, text {text} number {a number} wholeNumber {a whole number} trueOrFalse {true or false} list {a list} object {an object} other {something else}}{orExpected, select, nothing {} text { or text} number { or a number} wholeNumber { or a whole number} trueOrFalse { or true or false} list { or a list} object { or an object} other { or something else}}${WAS}`,
  'field.at-least': `${MISSING}must {of, select, entries {have at least {limit, plural, one {one entry} other {# entries}}} characters {have at least {limit, plural, one {one character} other {# characters}}} other {be at least {limit}}}${WAS}`,
  'field.at-most': `${MISSING}must {of, select, entries {have at most {limit, plural, one {one entry} other {# entries}}} characters {have at most {limit, plural, one {one character} other {# characters}}} other {be at most {limit}}}${WAS}`,
  'field.one-of': `${MISSING}must be {isSeveral, select, yes {one of } other {}}{values}${WAS}`,
  'field.date': `${MISSING}must be a date such as 2027-08-03, a day of the calendar in the years 1900 to 2199${WAS}`,
  'field.clock-time': `${MISSING}must be a clock time such as 18:00${WAS}`,
  'field.instant': `${MISSING}must be an instant such as 2027-08-03T14:30:00-02:00; a + in it is written %2B${WAS}`,
  'field.id': `${MISSING}must be 1 to 64 of a-z, 0-9 and -${WAS}`,
  'field.time-zone': `${MISSING}must be an IANA zone such as "Etc/GMT+2" or "Europe/Berlin"${WAS}`,
  'field.plain-text': `${MISSING}must be plain text, without control characters${WAS}`,
  'field.no-spaces': `${MISSING}must not hold spaces or control characters${WAS}`,
  'field.crop': `${MISSING}must be the id of a crop of GET /v1/crops, such as lettuce, or in JSON an object with rows of your own${WAS}`,
  'field.air-temperature': `${MISSING}must be a temperature that air can have, in °C${WAS}`,
  'field.min-above-max': `${MISSING}must not be above the mean maximum of its month, {meanMaxC}${WAS}`,
  'field.once-each': 'must name each only once',
  'field.from-above-to': 'must not have from above to',
  'field.before-from': `${MISSING}must not be before from, {from}${WAS}`,
  'field.within-a-year': `${MISSING}must be within a year of from${WAS}`,
  'field.no-series': 'must have at least one series',
  'field.daily-or-readings': 'needs either "daily" or "readings", and not both',
  'field.room-needed': 'is needed for a bed indoors: how warm is the room?',
  'field.wetted-on-needed': 'is needed for a dry bed: on which day is it watered?',
  'field.only-dry': 'goes only with "moisture": "dry"',
  'field.bed-beside-place': 'must be an object beside a place; an id names a stored bed, which has a place of its own',
  'field.place-needed': 'is missing; a bed that is described needs its place',
  'field.place-or-bed-needed': 'must have a place, or the id of a stored bed',
  'field.crops-needed': 'is needed for window-open: which crops are waiting to be sown?',
  'field.more-than-sown': `${MISSING}must not be more than sown${WAS}`,
  'field.beside-test': 'must be left out where a test is sent: the test says more',
  'field.soil-not-rising': 'must rise from minimumC over optimumFromC and optimumToC to maximumC',
  'field.rows-at-once': 'Two rows are at {atC}; keep one row for each temperature.',
  'field.rows-without-days': 'A curve needs days at two temperatures or more; fill in "days" where seed came up.',
  'field.rows-without-percent':
    'No row has a percent above 0, so nothing would ever come up; fill in "percent" where seed came up, or leave all of them null.',
  'field.unknown-parameter':
    'is no parameter known here; {meant, select, none {/docs lists those there are} other {did you mean {meant}?}}',
  'field.goes-into-body':
    'goes into the body when the question is JSON; the query says only how the answer is written, as precision does',
  'field.not-beside-json':
    'is no parameter known here; beside a JSON question the query says only how the answer is written, as precision does',
  'field.sent-twice': 'is given twice; send it once',
  'field.contradicts': 'contradicts another parameter; send one of the two',
  'field.path-id': 'in the path must be 1 to 64 of a-z, 0-9 and -',
  'field.path-date': 'in the path must be a date such as 2027-08-03',
  'field.date-needed': 'is needed: no temperatures were sent that would say it',
  'field.from-needed': 'is needed, with to: what is kept begins on {firstDate}, after {to}',
  'field.many-days':
    'must be at most {maxDays, plural, one {# day} other {# days}} after from, by the {step, select, hour {hour} other {day}}; ask for a shorter time',
  'field.before-first': 'must not be before {firstDate}, when the temperatures begin; it was {from}',
  'field.long-before-first': 'must not be over a day before the temperatures begin; it was {from}',
  'field.below-container':
    'must be at most {maxDepthCm} in a {kind}, which is taken to be so deep; it was {depthCm}. For deeper soil say "raised-bed"',
  'field.bed-indoors':
    'names "{bed}", which is indoors; name the bed where the crop is to grow: a plan says itself what to start indoors',
  'field.before-sowing': 'must not be before the sowing, on {sowingDate}',
  'field.long-after-sowing': 'must be within {maxDays, plural, one {# day} other {# days}} of the sowing, by {by}',
  'field.day-to-come': 'must not be a day to come; today is {todaysDate}',
  'field.to-come': `${MISSING}must not be a day to come${WAS}`,
  'field.of-seeds-needed': 'is needed, as the sowing does not say how many seeds were sown: of how many are these?',
  'field.many-seedlings':
    'must not be more than the {seeds, plural, one {# seed} other {# seeds}} that were sown there, those pulled out among them; it was {counted, number}. Count fewer, or say ofSeeds',
  'field.other-crops-lot': 'names "{lot}", which is seed of {crop}; name a lot of the crop that is sown',
  'field.after-first-count':
    'must not be after the first count, on {countedOn}; say an earlier one, or DELETE the counts that are not of it',
  'field.long-before-count':
    'must be within {maxDays, plural, one {# day} other {# days}} of the last count, on {countedOn}; say a later one, or DELETE the counts that are not of it',
  'field.fewer-than-counted':
    'must not be fewer than the {seedlings, plural, one {# seedling that was} other {# seedlings that were}} counted; say more, or DELETE the counts that are not of it',
  'field.one-thermometer': 'kept is of one thermometer, and this bed has several: add {ways}',
  'field.came-by-the-day':
    "came by the day, and a bed keeps readings with their instants. Send those; days of air go to POST /v1/places/'{id}'/air, days of soil with each question.",
  'field.bed-forecast': 'is forecast; only what was measured is kept of a bed',
  'field.air-forecast': "is forecast; what is to come goes to PUT /v1/places/'{id}'/coming-days",
  'field.air-not-measured':
    "must not hold what was not measured, by its basis; what is to come goes to PUT /v1/places/'{id}'/coming-days",
  'field.not-forecast': "must be forecast; what was measured goes to POST /v1/places/'{id}'/air",
  'field.not-air': "must be air; readings of soil go to POST /v1/beds/'{id}'/readings",
  'field.private-address':
    'must be an address that others can reach; {host} is this machine’s own, or private. Whoever runs this service can allow it with ALLOW_PRIVATE_WEBHOOKS=1',
  'field.address': 'must be a whole address, such as {example}',
  'field.address-scheme': 'must begin with {schemes}',
  'field.address-user': 'must not hold a user name or password',
  'field.address-fragment': 'must not hold a fragment (#…), which is never sent',
  'field.address-placeholder': 'has the placeholder {placeholder}; known are {placeholders}',
  'field.address-host': 'must not have a placeholder in the name of the host',

  // worker, answers, garden, germination: refusals
  'busy.queue': 'Too many questions about past years wait to be worked out. Ask again in a little while.',
  'busy.deadline':
    'The service has too much to work out now, and did not come to this in time. Ask again in a little while.',
  'stopping.worker': 'The service is stopping, and works nothing out any more. Ask again in a little while.',
  'no-latitude.soil':
    'How warm the sun makes the soil under this air depends on the latitude: send where.place.latitude.',
  'no-latitude.soil.field': 'Is needed to work out soil from air.',
  'ends-too-early.soil':
    'The last temperature is of {lastDate}, over a year before {to}; send newer ones, or ask for less.',
  'ends-too-early.soil.field': 'Nothing is supposed beyond a year after {lastDate}.',
  'ends-too-early.before-wetting':
    'The last temperature is of {lastDate}, over a year before the seed is wetted; send newer ones.',
  'ends-too-early.before-count':
    'The temperatures end on {lastDate}, and the count is on {countDate}. Send them up to then, count earlier (countDays), or let "beyond" say what to suppose.',
  'ends-too-early.before-count.field':
    '"refuse" allows nothing after the last value; "seasonal-drift" and "repeat-last-week" do.',
  'not-understood.wetted-before-sowing':
    'The bed is wetted on {wettedOn}, before the sowing on {sowingDate}; then it is not dry. Say "moist", or a later wettedOn.',
  'not-understood.wetted-before-sowing.field': 'Must not be before the sowing.',
  'not-understood.wetted-after-count':
    'The seed is wetted on {wettedOn}, and the count is on {countDate}, before it can have started. Count later (countDays), or wet it earlier.',
  'not-understood.wetted-after-count.field': 'Must reach past the day of wetting.',
  'gap-too-long':
    'There is no temperature between {fromAt} and {toAt}, over 14 days. Send the missing days, or only what follows the gap, and ask about a time after it.',
  'gap-too-long.around':
    'No temperature is known of the weeks around {date}: those that are known lie too long before or after it. Send the missing days, or ask about a time that they tell of.',
  'too-few-readings':
    'Less than one whole day of temperatures is too little to go on; send at least 24 hours in a row.',
  'starts-after-sowing':
    'The temperatures begin on {firstDate}, more than a day after the seed was wetted. Send earlier ones, or a later sowing date.',
  'starts-after-sowing.field': 'No temperature is known before {firstDate}.',
  'no-past-years.beyond':
    'Fewer than {minYears} past years are known of this place. Keep or send daily minima and maxima of the air of several years, or let "beyond" be seasonal-drift, repeat-last-week or refuse.',
  'no-past-years.beyond.field': 'Needs {minYears} past years of the place.',
  'no-past-years.windows':
    '{years, plural, =0 {No past year} one {One past year} other {# past years}} of these dates can be told from the temperatures that are known, and {minYears} are needed. Send daily minima and maxima of the air of more years.',
  'no-past-years.windows.field': 'The air of these dates must be known in {minYears} years or more.',
  'no-past-years.no-minima':
    "No minima of the air are kept for this place: send its past years to POST /v1/places/'{id}'/air, ten or more of them.",
  'no-past-years.no-season':
    "From {from} to {to} no spring and no autumn is known without long gaps: send its past years to POST /v1/places/'{id}'/air, ten or more of them.",
  'no-past-years.plan':
    "A plan is made from past years, and {years, plural, =0 {no year is} one {only # is} other {only # are}} known of this bed’s place. POST daily minima and maxima of the air of {minYears} years or more to /v1/places/'{id}'/air, or PUT the place’s normals.",
  'no-readings.kept':
    'No temperatures up to today are kept of {bed, select, none {the place "{place}". POST some to /v1/places/{place}/air} other {the bed "{bed}" or its place "{place}". POST some to /v1/places/{place}/air or /v1/beds/{bed}/readings}}, or send "temperatures".',
  'unknown-crop':
    'There is no crop "{id}" here{alike, select, none {} other {; {alike} may be meant}}. Choose one of {ids}, or send rows of your own.',
  'unknown-crop.field': 'There is no such crop.',

  // contract: refusals of requests
  'foreign-origin':
    'A page of another site sent this in your browser, and your session is only for the pages of this service. Send it from there, or with the header "Authorization: Bearer" followed by your key.',
  'not-json.empty': 'The body is empty. Send the question as JSON.',
  'not-json.broken':
    'The body cannot be parsed as JSON: it breaks at line {line}, character {character}. Check quotes, commas and brackets there.',
  'not-understood.many-fields':
    'An object in the body has more than {maxFields} fields. Leave out those that the documentation does not name.',
  'not-understood.many-values':
    'The body has more than {maxValues} values. Send fewer days at a time, or the file itself as text/csv.',
  'not-understood.deep':
    'Lists and objects in the body lie more than {maxDepth} deep in one another. No question needs more than 7.',
  'too-slow': 'The request did not come whole in time. Send it again.',
  'too-slow.still':
    'Nothing more of the body came for {seconds, plural, one {# second} other {# seconds}}, so it was given up. Send it again.',
  'bad-request': 'The request cannot be read: {reason}.',
  'bad-request.address':
    'The address cannot be read: a part of it is too long, or a % in it is not followed by two hex digits.',
  'bad-request.broken-off': 'The file broke off before its end. Send it again.',
  'bad-request.headers': 'The headers are larger than 16 kB. Leave out what the service need not know.',
  'bad-request.no-http': 'This cannot be read as HTTP. Check the request line, the headers and the length.',
  'bad-request.two-hosts': 'The request has two Host headers. Send one (RFC 9112, section 3.2).',
  'bad-request.no-host': 'The request has no Host header. Send one (RFC 9112, section 3.2).',
  'not-found.address': 'There is nothing at {path}; /docs lists the addresses there are.',
  'method-not-allowed': '{path} takes {methods}, not {method}.',
  'unsupported-coding': 'The body is sent as Content-Encoding "{coding}". Send it unpacked, without that header.',
  'unsupported-media-type': 'Set Content-Type to application/json, or to text/csv for a logger’s file.',
  'unsupported-media-type.file': 'This route takes no file: set Content-Type to application/json.',
  'not-acceptable': 'This route answers in {mediaTypes}, and the Accept header allows only {accept}.',
  'key-in-address':
    'The address holds a key, and addresses are kept in histories and logs. Send the key in the header "Authorization: Bearer", and have it changed.',
  misdirected:
    'This service does not answer for the host "{host}". Ask for localhost, or have its name put into ALLOWED_HOSTS.',
  unauthorized: 'Send the header "Authorization: Bearer" followed by your key.',
  'unauthorized.unknown-key': 'This is not one of the keys of the service. Check it for letters left out or swapped.',
  'unauthorized.session':
    'What was sent is neither a key here nor a session of one. Send the header "Authorization: Bearer" followed by your key.',
  'too-many-requests':
    'More than {perMinute} {policy, select, work {answers from past years} other {requests}} a minute came. Go on in {waitS, plural, one {a second} other {# seconds}}.',
  'too-much-at-once':
    '{atOnce} answers from past years are being worked out for you already. Wait for one of them, then ask again.',
  'too-large':
    'The body is larger than this route takes: 4 MB of JSON, 256 MB of CSV, 16 kB of a form. Send fewer days or hourly readings.',
  'too-large.file':
    'The file is larger than 256 MB. Send fewer years at a time, or coarser readings: hourly ones are enough.',
  stopping: 'The service is stopping. Send this again in a little while.',
  'busy.asker-gone': 'Whoever asked this first went before it was worked out. Ask again.',
  internal: 'Something went wrong here; the instance below finds it in the log.',
  'storage-unavailable':
    'What is kept cannot be reached now. Try again in a few seconds: sending a request twice does no harm.',
  'storage-full':
    'The disk is full, so nothing was kept. Deleting still works. Try again once whoever runs this service has made room.',
  'storage-damaged':
    'The database file is damaged, gone or replaced, so nothing can be kept. Whoever runs this service has to mend it; its log says more.',
  'quota-full':
    '{used} {quota, select, places {places are kept} beds {beds are kept} sowings {sowings are kept} lots {seed lots are kept} plans {plans are kept} subscriptions {subscriptions are kept} thermometers {thermometers have readings in this bed} devices {devices belong to this bed} other {megabytes of readings and air would be kept}}, and there may be {limit}. Delete what is not needed any more, and send this again.',
  'not-found.kept':
    'No {kind, select, place {place} bed {bed} lot {lot} sowing {sowing} subscription {subscription} plan {plan} other {session}} is kept under "{id}"; GET /v1/{kind}s lists those there are.',
  'not-found.put-first':
    'No {kind, select, place {place} bed {bed} lot {lot} sowing {sowing} subscription {subscription} plan {plan} other {session}} is kept under "{id}". PUT it to /v1/{kind}s/{id} first.',
  'not-found.count': 'Nothing was counted of "{id}" on that date; GET /v1/sowings/{id} lists the counts.',
  'not-found.crop': 'There is no crop "{id}"; GET /v1/crops lists those there are.',
  'not-found.calendar':
    'There is no calendar at this address. A bed tells the whole of it, its token included, as its calendarUrl.',
  'not-found.problem': 'There is no problem of the name "{name}".',
  'not-found.readings': 'No readings are kept there of "{bed}".',
  'not-found.of-place': 'No {what} are kept for "{place}"; PUT /v1/places/\'{id}\'/{what} keeps some.',
  'unknown-place': 'No place is kept under "{id}": PUT /v1/places/{id} first.',
  'unknown-place.question':
    'No place is kept under "{id}". PUT it to /v1/places/{id} first, or send the place itself: its latitude and time zone.',
  'unknown-place.field': 'There is no such place.',
  'unknown-bed': 'No bed is kept under "{id}": PUT /v1/beds/{id} first.',
  'unknown-bed.question':
    'No bed is kept under "{id}". PUT it to /v1/beds/{id} first, or send where.place with latitude and time zone.',
  'unknown-bed.field': 'There is no such bed.',
  'unknown-lot': 'No lot is kept under "{id}": PUT /v1/lots/{id} first.',
  'unknown-lot.question': 'No lot is kept under "{id}". PUT it to /v1/lots/{id} first, or send the lot itself.',
  'unknown-lot.field': 'There is no such lot.',
  'unknown-crop.listed': 'There is no crop "{id}" here; GET /v1/crops lists those there are.',
  'not-understood.lot-of-other-crop': 'The lot "{lot}" is of {lotCrop}, not of {crop}.',
  'not-understood.lot-of-other-crop.field': 'Is of another crop: {lotCrop}.',
  'time-zone-needed.question': 'Dates mean nothing without the zone of the place: send where.place.timeZone.',
  'time-zone-needed.question.field': 'Is needed where no temperatures are sent.',
  'no-latitude.drift':
    'The drift of the season depends on the latitude: send where.place.latitude, or let "beyond" be repeat-last-week.',
  'no-latitude.drift.field': 'Is needed for seasonal-drift.',
  'too-few-readings.air':
    'No day of the series is complete, and air is kept by whole days. Send at least 18 of its 24 hours.',
  'has-beds':
    '"{place}" has beds, so it stays, and nothing was deleted. Move or delete them first, or send ?with=beds to delete them and their readings too.',
  'has-sowings':
    '"{bed}" has sowings, so it stays, and nothing was deleted. Move or delete them first, or send ?with=sowings to delete them and their counts too.',
  'has-sowings.lot':
    'The lot "{lot}" was sown, and its sowings speak of it. Delete those first, or let them name another lot.',
  'too-many-seeds':
    'Not even {maxSeeds} seeds give {plants, plural, one {a plant} other {# plants}} with a sureness of {sureness}: so few of this lot would come up in this bed. Ask for fewer plants or less sureness, or get better seed.',
  'precondition-failed.unquoted':
    'If-Match takes a tag in double quotes, as it stands in the ETag: send "{tag}" with its quotes. Nothing was done.',
  'precondition-failed.changed':
    'It has been changed since you read it, so nothing was done. GET it, and send your change again with its new ETag.',
  'precondition-failed.nothing-kept':
    'Nothing is kept here, so it cannot be in the state that If-Match names. Leave the header out to create it.',
  'precondition-failed.something-kept':
    'Something is kept here already, so nothing was done. Choose another name, or leave If-None-Match out to replace it.',
  'incomplete-days':
    '{days, plural, one {One day is} other {# days are}} left out, with less than 18 hours of readings. Send {days, plural, one {it} other {them}} again when whole.',
  'kept-in-part': 'It is kept. The rest of this answer cannot be worked out now: ask for it again in a little while.',

  // contract: problems, by their code
  'title.bad-request': 'The request cannot be read',
  'cause.bad-request': 'The request line, a header or the address is not well formed.',
  'cure.bad-request': 'Check the address for stray % signs, and the headers for what your tool adds.',
  'title.key-in-address': 'The address holds a key',
  'cause.key-in-address':
    'A key stands in the query. Addresses are kept in histories and in the logs of every server on the way.',
  'cure.key-in-address':
    'Send the key in the header "Authorization: Bearer", and have whoever runs the service change it.',
  'title.misdirected': 'This service does not answer for that host',
  'cause.misdirected':
    'The service is open to this machine alone, and the Host header names something else: a page of another site may have given its own name the address of this machine.',
  'cure.misdirected': 'Ask for localhost, or have the name that you use put into ALLOWED_HOSTS.',
  'title.too-slow': 'The request came too slowly',
  'cause.too-slow': 'Its headers, or the next piece of its body, did not come within a minute.',
  'cure.too-slow': 'Send it again; a large file over a slow line in parts of fewer days.',
  'title.not-json': 'The body is not JSON',
  'cause.not-json': 'The body says it is JSON but cannot be parsed, or is empty.',
  'cure.not-json': 'Check quotes, commas and brackets near the place named.',
  'title.not-csv': 'The file is not a table of text',
  'cause.not-csv': 'The body is empty, an archive, a picture, a page, or lines without cells that belong together.',
  'cure.not-csv': 'Export the readings as CSV: one row to a line, a date and time and a temperature in each.',
  'title.no-readings': 'No readings were found',
  'cause.no-readings':
    'The file is a table, but no column holds dates, or no column holds temperatures, or no row holds both. Or nothing is kept yet of the bed or place that the question names.',
  'cure.no-readings':
    'Write the date and time and the temperature into each row; "errors" says what was found instead. Of a place or bed, send its air or its readings first.',
  'title.not-understood': 'Something in the request cannot be used',
  'cause.not-understood': 'A field is missing, unknown, of the wrong kind or out of range.',
  'cure.not-understood': 'Each entry of "errors" names a field and what it should be.',
  'title.too-large': 'The request is too large',
  'cause.too-large': 'The body is larger than this route takes.',
  'cure.too-large': 'Send fewer days, or coarser readings: hourly ones are enough.',
  'title.unsupported-media-type': 'The body is of a kind this route does not take',
  'cause.unsupported-media-type': 'The Content-Type is neither application/json nor, where a file is taken, text/csv.',
  'cure.unsupported-media-type': 'Set Content-Type to what the body is.',
  'title.unsupported-coding': 'The body is packed',
  'cause.unsupported-coding':
    'The Content-Encoding header says that the body is compressed, and bodies are taken as they are.',
  'cure.unsupported-coding': 'Send the body unpacked, without Content-Encoding.',
  'title.not-acceptable': 'No answer of the kind asked for',
  'cause.not-acceptable': 'The Accept header allows nothing that this route gives.',
  'cure.not-acceptable': 'Accept application/json.',
  'title.not-found': 'There is nothing here',
  'cause.not-found': 'The address, or the thing it names, does not exist.',
  'cure.not-found': 'See /docs for the addresses there are.',
  'title.method-not-allowed': 'That cannot be done here',
  'cause.method-not-allowed': 'The address exists, but not for this method.',
  'cure.method-not-allowed': 'The Allow header names the methods it takes.',
  'title.unauthorized': 'A key is needed',
  'cause.unauthorized':
    'This service was started with keys, and the request does not carry one of them. WWW-Authenticate says whether no key came (Bearer) or a wrong one (error="invalid_token").',
  'cure.unauthorized':
    'Send "Authorization: Bearer" and your key; in a browser, give the key once and a cookie stands for it.',
  'title.foreign-origin': 'The request comes from another site',
  'cause.foreign-origin':
    'A page of another site sent it in a browser that has a session here, or wants to begin or to end one. Or something between the browser and this service changes the Host header.',
  'cure.foreign-origin':
    'Send it from a page of this service, or with "Authorization: Bearer" and your key; what stands before the service has to hand the Host header on.',
  'title.precondition-failed': 'It is no longer as you knew it',
  'cause.precondition-failed':
    'If-Match names another state of the thing than the one that is kept, or nothing is kept; or If-None-Match says that nothing may be there, and something is.',
  'cure.precondition-failed':
    'GET it, look at what has changed, and send your change again with the new ETag, or under another name.',
  'title.has-beds': 'The place has beds',
  'cause.has-beds': 'A place is deleted only when no bed lies in it, so that no readings are lost by mistake.',
  'cure.has-beds': 'Move or delete its beds first, or send "with=beds" to delete them too.',
  'title.has-sowings': 'It has sowings',
  'cause.has-sowings':
    'A bed or a seed lot is deleted only when no sowing names it, so that no counts are lost by mistake.',
  'cure.has-sowings': 'Move or delete its sowings first; for a bed, "with=sowings" deletes them too.',
  'title.quota-full': 'As much is kept as may be',
  'cause.quota-full':
    'Whoever runs the service lets an owner keep only so many things of a kind, or so many megabytes.',
  'cure.quota-full':
    'Delete what is not needed any more; GET /v1/usage tells what there is. Or ask whoever runs the service for more.',
  'title.too-many-requests': 'Too many requests',
  'cause.too-many-requests': 'This owner, or this address, has asked more often than the service allows in a minute.',
  'cure.too-many-requests': 'Wait as many seconds as Retry-After says.',
  'title.too-much-at-once': 'Too much at once',
  'cause.too-much-at-once':
    'So many answers from past years are being worked out for this owner, or this address, as may be at one time.',
  'cure.too-much-at-once': 'Wait until some of them have come, or as many seconds as Retry-After says.',
  'title.storage-unavailable': 'What is kept cannot be reached',
  'cause.storage-unavailable':
    'The database cannot be used now; questions that bring their own temperatures are answered as ever.',
  'cure.storage-unavailable':
    'Send the request again after as many seconds as Retry-After says; sending it twice does no harm.',
  'title.storage-full': 'There is no room to keep anything',
  'cause.storage-full':
    'The disk of the database is full. Nothing was changed; questions are answered, and deleting works.',
  'cure.storage-full':
    'Whoever runs the service has to make room. Send the request again after as many seconds as Retry-After says; sending it twice does no harm.',
  'title.storage-damaged': 'The database is damaged',
  'cause.storage-damaged':
    'The file of the database is damaged, or was removed or replaced while the service ran. Nothing was changed; questions that bring their own temperatures are answered as ever.',
  'cure.storage-damaged':
    'Waiting mends nothing. Whoever runs the service has to restart it, with a backup if need be; the log names the file.',
  'title.busy': 'Too much is being worked out already',
  'cause.busy':
    'Questions that take seconds, about past years, wait for their turn; no more may wait, or this one has waited too long.',
  'cure.busy': 'Send the request again after as many seconds as Retry-After says.',
  'title.stopping': 'The service is stopping',
  'cause.stopping': 'It was told to stop, and takes on nothing more. Nothing was changed.',
  'cure.stopping':
    'Send the request again after as many seconds as Retry-After says: another instance, or the service once it runs again, answers it.',
  'title.unknown-crop': 'No such crop',
  'cause.unknown-crop': 'The crop is not one of those in GET /v1/crops.',
  'cure.unknown-crop': 'Use one of their ids, or send rows of your own.',
  'title.unknown-place': 'No such place',
  'cause.unknown-place': 'The place is named by an id that nothing is kept under.',
  'cure.unknown-place': 'Send the place itself: latitude, longitude and time zone.',
  'title.unknown-bed': 'No such bed',
  'cause.unknown-bed': 'The bed is named by an id that nothing is kept under.',
  'cure.unknown-bed': 'Send the place, and the bed if it is not open ground.',
  'title.unknown-lot': 'No such lot',
  'cause.unknown-lot': 'The seed lot is named by an id that nothing is kept under.',
  'cure.unknown-lot': 'PUT the lot first, or send what is known of the seed itself.',
  'title.too-many-seeds': 'More seeds than could be sown',
  'cause.too-many-seeds':
    'So little of the seed would become plants that not even ten million give the number as surely as wanted.',
  'cure.too-many-seeds': 'Ask for fewer plants or less sureness, or get better seed.',
  'title.time-zone-needed': 'The time zone is not known',
  'cause.time-zone-needed': 'Days, or stamps without an offset, mean nothing without the zone of the place.',
  'cure.time-zone-needed': 'Send the zone as an IANA name such as Etc/GMT+2.',
  'title.no-past-years': 'Too few past years are known',
  'cause.no-past-years': 'The question needs the air of past years, and too few are sent or kept for this place.',
  'cure.no-past-years':
    'Send the air of more past years, by the day. For a forecast, or let "beyond" be seasonal-drift, repeat-last-week or refuse.',
  'title.no-latitude': 'The latitude is not known',
  'cause.no-latitude': 'The sun over a bed, and the drift of the season, depend on the latitude, which was not sent.',
  'cure.no-latitude': 'Send the latitude; soil temperatures alone can do without, if "beyond" is repeat-last-week.',
  'title.starts-after-sowing': 'The temperatures begin after the sowing',
  'cause.starts-after-sowing': 'Nothing is known of the soil when the seed was sown.',
  'cure.starts-after-sowing': 'Send earlier temperatures, or a later sowing date.',
  'title.ends-too-early': 'The temperatures end too early',
  'cause.ends-too-early': 'They do not reach the time that the answer needs, and nothing may be supposed after them.',
  'cure.ends-too-early': 'Send more days, count earlier, or let "beyond" say what to suppose.',
  'title.too-few-readings': 'Too few temperatures',
  'cause.too-few-readings': 'Less than a whole day is known.',
  'cure.too-few-readings': 'Send at least 24 hours in a row.',
  'title.gap-too-long': 'The gap is too long to fill',
  'cause.gap-too-long': 'For over 14 days around the sowing nothing was measured.',
  'cure.gap-too-long': 'Send the missing days, or only what follows the gap.',
  'title.choose-medium': 'Soil or air?',
  'cause.choose-medium': 'Neither the column nor the query says where the thermometer was.',
  'cure.choose-medium': 'Send "medium" with one of the choices.',
  'title.choose-unit': 'Which unit?',
  'cause.choose-unit': 'The temperatures do not prove whether they are °C, °F or K.',
  'cure.choose-unit': 'Send "unit" with one of the choices.',
  'title.choose-column': 'Which column?',
  'cause.choose-column': 'More than one column fits what was asked for.',
  'cure.choose-column': 'Send "column" or "timeColumn" with one of the choices.',
  'title.choose-date-order': 'Day or month first?',
  'cause.choose-date-order':
    'The dates could be read in more than one order, and nothing in the whole column proves which.',
  'cure.choose-date-order': 'Send "dateOrder" with one of the choices.',
  'title.choose-clock': 'Which clock?',
  'cause.choose-clock':
    'The stamps run on unbroken where the clocks at the place change, so the logger keeps another time.',
  'cure.choose-clock': 'Send "clock" with one of the choices.',
  'title.choose-decimal-mark': 'Point or comma?',
  'cause.choose-decimal-mark': 'Commas part the cells and may stand within the numbers too.',
  'cure.choose-decimal-mark': 'Send "decimalMark" with one of the choices.',
  'title.internal': 'Something went wrong here',
  'cause.internal': 'A fault of the service, not of the request.',
  'cure.internal': 'Try again; if it stays, tell whoever runs the service the instance named.',
  'problem-page.status': 'Problem {problem}, HTTP status {status}.',
  'problem-page.cause': 'Why',
  'problem-page.cure': 'What to do',
} as const satisfies Catalogue;
