import type { Html } from '../shell/html.js';
import type { Inventory } from '../shell/inventory.js';
import type { PageReader } from '../shell/words.js';
import { optionsNamed, selectField } from './fields.js';

/** Choice of a bed to store something for; of several none is preselected, as a wrong choice misleads. */
export const bedField = ({ beds }: Inventory, said: string, { say }: PageReader): Html =>
  selectField('bed', say('page.field.bed'), said || (beds.length === 1 ? beds[0]!.id : ''), optionsNamed(beds));
