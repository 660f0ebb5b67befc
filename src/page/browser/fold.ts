import { one } from './elements.js';

/** On a phone, folds the form and scrolls there; open questions about a file come first. */
export function bringIntoView(): void {
  const open = unsettled();
  const side = one('#answer')!;
  if (open) open.scrollIntoView({ block: 'nearest' });
  else if (foldAway()) one('#asking')!.scrollIntoView();
  else if (side.getBoundingClientRect().top > innerHeight / 2) side.scrollIntoView();
}

/** The open questions about a file, beside it in the form. */
function unsettled(): HTMLElement | null {
  return one('#ask:has([name="source"][value="file"]:checked) #file-state :is(.problem, .choices)');
}

/** On a narrow screen, folds the form above an answer or the opening; focus moves to its summary. */
export function foldAway(): boolean {
  const asking = one<HTMLDetailsElement>('#asking')!;
  const isBelow = matchMedia('(width < 60rem)').matches;
  if (!asking.open || !isBelow || unsettled() || !one('#answer > :is(.neighbour, .opening)')) return false;
  const hadFocus = asking.contains(document.activeElement);
  asking.open = false;
  if (hadFocus) asking.querySelector('summary')!.focus({ preventScroll: true });
  return true;
}
