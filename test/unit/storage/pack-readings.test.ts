import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Readings } from '../../../src/readings/readings.js';
import { packReadings, unpackReadings } from '../../../src/storage/pack-readings.js';

const readings: fc.Arbitrary<Readings> = fc
  .array(fc.tuple(fc.double({ noNaN: true }), fc.double({ noNaN: true }), fc.nat(7)), { maxLength: 50 })
  .map((rows) => ({
    atMs: Float64Array.from(rows, ([at]) => at),
    valueC: Float64Array.from(rows, ([, value]) => value),
    basis: Uint8Array.from(rows, ([, , basis]) => basis),
  }));

test('packed and unpacked, readings are the same bit by bit, wherever a driver puts the bytes', () => {
  fc.assert(
    fc.property(readings, fc.nat(9), (given, offset) => {
      const packed = packReadings(given);
      const elsewhere = new Uint8Array(packed.length + offset);
      elsewhere.set(packed, offset);
      const n = given.atMs.length;
      for (const bytes of [packed, elsewhere.subarray(offset), packed.slice().buffer]) {
        expect(unpackReadings([{ packed: bytes, readings: n }])).toEqual(given);
      }
    }),
  );
});

test('several packs are unpacked one after the other, those with a basis and those without', () => {
  const measured = { atMs: Float64Array.of(1, 2), valueC: Float64Array.of(10, 20), basis: Uint8Array.of(0, 0) };
  const supposed = { atMs: Float64Array.of(3), valueC: Float64Array.of(30), basis: Uint8Array.of(4) };
  const packs = [measured, supposed, measured].map((one) => ({ packed: packReadings(one), readings: one.atMs.length }));
  expect(packs.map(({ packed }) => packed.length)).toEqual([32, 17, 32]);
  const all = unpackReadings(packs);
  expect([...all.atMs]).toEqual([1, 2, 3, 1, 2]);
  expect([...all.valueC]).toEqual([10, 20, 30, 10, 20]);
  expect([...all.basis]).toEqual([0, 0, 4, 0, 0]);
});

test('float values of a very long file are kept as they are', () => {
  const single = { atMs: Float64Array.of(1), valueC: Float32Array.of(21.3), basis: Uint8Array.of(0) };
  const [value] = unpackReadings([{ packed: packReadings(single), readings: 1 }]).valueC;
  expect(value).toBe(Math.fround(21.3));
});

test('bytes that are not so many readings are refused', () => {
  expect(() => unpackReadings([{ packed: new Uint8Array(31), readings: 2 }])).toThrow('31 bytes are not 2 readings');
  expect(() => unpackReadings([{ packed: new Uint8Array(16), readings: 2 }])).toThrow('16 bytes are not 2 readings');
});
