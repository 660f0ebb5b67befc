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
  lot: '{about, select, seeds {Nothing is told of how much of the seed germinates: it is taken to be as good as the best of the chart, {chartPercent} in a hundred.} other {No germination test of the seed was given; it is taken to be as good as the table’s. Test ten seeds on damp paper if the packet is old.}}',
  normals:
    '{about, select, plan {No past years are known: the plan is made for one usual year, from the place’s normals. How often it fails cannot be told.} other {After the last value, on {lastDate}, the soil is taken to go on as the place’s normals make it in a usual year, from today’s soil: no past years are known. The ranges are wide for it.}}',
  'past-years':
    '{about, select, plan {The plan is made from what each sowing would have done in {years, plural, one {# past year} other {# past years}}; a week counts as reached where it was in half of them or more.} other {After the last value, on {lastDate}, the soil is taken to go on as in each of {years, plural, one {# past year} other {# past years}}, from today’s soil. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.}}',
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
  // Words that came as words.
  'as-said': '{words}',

  // What is kept of a bed: garden/bed.
  'source-stale':
    '{ageHours, select, none {The place’s source has not been asked yet; it will be within minutes.} other {The place’s source is behind. Its last good answer, {ageDays, plural, =0 {{ageHours, plural, =0 {less than an hour} one {# hour} other {# hours}}} one {# day} other {# days}} old, stays in use.}}',
  'source-failing':
    '{ageHours, select, none {The place’s source has never answered well, in {failures, plural, one {one try} other {# tries}}.} other {The place’s source has failed {failures, plural, one {one try} other {# tries}} running. Its last good answer, {ageDays, plural, =0 {{ageHours, plural, =0 {less than an hour} one {# hour} other {# hours}}} one {# day} other {# days}} old, stays in use.}}',
  'readings-to-come':
    'Readings of days to come, up to {lastDate}, are kept of this bed and left out; today is {todayDate}. If a logger’s clock or a year is wrong, DELETE /v1/beds/{bed}/readings?from={deleteFrom} and send them again.',

  // Seed lots, and how much to sow: garden/lots.
  'lot-test':
    '{germinated} of {sown, plural, one {# seed} other {# seeds}} germinated. The range is what such a count leaves open, 80 times in 100 (Jeffreys’ interval).',
  'lot-packet':
    '{germinationPercent} % is taken as it is told: from how many seeds it was counted is not known, so it has no range.',
  'lot-unknown': 'Neither a test nor the percent on the packet is told, so how much germinates is not known.',
  'lot-not-aged':
    'The percent is not aged: {why, select, partly {that takes both the moisture of the seed and the temperature of the store} undated {the day on which it was found is not told} unpublished {no constants that can be relied on are published for this crop} other {the viability equation is held to for {moistureFromPercent} to {moistureToPercent} % of moisture and {storeFromC} to {storeToC}}}.',
  'lot-aged':
    'Aged over {days, plural, one {a day} other {# days}} at {moisturePercent} % of moisture and {storeC}, both taken to have stayed so, by the viability equation (Ellis, Roberts 1980; constants of {sources}). Constants from single lots, so take it as a rough guide.',
  'lot-constants-differ':
    'More than one set of constants is published, and they disagree: "aged" gives what each leaves, the percent lies midway between, and the range spans them.',
  'lot-constants-of-kin':
    'The constants were measured on {kin, select, maize {maize for grain} beet {sugar beet} rape {rape (Brassica napus)} other {brown mustard (Brassica juncea)}}{otherKin, select, nothing {} maize { and maize for grain} beet { and sugar beet} rape { and rape (Brassica napus)} other { and brown mustard (Brassica juncea)}}.',
  'lot-age-unknown': 'Neither when it was packed nor when it was tested is told, so nothing is said of its age.',
  'older-seed-later':
    'Older seed also comes up later. No general figure is published for how much, so that is left out.',
  'test-before-use':
    'Even in good storage this seed is counted on for about {storageYears, plural, one {a year} other {# years}} (Knott’s Handbook, 1997), and it is older. Test some on damp paper before you sow it; wear gloves if it is treated.',
  'percent-or-share':
    'A germination of {germinationPercent} % is taken as sent: {germinationPercent} seeds in a hundred. If {meantPercent} % was meant, send {meantPercent}.',
  field:
    'Of a hundred seeds that germinate, {isRange, select, yes {{fromPercent} to {toPercent}} other {{fromPercent}}} become plants, {whose, select, own {as you say} other {as beds have given}}{isRange, select, yes {; all shares between are taken to be equally likely, which is our assumption} other {}}.',
  'one-lot-one-bed':
    'All seeds share one lot and one bed, and how good both are is not known exactly: where they are poor, all of the sowing is. So more seed is asked for than a division by their means gives.',
  'poor-seed':
    'Of a hundred such seeds about {percent} germinate, and what does is weak: test it once more, or buy fresh seed rather than sow so many.',

  // How a sowing stands, and what counts have taught: garden/sowing and garden/learning.
  'verdict.wait':
    '{countedOn, select, none {Nothing is to be seen yet: {firstDate, select, none {by its temperatures nothing comes before the count on {countDate}} other {the first are expected from {firstDate} on}}.} other {{found, select, some {{seedlings, plural, one {One seedling was counted} other {# seedlings were counted}}{ofSeeds, select, none {} other { of {ofSeeds} seeds}} on {countedOn}, and more may come.} other {None were up on {countedOn}{mostRowsShow, select, yes {, where most rows would show some by then. In a slow bed they may still come: count again in a few days before you give it up.} other {; that it lives is {livesPercent, plural, =0 {all but ruled out} =100 {all but certain} one {likely in # of 100 such rows} other {likely in # of 100 such rows}}.{isPast, select, yes { Count again in a few days.} other {}}}}}}}}{moistUntilDate, select, none {} other { Keep it moist until {moistUntilDate}.}}',
  'verdict.count-now':
    '{lastCountOn, select, none {{isPast, select, yes {All should be up} other {Seedlings are due}}, and nobody has counted. Count them, even if there is nothing: without a count nothing can be said.} other {The last count, on {lastCountOn}, is old. Count again, even if there is nothing.}}',
  'verdict.late':
    '{found, select, some {{seedlings, plural, one {One seedling was counted} other {# seedlings were counted}}{ofSeeds, select, none {} other { of {ofSeeds} seeds}} on {countedOn}: it is late, not lost, and more may come.} other {{mostRowsShow, select, yes {None were up on {countedOn}, where most rows would show some by then. In a slow bed they may still come: count again in a few days before you give it up.} other {It is late, not lost: that it lives is {livesPercent, plural, =0 {all but ruled out} =100 {all but certain} one {likely in # of 100 such rows} other {likely in # of 100 such rows}}. Count again in a few days.}}}}{moistUntilDate, select, none {} other { Keep it moist until {moistUntilDate}.}}',
  'verdict.lost':
    'That nothing will come of it any more is {lostPercent, plural, =0 {all but ruled out} =100 {all but certain} one {likely in # of 100 such rows} other {likely in # of 100 such rows}}. Sow again.',
  'verdict.thin':
    '{seedlings, plural, one {One seedling was counted} other {# seedlings were counted}}{ofSeeds, select, none {} other { of {ofSeeds} seeds}} on {countedOn}, {beforeOn, select, none {fewer than beds give of this crop, and hardly any are to come. Fill the gaps with a new sowing, or plant closer.} other {and {beforeSeedlings} on {beforeOn}. Something has taken them, or one of the counts is wrong: look for slugs, birds and seedlings fallen over at the soil, count again, and sow again what is bare.}}',
  'verdict.good':
    '{seedlings, plural, one {One seedling was counted} other {# seedlings were counted}}{ofSeeds, select, none {} other { of {ofSeeds} seeds}} on {countedOn}: {isThinned, select, yes {with those pulled out, } other {}}as many as beds give, or more.',
  counts:
    'From {counts, plural, =0 {} one {one count of this sowing} other {# counts of this sowing}}{otherSowings, plural, =0 {} one {{counts, plural, =0 {the counts} one { and those} other { and those}} of one other sowing in this bed} other {{counts, plural, =0 {the counts} one { and those} other { and those}} of # other sowings in this bed}}{isLost, select, yes {: of 95 in 100 such rows or more nothing comes.} other {{timeFactorMiddle, select, none {{standPercentMiddle, select, none { nothing can be told yet that the crop’s own ranges do not say.} other {: {crop} gives {standPercentMiddle} of 100 that a laboratory would{standPercentFrom, select, none {} other {{standPercentTo, select, none {} other { ({standPercentFrom} to {standPercentTo})}}}}.}}} other {: {crop} takes {timeFactorMiddle} times as long as the chart says{timeFactorFrom, select, none {} other {{timeFactorTo, select, none {} other { ({timeFactorFrom} to {timeFactorTo})}}}}{standPercentMiddle, select, none {} other {, and gives {standPercentMiddle} of 100 that a laboratory would{standPercentFrom, select, none {} other {{standPercentTo, select, none {} other { ({standPercentFrom} to {standPercentTo})}}}}}}.}}}}',
  'task.sow-again':
    '{isTooLate, select, yes {It is too late this season to sow again.} other {Sow again. {by, select, none {Whether there is still time this season cannot be told from what is kept.} other {{from, select, none {There is time} other {It is time for it from {from} on, and}} until {by}.}}}}',
  'task.fill-gaps':
    '{isTooLate, select, yes {It is too late this season to fill the gaps with a new sowing.} other {Fill the gaps with a new sowing. {by, select, none {Whether there is still time this season cannot be told from what is kept.} other {{from, select, none {There is time} other {It is time for it from {from} on, and}} until {by}.}}}}',
  'task.count': 'Count what is up, even if there is nothing.',
  'task.keep-moist': 'Keep the seed moist until {to}. Where watering is restricted, the local rules go first.',
  'task.mind-heat': 'Heat above {thresholdC} at the seed.',
  'task.mind-cold': 'Soil below {thresholdC} harms this seed.',
  'task.thin':
    'Thin the row to its spacing once the seedlings touch; water first, so that those that stay are not torn.',
  'task.harden-off': 'Set the trays out by day, longer each day, and take them in at night.',
  'task.plant-out':
    'Plant out if nights allow; look at the forecast first, and keep fleece at hand. The room is taken to be at {roomC}.',
  'task.harvest': 'The first may be ready.',
  'frost-before-harvest':
    'Frost ends {crop} about {endDate} in the middle of past years, before any of it is ready: under glass or a cover it may go on.',

  // Plans: garden/plan.
  'gap.too-hot':
    '{crop} for these weeks would have to come up in soil that is too hot for it in most years, even under shade, and cannot be brought on in trays in time.',
  'gap.too-cold':
    '{crop} for these weeks would have to come up, or be planted out, while it is too cold for it in most years.',
  'gap.frost':
    '{isTender, select, yes {Frost would take {crop} before these weeks in most years.} other {Hard frost would take {crop} before these weeks in most years; under a cover it may stand.}}',
  'gap.too-late': '{crop} for these weeks would have had to be sown before today.',
  'gap.maturity-unknown':
    'How long {crop} takes to its harvest is not known here: bulbs wait for the length of day that suits the kind, some crops for years, and of rows of your own nothing is told. Sow it when a sowing window is open.',
  'start-indoors':
    '{roomC, select, none {Or start it in trays in a cool room, and plant it out when it is fit.} other {Start it in trays in a room of {roomC}, and plant it out when it is fit and nights bear it. A sowing in the bed would not reach these weeks in most years.}}',
  shade:
    '{hotHours, select, none {Shade the row by half until seedlings show: without it too little would come up in most years. What shade does was worked out, not measured.} other {In the middle of the years the seed lies {hotHours} hours in soil hotter than {hotThresholdC} before half is up. Shade the row by half through the hot hours, and take the shade off once seedlings show.}}',
  'sow-in-evening':
    'Sow in the evening and water with cool water: the seed’s first hours, when heat stops it most easily, then fall in the night. Follow local rules where watering is restricted.',
  'lies-long':
    'The seed lies long in cold soil, where it may rot or be eaten: a cover of fleece, or trays indoors, would be surer.',
  harvest:
    'Published days to maturity are {fromDays} to {toDays} from {countedFrom, select, sowing {sowing; they are counted from half emergence, less the days the chart gives at {nominalC}} other {planting out}}. A sowing is picked from {pickFromDays} to {pickToDays} days after that, around the middle of them, and is the harvest of {weeks, plural, one {one week} other {# weeks}} (common practice, no source). Days shorter than {fullPaceHours} hours slow growth, to half its pace at {halfPaceHours} (a rule of thumb, common practice, no source).',
  'even-emergence':
    'Sowings are spaced so that they come up, and are ready, at even distances: closer together where the soil cools, further apart where it warms.',
  'chart-time':
    'Half is up when the chart says; beds have taken up to {timesInBeds} times as long, and then all is ready so much later.',
  seeds:
    'Seeds are counted for one plant to each one wanted, of seed as good as the chart’s, by the stand of that date and what beds have given.',
  'stays-put': '{crop} does not bear to be moved, so nothing is started indoors.',
  indoors:
    'Trays are taken to be as warm as the room, {roomC}; plants are fit {weeksInTrays, plural, one {# week} other {# weeks}} after coming up, harden off for {hardeningDays, plural, one {# day} other {# days}}, and go out when nights bear them (common practice, no source).',
  'thin-years': '{years, plural, one {# year is} other {# years are}} few: how sure a sowing is can hardly be told.',
  'frost-unknown':
    'Without air temperatures frost cannot be told from soil: the plan does not heed it. Send the air’s daily minima.',
  'weather-of-growth':
    'What weather does to {crop} after it is up is left out but for frost and short days: heat makes some crops bolt, drought and pests take others.',

  // A bed's calendar: garden/calendar.
  'event.sow': 'Sow {crop}{where, select, indoors { indoors} other {}}',
  'event.sow.detail':
    '{seeds, select, none {Sow} other {Sow {seeds, plural, one {# seed} other {# seeds}}}} {where, select, indoors {indoors, for {bed}} other {in {bed}}}{time, select, none {, as planned} other {, at {time}}}. Seed that is treated: wear gloves and follow its label.',
  'event.keep-moist': 'Keep {crop} moist',
  'event.keep-moist.detail':
    'Seed that has begun to sprout dies when it dries out. Water gently, as local rules on watering allow.',
  'event.look-for-seedlings': 'Look for {crop} seedlings',
  'event.look-for-seedlings.detail':
    '{halfDate, select, none {Less than half is looked for by the day of the count} other {Half of those that come are up about {halfDate}}}. In the bed {fromPercent} to {toPercent} of a hundred seeds are looked for; count what you see.',
  'event.look-for-seedlings.planned': 'By past years half of this planned sowing is up about now.',
  'event.thin': 'Thin {crop}',
  'event.thin.detail':
    'Most should be up and large enough to choose from: take out the weakest, and note how many you pull.',
  'event.feed': 'Feed {crop}',
  'event.feed.detail':
    'Where the soil is poor or the leaves are pale. Give no more than the label says; rich soil needs nothing more.',
  'event.harden-off': 'Harden off {crop}',
  'event.harden-off.detail':
    'Out by day, longer each day, first in the shade and out of the wind; in again for the night.',
  'event.plant-out': 'Plant out {crop}',
  'event.plant-out.detail':
    'Into {bed}. By past years the nights bear it from now on: look at the forecast first, and wait where it says frost.',
  'event.first-harvest': 'First harvest of {crop}',
  'event.first-harvest.detail': 'The earliest kinds are ready in {bed} about now, by their published days.',
  'event.last-harvest': 'Late harvest of {crop}',
  'event.last-harvest.detail': 'The latest kinds are ready in {bed} about now, by their published days.',
  'event.sow-again': 'Last day to sow {crop} again',
  'event.sow-again.detail': 'Should this sowing of {sownOn} fail, a new one is good up to this day, by past years.',
  'event.heat': '{severity, select, severe {Severe heat} other {Heat}} over {crop} seed',
  'event.heat.detail': 'Up to {peakC} at the seed; above {thresholdC} heat holds it.',
  'event.frost': 'Frost may harm {crops}',
  'event.frost.detail':
    'A night of about {minC} in the air is forecast, and {bed} can be colder under a clear sky. Cover the plants before dusk, and uncover them by day.',

  // What is new: garden/alerts.
  'news.hot-spell':
    'Heat lies ahead of the {crop} sown on {sownOn} in bed {bed}: from {from} to {to} it gets up to {peakC} at the seed, which is held back above {thresholdC} ({severity, select, severe {severe} other {mild}}).{spells, plural, one {} other { In all # hot spells lie ahead of it.}} Shade and water help; follow local watering rules.',
  'news.emergence-shift':
    'Half of the {crop} sown on {sownOn} in bed {bed} {halfOn, select, none {is no longer expected to be up by the count{beforeOn, select, none {} other {; {beforeOn} was told before}}.} other {{beforeOn, select, none {is expected to be up on {halfOn}; before, it was not expected by the count.} other {is now expected to be up on {halfOn}, {shiftDays, plural, one {# day} other {# days}} {isLater, select, yes {later} other {earlier}} than {beforeOn} as told before.}}}}',
  'news.frost':
    'Frost may harm seedlings of the {crop} sown on {sownOn} in bed {bed}: on {date} the air is forecast to fall to {minC}{nights, plural, one {} other {, and frost is forecast for # nights in all}}. Cover them for the night; a forecast of the air says little of hollows and still, clear nights, which are colder.',
  'news.window-open':
    'From now until {to} is a good time to sow {crop} in bed {bed}, as past years at the place say. Look at the ground first: whether it can be worked is not known here.',

  // Why a source could not be asked, and a message not be delivered: garden/store.
  'source.format': 'The format "{format}" is not known.',
  'source.address': 'The address of the source cannot be used:',
  'source.redirects':
    'The source sends on to another address more than {maxRedirects, plural, one {once} other {# times}}.',
  'source.redirect-nowhere': 'The source sends on to an address that is no address.',
  'source.redirect-unencrypted': 'The source sends on from https to an address without encryption.',
  'source.private':
    'The source’s host {host} is not a public address. Whoever runs this service can allow it with ALLOW_PRIVATE_SOURCES=1.',
  'source.connection':
    'The source {fault, select, unaccepted {did not accept the connection in time} unanswered {did not begin to answer{seconds, select, none {} other { within {seconds} s}}} silent {fell silent in the middle of its answer} unnamed {has a host name that leads nowhere} refused {refused the connection} broken {broke off the connection} unreachable {cannot be reached} untrusted {has no certificate that can be trusted} malformed {does not answer as HTTP asks} slow {took longer{seconds, select, none {} other { than {seconds} s}} to answer} other {could not be asked{errorCode, select, none {} other { ({errorCode})}}}}.',
  'source.pages-slow': 'The source took too long with all its pages.',
  'source.status':
    'The source answered with status {status}{reason, select, missing {: there is nothing at this address} refusing {: it does not answer this service} troubled {: it is in trouble itself} moved {: it sends on to somewhere else} other {}}.',
  'source.too-often': 'The source has been asked too often (429) and wants to be left alone for a while.',
  'source.coding': 'The source packs its answer in a way that was not asked for.',
  'source.damaged': 'The packed answer of the source is damaged.',
  'source.too-large': 'The answer of the source is larger than {megabytes} MB.',
  'source.empty': 'The answer of the source is empty.',
  'source.not-json':
    '{isPage, select, yes {The source answered with a web page instead of JSON.} other {The answer of the source is not JSON.}}',
  'source.not-form':
    'The answer of the source is not {form, select, archive {a daily archive’s JSON, with properties.parameter and parameters} grid {a forecast grid’s JSON, with temperature, maxTemperature or minTemperature} observations {an observations API’s JSON, with a list under value} other {a Datastream’s JSON, with its unitOfMeasurement}}{at, select, none {} other { (at {at})}}.',
  'source.no-air': 'The file of the source holds no air temperatures.',
  'source.file': 'The source’s file cannot be used:',
  'source.unit':
    'The source {value, select, none {measures} other {gives {value}}} in {unit, select, none {no unit} other {"{unit}"}}; °C, °F or K is needed.',
  'source.unit-untold': 'The source does not say its unit. Ask for it with $expand=Datastream in the address.',
  'source.no-date': 'The source has a value for "{text}", which is no date.',
  'source.no-time': 'The source has a {value} for "{text}", which is no time.',
  'source.no-observations': 'The source has no observations for the time asked for.',
  'source.other-host': 'The next page of the source lies at another host.',
  'source.circle': 'The pages of the source go round in a circle.',
  'source.pages':
    'The source has more than {maxPages, plural, one {# page} other {# pages}} for the time asked for. Ask for larger ones with $top, or for less with the placeholder from.',
  'source.mixed': 'The source answers with several Datastreams; name one in the address.',
  'source.no-day': 'The source answered, but with no day that can be used.',
  'source.no-room':
    'Its days are not kept, as there is no room for more than {megabytes} megabytes of readings and air. Delete what is not needed.',
  'source.not-kept': 'The service could not keep what the source said.',
  'delivery.address': 'The address{isRedirect, select, yes { that it sends on to} other {}} cannot be used:',
  'delivery.redirects': 'It sends on to another address more than {maxRedirects, plural, one {once} other {# times}}.',
  'delivery.redirect-nowhere': 'It sends on to an address that is no address.',
  'delivery.redirect-scheme': 'It sends on to another scheme, {scheme}.',
  'delivery.private':
    'Its host {host} is not a public address. Whoever runs this service can allow it with ALLOW_PRIVATE_WEBHOOKS=1.',
  'delivery.connection':
    'It {fault, select, unaccepted {did not accept the connection in time} unanswered {did not begin to answer{seconds, select, none {} other { within {seconds} s}}} silent {fell silent in the middle of its answer} unnamed {has a host name that leads nowhere} refused {refused the connection} broken {broke off the connection} unreachable {cannot be reached} untrusted {has no certificate that can be trusted} malformed {does not answer as HTTP asks} slow {took longer{seconds, select, none {} other { than {seconds} s}} to answer} other {could not be asked{errorCode, select, none {} other { ({errorCode})}}}}.',
  'delivery.status':
    'It answered with status {status}{reason, select, missing {: there is nothing at this address} refusing {: it does not take messages from this service} troubled {: it is in trouble itself} moved {: it sends on to somewhere else} other {}}.',
  'delivery.gone': 'It answered with status 410: it wants no more messages.',
  'delivery.too-often': 'It has been sent too much (429) and wants to be left alone for a while.',
  'delivery.not-sent': 'The service could not send it.',
  'delivery.key-lost': 'Its secret was lost. DELETE the subscription, and PUT it again for a new one.',

  // The names of crops within a sentence.
  'crop.asparagus': 'asparagus',
  'crop.lima-bean': 'lima bean',
  'crop.snap-bean': 'snap bean',
  'crop.beet': 'beet',
  'crop.cabbage': 'cabbage',
  'crop.carrot': 'carrot',
  'crop.cauliflower': 'cauliflower',
  'crop.celery': 'celery',
  'crop.sweet-corn': 'sweet corn',
  'crop.cucumber': 'cucumber',
  'crop.eggplant': 'eggplant',
  'crop.lettuce': 'lettuce',
  'crop.muskmelon': 'muskmelon',
  'crop.okra': 'okra',
  'crop.onion': 'onion',
  'crop.bunching-onion': 'bunching onion',
  'crop.parsley': 'parsley',
  'crop.parsnip': 'parsnip',
  'crop.pea': 'pea',
  'crop.pepper': 'pepper',
  'crop.radish': 'radish',
  'crop.spinach': 'spinach',
  'crop.tomato': 'tomato',
  'crop.turnip': 'turnip',
  'crop.watermelon': 'watermelon',
  'crop.own-rows': 'own rows',
} as const satisfies Catalogue;
