import type { Fact } from '../../basics/fact.js';
import { rowFact } from '../readings-facts.js';

/** Verdicts on a reading; `drop`: it is not used, otherwise it is used and reported. */
export interface ReadingVerdict {
  readonly drop: boolean;
  /** null: it is good. */
  readonly why: Fact | null;
}

/** Amounts are told in whole numbers up to this; above it as more than it. Keeps all verdicts within a byte. */
const MAX_AMOUNT = 30;

/** An amount as it is told: as itself, or as more or less than the last that is told. */
const told = (n: number): { readonly amount: number; readonly bound: 'exactly' | 'over' | 'under' } =>
  n > MAX_AMOUNT
    ? { amount: MAX_AMOUNT, bound: 'over' }
    : n < 1
      ? { amount: 1, bound: 'under' }
      : { amount: n, bound: 'exactly' };

const spike = (n: number): Fact => rowFact('row.spike', { spikeK: told(n).amount, bound: told(n).bound });
const jump = (n: number): Fact => rowFact('row.jump', { jumpK: told(n).amount, bound: told(n).bound });
const stuck = (n: number): Fact => rowFact('row.stuck', { days: told(n).amount, bound: told(n).bound });

const kinds = {
  tooCold: { drop: true, why: () => rowFact('row.too-cold') },
  tooHot: { drop: true, why: () => rowFact('row.too-hot') },
  powerOn: { drop: true, why: () => rowFact('row.power-on') },
  noAnswer: { drop: true, why: () => rowFact('row.no-answer') },
  failedZero: { drop: true, why: () => rowFact('row.failed-zero') },
  grossSpike: { drop: true, why: spike },
  spike: { drop: false, why: spike },
  step: { drop: false, why: jump },
  stuck: { drop: false, why: stuck },
  longStuck: { drop: true, why: stuck },
} as const;

export type Doubt = keyof typeof kinds;

/** Turns doubts into codes of one byte, and keeps the verdict that each stands for. */
export interface VerdictBook {
  /** Verdicts by code; code 0 is a good reading. */
  readonly verdicts: ReadingVerdict[];
  /** The code of a doubt, and how much of it there is [K or days], rounded down to whole ones. */
  codeOf(doubt: Doubt, howMuch?: number): number;
}

/** An empty book: `verdicts` holds what is good, and grows by what is asked for, to under 256. */
export function verdictBook(): VerdictBook {
  const verdicts: ReadingVerdict[] = [{ drop: false, why: null }];
  const codes = new Map<Doubt, Uint8Array>();
  return {
    verdicts,
    codeOf(doubt, howMuch = 0) {
      const n = Math.min(MAX_AMOUNT + 1, Math.floor(howMuch));
      const ofKind = codes.get(doubt) ?? new Uint8Array(MAX_AMOUNT + 2);
      codes.set(doubt, ofKind);
      if (ofKind[n] === 0) {
        ofKind[n] = verdicts.length;
        verdicts.push({ drop: kinds[doubt].drop, why: kinds[doubt].why(n) });
      }
      return ofKind[n]!;
    },
  };
}
