import type { Migration } from './migration.js';

export const season: Migration = {
  name: '005-season',
  // `fields` holds all fields as JSON; the columns beside it repeat those that queries filter by.
  statements: (key) => [
    `create table lots (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      fields text not null,
      primary key (owner, id)
    )`,
    // A sown lot cannot be deleted, so that no sowing loses it.
    `create table sowings (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      bed ${key} not null,
      lot ${key},
      date ${key} not null,
      fields text not null,
      primary key (owner, id),
      foreign key (owner, bed) references beds (owner, id) on delete cascade,
      foreign key (owner, lot) references lots (owner, id)
    )`,
    'create index sowings_by_bed on sowings (owner, bed, date)',
    'create index sowings_by_lot on sowings (owner, lot)',
    `create table counts (
      owner ${key} not null,
      sowing ${key} not null,
      date ${key} not null,
      fields text not null,
      primary key (owner, sowing, date),
      foreign key (owner, sowing) references sowings (owner, id) on delete cascade
    )`,
    `create table plans (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      bed ${key} not null,
      fields text not null,
      primary key (owner, id),
      foreign key (owner, bed) references beds (owner, id) on delete cascade
    )`,
    'create index plans_by_bed on plans (owner, bed)',
    `create table calendar_events (
      owner ${key} not null,
      bed ${key} not null,
      uid ${key} not null,
      digest text not null,
      sequence integer not null,
      changed_at_ms double precision not null,
      primary key (owner, bed, uid),
      foreign key (owner, bed) references beds (owner, id) on delete cascade
    )`,
    `alter table beds add column calendar_token ${key}`,
    // A calendar request brings a token and no owner.
    'create index beds_by_calendar_token on beds (calendar_token)',
  ],
};
