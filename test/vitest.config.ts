import { defineConfig } from 'vitest/config';

const quick = [
  'test/unit/**/*.test.ts',
  'test/golden/**/*.test.ts',
  'test/property/**/*.test.ts',
  'test/api/**/*.test.ts',
  'test/house/**/*.test.ts',
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
