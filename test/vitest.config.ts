import { defineConfig } from 'vitest/config';

const quick = [
  'test/unit/**/*.test.ts',
  'test/golden/**/*.test.ts',
  'test/property/**/*.test.ts',
  'test/api/**/*.test.ts',
  'test/house/**/*.test.ts',
];

/** Files that run whole gardens, servers, databases or hundreds of thousands of cases: `npm test` has them, `npm run test:unit` not. */
const slow = [
  'test/golden/logger-files.test.ts',
  'test/unit/answers/{past-soils,should-stop,windows-slowly}.test.ts',
  'test/unit/garden/plan.test.ts',
  'test/unit/germination/all-sowings.test.ts',
  'test/unit/outbox/{deliver,known-now,poll,send-webhook}.test.ts',
  'test/unit/page/{growing-acts,when-view}.test.ts',
  'test/unit/readings/{doubtful,read-stamp,wall-clock}.test.ts',
  'test/unit/sources/{fetch-source,refresh}.test.ts',
  'test/unit/storage/{secrets,sqlite}.test.ts',
  'test/unit/worker/**',
];

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    // All cores: by default one is left idle, which is half of a small machine.
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'quick',
          include: quick,
          testTimeout: 30_000,
          hookTimeout: 60_000,
          setupFiles: ['test/setup.ts'],
        },
      },
      {
        test: {
          name: 'unit',
          include: ['test/unit/**/*.test.ts', 'test/golden/**/*.test.ts', 'test/house/**/*.test.ts'],
          exclude: slow,
          // Modules are loaded once a worker, which is half of the time: nothing here mocks or changes one.
          isolate: false,
          testTimeout: 30_000,
          hookTimeout: 60_000,
          setupFiles: ['test/setup.ts'],
        },
      },
      {
        // Thousands of forecasts each.
        test: { name: 'accuracy', include: ['test/accuracy/**/*.test.ts'], testTimeout: 900_000 },
      },
      { test: { name: 'storage', include: ['test/storage/**/*.test.ts'], testTimeout: 300_000 } },
      { test: { name: 'e2e', include: ['test/e2e/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 } },
      {
        // One after another: they tell how fast the page is.
        test: {
          name: 'page',
          include: ['test/page/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
