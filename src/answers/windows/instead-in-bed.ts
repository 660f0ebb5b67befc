import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { ShouldStop } from '../../basics/stop.js';
import { WETTER } from '../forecast/remedies/bed-changes.js';
import type { QuestionBed } from '../question.js';
import { soilOfChangedBeds } from './changed-bed.js';
import { type Grade, type GradedRun, gradeRuns } from './grades.js';
import { type JudgedDates, judgedDates, type WindowQuestion } from './judged-dates.js';
import type { Run } from './sureness.js';
import type { SowingInstead } from './ways.js';
import type { WhyNot } from './why-nots.js';
import type { InsteadFact } from './window-facts.js';

/** Dates of a longer run that are tried with the bed changed, at most [d]. */
const MAX_TRIED_DAYS = 120;
/** A cover opens dates earlier by some weeks at the most: so many before a better run are tried [d]. */
const COVERED_DAYS = 35;
/** Fewer dates are not worth the work [d]. */
const MIN_DAYS = 7;
/** Grades are those of spans, by means of a week: so many dates to either side are judged with them [d]. */
const BESIDE_DAYS = 10;
/** Seed that lies longer is past the heat or the cold [d]. */
const MAX_LYING_DAYS = 30;

/** Something that a grower can do to a bed. */
interface Help {
  readonly action: 'keep-wet' | 'shade' | 'cover';
  readonly bed: QuestionBed;
  textOf(dates: { readonly from: PlainDate; readonly to: PlainDate; readonly grade: 'good' | 'fair' }): InsteadFact;
}

/**
 * What would make dates good that heat or cold soil spoils: water, shade, a cover. As it needs the soil of another bed, and with it half
 * again of the answer's time or more, it is worked out only where no date asked is good: for the weeks in question alone, or for a crop
 * that has no good date all year.
 *
 * @returns The easier first: of each help the longest run of dates that it makes better than they are.
 */
export function insteadInBed(question: WindowQuestion, judged: JudgedDates, shouldStop?: ShouldStop): SowingInstead[] {
  const { spans } = judged;
  if (judged.isUsual || !isOpenBed(question.bed) || spans.some(({ grade }) => grade === 'good')) return [];
  // One run of each reason is enough.
  const reasons = new Map<WhyNot, GradedRun>();
  for (const run of spans) {
    const why = judged.reasonsIn(run)[0]?.code;
    if (why && !reasons.has(why)) reasons.set(why, run);
  }
  return [...reasons].flatMap(([why, run]) => {
    const tried = triedOf(why, run, spans.at(-1) !== run);
    if (!tried) return [];
    const helps = helpsAgainst(why, question.bed);
    const dated = (day: number): PlainDate => addDays(question.from, day);
    const [from, to] = [dated(tried.from - BESIDE_DAYS), dated(tried.to + BESIDE_DAYS)];
    const beds = helps.map(({ bed }) => bed);
    const lyingDays = Math.min(MAX_LYING_DAYS, judged.standDays);
    const soils = soilOfChangedBeds(judged.soil, question, beds, { from, to, lyingDays }, shouldStop);
    return soils.flatMap((soil, help) => {
      const { gradeOf } = judgedDates({ ...question, from, to }, () => soil, shouldStop);
      const inTried = gradeRuns(gradeOf.slice(BESIDE_DAYS, gradeOf.length - BESIDE_DAYS));
      return bettered(helps[help]!, inTried, run.grade, dated(tried.from)) ?? [];
    });
  });
}

const isOpenBed = ({ kind }: QuestionBed): boolean => kind !== 'indoors' && kind !== 'tray';

/** The dates of a run that are tried; null: no change of the bed helps against its reason. */
function triedOf(why: WhyNot, { from, to }: Run, hasNext: boolean): Run | null {
  if (why !== 'too-hot' && why !== 'too-cold') return null;
  if (why === 'too-hot' || to - from < MAX_TRIED_DAYS) return { from, to: Math.min(to, from + MAX_TRIED_DAYS - 1) };
  return hasNext ? { from: Math.max(from, to - COVERED_DAYS + 1), to } : null;
}

function helpsAgainst(why: WhyNot, bed: QuestionBed): Help[] {
  if (why !== 'too-hot') return bed.cover === 'bare' ? [covered(bed)] : [];
  const moisture = WETTER[bed.moisture];
  const shadePercent = 100 - (100 - bed.shadePercent) / 2;
  return [
    ...(moisture
      ? [
          {
            action: 'keep-wet' as const,
            bed: { ...bed, moisture },
            textOf: (dates) => ({ code: 'instead.keep-wet', params: { ...dates, moisture } }) as const,
          } satisfies Help,
        ]
      : []),
    { action: 'shade', bed: { ...bed, shadePercent }, textOf: (params) => ({ code: 'instead.shade', params }) },
  ];
}

/** Film that crops in need of warm soil are sown through: fleece warms too little to open dates by a week. */
const covered = (bed: QuestionBed): Help => ({
  action: 'cover',
  bed: { ...bed, cover: 'black-film' },
  textOf: (params) => ({ code: 'instead.cover', params }),
});

/** The longest run of dates that a help makes better than they are; null: it makes none. */
function bettered(
  { action, textOf }: Help,
  runs: readonly GradedRun[],
  was: Grade,
  first: PlainDate,
): SowingInstead | null {
  for (const grade of (['good', 'fair'] as const).filter((one) => one !== was)) {
    const alike = runs.filter((run) => run.grade === grade && run.to - run.from + 1 >= MIN_DAYS);
    const longest = alike.toSorted((a, b) => b.to - b.from - (a.to - a.from))[0];
    if (!longest) continue;
    const dates = { from: addDays(first, longest.from), to: addDays(first, longest.to), grade };
    return { action, ...dates, text: textOf(dates) };
  }
  return null;
}
