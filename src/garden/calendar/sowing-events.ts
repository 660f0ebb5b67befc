import type { Forecast } from '../../answers/forecast/forecast.js';
import { helpsSownSeed } from '../../answers/forecast/remedies/remedies.js';
import type { SpellAnswer } from '../../answers/forecast/remedies/spell-answers.js';
import { addDays, type PlainDate } from '../../basics/calendar.js';
import { asFact } from '../../basics/fact.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { thinningOf } from '../sowing/thinning.js';
import type { Sowing } from '../store/season-store.js';
import type { Bed } from '../store/store.js';
import { compare, type Draft, isUp, on, whole } from './calendar-event.js';
import type { Dates, GrowingSowing, SowingToMake } from './calendar-season.js';

// When to feed: common practice, no source.
/** From half of a sowing being up until it is first fed [d]. */
const FEED_AFTER_DAYS = 28;
/** From planting out until it is first fed [d]. */
const FEED_PLANTED_AFTER_DAYS = 21;

/** Events of a sowing that was made. */
export function sowingDrafts(growing: GrowingSowing, bed: Bed): Draft[] {
  const { sowing, crop: ofCrop, forecast, indoors, harvest, resowBy, sowAgain } = growing;
  const crop = cropInFacts(ofCrop);
  return [
    sowDraft(sowing, crop, bed),
    ...(forecast ? comingUpDrafts(forecast, crop, growing) : []),
    ...(indoors ? indoorDrafts(indoors, crop, bed, growing) : []),
    ...harvestDrafts(harvest, crop, bed),
    ...(resowBy && resowBy >= sowing.date
      ? [
          on(resowBy, {
            kind: 'sow-again',
            summary: { code: 'event.sow-again', params: { crop } },
            description: [
              { code: 'event.sow-again.detail', params: { sownOn: sowing.date } },
              ...(sowAgain ? [sowAgain] : []),
            ],
          }),
        ]
      : []),
  ];
}

/** Events of a sowing that a plan needs. */
export function plannedDrafts(planned: SowingToMake, ofCrop: Crop, bed: Bed): Draft[] {
  const crop = cropInFacts(ofCrop);
  const { half, harvest, indoors } = planned;
  return [
    sowDraft({ ...planned, time: null }, crop, bed),
    {
      ...(half.range ?? { from: half.date, to: half.date }),
      kind: 'look-for-seedlings',
      summary: { code: 'event.look-for-seedlings', params: { crop } },
      description: [{ code: 'event.look-for-seedlings.planned', params: {} }],
    },
    ...(indoors ? indoorDrafts(indoors, crop, bed, { crop: ofCrop, harvest }) : []),
    ...harvestDrafts(harvest, crop, bed),
  ];
}

function sowDraft(
  { date, method, seeds, time }: Pick<Sowing, 'date' | 'method' | 'seeds'> & { readonly time: string | null },
  crop: string,
  { name: bed }: Bed,
): Draft {
  const where = method === 'indoors' ? 'indoors' : 'bed';
  return on(date, {
    kind: 'sow',
    summary: { code: 'event.sow', params: { crop, where } },
    description: [{ code: 'event.sow.detail', params: { bed, where, seeds, time } }],
  });
}

/** Up to when the seedlings are there, and a while on. */
function comingUpDrafts(
  { emergence, stand, keepMoist, hotSpells }: Forecast,
  crop: string,
  { sowing, crop: ofCrop, isSparse, harvest }: GrowingSowing,
): Draft[] {
  const isDirect = sowing.method === 'direct';
  const drafts: Draft[] = [
    {
      ...keepMoist,
      kind: 'keep-moist',
      summary: { code: 'event.keep-moist', params: { crop } },
      description: [{ code: 'event.keep-moist.detail', params: {} }],
    },
  ];
  const { first, half, most } = emergence;
  if (isUp(first)) {
    const field = { fromPercent: whole(stand.field.from), toPercent: whole(stand.field.to) };
    drafts.push({
      kind: 'look-for-seedlings',
      from: first.range.from,
      to: later(first.range.from, isUp(most) ? most.inBeds.to : stand.by),
      summary: { code: 'event.look-for-seedlings', params: { crop } },
      description: [
        { code: 'event.look-for-seedlings.detail', params: { halfDate: isUp(half) ? half.date : null, ...field } },
      ],
    });
  }
  const thinning = isDirect && !isSparse ? thinningOf(ofCrop, most) : null;
  if (thinning) {
    drafts.push({
      kind: 'thin',
      ...thinning,
      summary: { code: 'event.thin', params: { crop } },
      description: [{ code: 'event.thin.detail', params: {} }],
    });
  }
  if (isDirect && isUp(half)) {
    drafts.push(...feedDrafts(addDays(half.date, FEED_AFTER_DAYS), crop, { crop: ofCrop, harvest }));
  }
  if (isDirect) drafts.push(...(hotSpells ?? []).toSorted((a, b) => compare(a.from, b.from)).map(heatDraft(crop)));
  return drafts;
}

/** Spells are numbered as they begin: one that moves stays the same. */
const heatDraft =
  (crop: string) =>
  ({ from, to, peakC, thresholdC, severity, remedies }: SpellAnswer, i: number): Draft => ({
    kind: 'heat',
    n: i + 1,
    from,
    to,
    summary: { code: 'event.heat', params: { crop, severity } },
    description: [
      { code: 'event.heat.detail', params: { peakC: whole(peakC), thresholdC: whole(thresholdC) } },
      ...remedies.filter(helpsSownSeed).map(({ text }) => asFact(text)),
    ],
  });

function indoorDrafts(
  { hardenOff, plantOut }: NonNullable<GrowingSowing['indoors']>,
  crop: string,
  { name: bed }: Bed,
  grown: Pick<GrowingSowing, 'crop' | 'harvest'>,
): Draft[] {
  return [
    {
      ...hardenOff,
      kind: 'harden-off',
      summary: { code: 'event.harden-off', params: { crop } },
      description: [{ code: 'event.harden-off.detail', params: {} }],
    },
    on(plantOut, {
      kind: 'plant-out',
      summary: { code: 'event.plant-out', params: { crop } },
      description: [{ code: 'event.plant-out.detail', params: { bed } }],
    }),
    ...feedDrafts(addDays(plantOut, FEED_PLANTED_AFTER_DAYS), crop, grown),
  ];
}

/** None for crops that need none, or that are ready by then. */
const feedDrafts = (
  date: PlainDate,
  crop: string,
  { crop: { isFed }, harvest }: Pick<GrowingSowing, 'crop' | 'harvest'>,
): Draft[] =>
  !isFed || (harvest !== null && harvest.from <= date)
    ? []
    : [
        on(date, {
          kind: 'feed',
          summary: { code: 'event.feed', params: { crop } },
          description: [{ code: 'event.feed.detail', params: {} }],
        }),
      ];

const harvestDrafts = (harvest: Dates | null, crop: string, { name: bed }: Bed): Draft[] =>
  harvest === null
    ? []
    : [
        on(harvest.from, {
          kind: 'first-harvest',
          summary: { code: 'event.first-harvest', params: { crop } },
          description: [{ code: 'event.first-harvest.detail', params: { bed } }],
        }),
        on(harvest.to, {
          kind: 'last-harvest',
          summary: { code: 'event.last-harvest', params: { crop } },
          description: [{ code: 'event.last-harvest.detail', params: { bed } }],
        }),
      ];

const later = (one: PlainDate, other: PlainDate): PlainDate => (one > other ? one : other);
