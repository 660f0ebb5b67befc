import type { ViewName } from '../form/question.js';
import { growingView } from '../growing/growing-view.js';
import { sowingView } from '../sowing/sowing-view.js';
import { weekView } from '../week/week-view.js';
import { whenView } from '../when/when-view.js';
import type { View } from './view.js';

/** The page's views, in the order of their tabs. */
export const views: Readonly<Record<ViewName, View>> = {
  week: weekView,
  when: whenView,
  sowing: sowingView,
  growing: growingView,
};

export const viewOf = (name: ViewName): View => views[name];
