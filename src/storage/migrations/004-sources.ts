import type { Migration } from './migration.js';

export const sources: Migration = {
  name: '004-sources',
  statements: (key) => [
    // State of a place's source, valid while its format and url are the place's own. A place's first fetch makes
    // the row. The lease of the fetching instance is a revision of the owner, which is unique.
    `create table sources (
      owner ${key} not null,
      place ${key} not null,
      format text not null,
      url text not null,
      asked_url text,
      etag text,
      last_modified text,
      fetched_at_ms double precision,
      tried_at_ms double precision,
      next_at_ms double precision not null,
      failures integer not null,
      last_error text,
      lease bigint,
      leased_until_ms double precision,
      primary key (owner, place),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
    'create index places_with_source on places (owner, id) where source_url is not null',
  ],
};
