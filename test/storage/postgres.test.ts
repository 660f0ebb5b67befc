import { describe, expect, test } from 'vitest';
import { storeContract } from './contract.js';
import { emptyPostgres, postgresServer } from './databases.js';

if (postgresServer) storeContract('PostgreSQL', () => emptyPostgres(postgresServer!));
// A bare machine has no server, and a file without a test would fail. In CI there must be one.
else
  describe('a store in PostgreSQL', () =>
    test.skipIf(!process.env.CI)('is tested where TEST_DATABASE_URL says on which server', () =>
      expect(postgresServer).toBeDefined(),
    ));
