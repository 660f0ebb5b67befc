export const one = <T extends HTMLElement = HTMLElement>(selector: string): T | null =>
  document.querySelector<T>(selector);

export const all = <T extends HTMLElement = HTMLElement>(selector: string): T[] => [
  ...document.querySelectorAll<T>(selector),
];

/** Is another question on its way? What the answer that stands there has still asked for breaks off then, and is no refusal. */
export const isAskedAnew = (): boolean => one('#answer')!.getAttribute('aria-busy') === 'true';
