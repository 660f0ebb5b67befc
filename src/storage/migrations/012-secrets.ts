import type { Migration } from './migration.js';

export const secrets: Migration = {
  name: '012-secrets',
  statements: (key) => [
    // A digest that finds a calendar whose token is sealed. Null: not computed yet.
    `alter table beds add column calendar_digest ${key}`,
    'create index beds_by_calendar_digest on beds (calendar_digest)',
    'drop index beds_by_calendar_token',
  ],
};
