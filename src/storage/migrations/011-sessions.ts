import type { Migration } from './migration.js';

export const sessions: Migration = {
  name: '011-sessions',
  statements: (key) => [
    `create table sessions (
      owner ${key} not null,
      id ${key} not null,
      token_digest ${key} not null,
      key_proof text not null,
      created_at_ms double precision not null,
      used_at_ms double precision not null,
      expires_at_ms double precision not null,
      label text not null,
      primary key (owner, id)
    )`,
    // A request brings a cookie and no owner.
    'create index sessions_by_token on sessions (token_digest)',
  ],
};
