import type { Migration } from './migration.js';

export const air: Migration = {
  name: '002-air',
  statements: (key) => [
    `create table air_days (
      owner ${key} not null,
      place ${key} not null,
      date ${key} not null,
      min_c double precision,
      mean_c double precision,
      max_c double precision,
      primary key (owner, place, date),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
    `create table normals (
      owner ${key} not null,
      place ${key} not null,
      month integer not null,
      mean_max_c double precision not null,
      mean_min_c double precision not null,
      primary key (owner, place, month),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
    // Rows of the latest forecast only.
    `create table coming_days (
      owner ${key} not null,
      place ${key} not null,
      date ${key} not null,
      at_ms double precision not null,
      min_c double precision,
      mean_c double precision,
      max_c double precision,
      primary key (owner, place, date),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
  ],
};
