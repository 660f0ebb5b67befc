import { expect, test } from 'vitest';
import { followedBy } from '../../../src/basics/fact.js';
import { deliveryFact, sourceFact } from '../../../src/garden/store/connection-facts.js';
import { factStored, factToStore } from '../../../src/garden/store/stored-fact.js';
import { sayStored } from '../words/say-plainly.js';

test('a fact comes back from the store as it was, with what is said after it', () => {
  const fact = followedBy(
    sourceFact('source.address'),
    deliveryFact('delivery.status', { status: 503, reason: 'troubled' }),
  );
  expect(factStored(factToStore(fact))).toEqual(fact);
});

test('a sentence that was stored before there were facts is said as it is', () => {
  expect(sayStored('It answered with status 410.')).toBe('It answered with status 410.');
  expect(sayStored('')).toBe('');
});

test('what others say of themselves is stored without control characters, and not without end', () => {
  const fact = sourceFact('source.no-date', { text: `2027\u0000\u001b[31m${'9'.repeat(10_000)}` });
  const stored = factToStore(fact);
  expect(stored.length).toBeLessThan(500);
  expect(sayStored(stored)).toMatch(/^The source has a value for "2027 \[31m9+", which is no date\.$/);
});
