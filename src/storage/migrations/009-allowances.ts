import type { Migration } from './migration.js';

export const allowances: Migration = {
  name: '009-allowances',
  // A missing row is a full allowance, so full rows may be deleted. `owner` is a caller's digest.
  statements: (key) => [
    `create table allowances (
      owner ${key} not null,
      policy ${key} not null,
      tokens double precision not null,
      at_ms double precision not null,
      full_at_ms double precision not null,
      primary key (owner, policy)
    )`,
    'create index allowances_by_end on allowances (full_at_ms)',
  ],
};
