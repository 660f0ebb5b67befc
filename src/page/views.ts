import { growingView } from './growing-view.js';
import type { ViewName } from './question.js';
import { sowingView } from './sowing-view.js';
import type { View } from './view.js';
import { whenView } from './when-view.js';

/** The page's leaves, in the order of their names at the top. */
export const views: Readonly<Record<ViewName, View>> = {
  sowing: sowingView,
  when: whenView,
  growing: growingView,
};

export const viewOf = (name: ViewName): View => views[name];
