export const one = <T extends HTMLElement = HTMLElement>(selector: string): T | null =>
  document.querySelector<T>(selector);

export const all = <T extends HTMLElement = HTMLElement>(selector: string): T[] => [
  ...document.querySelectorAll<T>(selector),
];
