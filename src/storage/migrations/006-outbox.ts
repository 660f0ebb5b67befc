import type { Migration } from './migration.js';

export const outbox: Migration = {
  name: '006-outbox',
  statements: (key) => [
    // Messages go out one after the other, so the state of the first stands with the subscription. The lease of the
    // sending instance is a revision of the owner, which is unique.
    `create table subscriptions (
      owner ${key} not null,
      id ${key} not null,
      revision bigint not null,
      fields text not null,
      secret text not null,
      delivered_at_ms double precision,
      next_at_ms double precision not null,
      failures integer not null,
      last_error text,
      off_at_ms double precision,
      lease bigint,
      leased_until_ms double precision,
      look_at_ms double precision not null,
      seen text,
      primary key (owner, id)
    )`,
    // The latest notification about each subject.
    `create table tellings (
      owner ${key} not null,
      subscription ${key} not null,
      subject ${key} not null,
      mark text not null,
      primary key (owner, subscription, subject),
      foreign key (owner, subscription) references subscriptions (owner, id) on delete cascade
    )`,
    // Ordered by the owner's revision when they were written, then by their place in that write.
    `create table messages (
      owner ${key} not null,
      subscription ${key} not null,
      told bigint not null,
      place integer not null,
      id ${key} not null,
      body text not null,
      primary key (owner, subscription, told, place),
      foreign key (owner, subscription) references subscriptions (owner, id) on delete cascade
    )`,
  ],
};
