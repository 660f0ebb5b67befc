import type { Basis } from '../basics/series.js';
import { dayOf } from './dates.js';
import { type PlotPart, partOf } from './temperature-parts.js';

interface Dates {
  readonly from: string;
  readonly to: string;
}

/** The date when a share of the seedlings has emerged, or the reason for having none. */
export type DrawnMilestone = DrawnEvent | { readonly why: 'not-by-count-day' | 'not-at-this-temperature' };

export interface DrawnEvent {
  readonly date: string;
  /** `to: null`: later than the count. */
  readonly range: { readonly from: string; readonly to: string | null };
  readonly inBeds: Dates;
}

export interface DrawnSpell extends Dates {
  readonly peakC: number;
  /** Beyond this temperature it is too hot or too cold [°C]. */
  readonly thresholdC: number;
}

/** The rendered part of a forecast; an answer of /v1/forecasts has it all. */
export interface DrawnForecast {
  readonly sowing: { readonly date: string; readonly depthCm: number; readonly seeds?: number | null | undefined };
  readonly countDays: number;
  readonly emergence: { readonly first: DrawnMilestone; readonly half: DrawnMilestone; readonly most: DrawnMilestone };
  readonly stand: {
    readonly by: string;
    readonly field: { readonly from: number; readonly to: number };
    readonly seedlings?: { readonly from: number; readonly to: number } | null | undefined;
  };
  readonly hotSpells: readonly DrawnSpell[] | null;
  readonly coldSpells: readonly DrawnSpell[] | null;
  readonly daily: readonly {
    readonly date: string;
    readonly min: number;
    readonly mean: number;
    readonly max: number;
    readonly basis: Basis;
    readonly emergedPercent: number;
  }[];
}

/** Hourly temperatures at the seed [°C], with provenance, in days since local midnight of the sowing date. */
export interface DrawnHours {
  readonly atDay: ArrayLike<number>;
  readonly tempC: ArrayLike<number>;
  readonly basis: readonly Basis[];
}

/** Everything rendered around a forecast. */
export interface ForecastSetting {
  /** A crop's id, or the grower's name for a custom response curve. */
  readonly crop: string;
  readonly bedName?: string | null;
  /** Soil temperatures that suit the crop [°C]. */
  readonly goodC?: { readonly from: number; readonly to: number } | null;
  /** null: only days are known. */
  readonly hours?: DrawnHours | null;
  readonly today?: string | null;
}

export interface DrawnDay {
  readonly day: number;
  readonly min: number;
  readonly mean: number;
  readonly max: number;
  readonly part: PlotPart;
  readonly upPercent: number;
}

/** The days that can be drawn, from the sowing on. */
export function daysOf({ daily, sowing }: DrawnForecast): DrawnDay[] {
  const firstDay = dayOf(sowing.date);
  return daily
    .map(({ date, min, mean, max, basis, emergedPercent }) => ({
      day: dayOf(date),
      min,
      mean,
      max,
      part: partOf(basis),
      upPercent: emergedPercent,
    }))
    .filter(
      ({ day, min, mean, max, upPercent }) => [min, mean, max, upPercent].every(Number.isFinite) && day >= firstDay,
    );
}

export interface KindOfSpell extends DrawnSpell {
  readonly kind: 'hot' | 'cold';
}

/** Spells of both kinds. */
export function spellsOf(forecast: DrawnForecast): KindOfSpell[] {
  const all = [
    ...(forecast.hotSpells ?? []).map((spell) => ({ ...spell, kind: 'hot' as const })),
    ...(forecast.coldSpells ?? []).map((spell) => ({ ...spell, kind: 'cold' as const })),
  ];
  return all.filter(({ peakC, thresholdC }) => Number.isFinite(peakC) && Number.isFinite(thresholdC));
}
