import type { Migration } from './migration.js';

export const revisions: Migration = {
  name: '010-revisions',
  statements: () => [
    // The revision at which the owner's own fields last changed; null: stored by an earlier version, which means
    // `revision`. `revision` also rises with air and readings, which must not refuse a change of a name.
    'alter table places add column fields_revision bigint',
    'alter table beds add column fields_revision bigint',
    // Null: stored by an earlier version and unchanged since.
    'alter table counts add column revision bigint',
    // Bytes of the owner's readings and air; null: not counted yet.
    'alter table owners add column bytes bigint',
  ],
};
