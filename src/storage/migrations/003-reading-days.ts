import type { Migration } from './migration.js';

export const readingDays: Migration = {
  name: '003-reading-days',
  statements: (key) => [
    // A depth of -1 means a probe at the seed. `packed` comes last, so that the columns before it are read without it.
    `create table reading_days (
      owner ${key} not null,
      bed ${key} not null,
      medium ${key} not null,
      depth_cm double precision not null,
      date ${key} not null,
      readings integer not null,
      min_c double precision not null,
      mean_c double precision,
      max_c double precision not null,
      complete integer not null,
      packed bytea not null,
      primary key (owner, bed, medium, depth_cm, date),
      foreign key (owner, bed) references beds (owner, id) on delete cascade
    )`,
  ],
};
