import { describe, expect, it } from 'vitest';
import { type Colour, palette, styles } from '../../../src/plot/theme.js';

/** Contrast of two colours, 1 to 21: Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [r, g, b] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const grounds: Colour[] = ['paper', 'good', 'accentGround', 'rule'];

describe('the colours', () => {
  it('are measured rightly: black on white is 21, and grey #767676 just passes', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  describe.each(['light', 'dark'] as const)('on %s', (shade) => {
    it.each(grounds)('let text be read on %s, and marks be seen', (ground) => {
      for (const text of ['ink', 'quiet'] as const) {
        expect(contrast(palette[text][shade], palette[ground][shade])).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(palette.accent[shade], palette[ground][shade])).toBeGreaterThanOrEqual(3);
    });
  });

  it('turn dark on screens alone, where the reader likes it so', () => {
    expect(styles('auto')).toContain('@media screen and (prefers-color-scheme:dark)');
    expect(styles('light')).not.toContain('@media');
    expect(styles('dark')).toContain(palette.paper.dark);
  });
});
