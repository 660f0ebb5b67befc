import type { Forecast } from '../answers/forecast.js';
import type { Milestone, NoMilestone } from '../answers/milestones.js';
import { helpsSownSeed } from '../answers/remedies.js';
import type { SpellAnswer } from '../answers/spell-answers.js';
import { addDays, type PlainDate } from '../basics/calendar.js';
import type { Crop, FrostClass } from '../germination/crop.js';
import type { Plan, Sowing, SowingMethod } from './season-store.js';
import type { Bed } from './store.js';
import { thinningOf } from './thinning.js';

/** Dates from and to, both included. */
export interface Dates {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** A sowing, and what is known of what becomes of it. */
export interface GrowingSowing {
  readonly sowing: Sowing;
  readonly crop: Crop;
  /** null: it cannot be forecast. */
  readonly forecast: Forecast | null;
  /** null: sown where it stays, or it does not come as far. */
  readonly indoors: { readonly hardenOff: Dates; readonly plantOut: PlainDate } | null;
  /** null: not known. */
  readonly harvest: Dates | null;
  /** Does it stand too thin to be thinned out? */
  readonly isSparse: boolean;
  /** The last date on which a new sowing is still good; null: not known. */
  readonly resowBy: PlainDate | null;
}

/** One of the sowings that a plan asks for, as far as a calendar tells of it. */
export interface SowingToMake {
  /** Which of the plan's sowings it is: the same for as long as it is for the same part of the harvest. */
  readonly turn: number;
  readonly date: PlainDate;
  readonly seeds: number | null;
  readonly method: SowingMethod;
  /** When half is up, and the middle 80 % of past years. */
  readonly half: { readonly date: PlainDate; readonly range: Dates | null };
  readonly harvest: Dates;
  readonly indoors: GrowingSowing['indoors'];
}

/** A plan, and the sowings that are still to be made for it. */
export interface GrowingPlan {
  readonly plan: Plan;
  readonly crop: Crop;
  readonly sowings: readonly SowingToMake[];
}

/** All that a bed's calendar tells of. */
export interface BedSeason {
  readonly bed: Bed;
  readonly sowings: readonly GrowingSowing[];
  readonly plans: readonly GrowingPlan[];
  /** The air's forecast minima [°C], by their dates. */
  readonly comingMinC: readonly { readonly date: PlainDate; readonly minC: number }[];
}

export const calendarEventKinds = [
  'sow',
  'keep-moist',
  'look-for-seedlings',
  'thin',
  'feed',
  'harden-off',
  'plant-out',
  'first-harvest',
  'last-harvest',
  'sow-again',
  'heat',
  'frost',
] as const;

/** Something to do or to heed, on whole days. */
export interface CalendarEvent extends Dates {
  /** The same for as long as it is the same thing, whatever its dates. */
  readonly uid: string;
  readonly kind: (typeof calendarEventKinds)[number];
  readonly summary: string;
  readonly description: string;
}

/** An event as it is made, before it is known whose it is. `n`: which of its kind. */
type Draft = Omit<CalendarEvent, 'uid'> & { readonly n?: number | string };

/** What tells our events from others'. */
const OURS = '@germination-forecaster';

// When to feed: common practice, no source.
/** From half of a sowing being up until it is first fed [d]. */
const FEED_AFTER_DAYS = 28;
/** From planting out until it is first fed [d]. */
const FEED_PLANTED_AFTER_DAYS = 21;
/** Peas and beans feed themselves; roots grow leaves or fork where they are fed. */
const notFed: ReadonlySet<string> = new Set(['carrot', 'lima-bean', 'parsnip', 'pea', 'radish', 'snap-bean', 'turnip']);

/**
 * A night forecast this cold [°C] calls for a warning over plants of a frost class: 2 K above the limits by which windows
 * and planting out are judged, as a bed under a clear sky is colder than the air. Our assumption.
 */
const warnBelowC: Readonly<Record<FrostClass, number>> = { tender: 2, 'half-hardy': 0, hardy: -3 };

/**
 * What a bed's calendar says: of its sowings, of those that its plans ask for, and of frost to come.
 *
 * @param season The bed, and all that is known of what grows in it.
 * @returns Events, each under a uid of its own that stays while its dates move; in the order of dates, then of uids.
 */
export function calendarEvents({ bed, sowings, plans, comingMinC }: BedSeason): CalendarEvent[] {
  const events = [
    ...sowings.flatMap((one) => withUids(`${one.sowing.id}.sowing.${bed.id}`, sowingDrafts(one, bed))),
    ...plans.flatMap(({ plan, crop, sowings: planned }) =>
      planned.flatMap((one) => withUids(`${one.turn}.${plan.id}.plan.${bed.id}`, plannedDrafts(one, crop, bed))),
    ),
    ...withUids(`bed.${bed.id}`, frostDrafts(sowings, comingMinC, bed)),
  ];
  return events.sort((a, b) => compare(a.from, b.from) || compare(a.uid, b.uid));
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Ids hold no dots, so that no two things give one uid. */
const withUids = (whose: string, drafts: readonly Draft[]): CalendarEvent[] =>
  drafts.map(({ n, ...event }) => ({
    ...event,
    uid: `${event.kind}${n === undefined ? '' : `.${n}`}.${whose}${OURS}`,
  }));

function sowingDrafts(
  { sowing, crop, forecast, indoors, harvest, isSparse, resowBy }: GrowingSowing,
  bed: Bed,
): Draft[] {
  const name = nameOf(crop);
  const isDirect = sowing.method === 'direct';
  return [
    sowDraft({ date: sowing.date, name, method: sowing.method, bed, seeds: sowing.seeds, time: sowing.time }),
    ...(forecast ? comingUpDrafts(forecast, name, { isDirect, isSparse, crop, harvest }) : []),
    ...(indoors ? indoorDrafts(indoors, name, bed, crop, harvest) : []),
    ...harvestDrafts(harvest, name, bed),
    ...(resowBy && resowBy >= sowing.date
      ? [
          on(resowBy, {
            kind: 'sow-again',
            summary: `Last day to sow ${name} again`,
            description: `Should this sowing of ${sowing.date} fail, a new one is good up to this day, by past years.`,
          }),
        ]
      : []),
  ];
}

function plannedDrafts({ date, seeds, method, half, harvest, indoors }: SowingToMake, crop: Crop, bed: Bed): Draft[] {
  const name = nameOf(crop);
  return [
    sowDraft({ date, name, method, bed, seeds, time: null }),
    {
      ...(half.range ?? { from: half.date, to: half.date }),
      kind: 'look-for-seedlings',
      summary: `Look for ${name} seedlings`,
      description: 'By past years half of this planned sowing is up about now.',
    },
    ...(indoors ? indoorDrafts(indoors, name, bed, crop, harvest) : []),
    ...harvestDrafts(harvest, name, bed),
  ];
}

function sowDraft({
  date,
  name,
  method,
  bed,
  seeds,
  time,
}: {
  readonly date: PlainDate;
  readonly name: string;
  readonly method: SowingMethod;
  readonly bed: Bed;
  readonly seeds: number | null;
  readonly time: string | null;
}): Draft {
  const many = seeds === null ? 'Sow' : `Sow ${seeds} seeds`;
  const where = method === 'indoors' ? `indoors, for ${bed.name}` : `in ${bed.name}`;
  return on(date, {
    kind: 'sow',
    summary: `Sow ${name}${method === 'indoors' ? ' indoors' : ''}`,
    description: `${many} ${where}${time === null ? ', as planned' : `, at ${time}`}. Seed that is treated: wear gloves and follow its label.`,
  });
}

/** Up to when the seedlings are there, and a while on. */
function comingUpDrafts(
  { emergence, stand, keepMoist, hotSpells }: Forecast,
  name: string,
  {
    isDirect,
    isSparse,
    crop,
    harvest,
  }: Pick<GrowingSowing, 'crop' | 'harvest' | 'isSparse'> & { readonly isDirect: boolean },
): Draft[] {
  const drafts: Draft[] = [
    {
      ...keepMoist,
      kind: 'keep-moist',
      summary: `Keep ${name} moist`,
      description:
        'Seed that has begun to sprout dies when it dries out. Water gently, as local rules on watering allow.',
    },
  ];
  const { first, half, most } = emergence;
  if (isUp(first)) {
    drafts.push({
      kind: 'look-for-seedlings',
      from: first.range.from,
      to: later(first.range.from, isUp(most) ? most.inBeds.to : stand.by),
      summary: `Look for ${name} seedlings`,
      description: `${isUp(half) ? `Half of those that come are up about ${half.date}` : 'Less than half is looked for by the day of the count'}. In the bed ${whole(stand.field.from)} to ${whole(stand.field.to)} of a hundred seeds are looked for; count what you see.`,
    });
  }
  const thinning = isDirect && !isSparse ? thinningOf(crop, most) : null;
  if (thinning) {
    drafts.push({
      kind: 'thin',
      ...thinning,
      summary: `Thin ${name}`,
      description:
        'Most should be up and large enough to choose from: take out the weakest, and note how many you pull.',
    });
  }
  if (isDirect && isUp(half)) drafts.push(...feedDrafts(addDays(half.date, FEED_AFTER_DAYS), name, crop, harvest));
  if (isDirect) drafts.push(...(hotSpells ?? []).toSorted((a, b) => compare(a.from, b.from)).map(heatDraft(name)));
  return drafts;
}

/** Spells are numbered as they begin: one that moves stays the same. */
const heatDraft =
  (name: string) =>
  ({ from, to, peakC, thresholdC, severity, remedies }: SpellAnswer, i: number): Draft => ({
    kind: 'heat',
    n: i + 1,
    from,
    to,
    summary: severity === 'severe' ? `Severe heat over ${name} seed` : `Heat over ${name} seed`,
    description: [
      `Up to ${whole(peakC)} °C at the seed; above ${whole(thresholdC)} °C heat holds it.`,
      ...remedies.filter(helpsSownSeed).map(({ text }) => text),
    ].join('\n'),
  });

function indoorDrafts(
  { hardenOff, plantOut }: NonNullable<GrowingSowing['indoors']>,
  name: string,
  bed: Bed,
  crop: Crop,
  harvest: Dates | null,
): Draft[] {
  return [
    {
      ...hardenOff,
      kind: 'harden-off',
      summary: `Harden off ${name}`,
      description: 'Out by day, longer each day, first in the shade and out of the wind; in again for the night.',
    },
    on(plantOut, {
      kind: 'plant-out',
      summary: `Plant out ${name}`,
      description: `Into ${bed.name}. By past years the nights bear it from now on: look at the forecast first, and wait where it says frost.`,
    }),
    ...feedDrafts(addDays(plantOut, FEED_PLANTED_AFTER_DAYS), name, crop, harvest),
  ];
}

/** None for crops that need none, or that are ready by then. */
const feedDrafts = (date: PlainDate, name: string, { id }: Crop, harvest: Dates | null): Draft[] =>
  notFed.has(id) || (harvest !== null && harvest.from <= date)
    ? []
    : [
        on(date, {
          kind: 'feed',
          summary: `Feed ${name}`,
          description:
            'Where the soil is poor or the leaves are pale. Give no more than the label says; rich soil needs none.',
        }),
      ];

const harvestDrafts = (harvest: Dates | null, name: string, bed: Bed): Draft[] =>
  harvest === null
    ? []
    : [
        on(harvest.from, {
          kind: 'first-harvest',
          summary: `First harvest of ${name}`,
          description: `The earliest kinds are ready in ${bed.name} about now, by their published days.`,
        }),
        on(harvest.to, {
          kind: 'last-harvest',
          summary: `Late harvest of ${name}`,
          description: `The latest kinds are ready in ${bed.name} about now, by their published days.`,
        }),
      ];

/** A frost is known by its night: one of yesterday and one of tomorrow are two. */
function frostDrafts(sowings: readonly GrowingSowing[], coming: BedSeason['comingMinC'], bed: Bed): Draft[] {
  return coming.flatMap(({ date, minC }) => {
    const atRisk = sowings.filter((one) => standsOn(one, date) && minC <= warnBelowC[one.crop.frost ?? 'tender']);
    if (atRisk.length === 0) return [];
    const names = [...new Set(atRisk.map(({ crop }) => nameOf(crop)))].sort().join(', ');
    return [
      on(date, {
        kind: 'frost',
        n: date,
        summary: `Frost may harm ${names}`,
        description: `A night of about ${whole(minC)} °C in the air is forecast, and ${bed.name} can be colder under a clear sky. Cover the plants before dusk, and uncover them by day.`,
      }),
    ];
  });
}

/** Do plants of a sowing stand in the bed on a date, above the ground? */
function standsOn({ sowing, forecast, indoors, harvest }: GrowingSowing, date: PlainDate): boolean {
  if (harvest !== null && date > harvest.to) return false;
  if (sowing.method === 'indoors') return indoors !== null && date >= indoors.plantOut;
  const first = forecast?.emergence.first;
  return first !== undefined && isUp(first) && date >= first.range.from;
}

const on = (date: PlainDate, said: Omit<Draft, 'from' | 'to'>): Draft => ({ from: date, to: date, ...said });
const isUp = (milestone: Milestone | NoMilestone): milestone is Milestone => !('why' in milestone);
const later = (one: PlainDate, other: PlainDate): PlainDate => (one > other ? one : other);
const nameOf = ({ name }: Crop): string => name.charAt(0).toLowerCase() + name.slice(1);
const whole = (value: number): number => Math.round(value) + 0;
