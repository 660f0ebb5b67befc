import { type FactKinds, factsOf } from '../../basics/fact.js';

const SIDES = ['spring', 'autumn'] as const;

/** What an answer rests on where no years of a place are known. */
export const climateAssumptionFacts = {
  'climate-table': {
    typicalYears: 'count',
    station: 'text',
    stationKm: 'number',
    elevationM: 'number?',
    plusMinusK: 'kelvin',
    plusMinusDays: 'count',
  },
  'climate-own-air': { days: 'count' },
  'frost-date-told': {
    side: SIDES,
    aroundOn: 'date',
    untunedOn: 'date?',
    movedK: 'kelvin',
    direction: ['colder', 'warmer'],
  },
} as const satisfies FactKinds;

/** What should be heeded of it. */
export const climateWarningFacts = {
  'rain-rules': {},
  'climate-far': { stationKm: 'number', heightM: 'number' },
  'frost-date-far': { side: SIDES, aroundOn: 'date', untunedOn: 'date?', shiftK: 'kelvin' },
  'frost-date-unused': { side: SIDES, aroundOn: 'date' },
  'zone-against-longitude': { timeZone: 'text', longitude: 'number', mirroredLongitude: 'number' },
} as const satisfies FactKinds;

/** Why a climate cannot be told. `….field`: the message about the field at fault. */
export const climateRefusalFacts = {
  'no-climate-near': { nearestKm: 'number', maxKm: 'number' },
  'no-climate-near.field': {},
  'not-understood.frost-date-far': { side: SIDES, aroundOn: 'date', untunedOn: 'date?', maxShiftK: 'kelvin' },
} as const satisfies FactKinds;

export const climateAssumption = factsOf(climateAssumptionFacts);
export const climateWarning = factsOf(climateWarningFacts);
export const climateRefusal = factsOf(climateRefusalFacts);
