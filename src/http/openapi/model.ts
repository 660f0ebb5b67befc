import type { Note } from '../../basics/errors.js';

/** The version changes whenever the same question gets another answer. */
export const model = { name: 'cohort-threshold', version: '1.6.0' };

/** The model with its sources, for callers who ask for them. */
export const modelInFull = {
  ...model,
  sources: [
    "Harrington, Minges (1954), as printed in Knott's Handbook for Vegetable Growers, 4th ed. (1997): days and percent at constant temperature",
    'Brewster (2008), Onions and Other Vegetable Alliums, Eqns 4.6-4.9: thermal time, spread and ceilings within a lot',
    'Parton, Logan (1981), Agric. Meteorol. 23: 205-216: the day between minimum and maximum',
    'Forsythe and others (1995), Ecol. Model. 80: 87-95: day length',
    'Allen and others (1998), FAO Irrigation and Drainage Paper 56: sunshine above the atmosphere, reference evaporation',
    'Carslaw, Jaeger (1959), Conduction of Heat in Solids; Crank, Nicolson (1947): heat in soil',
    'U.S. Climate Reference Network, product daily01 (Diamond and others 2013; Bell and others 2013): how air, sun and climate warm soil under grass, and how sure that is',
    'Day (1985), J. Water Resour. Plann. Manage. 111: 157-170: past years run on from the present state; Hazen (1914): their quantiles',
    "Peet, North Carolina State University; Knott's Handbook, 4th ed. (1997): base temperatures, days and heat at harvest of crops; Barnett and others (2006); Hargreaves, Samani (1985), Appl. Eng. Agric. 1: 96-99: ground that can be worked",
    'Bramlage, Leopold, Parrish (1978), Plant Physiol. 61: 525-529: cold and seed that drinks',
    'Epstein (1991), J. Climate 4: 365-368: a usual year from monthly normals',
    'Moller, Gillies (2007), Utah Climate; Vestal (1971), Mon. Weather Rev. 99: 650-652; Thom, Shaw (1958), Mon. Weather Rev. 86: 251-257: frost dates and their risk',
    'Ellis, Roberts (1980), Ann. Bot. 45: 13-30, constants by crop: what seed loses in store; Brown, Cai, DasGupta (2001), Stat. Sci. 16: 101-133: the interval of a germination test',
    'Ellis, Roberts (1980), Ann. Bot. 45: 13-30: how seed ages',
    'Box, Tiao (1968), Biometrika 55; Rasmussen, Williams (2006), Gaussian Processes for Machine Learning: what counts teach',
    'Deutscher Wetterdienst, station 01975, 2018: bare ground by the hour',
    'GeoNames, https://www.geonames.org/, March 2023, CC BY 4.0, own form: towns, their coordinates, heights and time zones',
    'Data basis: Deutscher Wetterdienst, own processing. Monthly CLIMAT reports from stations worldwide, 2003-2021, Climate Data Center, CC BY 4.0: the climate of a place without years of its own',
    'Cressie (1993), Statistics for Spatial Data: a place between stations; Richardson (1981), Water Resour. Res. 17: 182-190: typical years',
  ],
};

/** Adds the fields of every answer to its content. */
export function signed<Content extends object>(content: Content, issuedAt: Date) {
  const notes: { assumptions: Note[]; warnings: Note[] } = { assumptions: [], warnings: [] };
  return { ...notes, ...content, model, issuedAt: issuedAt.toISOString() };
}
