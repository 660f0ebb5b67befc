import { lettering, TYPE } from './lettering.js';
import type { LinearScale } from './shapes.js';
import { element } from './svg.js';
import { paint } from './theme.js';

/** Grid lines of a vertical axis, with their numbers at the left. */
export function rungs(
  scale: LinearScale,
  count: number,
  { left, right }: { readonly left: number; readonly right: number },
  unit: string,
): string {
  return scale
    .ticks(count)
    .map((value) => {
      const y = scale(value);
      return (
        element('path', { d: `M${left},${y.toFixed(1)} H${right}`, ...paint({ stroke: 'rule' }) }) +
        lettering(left - 6, y + 4, `${value}${unit}`, { size: TYPE.small, colour: 'quiet', anchor: 'end' })
      );
    })
    .join('');
}
