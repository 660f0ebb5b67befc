import type { Learned, Middle } from '../../answers/question.js';
import { logistic, logit } from '../../basics/numerics/logit.js';
import type { Crop } from '../../germination/crop.js';
import { LOST_ODDS } from '../sowing/judgement.js';
import type { Count } from '../store/season-store.js';
import type { Belief, Normal } from './belief.js';
import type { Posterior } from './count-posterior.js';
import { standFactorOf, timeFactorOf } from './posterior-factors.js';

/** What has been learned of a sowing, and from what. */
export interface Learning {
  readonly crop: Crop;
  readonly counts: readonly Count[];
  readonly usual: Belief;
  readonly belief: Belief;
  readonly posterior: Posterior | null;
  /** How many other sowings have taught something. */
  readonly lessons: number;
}

/** Counts tell of a factor where they leave less than this of what was open before, or move its middle by half of that spread. */
const TELLING = 0.9;
/** The middle 80 % of a normal distribution reaches so many standard deviations to either side. */
const MIDDLE_80_SD = 1.2816;

/** What the counts have taught, as far as it narrows what was open; null: nobody has counted. */
export function learnedOf(learning: Learning): Learned | null {
  const { usual, belief, posterior, lessons } = learning;
  if (posterior === null && lessons === 0) return null;
  const middleOf = ({ mean, sd }: Normal, turned: (value: number) => number): Middle => ({
    middle: turned(mean),
    from: turned(mean - MIDDLE_80_SD * sd),
    to: turned(mean + MIDDLE_80_SD * sd),
  });
  // Told on the scale on which it was supposed: narrower than before, or elsewhere.
  const telling = (before: Normal, own: Middle, back: (value: number) => number): Middle | null => {
    const [middle, from, to] = [back(own.middle), back(own.from), back(own.to)];
    const isNarrower = to - from < TELLING * 2 * MIDDLE_80_SD * before.sd;
    const isElsewhere = Math.abs(middle - before.mean) > before.sd / 2;
    return isNarrower || isElsewhere ? own : null;
  };
  const time = posterior ? timeFactorOf(posterior) : middleOf(belief.logTime, Math.exp);
  const timeFactor = telling(usual.logTime, time, Math.log);
  // What may yet come is dated as of one that lives, so that no date jumps where the odds of that sink.
  if (posterior && posterior.dead >= LOST_ODDS) {
    return {
      timeFactor,
      standFactor: { middle: 0, from: 0, to: 0 },
      text: `From ${countsOf(learning)}: of 95 in 100 such rows or more nothing comes.`,
    };
  }
  const stand = posterior ? standFactorOf(posterior) : middleOf(belief.logitStand, logistic);
  const taught = { timeFactor, standFactor: telling(usual.logitStand, stand, logit) };
  return { ...taught, text: sentenceOf(learning, taught) };
}

/** What was learned, in one sentence. */
function sentenceOf(learning: Learning, { timeFactor, standFactor }: Omit<Learned, 'text'>): string {
  const name = learning.crop.name.toLowerCase();
  const said = [
    ...(timeFactor
      ? [
          `takes ${tenths(timeFactor.middle)} times as long as the chart says (${tenths(timeFactor.from)} to ${tenths(timeFactor.to)})`,
        ]
      : []),
    ...(standFactor
      ? [
          `gives ${percent(standFactor.middle)} of 100 that a laboratory would (${percent(standFactor.from)} to ${percent(standFactor.to)})`,
        ]
      : []),
  ];
  return said.length === 0
    ? `From ${countsOf(learning)} nothing can be told yet that the crop’s own ranges do not say.`
    : `From ${countsOf(learning)}: ${name} ${said.join(', and ')}.`;
}

function countsOf({ counts, lessons }: Learning): string {
  const own = counts.length === 1 ? 'one count of this sowing' : `${counts.length} counts of this sowing`;
  const others = `${counts.length > 0 ? 'those' : 'the counts'} of ${lessons === 1 ? 'one other sowing' : `${lessons} other sowings`} in this bed`;
  return [...(counts.length > 0 ? [own] : []), ...(lessons > 0 ? [others] : [])].join(' and ');
}

const tenths = (value: number): string => value.toFixed(1);
const percent = (share: number): string => String(Math.round(100 * share));
