import type { Migration } from './migration.js';

/** Keys begin with the owner, so that a distributed PostgreSQL can spread every table by it. */
export const placesAndBeds: Migration = {
  name: '001-places-and-beds',
  statements: (key) => [
    `create table owners (
      owner ${key} not null primary key,
      revision bigint not null
    )`,
    `create table places (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      name text not null,
      latitude double precision not null,
      longitude double precision not null,
      elevation_m double precision,
      time_zone text not null,
      annual_rain_mm double precision,
      source_format text,
      source_url text,
      source_every_hours double precision,
      primary key (owner, id)
    )`,
    `create table beds (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      place ${key} not null,
      name text not null,
      kind text not null,
      cover text not null,
      moisture text not null,
      shade_percent double precision not null,
      room_c double precision,
      primary key (owner, id),
      foreign key (owner, place) references places (owner, id)
    )`,
    'create index beds_by_place on beds (owner, place)',
  ],
};
