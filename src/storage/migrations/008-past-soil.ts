import type { Migration } from './migration.js';

export const pastSoil: Migration = {
  name: '008-past-soil',
  statements: (key) => [
    // Worked out of other rows, and worked out again where it is lost. `packed` comes last: what stands before it is
    // read without it.
    `create table past_soil (
      owner ${key} not null,
      key ${key} not null,
      kept_at_ms double precision not null,
      bytes integer not null,
      packed bytea not null,
      primary key (owner, key)
    )`,
  ],
};
