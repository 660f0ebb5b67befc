import { type Attributes, element } from './svg.js';

/** Colours by purpose, on light and on dark paper. */
export const palette = {
  paper: { light: '#fcfaf4', dark: '#1c1d19' },
  ink: { light: '#25241f', dark: '#ece8dc' },
  quiet: { light: '#5c594f', dark: '#b5b1a4' },
  rule: { light: '#e2ddcf', dark: '#383a33' },
  /** The crop's favourable range, behind everything. */
  good: { light: '#e7ecd8', dark: '#2b3526' },
  /** Emergence. */
  accent: { light: '#356b32', dark: '#98cf8c' },
  /** Emergence, as an area. */
  accentGround: { light: '#d3e0c8', dark: '#33482e' },
} as const;
export type Colour = keyof typeof palette;
export type Theme = 'auto' | 'light' | 'dark';

/** Fill and stroke of an element: classes for style sheets, and attributes for renderers without them. */
export function paint({ fill, stroke }: { readonly fill?: Colour; readonly stroke?: Colour }): Attributes {
  const classes = [fill && `fill-${fill}`, stroke && `stroke-${stroke}`].filter(Boolean).join(' ');
  return {
    ...(classes ? { class: classes } : {}),
    fill: fill ? palette[fill].light : 'none',
    stroke: stroke ? palette[stroke].light : undefined,
  };
}

/**
 * The style sheet of all pictures. Each colour can be set from outside, as `--plot-ink` and so on.
 *
 * @param theme `auto`: dark if the reader prefers it, on screens; paper stays light.
 */
export function styles(theme: Theme): string {
  const rules = (shade: 'light' | 'dark'): string =>
    Object.entries(palette)
      .map(
        ([name, colour]) =>
          `.plot .fill-${name}{fill:var(--plot-${name},${colour[shade]})}.plot .stroke-${name}{stroke:var(--plot-${name},${colour[shade]})}`,
      )
      .join('');
  if (theme !== 'auto') return rules(theme);
  return `${rules('light')}@media screen and (prefers-color-scheme:dark){${rules('dark')}}`;
}

/** Hatches that distinguish areas without colour. */
export type Hatch = 'hot' | 'cold' | 'slow' | 'frost' | 'late' | 'modelled' | 'expected';

const HATCHES: Readonly<Record<Hatch, { readonly size: number; readonly marks: readonly string[] }>> = {
  hot: { size: 6, marks: ['M-1,7 7,-1 M-1,1 1,-1 M5,7 7,5'] },
  cold: { size: 6, marks: ['M-1,-1 7,7 M-1,5 1,7 M5,-1 7,1'] },
  slow: { size: 5, marks: ['M0,2.5 H5'] },
  frost: { size: 7, marks: ['M-1,8 8,-1', 'M-1,-1 8,8'] },
  late: { size: 6, marks: ['M1,1.5 h1.5 M4,4.5 h1.5'] },
  modelled: { size: 4, marks: ['M2,0 V4'] },
  expected: { size: 5, marks: ['M2,2.5 h1'] },
};

/** The pattern of a hatch; areas refer to it by `hatched`. */
export function hatchPattern(id: string, hatch: Hatch): string {
  const { size, marks } = HATCHES[hatch];
  return element(
    'pattern',
    { id: `${id}-${hatch}`, width: size, height: size, patternUnits: 'userSpaceOnUse' },
    ...marks.map((d) => element('path', { d, ...paint({ stroke: 'quiet' }), 'stroke-width': 0.8 })),
  );
}

export const hatched = (id: string, hatch: Hatch): Attributes => ({ fill: `url(#${id}-${hatch})` });
