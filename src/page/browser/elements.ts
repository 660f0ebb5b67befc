export const one = <T extends HTMLElement = HTMLElement>(selector: string): T | null =>
  document.querySelector<T>(selector);

export const all = <T extends HTMLElement = HTMLElement>(selector: string): T[] => [
  ...document.querySelectorAll<T>(selector),
];

/**
 * True if another question is under way. Requests of the answer still on the page are then aborted, which is no
 * refusal.
 */
export const isAskedAnew = (): boolean => one('#answer')!.getAttribute('aria-busy') === 'true';
