import { one } from './elements.js';

/** On a phone the answer stands below the question, which is folded away then; what is to be settled comes first. */
export function bringIntoView(): void {
  const open = unsettled();
  const side = one('#answer')!;
  if (open) open.scrollIntoView({ block: 'nearest' });
  else if (foldAway()) one('#asking')!.scrollIntoView();
  else if (side.getBoundingClientRect().top > innerHeight / 2) side.scrollIntoView();
}

/** What a file that is asked of leaves open, beside it in the form. */
function unsettled(): HTMLElement | null {
  return one('#ask:has([name="source"][value="file"]:checked) #file-state :is(.problem, .choices)');
}

/** Where the answer stands below the form, the form makes way for an answer, and for the way to a first one; who stood in it stands on what it asks. */
export function foldAway(): boolean {
  const asking = one<HTMLDetailsElement>('#asking')!;
  const isBelow = matchMedia('(width < 60rem)').matches;
  if (!asking.open || !isBelow || unsettled() || !one('#answer > :is(.neighbour, .opening)')) return false;
  const hadFocus = asking.contains(document.activeElement);
  asking.open = false;
  if (hadFocus) asking.querySelector('summary')!.focus({ preventScroll: true });
  return true;
}
