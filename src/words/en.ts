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
    '{about, select, windows {No past years are known: each date is judged by one usual year, made from the place’s normals, in which no day is odd. How often it fails cannot be told.} other {After the last value, on {lastDate}, the soil is taken to go on as the place’s normals make it in a usual year, from today’s soil: no past years are known. The ranges are wide for it.}}',
  'past-years':
    '{about, select, windows {Each date is judged by what it would have done in {years, plural, one {# past year} other {# past years}}, and counted as one of them more or less alike: rain, pests and whether the ground can be worked are left out.} other {After the last value, on {lastDate}, the soil is taken to go on as in each of {years, plural, one {# past year} other {# past years}}, from today’s soil. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.}}',
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
    '{about, select, soil {The last dates lie {daysAhead, plural, one {# day} other {# days}} after the last value: so far ahead this is what the season usually brings rather than an estimate.} other {The sowing lies {daysAhead, plural, one {# day} other {# days}} after the last value. So far ahead this is what the season usually brings rather than a forecast; ask again when later temperatures are known.}}',
  'share-for-percent':
    'A germination of {germinationPercent} % is taken as sent: {germinationPercent} seeds in a hundred. If {meantPercent} % was meant, send {meantPercent}.',
  'hot-first-day':
    'In its first day the seed lies {hours, plural, one {# hour} other {# hours}} above {hotThresholdC}, when heat stops it most easily. Sow in the evening, in moist soil.',
  extrapolated:
    'For {hours, plural, one {# hour} other {# hours}} the seed lies colder or warmer than the crop was ever tested; a straight line to nothing is drawn there.',
  'killing-heat':
    'Wet seed lies above {limitC} for more than {limitHours, plural, one {# hour} other {# hours}} in all: what is not up by then is taken as dead.',
  slow: '{about, select, crop {{crop, select, asparagus {Slow seed: half was up in 10 days at {warmC}, in 24 at {mildC} and in 53 at {coolC}. Keep the row moist and leave it undisturbed.} parsley {Do not give up: in the field the first seedlings came no sooner than two and a half weeks after sowing, and more followed for three weeks. Only 14 to 50 came from a hundred seeds.} other {Even at its best half was up only after 14 days, and at {coolC} after 27. Keep the row moist and mark it, for example with a few radishes.}}} other {It comes up more than three times slower than at its best: seed that lies long is open to rot, crusts and pests.}}',
  'old-test': 'The lot was tested on {testedOn}, over a year before the sowing; test it again.',
  // Soil temperatures, from src/answers/soil.
  room: 'Soil in a covered tray is taken to be as warm as the room, {roomC} by day and night; in an open wet tray it lies about {belowK} lower, over a heat mat higher.',
  'soil-from-air':
    'The soil is worked out from the air by heat conduction below the surface of {kind, select, open_ground {open ground} raised_bed {a raised bed} pot {a pot} tray {a tray} indoors {a bed indoors} other {a bed}}: {cover, select, bare {bare soil} grass {short grass} mulch {mulch} black_film {black film} clear_film {clear film} fleece {fleece} other {soil}}, {moisture, select, rain {as the rain leaves it} moist {kept moist} wet {kept wet} dry {dry until it is watered} other {moist}}, {shadePercent, plural, =0 {unshaded} one {# % shaded} other {# % shaded}}{containerDepthCm, select, none {} other {, taken to be {containerDepthCm} deep and {containerWidthCm, select, none {to stand among others} other {{containerWidthCm} wide, its sides in the sun}}}}. {checkedOn, select, grassland {Daily means at {checkedDepthCm} erred by {meanErrorK} (root mean square, the middle one of 99 grass-covered stations); the swing of day and night is not checked there.} other {On bare ground this was compared with one plot in one dry year: at {checkedDepthCm} daily means erred by {meanErrorK} and daily maxima by {maxErrorK} (root mean square).}}{isChecked, select, yes {} other { This bed’s own kind, cover, water or shade has not been compared with measurements.}}',
  'soil-before':
    'The soil remembers the weeks before: it is followed from {fromDate}, and before that the usual course of the year is supposed{isShort, select, yes {, which can still be felt; send air temperatures of two months before} other {}}.',
  'climate-unknown':
    '{lacks, select, rain {The annual rain is not known: an average climate stands in. Send where.place.annualRainMm for a better estimate.} other {Less than a year of air temperatures is known: an average climate stands in. Send a year or more, and where.place.annualRainMm, for a better estimate.}}',
  'depth-moved':
    'The probe reads at {probeDepthCm} and the seed lies at {depthCm}: {direction, select, down {its readings are carried down by heat conduction.} other {the swing that the waves of day and night lost on the way down is given back to them. The hours so found err by {errorFromK} to {errorToK} ({checkedFromCm} to {checkedToCm}, one bare plot).}}',
  'soil-not-measured':
    'Part of the soil series sent says itself that it was not measured: it is used as it is, as unsure as it says or as such values usually are.',
  'snow-supposed':
    'After days of frost snow is taken to lie, which keeps the soil from the air: under it there is hardly a swing, and the soil stays warmer than frost. Where the ground is bare of snow it is colder than this.',
  'air-means-only':
    'Some days of the air are known by their mean alone. Their sunshine and their swing are told from how far the other days swing, or {swingK} where no day does: the soil can come out degrees off. Send each day’s minimum and maximum.',
  'air-not-used':
    'The bed stands indoors, so the air temperatures sent are not used: the room’s own temperature (roomC) is.',
  'depth-not-moved':
    'The probe reads at {probeDepthCm} and the seed lies at {depthCm}; under two days of readings in a row are too few to tell the one from the other, and they are used as they are.',
  'probe-too-deep':
    'The probe at {probeDepthCm} is too deep to show the swing of day and night at {depthCm}: {isLevelUsed, select, yes {it corrects the level of what the air gives.} other {its daily mean is used, with the swing of a usual day. Put a probe nearer to the seed, or send air temperatures.}}',
  'room-as-measured':
    'The probe’s last day was {heldC} on average and the room is said to be {roomC}: after the readings the probe’s is held.',
  'probe-swings-oddly':
    'By day and night the probe swings {swing, select, less {far less} other {far more}} than this air makes such a bed. Check its depth and where it lies, and the kind of bed.',
  'probe-and-air-disagree':
    'The probe reads {offK} {direction, select, warmer {warmer} other {colder}} than this air makes such a bed, day after day. Check the unit, the depth, the place and the kind of bed, and where the probe lies.',
  'unlike-the-air':
    'The probe at {depthCm} reads what nothing in the air explains in {hours, plural, one {# hour} other {# hours}}, first on {firstDate} at {firstTime}: was it pulled out, or did it lie in the sun? The readings are used as they are, but teach the model nothing.',
  'hours-filled':
    '{hours, plural, one {# hour} other {# hours}}, {percent, plural, one {# %} other {# %}} of those asked about up to the last value, had no temperature; they were filled from what the air makes of the bed, or from the hours around them.',
  'coarse-step':
    'Readings more than {stepHours, plural, one {# hour} other {# hours}} apart miss the afternoon and the night. Read more often.',
  'no-swing':
    'Means alone cannot show hot afternoons or cold nights: no spells are looked for, and the dates can err. Send each day’s minimum and maximum, or readings by the hour.',
  'some-days-without-swing':
    'Some days since sowing are known by their mean alone, so hot afternoons and cold nights on them are not seen.',

  // Remedies, from src/answers/forecast.
  'action.shade':
    'Shade the row by half through the hot hours: about {coolerK} ({coolerFromK} to {coolerToK}) cooler at the seed in the afternoon. These degrees are worked out, not measured in a seedbed. Take the shade off once seedlings show.',
  'action.keep-wet':
    'Keep the surface {moisture, select, moist {moist} other {wet}} through the hot hours: about {coolerK} ({coolerFromK} to {coolerToK}) cooler at the seed in the afternoon; the evidence is thin. Water lightly and often, and follow local rules where watering is restricted.',
  'action.cover':
    '{about, select, cold {Warm the bed before sowing: fleece or a perforated film over it has kept the soil at {depthCm} {changeFromK} to {changeToK} warmer on average; it is no help on clear, still frosty nights.} other {{cover, select, mulch {Cover the row loosely with straw or a board through the heat: about {changeK} ({changeFromK} to {changeToK}) cooler at the seed in the afternoon, worked out and not measured there. It keeps the nights warmer as well. Look under it every day, and take it off when the first seedling shows.} black_film {Take the black film off through the heat: about {changeK} ({changeFromK} to {changeToK}) cooler at the seed in the afternoon.} clear_film {Take the clear film off through the heat: about {changeK} ({changeFromK} to {changeToK}) cooler at the seed in the afternoon.} other {Take the fleece off through the heat: about {changeK} ({changeFromK} to {changeToK}) cooler at the seed in the afternoon.}}}}',
  'action.sow-in-evening':
    'Sow at {at} rather than at {insteadOf}, with cool water: the seed’s first hours, when heat stops it most easily, fall in the night.',
  'action.wait':
    '{about, select, cold {{freeDate, select, none {Wait for warmer soil: these temperatures are looked at up to {lookedToDate}, and by then no later sowing is seen to be up and to have met no such cold.} other {Wait: a sowing on {freeDate} lies in soil above {thresholdC} until most of it is up, as far as these temperatures tell.}}} other {{freeDate, select, none {Whether waiting helps is not in sight: these temperatures are looked at up to {lookedToDate}, and by then no later sowing is seen to be up and to have met no such heat.} other {Wait: a sowing on {freeDate} meets no such heat before most of it is up, as far as these temperatures tell.}}}}',
  'action.start-indoors':
    '{about, select, cold {Start the seed in pots indoors in the warm and plant out when the soil has warmed; keep any heater to its maker’s instructions.} other {Start the seed in a tray in a cool room, below {thresholdC} by day and night, and plant out what stands transplanting.}}',
  'action.presprout-cool':
    'Let the seed sprout on damp paper in a cool place, about {fromC} to {toC}, until the first root tips show, then sow it in moist soil in the evening: seed on its way is not so easily stopped by heat. If the seed is treated, wear gloves and follow its label.',
  'action.presprout-warm':
    'Let the seed sprout on damp paper in the warm, about {fromC} to {toC}, and sow it in soil above {thresholdC}: the first hours of drinking are when cold hurts most. If the seed is treated, wear gloves and follow its label.',

  // Sowing windows and frost dates, from src/answers/windows.
  'good-date':
    'A date is good in a year if {sharePercent, plural, one {# %} other {# %}} of what the lot can give is up within {maxDays, plural, one {# day} other {# days}}, {ifHeldPercent, plural, one {# %} other {# %}} even without seed held too long by heat or cold{frost, select, tender {, and no frost comes within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling} tender_planted_out {, and no frost comes within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling; later frost is not counted, as its harvest is not counted from the sowing} half_hardy {, and it freezes no harder than {frostC} within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling} other {}}.',
  'thin-years':
    '{years, plural, one {# year is} other {# years are}} few: the ends of the windows may be off by a week.',
  'frost-unknown':
    'Without air temperatures frost cannot be told from soil: the windows do not heed it. Send the air’s daily minima.',
  'frost-hardy': 'Frost is not counted against a hardy crop; young seedlings can still suffer in a hard one.',
  'heat-ahead':
    '{isAll, select, yes {In all past years} other {In about {inYears, plural, one {#} other {#}} of {ofYears, plural, one {# past year} other {# past years}}}} soil above {thresholdC} came before such a sowing was up. When it comes nobody can tell so far ahead: have shade and water ready.',
  'why.best-date':
    'It is {isEarliest, select, yes {the earliest date with two sure weeks around it} other {the surest date}}: sown then, {sharePercent, plural, one {# %} other {# %}} {ofYears, plural, =0 {is up within {maxDays, plural, one {# day} other {# days}} in a usual year} one {was up within {maxDays, plural, one {# day} other {# days}} in about {inYears, plural, one {#} other {#}} of # year} other {was up within {maxDays, plural, one {# day} other {# days}} in about {inYears, plural, one {#} other {#}} of # years}}{halfDays, select, none {} other {; half was up in {halfDays} days ({halfFromDays} to {halfToDays})}}.',
  'frost-in-the-air':
    'Frosts are those of a thermometer in the air; on a clear still night a bed can be several degrees colder.',
  'frost-left-out':
    'No day is given where so few seasons are known that they cannot tell it (for 10 and 90 % some nine with a frost are needed), or where a frost comes less often than that.',
  // Cautions about crops, from src/germination.
  'treated-seed':
    'Seed sold as treated, often brightly dyed, carries a pesticide: wear gloves, wash afterwards, keep it from children, animals and birds, and never eat it or feed it. Follow the label; ask local advisers about leftovers.',
  'cold-wet-soil':
    'In cold, wet soil the seed lies long, and rots or is eaten before it is up. Wait for warmer soil rather than sow early, and do not sow just before a cold rain.',
  'short-lived-seed':
    'The seed keeps for about one year. Buy it fresh, or test some on damp paper before you sow an older packet.',
  'beds-take-longer':
    'The chart counts days much like those in which onion roots appear, not shoots. In a bed the seedlings may need about twice as long, so do not give the row up early.',
  'slower-elsewhere':
    'Another set of published figures makes this crop more than twice as slow at {atC}. Give it time.',
  'autumn-slows':
    'Sown in late summer, the plants grow into short, cool days and are ready later than the days to harvest say: allow about two weeks more, or 80 days where a packet says 65.',
  'weak-lot':
    'The one lot of seed behind the chart seems to have been poor: {crop, select, celery {40 seedlings from a hundred seeds at {atC}{coolerC, select, none {} other {, between 70 at {coolerC} and 97 at {warmerC}}}.} cauliflower {never more than 63 seedlings from a hundred seeds, at {atC}.} eggplant {never more than 60 seedlings from a hundred seeds, and 21 at {atC}.} other {52 seedlings from a hundred seeds at {atC}, where nearly all came in another study.}} A sound packet may well do better.',
  'hot-side-untested':
    'Nobody timed this crop in soil warmer than {testedToC} for the chart. {there, select, quickest {It was still quickest there, so what heat does to it beyond that is a guess.} best {It did best there, so what heat does to it beyond that is a guess.} fewer {There, {seedlings} seedlings came from a hundred seeds, against {coolerSeedlings} at {coolerC}; hotter soil is a guess.} other {There, {seedlings} seedlings still came from a hundred seeds; hotter soil is a guess.}}',
  'years-to-harvest': 'Plants grown from seed are left uncut for about two years, so no harvest date is given here.',
  'frost-on-shoots': 'The roots live through winter, but a frost kills the young shoots that stand above ground.',
  'no-sound-seedlings-hot':
    'At {hotC} some seed came up after 28 days, but no seedling was sound. Do not read those days as a reason to sow.',
  'seed-cluster':
    'Each “seed” is a small dried fruit with several seeds in it, so more seedlings may come than you sowed. Thin each clump to one plant.',
  crust:
    '{crop, select, carrot {Heavy rain soon after sowing can set a crust that the fine seedlings cannot lift, and was a major cause of poor rows in three years of trial sowings.} other {Heavy rain on clay soil can set a crust that seedlings cannot lift. Sow shallow and keep the surface open.}}',
  'bolts-after-cold':
    '{crop, select, beet {Two to three weeks below {belowC}, once the plants have several true leaves, can send them to seed instead of making roots. Do not hurry the first sowing.} celery {Cold on young plants sends them to seed; warmth while they are raised held that back. Keep them from ten days or more of nights under about {belowC}.} other {Cold below about {belowC} sends plants to seed that are already thick: from about seven leaves, counting those still hidden, in a spring kind, from ten in an autumn one. Sets are thick from the first: plant small ones.}}',
  'onion-rows-stand-in':
    'The handbook has no bunching onion. The days and percentages are onion’s, which is another species.',
  'white-lisbon-heat':
    'In a published lot of White Lisbon, a salad onion that is really Allium cepa, the tenth of the seed that heat holds hardest stopped near {stoppedC}.',
  'cold-side-untimed':
    'At {coldC} 27 seedlings came from a hundred seeds, but nobody noted when. Dates for soil under {belowC} are a guess.',
  'keep-moist':
    'Carrot seed stops when the soil around it dries and goes on once it is wet again. Keep the top of the bed moist until the row is up.',
  'beds-differ':
    'Beds gave {crop, select, lettuce {only {fromSeedlings, plural, one {#} other {#}}} other {anything from {fromSeedlings, plural, one {#} other {#}}}} to {toSeedlings, plural, one {#} other {#}} of every hundred seedlings that the laboratory promised.',
  'long-heat':
    'The longer wet seed lay at {hotC}, from one to four days, the less of it came up afterwards at {afterC}. Kinds differ widely.',
  'needs-light':
    'The seed needs light to sprout, though cool nights after warm days can stand in for it. Press it in and barely cover it, and never let it dry.',
  'hates-heat':
    'Steady warmth stops it: best at {bestFromC} to {bestToC}, or with days of {dayFromC} to {dayToC} and nights of {nightFromC} to {nightToC}. The chart contradicts itself at {contraryC}, so we count that as too hot.',
  'no-cold-soil':
    '{crop, select, okra {No seed came up at {coldC} or below, and at {coolC} it took 27 days. It is quickest at {bestFromC} to {bestToC}.} other {No seed came up at {coldC} or below; at {coolC} it took 13 days, at {bestFromC} only 4. Wait for warm soil.}}',
  'cold-side-untested':
    'Nobody tested this crop in soil under {belowC} for the chart{crop, select, muskmelon {, and only 38 seedlings came from a hundred seeds there. Wait for warm soil.} other {. Colder soil is a guess; sow it indoors in the warm.}}',
  'stopped-by-heat':
    'Hot soil stops the seed: 99 seedlings in a hundred seeds at {goodC}, 12 at {hotC}. Kinds differ: the limit lay between {limitFromC} and {limitToC} in 22 of them.',
  'sleeps-after-heat':
    'Seed held by heat often starts once the soil cools, but long heat can put it into a sleep that cooling alone does not end. Sow in the evening, shade the row and keep it wet.',
  'some-need-light':
    'Some kinds need light to sprout, and one that did not came to need it after lying wet at {hotC}. Cover the seed thinly.',
  'bolts-in-heat-and-long-days':
    'Heat, long days and drought send the plants to seed, and the leaves turn bitter. What is sown from late spring on is best of a slow-bolting kind, shaded and never dry.',
  'cold-first-day':
    '{crop, select, lima_bean {Cold while the dry seed takes its first water can harm it for good; cold that comes after it has drunk in the warm did not. Wait for soil of {waitForC} or more.} snap_bean {Very dry seed is injured as it swells, and more readily in cold water. Wait for soil of {waitForC} or more.} other {Soil under {belowC} in the first day or two after sowing can harm the seed for good. Wait for {waitForC}, or {sugaryFromC} to {sugaryToC} for the sugary and extra-sweet kinds.}}',
  'heat-thins':
    '{crop, select, lima_bean {Heat thins the row rather than slows it: 88 seedlings in a hundred seeds at {goodC}, but 2 at {hotC}.} snap_bean {Heat thins the row rather than slows it: 97 seedlings in a hundred seeds at {goodC}, but 47 at {hotC}, and just as soon.} other {Strong heat thins the row: 83 seedlings in a hundred seeds at {goodC}, 46 at {hotC}.}}',
  'hard-seed':
    'Some of the seed has a coat that keeps water out, up to 24 in a hundred in one study. Soak it overnight in lukewarm water and sow it at once, but never soak treated seed.',
  'day-length':
    'Bulbs form once the day is long enough for the kind: 11 to 13 hours for short-day onions, 13 to 14 for intermediate, 14 and more for long-day ones, which suit places beyond about 35° of latitude. Sow early: small plants make small bulbs.',
  soak: 'Soaking the seed in water for 12 to 36 hours before sowing brought more of it up. Do not soak treated seed.',
  'cool-soil': 'It likes cool soil: 89 seedlings from a hundred seeds at {goodC}, 51 at {warmC}, 1 at {hotC}.',
  'wet-soil-rot':
    'Pea seed stands cold but rots in wet ground, wrinkled kinds more than smooth ones. Sow in soil that drains, and do not soak the seed in cold water.',
  'wants-warmth':
    '{crop, select, tomato {Half was up in 6 days at {bestFromC} to {bestToC}, in 14 at {coolC} and in 43 at {coldC}; at {nothingC} nothing came. Where springs are cold, start it indoors.} other {Half was up in 8 days at {bestFromC} to {bestToC}, but in 25 at {coolC}, and at {coldC} hardly any came. Start it indoors in the warm.}}',
  'cold-thins': 'Cold soil thins the row: 42 seedlings in a hundred seeds at {coldC}, 76 at {coolC}, 97 at {mildC}.',
  'careful-above-20':
    'Heat begins to stop the seed above {aboveC} and stopped all of it at {stoppedC}, though cool nights help. Much of what is stopped can still start when the soil cools.',
  'not-too-wet':
    'In soil that is even a little too wet the seed coat turns slimy and shuts out air. Keep the bed moist, not soaked.',
  'bolts-in-long-days':
    'Days of 12 to 15 hours, by kind, send the plants to seed, and warmth hurries it; then the leaves are over. Sow early in spring or when summer is ending.',
  'whole-days':
    'The chart counts whole days, and in warm soil it says 1: that may be half a day or a day and a half. Read it as “very quick”, not as an hour.',
  'cool-and-light':
    'In soil of {coolC} or less light held the seed of one kind back, so cover it well. In the same study ten days wet at {coldC} did no harm: our cold warning errs on the safe side.',
  'seedless-kinds': 'Seed of seedless kinds starts poorly. Sow it indoors in warm soil that is moist but never soaked.',

  // What crops are called within a sentence.
  'crop.asparagus': 'asparagus',
  'crop.beet': 'beet',
  'crop.bunching-onion': 'bunching onion',
  'crop.cabbage': 'cabbage',
  'crop.carrot': 'carrot',
  'crop.cauliflower': 'cauliflower',
  'crop.celery': 'celery',
  'crop.cucumber': 'cucumber',
  'crop.eggplant': 'eggplant',
  'crop.lettuce': 'lettuce',
  'crop.lima-bean': 'lima bean',
  'crop.muskmelon': 'muskmelon',
  'crop.okra': 'okra',
  'crop.onion': 'onion',
  'crop.parsley': 'parsley',
  'crop.parsnip': 'parsnip',
  'crop.pea': 'pea',
  'crop.pepper': 'pepper',
  'crop.radish': 'radish',
  'crop.snap-bean': 'snap bean',
  'crop.spinach': 'spinach',
  'crop.sweet-corn': 'sweet corn',
  'crop.tomato': 'tomato',
  'crop.turnip': 'turnip',
  'crop.watermelon': 'watermelon',
  'crop.own-rows': 'own crop',
  // Pictures, from src/plot.
  'picture.sown': '{crop}, sown on {on}{bed, select, none {} other {, {bed}}}',
  'picture.half-up':
    'Half {tense, select, was {was} other {is}} up about {on}{range, select, span {, between {from} and {to}} open {, from {from} to after the count} other {}}. {seeds, select, none {Of a hundred seeds} other {Of {seeds} seeds}} expect {fromSeedlings, plural, one {#} other {#}} to {toSeedlings, plural, one {# seedling} other {# seedlings}}.',
  'picture.none-up':
    '{reason, select, not_at_this_temperature {Nothing comes up at these temperatures.} other {Nothing is up by the count on {by}.}}',
  'picture.event':
    '{event, select, first {First tenth} half {Half} other {Nine tenths}} {on}{range, select, span {, between {from} and {to}} open {, from {from} to after the count} other {}}{slowTo, select, none {} other {; in slow beds to {slowTo}}}',
  'picture.no-event':
    '{event, select, first {First tenth} half {Half} other {Nine tenths}}: {reason, select, not_by_count_day {not by the count on {by}} other {not at these temperatures}}',
  'picture.spell': '{kind, select, hot {hot {dates}, up to {peak}} other {cold {dates}, down to {peak}}}',
  'picture.part':
    '{part, select, measured {measured} modelled {worked out} other {expected}}{dates, select, none {} other { {dates}}}',
  'picture.temperature': 'The temperature at the seed is {from} to {to}.',
  'picture.no-temperature': 'No temperature at the seed is known.',
  'picture.likes': 'The crop likes {from} to {to}.',
  'picture.at-seed':
    'Temperature at the seed, {depthCm} deep{from, select, none {} other {; shaded: it likes {from} to {to, select, none {} other {{to}}}}}',
  'picture.today': 'Today is {on}.',
  'picture.count': 'The count is on {on}.',
  'picture.day': '{day, select, sown {sown} today {today} count {count} other {best}} {on}',
  'picture.seedlings-up':
    'Seedlings up, of a hundred seeds, as in a laboratory; beds give {fromSeedlings, plural, one {#} other {#}} to {toSeedlings, plural, one {#} other {#}}',
  'picture.when-to-sow': 'When to sow {crop}{bed, select, none {} other {, {bed}}}',
  'picture.season': 'Sow {dates}{bestDate, select, none {} other {; best on {bestDate}}}.',
  'picture.no-season': 'No date of this season is sure enough.',
  'picture.odds':
    '{years, plural, =0 {Judged by one usual year: how often a date fails is not known} one {In how many of # year each date was good; dashed: {surenessPercent, plural, one {# %} other {# %}}, as sure as was asked for} other {In how many of # years each date was good; dashed: {surenessPercent, plural, one {# %} other {# %}}, as sure as was asked for}}',
  'picture.open': '{dates, select, none {open to sow} other {open {dates}}}',
  'picture.closed':
    '{reason, select, too_cold {too cold} too_hot {too hot} too_slow {too slow} other {frost to come}}{dates, select, none {} other { {dates}}}',
  'picture.closed-dates':
    'Closed, {reason, select, too_cold {too cold} too_hot {too hot} too_slow {too slow} other {frost to come}} {dates}.',
  'picture.more': '{more, plural, one {# more} other {# more}}',
  'picture.best': 'best date',
  'picture.lane':
    '{name}: {dates, select, none {no date is sure enough.} other {open {dates}{bestDate, select, none {} other {, best on {bestDate}}}.}}',
  'picture.crop': '{crop}{latinName, select, none {} other { ({latinName})}}',
  'picture.curve':
    '{from, select, none {{fastest, select, none {No temperature at which it comes up was timed.} other {It comes up fastest at {fastest}, in {days} days.}}} other {It likes soil of {from} to {to} (shaded){fastest, select, none {} other {, and comes up fastest at {fastest}, in {days} days}}.}}',
  'picture.days-to-half': 'Days until half of those that come are up',
  'picture.seedlings': 'Seedlings of a hundred seeds',
  'picture.value-at': '{value} at {at}',
  'picture.days-at': 'Days until half is up: {values}.',
  'picture.seedlings-at': 'Seedlings of a hundred seeds: {values}.',
  'picture.cell':
    '{cell, select, timed {tested} none_came {tested, and nothing came} other {never tested}}{at, select, none {} other {: {at}.}}',
  'picture.limit': '{limit, select, minimum {least {at}} maximum {most {at}} other {held by heat from {at}}}',
} as const satisfies Catalogue;
