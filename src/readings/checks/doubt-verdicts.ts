/** What is said of a reading; `drop`: it is not used, otherwise it is used and told. */
export interface Verdict {
  readonly drop: boolean;
  /** A plain phrase for a gardener that goes on from the value: '31.2 stands out from its neighbours by 14 °C'. */
  readonly why: string;
}

/** Amounts are told in whole numbers up to this; above it as more than it. Keeps all verdicts within a byte. */
const MOST = 30;

const amount = (n: number, unit: string): string =>
  n > MOST ? `more than ${MOST} ${unit}` : n < 1 ? `less than 1 ${unit}` : `${n} ${unit}`;

const kinds = {
  tooCold: { drop: true, say: () => 'is colder than anything this thermometer can have met' },
  tooHot: { drop: true, say: () => 'is hotter than anything this thermometer can have met' },
  powerOn: { drop: true, say: () => 'is what a probe answers when it has only just been switched on' },
  noAnswer: { drop: true, say: () => 'is what stands for a probe that does not answer: a loose or broken wire' },
  failedZero: { drop: true, say: () => 'is a zero between readings far from it: the probe said nothing' },
  grossSpike: { drop: true, say: (n: number) => `stands out from its neighbours by ${amount(n, '°C')}` },
  spike: { drop: false, say: (n: number) => `stands out from its neighbours by ${amount(n, '°C')}` },
  step: { drop: false, say: (n: number) => `comes after a jump of ${amount(n, '°C')}` },
  stuck: { drop: false, say: (n: number) => `has not changed for ${amount(n, n === 1 ? 'day' : 'days')}` },
  longStuck: { drop: true, say: (n: number) => `has not changed for ${amount(n, n === 1 ? 'day' : 'days')}` },
} as const;

export type Doubt = keyof typeof kinds;

/** Turns doubts into codes of one byte, and keeps the verdict that each stands for. */
export interface VerdictBook {
  /** By code; code 0 is a good reading. */
  readonly verdicts: Verdict[];
  /** The code of a doubt, and how much of it there is [K or days], rounded down to whole ones. */
  codeOf(doubt: Doubt, howMuch?: number): number;
}

/** An empty book: `verdicts` holds what is good, and grows by what is asked for, to under 256. */
export function verdictBook(): VerdictBook {
  const verdicts: Verdict[] = [{ drop: false, why: '' }];
  const codes = new Map<Doubt, Uint8Array>();
  return {
    verdicts,
    codeOf(doubt, howMuch = 0) {
      const n = Math.min(MOST + 1, Math.floor(howMuch));
      const ofKind = codes.get(doubt) ?? new Uint8Array(MOST + 2);
      codes.set(doubt, ofKind);
      if (ofKind[n] === 0) {
        ofKind[n] = verdicts.length;
        verdicts.push({ drop: kinds[doubt].drop, why: kinds[doubt].say(n) });
      }
      return ofKind[n]!;
    },
  };
}
