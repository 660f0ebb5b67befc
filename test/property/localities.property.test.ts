import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fold, keyOf } from '../../src/localities/fold.js';
import { namedLocality, near } from '../../src/localities/near.js';
import { nearest } from '../../src/localities/nearest.js';
import { search } from '../../src/localities/search.js';
import { localities, startApp } from '../api/helper.js';

const { index } = await localities();

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 100 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.string({ unit: fc.constantFrom(...'aeinorstu,-. éüßøłΣςİı'), maxLength: 100 }),
);
const names = fc
  .tuple(fc.nat({ max: index.places - 1 }), fc.nat({ max: 99 }), fc.constantFrom('', 'x', ' ', ','))
  .map(([place, at, mark]) => {
    const { near: name } = namedLocality(index, place);
    return (name.slice(0, at) + mark + name.slice(at + 1)).slice(0, 100);
  });

describe('a name', () => {
  test('folded twice is as it was folded once', () => {
    fc.assert(
      fc.property(text, (one) => {
        expect(fold(fold(one))).toBe(fold(one));
        expect(keyOf(fold(one))).toBe(keyOf(one));
      }),
      { numRuns: 3000 },
    );
  });

  test('folds alike however its accents are encoded, and in capitals', () => {
    fc.assert(
      fc.property(fc.nat({ max: index.places - 1 }), (place) => {
        const { name } = namedLocality(index, place);
        for (const form of ['NFC', 'NFD', 'NFKC', 'NFKD']) expect(keyOf(name.normalize(form))).toBe(keyOf(name));
        if (!/[ßıİŉǰΐΰև]/.test(name)) expect(keyOf(name.toUpperCase())).toBe(keyOf(name));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('every listed place', () => {
  test('is found by its own `near`, alone', () => {
    fc.assert(
      fc.property(fc.nat({ max: index.places - 1 }), (place) => {
        const locality = namedLocality(index, place);
        const found = near(index, locality.near);
        expect(found.found === 'one' && found.locality).toEqual(locality);
        expect(locality.near.length).toBeLessThanOrEqual(100);
      }),
      { numRuns: 3000 },
    );
  });

  test('is among those searched by its name, and nearest to where it is', () => {
    fc.assert(
      fc.property(fc.nat({ max: index.places - 1 }), (place) => {
        const { near: name, latitude, longitude, country } = namedLocality(index, place);
        expect(search(index, name, 50, country).map((one) => one.near)).toContain(name);
        expect(nearest(index, latitude, longitude, 1)[0]!.km).toBeLessThan(0.001);
      }),
      { numRuns: 300 },
    );
  });
});

describe('whatever is asked', () => {
  test('takes no more than 50 ms of CPU, and has an answer', () => {
    const cpuMs = (work: () => unknown): number => {
      const before = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    };
    const countries = fc.constantFrom(undefined, 'US', 'LI', 'ZZ');
    fc.assert(
      fc.property(fc.oneof(text, names), countries, (one, country) => {
        for (const ask of [() => search(index, one, 50, country), () => near(index, one, country)]) {
          // The compiler and the machine's other work fall into a first run.
          const ms = cpuMs(ask);
          if (ms > 50) expect(Math.min(cpuMs(ask), cpuMs(ask))).toBeLessThan(50);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('over HTTP gets an answer or a refusal, never a fault', async () => {
    const app = await startApp();
    try {
      await fc.assert(
        fc.asyncProperty(
          fc.oneof(text, names),
          fc.oneof(fc.constant('US'), fc.string({ maxLength: 3 })),
          fc.oneof(fc.integer({ min: 1, max: 50 }), fc.string({ maxLength: 3 })),
          async (q, country, limit) => {
            const query = new URLSearchParams({ q, country, limit: String(limit) });
            const { statusCode, body } = await app.inject(`/v1/localities?${query}`);
            expect([200, 422], body).toContain(statusCode);
          },
        ),
        { numRuns: 500 },
      );
    } finally {
      await app.close();
    }
  });
});
