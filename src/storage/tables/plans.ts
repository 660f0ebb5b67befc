import type { PlanFields } from '../../garden/store/season-store.js';
import type { DocumentTable } from '../document-table.js';

export const plans: DocumentTable<PlanFields> = { name: 'plans', columns: ['bed'] };
