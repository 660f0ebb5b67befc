import type { Migration } from './migration.js';

export const frostTold: Migration = {
  name: '014-frost-told',
  statements: (key) => [
    // What the owner knows of frost by heart, as MM-DD.
    `alter table places add column last_frost_around ${key}`,
    `alter table places add column first_frost_around ${key}`,
  ],
};
