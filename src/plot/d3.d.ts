// What is used of two packages that come without types.

declare module 'd3-scale' {
  interface LinearScale {
    (x: number): number;
    domain(xs: readonly number[]): LinearScale;
    domain(): number[];
    range(ys: readonly number[]): LinearScale;
    range(): number[];
    clamp(clamped: boolean): LinearScale;
    copy(): LinearScale;
    nice(count?: number): LinearScale;
    ticks(count?: number): number[];
  }
  export function scaleLinear(): LinearScale;
  export function scaleLog(): LinearScale;
}

declare module 'd3-shape' {
  type Corner = readonly [x: number, y: number];
  interface Shape {
    (corners: readonly Corner[]): string | null;
    digits(digits: number): Shape;
  }
  interface AreaShape {
    (bands: readonly (readonly [x: number, low: number, high: number])[]): string | null;
    x(of: (band: readonly [number, number, number]) => number): AreaShape;
    y0(of: (band: readonly [number, number, number]) => number): AreaShape;
    y1(of: (band: readonly [number, number, number]) => number): AreaShape;
    digits(digits: number): AreaShape;
  }
  export function line(): Shape;
  export function area(): AreaShape;
}
