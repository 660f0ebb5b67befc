import { addDays, dateAt } from '../basics/calendar.js';
import type { Note } from '../basics/errors.js';
import type { CohortRun, Seed } from '../germination/cohorts.js';
import { SHORTEST_COUNT_DAYS } from '../germination/count-day.js';
import { rateAt, shareAt } from '../germination/curve.js';
import type { Outcome } from '../germination/outcome.js';
import { isThinRecord } from '../seedbed/seasonal-drift.js';
import { beyondNote } from './beyond-note.js';
import type { Beyond } from './hours-ahead.js';
import { type Bed, type Question, seedDepthCm } from './question.js';
import type { SeedRecord } from './seed-temperature.js';

/** What the notes are about. */
export interface ForecastFindings {
  readonly seed: Seed;
  readonly run: CohortRun;
  readonly outcome: Outcome;
  /** Hourly temperatures from wetting to the count [°C]. */
  readonly countedC: Float64Array;
  readonly record: SeedRecord;
  readonly beyond: Beyond;
  readonly countDays: number;
  readonly hasHotSpell: boolean;
  readonly wetMs: number;
}

/** A week held on errs by weeks in spring: where it carries the seed this share of the way or more, it is said. */
const MOST_HELD_PROGRESS = 0.25;
/** Emergence this many times slower than the crop's best exposes the seed to rot: our choice of when to say so. */
const SLOW_FACTOR = 3;
/** Seed this many times deeper than usual comes slowly and weakly: common practice, no source. */
const DEEP_FACTOR = 2;
const TEST_LASTS_DAYS = 366;
/** A drift or a repeated week says little of a sowing so long after it: our choice. */
const FAR_AHEAD_DAYS = 14;

/** What the answer rests on. */
export function forecastAssumptions(question: Question, findings: ForecastFindings): Note[] {
  const { crop, bed, sowing, site, lot } = question;
  const notes: Note[] = [
    {
      code: 'curve',
      text: `Days and stand come from the ${crop.name.toLowerCase()} seed's response to constant temperatures (${crop.source}), added up hour by hour. This sum has not been checked against seedlings in beds.`,
    },
    {
      code: 'moist-seedbed',
      text:
        bed.wettedOn === null
          ? 'The seed is taken to lie moist from sowing until it is up. Seed that dries out waits, and every date moves with it.'
          : `The seed is taken to wait in dry soil until ${dateAt(findings.wetMs, site.zone)} at noon, and to lie moist from then on.`,
    },
    {
      code: 'count-day',
      text: `Only what is up ${findings.countDays} days after sowing counts${question.countDays === null ? '; say countDays to count on another day' : ''}.`,
    },
    {
      code: 'ranges',
      text: 'The ranges leave open what the weather after the last value may do, and how well the soil is known. Seed lot, seedbed, moisture and the table’s whole days come on top.',
    },
    {
      code: 'beds-against-laboratory',
      text: `Beds give less, and later, than a laboratory: ${standWords(question)} and ${timeWords(question)} are applied beside the laboratory's figures.`,
    },
    ...(question.learned && (question.timeFactor === null || question.standFactor === null)
      ? [{ code: 'counts', text: question.learned.text }]
      : []),
  ];
  if (sowing.depthCm === null) {
    notes.push({ code: 'depth', text: `No depth was given; ${seedDepthCm(question)} cm is taken.` });
  }
  if (lot?.germinationPercent == null) {
    notes.push({
      code: 'lot',
      text: 'No germination test of the seed was given; it is taken to be as good as the table’s. Test ten seeds on damp paper if the packet is old.',
    });
  }
  if (findings.record.knownToH < findings.record.wetH + findings.countedC.length) {
    notes.push(beyondNote(findings.beyond, findings.record, site));
  }
  if (question.series.some((one) => one.readings === null) && site.latitude === null) {
    notes.push({
      code: 'daylight',
      text: 'No latitude was given; days are taken as twelve hours long, the warmest hour just after noon.',
    });
  }
  if (question.zoneFromStamps) {
    notes.push({
      code: 'zone-from-stamps',
      text: `No time zone was given; dates are counted at ${site.zone.name}, the offset of the first stamp.`,
    });
  }
  const unused = bedWords(bed);
  if (unused && findings.record.soil.model === null && question.series.some((one) => one.medium === 'soil')) {
    notes.push({
      code: 'bed-as-measured',
      text: `The temperatures are taken as measured where the seed lies: that the bed ${unused} changes nothing in them.`,
    });
  }
  if (crop.soil === null) {
    notes.push({
      code: 'own-rows',
      text: `Beyond your coldest and warmest rows the curve is taken to fall to nothing within 5 °C, or at the base temperature that the rows imply; heat is taken to hold the seed above ${crop.hotThresholdC.toFixed(1)} °C.`,
    });
  }
  return notes;
}

const standWords = ({ standFactor, learned }: Question): string =>
  standFactor
    ? 'your own share of the stand'
    : learned?.standFactor
      ? 'the share of the stand that your counts have taught'
      : 'the share of the stand';

const timeWords = ({ timeFactor, learned }: Question): string =>
  timeFactor !== null
    ? 'your own time factor'
    : learned?.timeFactor
      ? 'the time that your counts have taught'
      : 'the crop’s range of times';

