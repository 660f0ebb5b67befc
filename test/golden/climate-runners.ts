import { harmonicFit } from '../../src/basics/numerics/harmonic-fit.js';
import { fadingAnomaly } from '../../src/climate/fading-anomaly.js';
import { normalQuantile } from '../../src/climate/normal-quantile.js';
import { riskDay } from '../../src/climate/risk-day.js';
import { weibullQuantile } from '../../src/climate/weibull-quantile.js';
import { distanceWeights } from '../../src/climate/world/distance-weights.js';
import { spreadAndRain, temperaturesAtHeight } from '../../src/climate/world/months-at-height.js';
import { nearestStations, type Spot } from '../../src/climate/world/nearest-stations.js';
import { placeClimate } from '../../src/climate/world/place-climate.js';
import { stationAt } from '../../src/climate/world/station-table.js';
import { climateTable } from '../../src/climate-table.js';
import { type DegreeDayLimits, degreeDays } from '../../src/growth/pests/degree-days.js';
import type { Runners } from './out.js';

interface Frosts {
  readonly days: readonly number[];
}

export const climateRunners: Runners = {
  'basics/harmonic-fit: wave of twelve months': ({ monthly }: { monthly: readonly number[] }) => {
    const { cosine, sine } = harmonicFit(
      monthly.map((_, month) => month + 0.5),
      monthly,
      1,
      12,
    );
    const turn = Math.atan2(sine[0]!, cosine[0]!) / (2 * Math.PI);
    return { amplitude: Math.hypot(cosine[0]!, sine[0]!), peak: 12 * (turn < 0 ? turn + 1 : turn) };
  },
  'climate/fading-anomaly: mean': (given: { anomalyK: number; lag1: number; days: number }) =>
    fadingAnomaly(given.anomalyK, 0, given.lag1, given.days).meanK,
  'climate/fading-anomaly: sd': (given: { sdK: number; lag1: number; days: number }) =>
    fadingAnomaly(0, given.sdK, given.lag1, given.days).sdK,

  'growth/pests/degree-days': ({ minC, maxC, ...limits }: DegreeDayLimits & { minC: number; maxC: number }) =>
    degreeDays(minC, maxC, limits),

  'climate/world: five stations by distance': (spot: Spot) => {
    const near = nearestStations(climateTable(), spot, 5);
    const weights = distanceWeights(near);
    const { meanMaxC, meanMinC } = temperaturesAtHeight(climateTable(), near, weights);
    const { sdK, rainMm } = spreadAndRain(climateTable(), near, weights);
    return {
      stations: near.map(({ index }) => stationAt(climateTable(), index).id),
      meanMaxC: [...meanMaxC],
      meanMinC: [...meanMinC],
      sdK: [...sdK],
      annualRainMm: rainMm.reduce((sum, rain) => sum + rain, 0),
    };
  },

  'climate/world/place-climate': (spot: Spot) => {
    const { meanMaxC, meanMinC } = placeClimate(climateTable(), spot);
    return { meanMaxC: [...meanMaxC], meanMinC: [...meanMinC] };
  },

  'climate/normal-quantile': ({ days, p }: Frosts & { p: number }) => normalQuantile(days, p),
  // Φ(1) is the share below a standard deviation above the middle.
  'climate/normal-quantile: standard deviation': ({ days }: Frosts) =>
    normalQuantile(days, 0.8413447460685429) - normalQuantile(days, 0.5),
  'climate/weibull-quantile': ({ days, p }: Frosts & { p: number }) => weibullQuantile(inOrder(days), p),
  'climate/risk-day: standard normal days': (given: { frosts: number; seasons: number; risk: number }) => {
    // Half of them as far below 0 as the others above it, so that their standard deviation is 1.
    const off = Math.sqrt((given.frosts - 1) / given.frosts);
    const days = Array.from({ length: given.frosts }, (_, i) => (i < given.frosts / 2 ? -off : off));
    return riskDay(days, given.seasons, given.risk, 'spring');
  },
};

const inOrder = (days: readonly number[]): number[] => [...days].sort((a, b) => a - b);
