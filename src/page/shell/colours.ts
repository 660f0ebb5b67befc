import { palette } from '../../plot/theme.js';

/** The pictures' colours, set to the page's own. */
export function colours(): string {
  const set = (shade: 'light' | 'dark'): string =>
    `:root{${Object.entries(palette)
      .map(([name, colour]) => `--${name}:${colour[shade]}`)
      .join(';')}}`;
  return `${set('light')}@media screen and (prefers-color-scheme:dark){${set('dark')}}`;
}
