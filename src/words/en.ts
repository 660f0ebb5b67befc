import type { Catalogue } from './facts.js';

/** Start and end of every field fault: whether a value was sent, and which. */
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
  lot: '{about, select, seeds {Nothing is told of how much of the seed germinates: it is taken to be as good as the best of the chart, {chartPercent} in a hundred.} other {No germination test of the seed was given; it is taken to be as good as the table’s. Test ten seeds on damp paper if the packet is old.}}',
  normals:
    '{about, select, plan {No past years are known: the plan is made for one usual year, from the place’s normals. How often it fails cannot be told.} windows {No past years are known: each date is judged by one usual year, made from the place’s normals, in which no day is odd. How often it fails cannot be told.} other {After the last value, on {lastDate}, the soil is taken to go on as the place’s normals make it in a usual year, from today’s soil: no past years are known. The ranges are wide for it.}}',
  'past-years':
    '{about, select, plan {The plan is made from what each sowing would have done in {years, plural, one {# past year} other {# past years}}; a week counts as reached where it was in half of them or more.} windows {Each date is judged by what it would have done in {years, plural, one {# past year} other {# past years}}, and counted as one of them more or less alike: rain and pests are left out.} other {After the last value, on {lastDate}, the soil is taken to go on as in each of {years, plural, one {# past year} other {# past years}}, from today’s soil. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.}}',
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
    '{about, select, cold {{freeDate, select, none {Wait for warmer soil: these temperatures are looked at up to {lookedToDate}, and by then no later sowing is seen to be up and to have met no such cold.} other {Wait: a sowing on {freeDate} lies in soil above {thresholdC} until most of it is up, {hoursLeft, plural, =0 {} one {but for # hour, } other {but for # hours, }}as far as these temperatures tell.}}} other {{freeDate, select, none {Whether waiting helps is not in sight: these temperatures are looked at up to {lookedToDate}, and by then no later sowing is seen to be up and to have met no such heat.} other {Wait: a sowing on {freeDate} meets {hoursLeft, plural, =0 {no such heat} one {only # such hour} other {only # such hours, few of them on any day,}} before most of it is up, as far as these temperatures tell.}}}}',
  'action.start-indoors':
    '{about, select, cold {Start the seed in pots indoors in the warm and plant out when the soil has warmed; keep any heater to its maker’s instructions.} other {Start the seed in a tray in a cool room, below {thresholdC} by day and night, and plant out what stands transplanting.}}',
  'action.presprout-cool':
    'Let the seed sprout on damp paper in a cool place, about {fromC} to {toC}, until the first root tips show, then sow it in moist soil in the evening: seed on its way is not so easily stopped by heat. If the seed is treated, wear gloves and follow its label.',
  'action.presprout-warm':
    'Let the seed sprout on damp paper in the warm, about {fromC} to {toC}, and sow it in soil above {thresholdC}: the first hours of drinking are when cold hurts most. If the seed is treated, wear gloves and follow its label.',

  // Sowing windows and frost dates, from src/answers/windows.
  'good-date':
    'A date is good in a year if {sharePercent, plural, one {# %} other {# %}} of what the lot can give is up within {maxDays, plural, one {# day} other {# days}}, {ifHeldPercent, plural, one {# %} other {# %}} even without seed held too long by heat or cold{frost, select, tender {, and no frost comes within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling} tender_planted_out {, and no frost comes within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling; later frost is not counted, as its harvest is not counted from the sowing} half_hardy {, and it freezes no harder than {frostC} within {frostFreeDays, plural, one {# day} other {# days}} of the first seedling} other {}}. Whether the ground can be worked is left out.',
  'thin-years':
    '{about, select, plan {{years, plural, one {# year is} other {# years are}} few: how sure a sowing is can hardly be told.} other {{years, plural, one {# year is} other {# years are}} few: the ends of the windows may be off by a week.}}',
  'frost-unknown':
    '{about, select, plan {Without air temperatures frost cannot be told from soil: the plan does not heed it. Send the air’s daily minima.} other {Without air temperatures frost cannot be told from soil: the windows do not heed it. Send the air’s daily minima.}}',
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
    '{crop, select, beet {Two to three weeks below {belowC}, once the plants have several true leaves, can send them to seed instead of making roots. Do not hurry the first sowing.} cabbage {Weeks of nights below about {belowC} can send plants to seed instead of hearts once their stems are as thick as a pencil. Plant small ones out early, not large ones.} carrot {Sown very early, some may run to seed: weeks of nights below about {belowC} count once plants have eight leaves or more.} celery {Cold on young plants sends them to seed; warmth while they are raised held that back. Keep them from ten days or more of nights under about {belowC}.} turnip {Weeks of nights below about {belowC} can send young plants to seed. Do not hurry the first sowing.} other {Cold below about {belowC} sends plants to seed that are already thick: from about seven leaves, counting those still hidden, in a spring kind, from ten in an autumn one. Sets are thick from the first: plant small ones.}}',
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

  // Names of crops within a sentence.
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
  'crop.head-lettuce': 'head lettuce',
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
    '{reason, select, too_cold {too cold} too_hot {too hot} too_slow {too slow} too_late {too late} other {frost to come}}{dates, select, none {} other { {dates}}}',
  'picture.closed-dates':
    'Closed, {reason, select, too_cold {too cold} too_hot {too hot} too_slow {too slow} too_late {too late} other {frost to come}} {dates}.',
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

  // readings: reasons why a row was dropped or is doubtful; each continues the row's value
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

  // readings: questions about a file
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

  // basics: faults of a field
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
  'field.missing-or-near': 'is missing; send it, or the name of a town as "near"',
  'field.bed-or-place': 'must stand alone: name one of a bed, a place, a town (near) or coordinates',
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

  // The garden.
  'as-said': '{words}',
  'source-stale':
    '{ageHours, select, none {The place’s source, {source}, has not been asked yet; it will be within minutes.} other {The place’s source, {source}, is behind. Its last good answer, {ageDays, plural, =0 {{ageHours, plural, =0 {less than an hour} one {# hour} other {# hours}}} one {# day} other {# days}} old, stays in use.}}',
  'source-failing':
    '{ageHours, select, none {The place’s source, {source}, has never answered well, in {failures, plural, one {one try} other {# tries}}.} other {The place’s source, {source}, has failed {failures, plural, one {one try} other {# tries}} running. Its last good answer, {ageDays, plural, =0 {{ageHours, plural, =0 {less than an hour} one {# hour} other {# hours}}} one {# day} other {# days}} old, stays in use.}}',
  'readings-to-come':
    'Readings of days to come, up to {lastDate}, are kept of this bed and left out; today is {todayDate}. If a logger’s clock or a year is wrong, DELETE /v1/beds/{bed}/readings?from={deleteFrom} and send them again.',
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
  'weather-of-growth':
    '{isJudged, select, yes {Frost, warmth and the length of the days decide when {crop} is ready; drought, pests and the kind sown are left out.} other {What weather does to {crop} after it is up is left out but for frost and short days: heat makes some crops bolt, drought and pests take others.}}',
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
  'news.hot-spell':
    'Heat lies ahead of the {crop} sown on {sownOn} in bed {bed}: from {from} to {to} it gets up to {peakC} at the seed, which is held back above {thresholdC} ({severity, select, severe {severe} other {mild}}).{spells, plural, one {} other { In all # hot spells lie ahead of it.}} Shade and water help; follow local watering rules.',
  'news.emergence-shift':
    'Half of the {crop} sown on {sownOn} in bed {bed} {halfOn, select, none {is no longer expected to be up by the count{beforeOn, select, none {} other {; {beforeOn} was told before}}.} other {{beforeOn, select, none {is expected to be up on {halfOn}; before, it was not expected by the count.} other {is now expected to be up on {halfOn}, {shiftDays, plural, one {# day} other {# days}} {isLater, select, yes {later} other {earlier}} than {beforeOn} as told before.}}}}',
  'news.frost':
    'Frost may harm seedlings of the {crop} sown on {sownOn} in bed {bed}: on {date} the air is forecast to fall to {minC}{nights, plural, one {} other {, and frost is forecast for # nights in all}}. Cover them for the night; a forecast of the air says little of hollows and still, clear nights, which are colder.',
  'news.window-open':
    'From now until {to} is a good time to sow {crop} in bed {bed}, as past years at the place say. Look at the ground first: whether it can be worked is not known here.',
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

  // Sources of air, and outgoing messages.
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
    'The answer of the source is not {form, select, archive {a daily archive’s JSON, with properties.parameter and parameters} grid {a forecast grid’s JSON, with temperature, maxTemperature or minTemperature} observations {an observations API’s JSON, with a list under value} columns {daily columns as JSON, with daily.time, temperature_2m_max and temperature_2m_min} timeseries {a time series as GeoJSON, with properties.timeseries and its units} point {a point’s JSON, with properties.forecastGridData} other {a Datastream’s JSON, with its unitOfMeasurement}}{at, select, none {} other { (at {at})}}.',
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

  // answers/windows and readings: air minima that frost dates leave out, and the position of a thermometer
  'frost-hollow':
    'This thermometer has had frost in {summer, select, south {December, January and February} other {June, July and August}} too. It may lie in a frost hollow, or its dates are wrong. Ask for the frost dates of gardens near you: they may have weeks more.',
  'doubtful-minimum':
    '{days, plural, one {On {date} the low was {minC}} other {On # days, first on {date} with {minC}, the low was}} far below the nights before and after, while the highs hardly moved. Check {days, plural, one {that reading} other {those readings}}: frost dates leave {days, plural, one {it} other {them}} out.',

  // growth and answers: risks to a row, and remedies
  'risk.seedcorn-maggot':
    'Sow into warm soil a week or two after {peakDate}, or cover the row with fine net. Flies of generation {brood}, whose maggots eat sprouting seed, should be at their most about then{spread, select, days { ({fromDate} to {toDate})} other {}}. Fresh manure and just-dug green matter draw them.',
  'risk.onion-maggot':
    'Net the row by {fromDate}, firm the soil, and clear away old onions. Onion flies of generation {brood} should be at their most about {peakDate}{spread, select, days {, and until {toDate} in some years} other {}}.',
  'risk.cabbage-maggot':
    'Net the row from sowing on. Root flies of generation {brood} should lay most about {peakDate}{spread, select, days { ({fromDate} to {toDate})} other {}}.',
  'risk.carrot-rust-fly':
    '{brood, plural, one {Sow after {toDate} to miss the first flight of carrot flies, or net the row. They should come out about {peakDate}{spread, select, days {, from {fromDate} on} other {}}.} other {Net the row by {fromDate}: flight # of carrot flies should come out about {peakDate}{spread, select, days {, and by {toDate} in most years} other {}}. Sowing later does not lower its harm.}} Thin in the evening, and water after it.',
  'risk.carrot-weevil':
    'Sow where no carrots, celery or parsley grew last year, or net the row. Carrot weevils should be at their most about {peakDate}{spread, select, days { ({fromDate} to {toDate})} other {}}. They lay once plants have about four leaves.',
  'risk.damping-off':
    'Sow thinly, let air in, and keep the soil just moist, never wet. Seed that lies slowly in cool soil rots, or its seedlings topple.',
  'pest-dates':
    'Pest dates follow from the warmth of {years, plural, one {# past year} other {# past years}} alone. A pest need not live near you. Follow local advice, and the label of whatever you use.',

  // garden: plants that wait in their trays
  'planting-out-unknown':
    'Wait for your last frost before {crop} goes out: no past years tell of your nights. Add years of daily highs and lows to see a date.',

  // answers and germination: what keeps the gardener safe
  'electricity-near-water':
    'Unplug lamps and heat mats before you water. Use only such as are made for damp places, on a safety switch, with plugs above any drip.',
  'mould-on-paper':
    'Look at the damp paper every day. Throw mouldy seed away with its paper, do not breathe over it, and wash your hands.',
  'compost-dust':
    'Damp compost down before you handle it, keep your face away from the open bag, and wash your hands afterwards. Its dust can carry germs that make you gravely ill (Legionella).',
  'hot-clear-film':
    'Lift clear film once the first seedlings show, and on sunny days before that. Under it the sun can scald them.',
  'heat-for-you': 'Work early or late on hot days, and take water with you. Stop when you feel dizzy.',
  'burning-sap':
    'Wear gloves and long sleeves when you thin or cut it on a bright day. The sap on skin and the sun together can burn and blister; wash it off at once.',
  'look-alikes':
    'Eat only what you sowed yourself. Deadly wild plants of the same family, such as hemlock, look much like it.',
  // garden: triage of a row, and why little came up
  'do.wait':
    '{found, select, some {Wait: some are up, and more may come.} other {Wait: about {livingRows} in {ofRows} such rows still {livingRows, plural, one {comes} other {come}} up.{bareCounts, plural, one { A single count can miss what is about to show.} other {}}}} Look again on {lookOn}.{again, select, no {} then { Still bare then? Sow again.} other { Still bare on {againOn, select, none {} other {{againOn}}}? Then sow again.}}{isAlike, select, yes { Sowing again now would lose about as many days of harvest, and seed as well.} other {}}{moistUntilDate, select, none {} other { Keep it moist until {moistUntilDate}.}}',
  'do.count': 'Count what is up, even if there is nothing. Without a count nothing can be said.',
  'do.sow-again':
    '{sureness, select, lost {Lost.} probably {Probably lost ({lostRows} in {ofRows}).} other {Perhaps lost ({lostRows} in {ofRows}), but there is little time left.}} {from, select, none {Sow again now{by, select, none {} other {; the last good day is {by}}}.} other {Sow again from {from} on{by, select, none {} other {, until {by}}}.}}{isAlike, select, yes { Waiting would lose about as many days of harvest, but leaves less time.} other {}}{moistUntilDate, select, none {} other { Keep this row moist until {moistUntilDate} all the same.}}',
  'do.fill-gaps':
    'Too thin. Fill the gaps with a new sowing{from, select, none {{by, select, none {} other { by {by}}}} other { from {from} on{by, select, none {} other {, until {by}}}}}.',
  'do.nothing':
    '{why, select, stands {It stands well. There is nothing to decide.} other {Too late this season to sow {crop} again.{hasFitting, select, yes { These still fit: {fitting}.} other {}}}}',
  'check.dry':
    '{moisture, select, rain {You leave this bed to the rain. Dig down to the seed: is it moist there?} dry {This bed is dry. Seed waits in dry soil.} other {Dig down to the seed: is it moist there?}}',
  'check.crust': 'Is the surface crusted? Break it gently, and keep it moist.',
  'check.too-deep':
    'It lies at {depthCm}; the usual depth is {usualCm}. Deep seedlings come late, weak, or not at all.',
  'check.old-seed':
    '{known, select, poor {Few of these seeds germinate{germinationPercent, select, none {} other {: about {germinationPercent} in 100}}. Sow new seed.} old {This seed is older than it keeps{storageYears, select, none {} other {: about {storageYears} years}}. Test ten seeds on damp paper.} other {How old is the seed?{storageYears, select, none {} other { This crop keeps for about {storageYears} years.}} Test ten seeds on damp paper.}}',
  'check.heat':
    'Soil was above {thresholdC} at the seed for {hours, plural, one {# hour} other {# hours}}. Heat holds this seed, or kills it.',
  'check.cold': 'Soil at the seed was {meanC} in the mean. This crop needs {minimumC} at least.',
  'check.cold-spell':
    'Soil at the seed was below {thresholdC} for {hours, plural, one {# hour} other {# hours}}. Such cold harms this seed, most of all as it drinks.',
  'check.eaten':
    '{beforeOn, select, none {Look for slug trails, bird tracks and tunnels, and for shoots bitten off.} other {{beforeSeedlings, plural, one {One seedling was up} other {# seedlings were up}} on {beforeOn}. Look for slug trails, bird tracks, and seedlings bitten or fallen over.}}',
  'news.sow-again':
    '{crop} sown on {sownOn} in bed {bed}: {sureness, select, lost {lost.} probably {probably lost ({lostRows} in {ofRows}).} other {perhaps lost ({lostRows} in {ofRows}), but there is little time left.}} {from, select, none {Sow again now{by, select, none {} other {; the last good day is {by}}}.} other {Sow again from {from} on{by, select, none {} other {, until {by}}}.}}{moistUntilDate, select, none {} other { Keep this row moist until {moistUntilDate} all the same.}}',
  'check.wrong-date':
    '{sownOn} is a poor date for it: it was good in {goodPercent, plural, =0 {none} one {# in 100} other {# in 100}} of the past years.',
  // answers/windows: reasons, other ways, and the verdict on a date.
  'reason.too-cold':
    'The soil is too cold{meanC, select, none {} other { (about {meanC}; from {minimumC} on it is warm enough)}}.',
  'reason.too-hot':
    'Soil above {thresholdC} stops the seed in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}.',
  'reason.too-slow':
    'It comes up too slowly in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}: half should be up within about {maxDays, plural, one {# day} other {# days}}.',
  'reason.frost-to-come':
    'Frost of {frostC} or below takes the seedlings in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}.',
  'reason.too-late':
    '{endsBy, select, frost {Frost ends it before a harvest in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}{on, select, none {} other {, in the middle of them on {on}}}.} other {The season is too short for a harvest in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}.}}',
  'reason.heat-at-harvest':
    'It would be ripe in heat above {hotC}, which spoils it, in {ofYears, plural, one {that year} other {{inYears, plural, one {#} other {#}} of # years{of, select, dates { on average} other {}}}}.',
  'reason.bolts': 'Days longer than {dayLengthH} hours make it run to seed: pick it small.',
  'reason.over-winter': 'It would stand over winter, and may run to seed in spring.',
  'reason.day-length':
    'The days are too far on: too few leaves grow before the bulb swells. Sow bunching onions instead.',
  'reason.ground-wet':
    'The ground is still too cold and wet to be worked. Squeeze a handful: a ball that does not crumble is too wet.',
  'instead.wait': 'Wait: from {from} to {to} it is worth sowing.',
  'instead.start-indoors':
    'Sow in trays in a room of {roomC} from {from} to {to}, and plant out from {plantOutFromDate} to {plantOutToDate}.',
  'verdict-on-date.good': 'A good date{harvestOn, select, none {} other {: pick from about {harvestOn}}}.',
  'verdict-on-date.fair':
    'Second best, {why, select, too_cold {as the soil is cold} too_hot {as heat may stop the seed} too_slow {as it comes up slowly} frost_to_come {as frost may take the seedlings} too_late {as the harvest may come too late} heat_at_harvest {as it may be ripe in the heat} bolts {as it may run to seed} day_length {as the days are too far on} ground_wet {as the ground may be too wet} other {as it stands over winter}}{betterOn, select, none {} other {; better on {betterOn}}}.',
  'verdict-on-date.poor':
    '{why, select, too_cold {Too cold to sow} too_hot {Too hot to sow} too_slow {Too slow to come up} frost_to_come {Frost would take the seedlings} too_late {Too late for a harvest} heat_at_harvest {It would be ripe in the heat} bolts {It would run to seed} day_length {Too late for bulbs} ground_wet {The ground is too cold and wet to be worked} other {It would stand over winter}}{betterOn, select, none {} other {; better on {betterOn}}}.',
  'harvest-judged':
    'A date is good in a year if {sharePercent, plural, one {# %} other {# %}} of what the lot can give is up within {standDays, plural, one {# day} other {# days}}, half of it within {halfDays, plural, one {# day} other {# days}}, {ifHeldPercent, plural, one {# %} other {# %}} even without seed held too long, and a harvest is had before frost, heat or short days end the crop{years, plural, =0 { in a usual year} one {} other {}}. Growth, and when ground can be worked, are reckoned from temperatures alone: water, light, pests and the kind sown change them.',
  'harvest-not-judged':
    'Dates are judged by coming up alone: {why, select, crop {nothing is known of the crop’s harvest} indoors {what grows indoors is not judged} other {no air temperatures are known, or no latitude}}.',
  // Sources by name, and what stands with a place's sources.
  'source.off':
    '{allowed, select, off {This service is set to ask no sources.} other {This service is set to ask only sources by name.}}',
  'source.preset-unknown': 'The source "{preset}" is not known to this version of the service.',
  'source.contact':
    '{publisher} wants to know whom to write to. The operator sets SOURCES_CONTACT to an address, such as garden@example.org.',
  'source.not-covered': '{publisher} has no forecast for this place.',
  'preset.reads':
    '{preset, select, nasa_power {Past days anywhere, from 1981 to a few days ago, from a reanalysis: means of cells of 0.5 by 0.625 degrees, at the cell’s mean height.} open_meteo_archive {Past days anywhere, thirty years back and to a few days ago, from a reanalysis, brought to the place’s height.} open_meteo_forecast {The 7 coming days, anywhere.} met_norway {About 9 coming days, anywhere.} other {The 7 coming days, in the United States.}}',
  'preset.consequence':
    '{preset, select, nasa_power {Free of charge. The publisher asks for credit.} open_meteo_archive {Free without a key for non-commercial use, up to 10,000 calls a day; two weeks of days are one call. Credit with a link is needed.} open_meteo_forecast {Free without a key for non-commercial use, up to 10,000 calls a day. Credit with a link is needed.} met_norway {Free of charge. Credit is needed, and a contact in each request.} other {Open data, free for any purpose. A contact in each request is needed.}}',
  attribution:
    '{preset, select, nasa_power {Past air temperatures from the POWER Project of the NASA Langley Research Center; we work on from them.} open_meteo_archive {Past air temperatures by Open-Meteo.com; we work on from them.} open_meteo_forecast {Weather forecast by Open-Meteo.com; we work on from it.} met_norway {Weather forecast by MET Norway; we work on from it.} other {Weather forecast by the U.S. National Weather Service; we work on from it.}}',
  reanalysis:
    'The past days from {preset, select, nasa_power {NASA POWER} other {Open-Meteo}} are a model’s, for a whole cell of its grid, not a thermometer’s. Frost hollows, towns and hillsides differ: add days of a station nearby where you have them.',
  'unknown-preset': 'No source is named "{preset}". GET /v1/source-presets lists those that are.',
  'unknown-preset.field': 'must be the name of a source',
  'contact-needed':
    '{publisher} wants to know whom to write to, and this service names nobody. Its operator sets SOURCES_CONTACT to an address; other sources do without.',
  'contact-needed.field': 'needs SOURCES_CONTACT, which the operator sets',
  'private-address':
    '{host} lies on this machine or in its own network, where the service asks nothing. Name a public address; the operator may allow others with ALLOW_PRIVATE_SOURCES=1.',
  'private-address.field': 'must be an address that others can reach; {host} is this machine’s own, or private',
  'no-source':
    '{why, select, none {Nothing is asked for the place "{place}": it has no source. Send one by PATCH as its "source", such as the preset nasa-power.} off {This service is set to ask no sources, so nothing was asked for the place "{place}".} other {This service is set to ask only sources by name, and the place "{place}" has no such one. GET /v1/source-presets lists them.}}',
  'too-soon':
    'The sources of this place were asked in the last {minutes} minutes, or ask to be left alone. Ask again in {waitS, plural, one {# second} other {# seconds}}.',
  'title.unknown-preset': 'No source of this name',
  'cause.unknown-preset': 'A source is named that this service does not know.',
  'cure.unknown-preset': 'Send one of the names under "choices"; GET /v1/source-presets tells what each gives.',
  'title.contact-needed': 'The publisher wants a contact',
  'cause.contact-needed':
    'This publisher asks that each request names somebody to write to, and the service names nobody.',
  'cure.contact-needed': 'The operator sets SOURCES_CONTACT, such as garden@example.org. Or name another source.',
  'title.private-address': 'This address is not public',
  'cause.private-address':
    'A source lies on the service’s own machine or network, and asking there would let callers look into it.',
  'cure.private-address': 'Send a public address. Who runs the service at home may set ALLOW_PRIVATE_SOURCES=1.',
  'title.no-source': 'There is no source to ask',
  'cause.no-source': 'The place has no source, or the service is set not to ask its sources.',
  'cure.no-source': 'Put a source to the place, or send its air to /v1/places/…/air.',
  'title.too-soon': 'Asked a moment ago',
  'cause.too-soon': 'The place’s sources were asked just now, or their publishers ask to wait.',
  'cure.too-soon': 'Wait as many seconds as Retry-After says; the service asks by itself too.',
  // answers: this week
  'week.sow':
    '{method, select, direct {Sow {crop} on {date}} other {Sow {crop} in trays on {date}, in a room of {roomC}; plant out about {plantOutDate}}}{grade, select, fair {: second best} other {}}.{lastCall, select, yes { The last good date is {untilDate}.} other {}}{harvestFromDate, select, none {} other { Pick from about {harvestFromDate} to {harvestToDate}.}}',
  'week.plant-out': 'Plant out {crop} from {from} to {to}, hardened off first; look at the forecast of the nights.',
  'ahead.frost':
    'Frost is forecast: {nights, plural, one {one night, {from},} other {# nights from {from} to {to}}} down to {minC}. Cover what is tender; hollows are colder than the forecast says.',
  'ahead.hot-spell':
    'Heat is forecast for the {crop} from {from} to {to}: up to {peakC} at the seed, which is held back above {thresholdC}. Shade and water help; follow local watering rules.',
  // answers/climate: a place of which no years are known.
  'rain-rules':
    'In the tropics rain makes the seasons, and nothing is known of it here: not when the rains begin, nor of floods, drought and pests. Dates are told by warmth alone. Ask growers nearby.',
  'typical-years':
    '{about, select, plan {The plan is made from what each sowing would do in {years, plural, one {# typical year} other {# typical years}} of this climate; a week counts as reached where it is in half of them or more.} windows {Each date is judged by what it would do in {years, plural, one {# typical year} other {# typical years}} of this climate: rain, drought and pests are left out.} other {After {lastDate} the soil is taken to go on as in each of {years, plural, one {# typical year} other {# typical years}} of this climate. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.}}',
  'climate-table':
    'No years of air are known here: {typicalYears, plural, one {# typical year} other {# typical years}}, made from the climate of weather stations nearby, stand for them (most of all {station}, {stationKm} km away). A month’s mean may be {plusMinusK} off, a window’s first or last date {plusMinusDays, plural, one {# day} other {# days}}{elevationM, select, none {, and more among hills, as the height of the place is not known} other { (for a height of {elevationM} m)}}. Your own years of air are always better.',
  'climate-own-air':
    '{days, plural, one {# day} other {# days}} of your own air moved the typical years toward what you measured.',
  'frost-date-told':
    'All nights are made {movedK} {direction, select, colder {colder} other {warmer}}, as you know the {side, select, spring {last frost of spring} other {first frost of autumn}} to come around {aroundOn}{untunedOn, select, none {} other { and not around {untunedOn}}}.',
  'climate-far':
    'The nearest weather station is {stationKm} km away, and the one most like the place lies {heightM} m higher or lower: take this climate as a rough guess.',
  'frost-date-far':
    'You know the {side, select, spring {last frost of spring} other {first frost of autumn}} to come around {aroundOn}{untunedOn, select, none {, where stations nearby hardly have one} other {; stations nearby have it around {untunedOn}}}. That takes nights {shiftK} off theirs, more than a frost hollow or a town usually makes: check the date and the place.',
  'frost-date-unused':
    'Stations nearby never have frost, so the {side, select, spring {last frost of spring} other {first frost of autumn}} around {aroundOn} changes nothing.',
  'zone-against-longitude':
    'The clock of {timeZone} is over three hours off the sun at longitude {longitude}. If a minus was forgotten, or is one too many, send {mirroredLongitude}.',
  'no-climate-near':
    'The nearest weather station with a known climate is {nearestKm} km away, and a climate is told up to {maxKm} km. Send the air of three years or more, or monthly normals.',
  'no-climate-near.field': 'lies too far from all stations of the climate table',
  'not-understood.frost-date-far':
    'cannot be right: {side, select, spring {a last frost of spring} other {a first frost of autumn}} around {aroundOn} would take nights more than {maxShiftK} off those of stations nearby{untunedOn, select, none {, which hardly have one} other {, which have it around {untunedOn}}}. Check the date, MM-DD, and the place',
  'field.month-day': `${MISSING}must be a month and a day such as 05-20${WAS}`,
  'title.no-climate-near': 'No climate is known near the place',
  'cause.no-climate-near':
    'No years of air are known of the place, and every station of the service’s own climate table is too far away to stand for it.',
  'cure.no-climate-near':
    'Check latitude and longitude. If they are right, send the air of three years or more, by the day, or monthly normals.',
  // localities
  locality:
    'We take {near}. {others, plural, one {# smaller place has} other {# smaller places have}} that name too: add the region for another.',
  'choose-locality':
    '{places, plural, one {# place is} other {# places are}} called “{name}”, too alike in size to choose between.',
  'choose-locality.send': 'Send one of the choices, or add the region and the country, such as “Portland, Maine, US”.',
  'choose-locality.choice.reads': '{latitude}, {longitude}{people, select, none {} other {; {people} people}}',
  'choose-locality.choice.consequence':
    '{frost, select, never {no frost in a usual year} in_spring {last frost about {lastFrostOn, select, none {} other {{lastFrostOn}}}} other {time zone {timeZone}}}',
  'unknown-locality': 'We know no town called “{name}”.',
  'unknown-locality.alike':
    'Send one of the choices if you meant it, a larger town near you, or latitude and longitude.',
  'unknown-locality.send': 'Send a larger town near you, or latitude and longitude.',
  'not-understood.locality-question':
    '{fault, select, missing {is missing} other {cannot stand beside `latitude` or `longitude`}}: send `q` with a name, or `latitude` and `longitude`.',
  'field.country': `${MISSING}must be the two letters of a country, such as US${WAS}`,
  'title.choose-locality': 'Which town?',
  'cause.choose-locality': 'Several towns have that name, too alike in size to choose between.',
  'cure.choose-locality': 'Send "near" with one of the choices.',
  'title.unknown-locality': 'No such town',
  'cause.unknown-locality': 'The town is not in the list of towns of 500 people and more.',
  'cure.unknown-locality': 'Send "near" with a larger town close by, or send latitude and longitude.',
  // garden/plan: dates graded as sowing windows grade them.
  'harvest-in-years':
    'When a sowing is ready is reckoned from the warmth of each past year, as sowing windows reckon it, for middling kinds. It is picked for {pickDays, plural, one {# day} other {# days}} from then on, or until frost, and is the harvest of {weeks, plural, one {one week} other {# weeks}} (common practice, no source).',
  'dates-graded':
    'Sowings stand on dates that sowing windows call good or fair in this bed. Where one does not, the plan names the shade or the tray that it rests on.',
  // answers/windows: what can be done to the bed.
  'instead.keep-wet':
    'Keep the seedbed {moisture, select, moist {moist} other {wet}} until the row is up: then {from} to {to} is {grade, select, good {good to sow} other {second best}}. Water lightly and often, where watering is not restricted. Worked out, not measured in a seedbed.',
  'instead.shade':
    'Shade the row by half until it is up: then {from} to {to} is {grade, select, good {good to sow} other {second best}}. Worked out, not measured in a seedbed.',
  'instead.cover':
    'Lay black film two weeks before, and sow through holes in it: then {from} to {to} is {grade, select, good {good to sow} other {second best}}. Worked out, not measured in a seedbed; it is no help against frost.',
} as const satisfies Catalogue;
