import type { Migration } from './migration.js';

export const secrets: Migration = {
  name: '012-secrets',
  statements: (key) => [
    // A calendar's token may be sealed, and is found by a digest of it. Null: not reckoned yet.
    `alter table beds add column calendar_digest ${key}`,
    'create index beds_by_calendar_digest on beds (calendar_digest)',
    'drop index beds_by_calendar_token',
  ],
};
