import type { Migration } from './migration.js';

export const placeSources: Migration = {
  name: '013-place-sources',
  statements: (key) => [
    // A place has up to four sources, in the order of `n`, each with its state. Either `preset` names a publisher, or
    // `format` and `url` are the owner's own. The lease of the fetching instance is a revision of the owner, which is
    // unique.
    `create table place_sources (
      owner ${key} not null,
      place ${key} not null,
      n integer not null,
      preset text,
      format text,
      url text,
      every_hours double precision not null,
      asked_url text,
      etag text,
      last_modified text,
      fetched_at_ms double precision,
      tried_at_ms double precision,
      next_at_ms double precision not null,
      not_before_ms double precision,
      failures integer not null,
      last_error text,
      days_from ${key},
      days_to ${key},
      days_count integer,
      lease bigint,
      leased_until_ms double precision,
      primary key (owner, place, n),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
    `insert into place_sources (owner, place, n, format, url, every_hours, asked_url, etag, last_modified, fetched_at_ms,
       tried_at_ms, next_at_ms, failures, last_error, lease, leased_until_ms)
     select p.owner, p.id, 0, p.source_format, p.source_url, p.source_every_hours, s.asked_url, s.etag, s.last_modified,
       s.fetched_at_ms, s.tried_at_ms, coalesce(s.next_at_ms, 0), coalesce(s.failures, 0), s.last_error, s.lease,
       s.leased_until_ms
     from places p
     left join sources s on s.owner = p.owner and s.place = p.id and s.format = p.source_format and s.url = p.source_url
     where p.source_url is not null and p.source_format is not null and p.source_every_hours is not null`,
    'create index place_sources_by_next on place_sources (next_at_ms)',
    'drop table sources',
    'drop index places_with_source',
    'alter table places drop column source_format',
    'alter table places drop column source_url',
    'alter table places drop column source_every_hours',
  ],
};
