import { THIN_YEARS } from '../../answers/ahead/past-soil.js';
import type { Note } from '../../basics/errors.js';
import type { Crop } from '../../germination/crop.js';
import { HARDENING_DAYS } from '../sowing/indoors.js';
import { type Picking, weeksOfPicking } from '../sowing/picking.js';
import type { PlanStart } from './starts.js';

/** Why nothing reaches a week of harvest. */
export const gapWhys = ['too-hot', 'too-cold', 'frost', 'too-late', 'maturity-unknown'] as const;
export type GapWhy = (typeof gapWhys)[number];

/** A gap in a plan, said plainly. */
export function gapText(why: GapWhy, { name, frost }: Pick<Crop, 'name' | 'frost'>): string {
  switch (why) {
    case 'too-hot':
      return `${name} for these weeks would have to come up in soil that is too hot for it in most years, even under shade, and cannot be brought on in trays in time.`;
    case 'too-cold':
      return `${name} for these weeks would have to come up, or be planted out, while it is too cold for it in most years.`;
    case 'frost':
      return frost === 'tender'
        ? `Frost would take ${name.toLowerCase()} before these weeks in most years.`
        : `Hard frost would take ${name.toLowerCase()} before these weeks in most years; under a cover it may stand.`;
    case 'too-late':
      return `${name} for these weeks would have had to be sown before today.`;
    case 'maturity-unknown':
      return `How long ${name.toLowerCase()} takes to its harvest is not known here: bulbs wait for the length of day that suits the kind, some crops for years, and of rows of your own nothing is told. Sow it when a sowing window is open.`;
  }
}

/** So many hot hours are worth a shade. */
const HOT_HOURS = 6;
/** Seed that takes so many times the crop's best lies long. Our assumption. */
const LONG_TIMES = 3;

/** What to do about one sowing of a plan. */
export function adviceOn({ method, isShaded, hotHours, half, day }: PlanStart, crop: Crop, roomC: number): Note[] {
  if (method === 'indoors') {
    return [
      {
        code: 'start-indoors',
        text: `Start it in trays in a room of ${roomC} °C, and plant it out when it is fit and nights bear it. A sowing in the bed would not reach these weeks in most years.`,
      },
    ];
  }
  const notes: Note[] = [];
  if (isShaded) {
    notes.push({
      code: 'shade',
      text: 'Shade the row by half until seedlings show: without it too little would come up in most years. What shade does was worked out, not measured.',
    });
  } else if (hotHours >= HOT_HOURS) {
    notes.push({
      code: 'shade',
      text: `In the middle of the years the seed lies ${Math.round(hotHours)} hours in soil hotter than ${crop.hotThresholdC.toFixed(0)} °C before half is up. Shade the row by half through the hot hours, and take the shade off once seedlings show.`,
    });
  }
  if (isShaded || hotHours >= HOT_HOURS) {
    notes.push({
      code: 'sow-in-evening',
      text: 'Sow in the evening and water with cool water: the seed’s first hours, when heat stops it most easily, then fall in the night. Follow local rules where watering is restricted.',
    });
    if (crop.weeksInTrays !== null) {
      notes.push({
        code: 'start-indoors',
        text: 'Or start it in trays in a cool room, and plant it out when it is fit.',
      });
    }
  }
  const best = Math.min(...crop.rows.flatMap(({ days }) => (days === null ? [] : [days])));
  if (half && half.p50 - day > LONG_TIMES * best && half.p50 - day > crop.maxDays) {
    notes.push({
      code: 'lies-long',
      text: 'The seed lies long in cold soil, where it may rot or be eaten: a cover of fleece, or trays indoors, would be surer.',
    });
  }
  return notes;
}

/** What every plan of a crop rests on. */
export function assumptionsOf(
  crop: Crop,
  picking: Picking,
  { years, roomC }: { readonly years: number; readonly roomC: number },
): Note[] {
  const weeks = weeksOfPicking(picking);
  const { fromDays, toDays, countedFrom } = crop.maturity!;
  const { weeksInTrays } = crop;
  return [
    years === 0
      ? {
          code: 'normals',
          text: 'No past years are known: the plan is made for one usual year, from the place’s normals. How often it fails cannot be told.',
        }
      : {
          code: 'past-years',
          text: `The plan is made from what each sowing would have done in ${years} past years; a week counts as reached where it was in half of them or more.`,
        },
    {
      code: 'harvest',
      text: `Published days to maturity are ${fromDays} to ${toDays} from ${countedFrom === 'sowing' ? 'sowing; they are counted from half emergence, less the days the chart gives at 20 °C' : 'planting out'}. A sowing is picked from ${picking.fromDays} to ${picking.toDays} days after that, around the middle of them, and is the harvest of ${weeks === 1 ? 'one week' : `${weeks} weeks`} (common practice, no source). Days shorter than 12 hours slow growth, to half its pace at 11 (a rule of thumb, common practice, no source).`,
    },
    {
      code: 'even-emergence',
      text: 'Sowings are spaced so that they come up, and are ready, at even distances: closer together where the soil cools, further apart where it warms.',
    },
    {
      code: 'chart-time',
      text: `Half is up when the chart says; beds have taken up to ${crop.bedTimeFactor.to} times as long, and then all is ready so much later.`,
    },
    {
      code: 'seeds',
      text: 'Seeds are counted for one plant to each one wanted, of seed as good as the chart’s, by the stand of that date and what beds have given.',
    },
    ...(weeksInTrays === null
      ? [{ code: 'stays-put', text: `${crop.name} does not bear to be moved, so nothing is started indoors.` }]
      : [
          {
            code: 'indoors',
            text: `Trays are taken to be as warm as the room, ${roomC} °C; plants are fit ${weeksInTrays} weeks after coming up, harden off for ${HARDENING_DAYS} days, and go out when nights bear them (common practice, no source).`,
          },
        ]),
  ];
}

export function warningsOf(
  crop: Crop,
  { years, airIsKnown }: { readonly years: number; readonly airIsKnown: boolean },
): Note[] {
  return [
    ...(years > 0 && years < THIN_YEARS
      ? [{ code: 'thin-years', text: `${years} years are few: how sure a sowing is can hardly be told.` }]
      : []),
    ...(airIsKnown
      ? []
      : [
          {
            code: 'frost-unknown',
            text: 'Without air temperatures frost cannot be told from soil: the plan does not heed it. Send the air’s daily minima.',
          },
        ]),
    {
      code: 'weather-of-growth',
      text: `What weather does to ${crop.name.toLowerCase()} after it is up is left out but for frost and short days: heat makes some crops bolt, drought and pests take others.`,
    },
  ];
}
