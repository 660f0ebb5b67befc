import type { Migration } from './migration.js';

export const pastSoil: Migration = {
  name: '008-past-soil',
  statements: (key) => [
    // A cache of results computed from other rows. `packed` comes last, so that the columns before it are read without
    // it.
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
