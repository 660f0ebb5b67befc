import type { Hatch } from './theme.js';

export type WhyClosed = 'too-cold' | 'too-hot' | 'too-slow' | 'frost-to-come' | 'too-late';

/** The rendered part of sowing windows; an answer of /v1/sowing-windows has it all. */
export interface DrawnSeason {
  /** The share of years in which each date was good; null from a usual year. */
  readonly dates: readonly { readonly date: string; readonly sureness: number | null }[];
  readonly windows: readonly { readonly from: string; readonly to: string }[];
  readonly closed: readonly { readonly from: string; readonly to: string; readonly why: WhyClosed }[];
  readonly best: { readonly date: string; readonly why: string } | null;
  readonly criteria: { readonly sureness: number };
  readonly years: { readonly count: number };
  /** Typical years that stand for past ones; left out or null: none do. */
  readonly climate?: { readonly typicalYears: number | null } | null | undefined;
}

export interface SeasonSetting {
  /** A crop's id, or the grower's name for a custom response curve. */
  readonly crop: string;
  /** The bed or the place. */
  readonly bedName?: string | null;
  readonly today?: string | null;
}

export const WHY_HATCH: Readonly<Record<WhyClosed, Hatch>> = {
  'too-cold': 'cold',
  'too-hot': 'hot',
  'too-slow': 'slow',
  'frost-to-come': 'frost',
  'too-late': 'late',
};
export const WHYS = Object.keys(WHY_HATCH) as WhyClosed[];
