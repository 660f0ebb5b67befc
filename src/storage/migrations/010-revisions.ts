import type { Migration } from './migration.js';

export const revisions: Migration = {
  name: '010-revisions',
  statements: () => [
    // The revision at which the owner's own fields last changed; null: kept by an earlier version, and then it is `revision`.
    // `revision` rises with air and readings too, which must not refuse a change of a name.
    'alter table places add column fields_revision bigint',
    'alter table beds add column fields_revision bigint',
    // Null: kept by an earlier version, and not changed since.
    'alter table counts add column revision bigint',
    // Of the owner's readings and air; null: not counted yet.
    'alter table owners add column bytes bigint',
  ],
};
