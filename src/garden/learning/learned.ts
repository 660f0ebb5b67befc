import type { LearnedFact } from '../../answers/forecast/forecast-facts.js';
import type { Learned, Middle } from '../../answers/question.js';
import { logistic, logit } from '../../basics/numerics/logit.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { LOST_ODDS } from '../sowing/judgement.js';
import type { Count } from '../store/season-store.js';
import type { Posterior } from './count-posterior.js';
import { standFactorOf, timeFactorOf } from './posterior-factors.js';
import type { Normal, Prior } from './prior.js';

/** What has been learned of a sowing, and from what. */
export interface Learning {
  readonly crop: Crop;
  readonly counts: readonly Count[];
  readonly usual: Prior;
  readonly belief: Prior;
  readonly posterior: Posterior | null;
  /** Number of other sowings that have taught. */
  readonly lessons: number;
}

/** Counts tell of a factor where they leave less than this of what was open before, or move its middle by half of that spread. */
const TELLING = 0.9;
/** The middle 80 % of a normal distribution reaches so many standard deviations to either side. */
const MIDDLE_80_SD = 1.2816;

/** The lesson of the counts where it narrows the prior; null without counts. */
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
  // Dates assume a live sowing, so that they do not jump as the odds of that fall.
  if (posterior && posterior.dead >= LOST_ODDS) {
    const standFactor = { middle: 0, from: 0, to: 0 };
    return { timeFactor, standFactor, text: learnedFact(learning, { timeFactor: null, standFactor: null }, true) };
  }
  const stand = posterior ? standFactorOf(posterior) : middleOf(belief.logitStand, logistic);
  const taught = { timeFactor, standFactor: telling(usual.logitStand, stand, logit) };
  return { ...taught, text: learnedFact(learning, taught, false) };
}

/** The lesson as a fact. */
const learnedFact = (
  { crop, counts, lessons }: Learning,
  { timeFactor, standFactor }: Omit<Learned, 'text'>,
  isLost: boolean,
): LearnedFact => ({
  code: 'counts',
  params: {
    crop: cropInFacts(crop),
    counts: counts.length,
    otherSowings: lessons,
    isLost: isLost ? 'yes' : 'no',
    timeFactorMiddle: timeFactor && tenth(timeFactor.middle),
    timeFactorFrom: timeFactor && tenth(timeFactor.from),
    timeFactorTo: timeFactor && tenth(timeFactor.to),
    standPercentMiddle: standFactor && percent(standFactor.middle),
    standPercentFrom: standFactor && percent(standFactor.from),
    standPercentTo: standFactor && percent(standFactor.to),
  },
});

const tenth = (value: number): number => Math.round(10 * value) / 10;
const percent = (share: number): number => Math.round(100 * share);