/** What was said of the bed beyond bare open ground, in words; '' where nothing was. */
function bedWords({ kind, cover, shadePercent, moisture, roomC }: Bed): string {
  return [
    kind === 'open-ground' ? '' : `is ${kind.replace('-', ' ')}${roomC === null ? '' : ` at ${roomC} °C`}`,
    cover === 'bare' ? '' : `lies under ${cover.replace('-', ' ')}`,
    shadePercent === 0 ? '' : `is ${shadePercent} % shaded`,
    moisture === 'wet' || moisture === 'moist' ? `is kept ${moisture}` : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/** What the grower should heed. */
export function forecastWarnings(question: Question, findings: ForecastFindings): Note[] {
  const { crop, sowing, lot } = question;
  const { seed, outcome, run, countedC, record, beyond } = findings;
  const warnings: Note[] = [];
  const depthCm = seedDepthCm(question);
  if (crop.sowingDepthCm !== null && depthCm > DEEP_FACTOR * crop.sowingDepthCm) {
    warnings.push({
      code: 'deep',
      text: `${depthCm} cm is more than twice the usual ${crop.sowingDepthCm} cm: seedlings come later and weaker, or not at all.`,
    });
  }
  if (beyond === 'repeat-last-week' && heldProgress(findings) > MOST_HELD_PROGRESS) {
    warnings.push({
      code: 'held-week',
      text: 'Much of this forecast rests on the last week coming again. In spring that errs by weeks, too late; in autumn it comes out too early. Send a latitude for the season’s drift, or more temperatures.',
    });
  }
  if (beyond === 'seasonal-drift' && isThinRecord(record.knownToH) && record.knownToH - record.wetH < countedC.length) {
    warnings.push({
      code: 'thin-record',
      text: 'Fewer than seven days of temperature stand behind what is supposed after them: one warm or cold day weighs heavily.',
    });
  }
  if (findings.countDays === SHORTEST_COUNT_DAYS && question.countDays === null && outcome.whyNone !== null) {
    warnings.push({
      code: 'too-cold-or-hot',
      text: `At these temperatures the chart promises no seedling within a year, so the count is set to ${SHORTEST_COUNT_DAYS} days. Say countDays to look further, or sow when the soil suits the crop.`,
    });
  }
  const daysAhead = Math.round((record.wetH - record.knownToH) / 24);
  if (daysAhead > FAR_AHEAD_DAYS) {
    warnings.push({
      code: 'far-ahead',
      text: `The sowing lies ${daysAhead} days after the last value. So far ahead this is what the season usually brings rather than a forecast; ask again when later temperatures are known.`,
    });
  }
  if (lot?.germinationPercent != null && lot.germinationPercent > 0 && lot.germinationPercent <= 1) {
    warnings.push({
      code: 'share-for-percent',
      text: `A germination of ${lot.germinationPercent} % is taken as sent: ${lot.germinationPercent} seeds in a hundred. If ${100 * lot.germinationPercent} % was meant, send ${100 * lot.germinationPercent}.`,
    });
  }
  const hotFirst = countedC.subarray(0, 24).reduce((sum, tempC) => sum + (tempC > seed.hotThresholdC ? 1 : 0), 0);
  if (record.showsSwing && hotFirst > 0 && !findings.hasHotSpell) {
    warnings.push({
      code: 'hot-first-day',
      text: `In its first day the seed lies ${hotFirst} hours above ${seed.hotThresholdC.toFixed(1)} °C, when heat stops it most easily. Sow in the evening, in moist soil.`,
    });
  }
  const untested = untestedHours(seed, countedC, outcome);
  if (untested > 0) {
    warnings.push({
      code: 'extrapolated',
      text: `For ${untested} hours the seed lies colder or warmer than the crop was ever tested; a straight line to nothing is drawn there.`,
    });
  }
  if (run.killedAtH < Infinity) {
    warnings.push({
      code: 'killing-heat',
      text: 'Wet seed lies above 45 °C for more than 40 hours in all: what is not up by then is taken as dead.',
    });
  }
  const bestRate = Math.max(...crop.rows.map((row) => (row.days === null ? 0 : 1 / row.days)));
  if (outcome.halfH !== null && outcome.halfH / 24 > SLOW_FACTOR / bestRate) {
    warnings.push({
      code: 'slow',
      text: 'It comes up more than three times slower than at its best: seed that lies long is open to rot, crusts and pests.',
    });
  }
  if (lot?.testedOn && lot.testedOn < addDays(sowing.date, -TEST_LASTS_DAYS)) {
    warnings.push({
      code: 'old-test',
      text: `The lot was tested on ${lot.testedOn}, over a year before the sowing; test it again.`,
    });
  }
  return [...warnings, ...crop.cautions.map(({ code, text, source }) => ({ code, text: `${text} (${source})` }))];
}

/** How much of the way to half emergence the supposed hours carry the seed. */
function heldProgress({ seed, countedC, record, outcome }: ForecastFindings): number {
  const toH = Math.min(countedC.length, outcome.halfH ?? countedC.length);
  let progress = 0;
  for (let hour = Math.max(0, record.knownToH - record.wetH); hour < toH; hour++)
    progress += rateAt(seed.curve, countedC[hour]!) / 24;
  return progress;
}

function untestedHours({ curve }: Seed, countedC: Float64Array, outcome: Outcome): number {
  const fromC = Math.max(curve.rate.testedFromC, curve.share.testedFromC);
  const toC = Math.min(curve.rate.testedToC, curve.share.testedToC);
  const end = Math.min(countedC.length, Math.ceil(outcome.mostH ?? countedC.length));
  let hours = 0;
  for (let hour = 0; hour < end; hour++) {
    const tempC = countedC[hour]!;
    if ((tempC < fromC || tempC > toC) && (rateAt(curve, tempC) > 0 || shareAt(curve, tempC) > 0)) hours++;
  }
  return hours;
}
