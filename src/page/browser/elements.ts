export const one = <T extends HTMLElement = HTMLElement>(selector: string): T | null =>
  document.querySelector<T>(selector);

export const all = <T extends HTMLElement = HTMLElement>(selector: string): T[] => [
  ...document.querySelectorAll<T>(selector),
];

/** True if another question is under way: aborted requests of the answer on the page are then no refusals. */
export const isAskedAnew = (): boolean => one('#answer')!.getAttribute('aria-busy') === 'true';
