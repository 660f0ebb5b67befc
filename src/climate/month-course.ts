import { type Harmonics, harmonicFit, YEAR_DAYS } from '../basics/numerics/harmonic-fit.js';

const MONTHS = 12;
const EVEN_MIDDLES = Array.from({ length: MONTHS }, (_, month) => ((month + 0.5) / MONTHS) * YEAR_DAYS);

/**
 * The course of a year of which the means of the months are known.
 *
 * @param means Means of the months, January first, in any unit. Shape (12).
 * @param waves Number of annual harmonics, 1 to 4.
 * @param middles Middles of the months, in days since the beginning of 1 January [d]; by default those of twelve months of one length. Shape (12).
 * @returns The course, for `harmonicAt` with days of the year; 0 is the beginning of 1 January.
 * @throws ScienceError never, for finite means.
 *
 * Formula: harmonics through the middles of the months, each divided by its attenuation in a monthly mean,
 * sin(πk/12)/(πk/12), so that the days' monthly means equal those given, as far as the harmonics can.
 * Source: Epstein (1991). On obtaining daily climatological values from monthly means. J. Climate 4: 365-368.
 */
export function monthCourse(
  means: ArrayLike<number>,
  waves: number,
  middles: ArrayLike<number> = EVEN_MIDDLES,
): Harmonics {
  const { mean, cosine, sine } = harmonicFit(middles, means, waves);
  const restored = (amplitudes: Float64Array): Float64Array =>
    amplitudes.map((amplitude, i) => {
      const angle = (Math.PI * (i + 1)) / MONTHS;
      return (amplitude * angle) / Math.sin(angle);
    });
  return { mean, cosine: restored(cosine), sine: restored(sine) };
}
