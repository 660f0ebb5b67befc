import { describe, test } from 'vitest';
import { storeContract } from './contract.js';
import { emptyPostgres, postgresServer } from './databases.js';

if (postgresServer) storeContract('PostgreSQL', () => emptyPostgres(postgresServer!));
// A bare machine has no server, and a file without a test would fail.
else
  describe('a store in PostgreSQL', () =>
    test.skip('is tested where TEST_DATABASE_URL says on which server', () => {}));
