import type { ScaleLinear, ScaleLogarithmic } from 'd3-scale';
import { area, line } from 'd3-shape';

/** Position of a value on an axis [px]. */
export type LinearScale = ScaleLinear<number, number> | ScaleLogarithmic<number, number>;

export type Corner = readonly [x: number, y: number];
type Band = readonly [x: number, low: number, high: number];

/** A line through corners, to a tenth of a pixel, as a path. */
export const lineThrough: (corners: readonly Corner[]) => string | null = line<Corner>(
  ([x]) => x,
  ([, y]) => y,
).digits(1);

/** The area between two lines, likewise. */
export const areaBetween: (bands: readonly Band[]) => string | null = area<Band>()
  .x(([x]) => x)
  .y0(([, low]) => low)
  .y1(([, , high]) => high)
  .digits(1);
