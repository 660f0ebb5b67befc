import type { PlanFields } from '../../garden/store/season-store.js';
import type { KeptTable } from '../kept-rows.js';

export const plans: KeptTable<PlanFields> = { name: 'plans', columns: ['bed'] };
