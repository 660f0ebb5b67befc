import type { Forecast } from '../../answers/forecast/forecast.js';
import { helpsSownSeed } from '../../answers/forecast/remedies.js';
import type { SpellAnswer } from '../../answers/forecast/spell-answers.js';
import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { thinningOf } from '../sowing/thinning.js';
import type { SowingMethod } from '../store/season-store.js';
import type { Bed } from '../store/store.js';
import { compare, type Draft, isUp, nameOf, on, whole } from './calendar-event.js';
import type { Dates, GrowingSowing, SowingToMake } from './calendar-season.js';

// When to feed: common practice, no source.
/** From half of a sowing being up until it is first fed [d]. */
const FEED_AFTER_DAYS = 28;
/** From planting out until it is first fed [d]. */
const FEED_PLANTED_AFTER_DAYS = 21;

/** What a calendar says of a sowing that was made. */
export function sowingDrafts(
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

/** What a calendar says of a sowing that a plan asks for. */
export function plannedDrafts(
  { date, seeds, method, half, harvest, indoors }: SowingToMake,
  crop: Crop,
  bed: Bed,
): Draft[] {
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
const feedDrafts = (date: PlainDate, name: string, { isFed }: Crop, harvest: Dates | null): Draft[] =>
  !isFed || (harvest !== null && harvest.from <= date)
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

const later = (one: PlainDate, other: PlainDate): PlainDate => (one > other ? one : other);
