/** Rounds for people: temperatures and days to a tenth, percent and seedlings whole, shares to a hundredth. */
export interface Rounding {
  temperature(value: number): number;
  days(value: number): number;
  whole(value: number): number;
  share(value: number): number;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

export const forPeople: Rounding = {
  temperature: tenth,
  days: tenth,
  whole: Math.round,
  share: (value) => Math.round(value * 100) / 100,
};

const asIs = (value: number): number => value;

/** `?precision=full`. */
export const inFull: Rounding = { temperature: asIs, days: asIs, whole: asIs, share: asIs };

export const roundingFor = (precision: 'rounded' | 'full'): Rounding => (precision === 'full' ? inFull : forPeople);
