import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Fact } from '../../basics/fact.js';
import type { Crop } from '../../germination/crop.js';
import { riskNote } from '../../growth/pests/pest-facts.js';
import { pestRisks, type Risk } from '../../growth/pests/pest-risks.js';
import type { Threatened } from '../../growth/pests/pest-rule.js';
import { pestsOf } from '../../growth/pests/pest-rules.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { seriesOfYears } from '../ahead/past-soil.js';
import type { Bedding } from '../question.js';
import { airDays } from './air-days.js';

/** The question about the pests of a place. */
export interface RisksAsked extends Pick<Bedding, 'site' | 'bed'> {
  readonly crop: Crop;
  readonly series: readonly ReadSeries[];
  readonly typicalAir?: ReadSeries | null | undefined;
}

/** When rows lie, and until when what they threaten is there to be eaten. */
export interface Rows {
  /** The first sowing. */
  readonly from: PlainDate;
  /** The last date on which most of the last sowing is up. */
  readonly upBy: PlainDate;
}

/** Seedlings are eaten for so long after they are up, and so are roots where nobody says when they are ripe [d]. Our choice. */
const SEEDLING_DAYS = 42;
const GROWING_DAYS = 150;

/** So long after most are up a pest of each kind still finds what it eats [d]. */
function exposedDays(threatens: Threatened, { maturity }: Crop): number {
  if (threatens === 'seed') return 0;
  return threatens === 'seedling' ? SEEDLING_DAYS : (maturity?.toDays ?? GROWING_DAYS);
}

/** The pests whose broods are out while rows of a crop are there for them; none indoors, or where no past years of air are known. */
export function pestsMet({ crop, site, bed, ...known }: RisksAsked, { from, upBy }: Rows): Risk[] {
  if (bed.kind === 'indoors' || site.latitude === null || pestsOf(crop.id).length === 0) return [];
  const air = airDays(seriesOfYears(known));
  if (!air) return [];
  const to = addDays(upBy, exposedDays('root', crop));
  const risks = pestRisks({ crop: crop.id, latitudeDeg: site.latitude, from, to }, air);
  return met(risks, crop, { from, upBy });
}

/** Those of some risks that meet some rows. */
export const met = (risks: readonly Risk[], crop: Crop, { from, upBy }: Rows): Risk[] =>
  risks.filter((risk) => risk.to >= from && risk.from <= addDays(upBy, exposedDays(risk.threatens, crop)));

/** The basis of pest dates, reported once. */
export function pestNotes(risks: readonly Risk[]): Fact[] {
  const years = Math.max(0, ...risks.map(({ ofYears }) => ofYears ?? 0));
  return years === 0 ? [] : [riskNote('pest-dates', { years })];
}
