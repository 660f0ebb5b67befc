import type { Forecast } from '../../answers/forecast/forecast.js';
import { seedOf, viablePercentOf } from '../../answers/forecast/seed-of.js';
import { addDays, dateAt, fixedZone, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { chosenCrop } from '../../germination/crop-choice.js';
import { bedInputsOf } from '../bed/bed-inputs.js';
import { onceEach } from '../bed/bed-season.js';
import { comingMinima } from '../bed/coming-minima.js';
import type { SubscriptionFields } from '../store/alert-store.js';
import type { Sowing } from '../store/season-store.js';
import type { Store } from '../store/store.js';
import { observedOf } from './judgement.js';
import { type KnownSowing, knownSowing } from './known-sowing.js';
import { indoorStartOf, sowingState } from './sowing-state.js';
import type { Triage } from './triage.js';
import { growingNow, type WorkPort, windowsAhead } from './work-port.js';

/** What is known of a sowing today. */
export interface SowingNow {
  readonly sowing: Pick<Sowing, 'id' | 'bed' | 'date' | 'method'>;
  readonly crop: Crop;
  /** Today at the place. */
  readonly today: PlainDate;
  /** As it stands today, with the weather until now and ahead; null: its bed's temperatures do not tell. */
  readonly forecast: Pick<Forecast, 'emergence' | 'hotSpells' | 'hours'> | null;
  /** When it is planted out, as past years' nights allow; null: it was sown where it stays, or does not come as far. */
  readonly plantOut: PlainDate | null;
  /** The coldest of each coming day's air, as forecast. */
  readonly comingMinC: readonly ComingMin[];
  /** Advice about it, for those who want to hear of rows to sow again; null: it is not due, or nobody does. */
  readonly triage: Triage | null;
}

interface ComingMin {
  readonly date: PlainDate;
  readonly minC: number;
}

/** When a crop can be sown in a bed, as past years say today. */
export interface WindowsNow {
  readonly bed: string;
  readonly crop: Pick<Crop, 'id' | 'name' | 'frost' | 'growth'>;
  readonly today: PlainDate;
  readonly comingMinC: readonly ComingMin[];
  /** The first date on which a sowing of today may be up; null: unknown. */
  readonly firstUp: PlainDate | null;
  /** In the order of dates; null: the place's past does not tell. */
  readonly windows: readonly { readonly from: PlainDate; readonly to: PlainDate }[] | null;
}

/** What is known today of all that somebody wants to be told of. */
export interface KnownNow {
  readonly sowings: readonly SowingNow[];
  readonly windows: readonly WindowsNow[];
}

/** An older sowing is up, lost or ripe, so it has no news [d]. */
const LIVE_DAYS = 180;
/** Each takes up to a second to work out. */
const MAX_SOWINGS = 200;
const MAX_WINDOWS = 100;

/** Whether somebody wants to be told of this crop in this bed. */
export const isWanted = ({ beds, crops }: SubscriptionFields, bed: string, crop: string): boolean =>
  (beds === null || beds.includes(bed)) && (crops === null || crops.includes(crop));

/**
 * What is known now of all that a subscription is about: the last 200 sowings of its beds that still live, and the
 * windows of its crops in up to 100 pairs of bed and crop.
 *
 * @param beds Ids of all beds of the owner.
 */
export async function knownNow(
  store: Store,
  owner: string,
  subscription: SubscriptionFields,
  beds: readonly string[],
  now: Date,
  ask: WorkPort,
): Promise<KnownNow> {
  const wanted = beds.filter((bed) => subscription.beds === null || subscription.beds.includes(bed));
  const ofSowings = subscription.events.some((event) => event !== 'window-open');
  const ofWindows = subscription.events.includes('window-open') ? (subscription.crops ?? []) : [];
  const sowings: SowingNow[] = [];
  const windows: WindowsNow[] = [];
  for (const bed of wanted) {
    if (ofSowings)
      sowings.push(...(await sowingsNow(store, owner, subscription, bed, now, ask, MAX_SOWINGS - sowings.length)));
    const crops = ofWindows.slice(0, MAX_WINDOWS - windows.length);
    if (crops.length > 0) windows.push(...(await windowsNow(store, owner, bed, crops, now, ask)));
  }
  return { sowings, windows };
}

async function sowingsNow(
  store: Store,
  owner: string,
  subscription: SubscriptionFields,
  bed: string,
  now: Date,
  ask: WorkPort,
  limit: number,
): Promise<SowingNow[]> {
  const found: SowingNow[] = [];
  // A day more or less is nothing here, so that of UTC will do, before a sowing's years of air are read.
  const eldest = addDays(dateAt(now.getTime(), fixedZone(0)), -LIVE_DAYS);
  const counted = limit > 0 ? await store.sowingsOf(owner, bed, limit) : [];
  const wanted = counted.filter(
    ({ sowing: { date, crop } }) => date >= eldest && isWanted(subscription, bed, chosenCrop(crop).id),
  );
  const kept = wanted.length > 0 ? await bedInputsOf(store, owner, bed, now.getTime()) : undefined;
  if (!kept) return [];
  const minima = await comingMinima(store, owner, kept);
  // All sowings of a bed have the same season, so that its windows are asked for once.
  const askOnce = onceEach(ask);
  const withTriage = subscription.events.includes('sow-again');
  for (const one of wanted) {
    const { sowing } = one;
    const known = await knownSowing(store, owner, one, kept, now);
    const state = withTriage ? await sowingState(known, askOnce) : null;
    const told = state === null ? await growingNow(known, ask) : (state.growing ?? { why: state.warnings[0]! });
    const { crop, today } = known;
    found.push({
      sowing,
      crop,
      today,
      forecast: 'why' in told ? null : isEnoughUp(known) ? { ...told.forecast, hotSpells: [] } : told.forecast,
      plantOut: indoorStartOf(known)?.plantOut ?? null,
      comingMinC: minima,
      triage: state?.triage ?? null,
    });
  }
  return found;
}

/** Heat at the seed says nothing more of a row of which enough is up. */
function isEnoughUp({ crop, question, counts, sowing }: KnownSowing): boolean {
  const viablePercent = viablePercentOf(question, seedOf(question));
  return observedOf({ crop, viablePercent, counts, seeds: sowing.seeds }) === 'enough';
}

/** Indoors it is always time to sow. */
async function windowsNow(
  store: Store,
  owner: string,
  bed: string,
  crops: readonly string[],
  now: Date,
  ask: WorkPort,
): Promise<WindowsNow[]> {
  const kept = await bedInputsOf(store, owner, bed, now.getTime());
  if (!kept?.bedMake || kept.bedMake.kind === 'indoors') return [];
  const today = dateAt(now.getTime(), kept.site.zone);
  const comingMinC = await comingMinima(store, owner, kept);
  const found: WindowsNow[] = [];
  for (const crop of crops.map(chosenCrop)) {
    const told = await windowsAhead(kept, today, { crop, time: '12:00', depthCm: null, lot: null }, ask);
    const first = 'why' in told ? null : (told.dates[0]?.firstDays?.p10 ?? null);
    found.push({
      bed,
      crop,
      today,
      comingMinC,
      firstUp: first === null ? null : addDays(today, Math.floor(first)),
      windows: 'why' in told ? null : told.windows,
    });
  }
  return found;
}
