/** The response to one constant temperature. */
export interface DrawnRow {
  readonly temperatureC: number;
  /** `true` with `days: null`: tested, and none or too few emerged. `false`: never tested. */
  readonly tested: boolean;
  readonly days: number | null;
  readonly percent: number | null;
}

/** The rendered part of a crop; an answer of /v1/crops/{id} has it all. */
export interface DrawnCrop {
  readonly id: string;
  readonly name: string;
  readonly latinName?: string | null;
  readonly rows: readonly DrawnRow[];
  readonly soil: {
    readonly minimumC: number;
    readonly optimumFromC: number;
    readonly optimumToC: number;
    readonly maximumC: number;
  } | null;
  readonly hotThresholdC: number;
}

/** What a trial at one temperature found. */
export type Cell = 'timed' | 'none-came' | 'not-tested';
export const cellOf = ({ tested, days }: DrawnRow): Cell =>
  tested ? (days === null ? 'none-came' : 'timed') : 'not-tested';
export const CELLS: readonly Cell[] = ['timed', 'none-came', 'not-tested'];
/** Faster seed cannot be drawn, and there is none: no seed emerges within a quarter of an hour [d]. */
const MIN_DAYS = 0.01;

/** Rows that can be drawn, from cold to warm. */
export const rowsOf = ({ rows }: DrawnCrop): DrawnRow[] =>
  rows
    .filter(
      ({ temperatureC, days }) =>
        Number.isFinite(temperatureC) && (days === null || (Number.isFinite(days) && days >= MIN_DAYS)),
    )
    .map((row) => ({
      ...row,
      percent: row.percent === null || !Number.isFinite(row.percent) ? null : Math.max(0, Math.min(100, row.percent)),
    }))
    .sort((a, b) => a.temperatureC - b.temperatureC);

/** Days as the picture writes them: with a tenth below ten. */
export const roundedDays = (days: number): number => (days < 10 ? Math.round(days * 10) / 10 : Math.round(days));
