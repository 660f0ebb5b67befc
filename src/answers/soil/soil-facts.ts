import type { FactKinds, FactOf } from '../../basics/fact.js';
import { bedKinds, covers, moistures } from '../../seedbed/bed.js';

/** What the soil's temperatures rest on. */
export const soilAssumptionFacts = {
  room: { roomC: 'celsius', belowK: 'kelvin' },
  'soil-from-air': {
    kind: bedKinds,
    cover: covers,
    moisture: moistures,
    shadePercent: 'count',
    containerDepthCm: 'cm?',
    containerWidthCm: 'cm?',
    checkedOn: ['grassland', 'bare-ground'],
    checkedDepthCm: 'cm',
    meanErrorK: 'kelvin',
    maxErrorK: 'kelvin',
    isChecked: ['yes', 'no'],
  },
  'soil-before': { fromDate: 'date', isShort: ['yes', 'no'] },
  'climate-unknown': { lacks: ['rain', 'year'] },
  'depth-moved': {
    probeDepthCm: 'cm',
    depthCm: 'cm',
    direction: ['up', 'down'],
    errorFromK: 'kelvin',
    errorToK: 'kelvin',
    checkedFromCm: 'cm',
    checkedToCm: 'cm',
  },
  'soil-not-measured': {},
} as const satisfies FactKinds;

/** What should be heeded of them. */
export const soilWarningFacts = {
  'snow-supposed': {},
  'air-means-only': { swingK: 'kelvin' },
  'air-not-used': {},
  'depth-not-moved': { probeDepthCm: 'cm', depthCm: 'cm' },
  'probe-too-deep': { probeDepthCm: 'cm', depthCm: 'cm', isLevelUsed: ['yes', 'no'] },
  'room-as-measured': { heldC: 'celsius', roomC: 'celsius' },
  'probe-swings-oddly': { swing: ['less', 'more'] },
  'probe-and-air-disagree': { offK: 'kelvin', direction: ['warmer', 'colder'] },
  'unlike-the-air': { depthCm: 'cm', hours: 'count', firstDate: 'date', firstTime: 'text' },
  'hours-filled': { hours: 'count', percent: 'count' },
  'coarse-step': { stepHours: 'count' },
  'no-swing': {},
  'some-days-without-swing': {},
  'far-ahead': { about: ['soil'], daysAhead: 'count' },
} as const satisfies FactKinds;

export type SoilAssumption = FactOf<typeof soilAssumptionFacts>;
export type SoilWarning = FactOf<typeof soilWarningFacts>;
