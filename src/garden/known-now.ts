import type { Forecast } from '../answers/forecast.js';
import type { PlainDate } from '../basics/calendar.js';
import type { Crop } from '../germination/crop.js';
import type { Sowing } from './season-store.js';

/** What is known of a sowing today. */
export interface KnownSowing {
  readonly sowing: Pick<Sowing, 'id' | 'bed' | 'date' | 'method'>;
  /** Today at the place. */
  readonly today: PlainDate;
  /** As it stands today, with the weather until now and ahead. */
  readonly forecast: Pick<Forecast, 'crop' | 'emergence' | 'hotSpells'>;
  /** The coldest of each coming day's air, as forecast. */
  readonly comingMinC: readonly { readonly date: PlainDate; readonly minC: number }[];
}

/** When a crop can be sown in a bed, as past years say today. */
export interface KnownWindows {
  readonly bed: string;
  readonly crop: Pick<Crop, 'id' | 'name'>;
  readonly today: PlainDate;
  /** In the order of dates. */
  readonly windows: readonly { readonly from: PlainDate; readonly to: PlainDate }[];
}

/** What is known today of all that somebody wants to be told of. */
export interface KnownNow {
  readonly sowings: readonly KnownSowing[];
  readonly windows: readonly KnownWindows[];
}
