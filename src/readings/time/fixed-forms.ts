import type { Medium } from '../../basics/series.js';
import type { Delimiter } from '../text/records.js';

/** A published format whose files do not name their columns; what they would say, we say for them. */
export interface FixedForm {
  readonly delimiter: Delimiter;
  readonly headerLines: number;
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** Columns, from 0, that together say when. */
  readonly timeColumns: readonly number[];
  readonly isUtc: boolean;
  /** The column, from 0, that says of each row what it measures, where rows do that. */
  readonly labelColumn: number | null;
  /** Meaning of the labels. */
  readonly labels: readonly FixedLabel[];
  readonly probeDepthCm: number | null;
  /** Turns one line's cells into rows, where a line holds many. */
  readonly unfold: ((row: readonly string[]) => string[][]) | null;
  /** Cells that mark a row as bad: its column, from 0, and the marks that are good. */
  readonly quality: { readonly column: number; readonly good: RegExp } | null;
}

export interface FixedLabel {
  readonly label: string;
  readonly medium: Medium;
  readonly depthCm: number | null;
  readonly statistic: 'min' | 'max' | 'mean';
}

const none = {
  delimiter: ' ' as const,
  headerLines: 0,
  units: [],
  isUtc: false,
  labelColumn: null,
  labels: [],
  probeDepthCm: null,
  unfold: null,
  quality: null,
};

/** U.S. Climate Reference Network, product daily01, 28 fields; a day is one of local standard time (NOAA NCEI, readme). */
const referenceNetworkDaily: FixedForm = {
  ...none,
  names: [
    ...['WBANNO', 'LST_DATE', 'CRX_VN', 'LONGITUDE', 'LATITUDE'],
    ...[
      'air T_DAILY_MAX C',
      'air T_DAILY_MIN C',
      'midpoint of the day',
      'air T_DAILY_AVG C',
      'P_DAILY_CALC',
      'SOLARAD_DAILY',
    ],
    ...['SUR_TEMP_DAILY_TYPE', 'infrared surface max', 'infrared surface min', 'infrared surface avg'],
    ...['RH_DAILY_MAX', 'RH_DAILY_MIN', 'RH_DAILY_AVG'],
    ...[5, 10, 20, 50, 100].map((cm) => `SOIL_MOISTURE_${cm}_DAILY`),
    ...[5, 10, 20, 50, 100].map((cm) => `SOIL_TEMP_${cm}_DAILY`),
  ],
  units: unitsAt(28, [6, 7, 9, 24, 25, 26, 27, 28]),
  timeColumns: [1],
};

/** U.S. Climate Reference Network, product hourly02, 38 fields, at the end of each hour (NOAA NCEI, readme). */
const referenceNetworkHourly: FixedForm = {
  ...none,
  names: [
    ...['WBANNO', 'UTC_DATE', 'UTC_TIME', 'LST_DATE', 'LST_TIME', 'CRX_VN', 'LONGITUDE', 'LATITUDE'],
    ...[
      'last five minutes',
      'air T_HR_AVG C',
      'air max of the hour',
      'air min of the hour',
      'P_CALC',
      'SOLARAD',
      'SOLARAD_FLAG',
    ],
    ...[
      'SOLARAD_MAX',
      'SOLARAD_MAX_FLAG',
      'SOLARAD_MIN',
      'SOLARAD_MIN_FLAG',
      'SUR_TEMP_TYPE',
      'infrared surface',
      'SUR_TEMP_FLAG',
    ],
    ...[
      'infrared surface max',
      'SUR_TEMP_MAX_FLAG',
      'infrared surface min',
      'SUR_TEMP_MIN_FLAG',
      'RH_HR_AVG',
      'RH_HR_AVG_FLAG',
    ],
    ...[5, 10, 20, 50, 100].map((cm) => `SOIL_MOISTURE_${cm}`),
    ...[5, 10, 20, 50, 100].map((cm) => `SOIL_TEMP_${cm}`),
  ],
  units: unitsAt(38, [10, 34, 35, 36, 37, 38]),
  timeColumns: [1, 2],
  isUtc: true,
};

/** International Soil Moisture Network, header and values: UTC, flag G is good (Dorigo et al. 2011, HESS 15:1675). */
const soilNetwork = (depthCm: number): FixedForm => ({
  ...none,
  headerLines: 1,
  names: ['date', 'time', 'soil temperature', 'network flag', 'provider flag'],
  units: ['', '', '°C'],
  timeColumns: [0, 1],
  isUtc: true,
  probeDepthCm: depthCm,
  quality: { column: 3, good: /^(?:G|M|U)?$/ },
});

/** Integrated Surface Data, the short form: hours of UTC, tenths of °C (NOAA NCEI, isd-lite format document). */
const surfaceHours: FixedForm = {
  ...none,
  names: [
    'year',
    'month',
    'day',
    'hour',
    'air temperature',
    'dew point',
    'pressure',
    'wind direction',
    'wind speed',
    'sky',
    'rain of 1 h',
    'rain of 6 h',
  ],
  units: ['', '', '', '', '0.1 °C'],
  timeColumns: [0, 1, 2, 3],
  isUtc: true,
};

/** SN and SX with cover and depth digits: depth 1 to 7 is 5 to 180 cm (NOAA NCEI, GHCN-Daily readme). */
const DEPTHS_CM = [5, 10, 20, 50, 100, 150, 180];
const dailyLabels: readonly FixedLabel[] = [
  { label: 'TMIN', medium: 'air', depthCm: null, statistic: 'min' },
  { label: 'TMAX', medium: 'air', depthCm: null, statistic: 'max' },
  { label: 'TAVG', medium: 'air', depthCm: null, statistic: 'mean' },
  ...Array.from({ length: 9 }, (_, cover) =>
    DEPTHS_CM.flatMap((depthCm, i): FixedLabel[] => [
      { label: `SN${cover}${i + 1}`, medium: 'soil', depthCm, statistic: 'min' },
      { label: `SX${cover}${i + 1}`, medium: 'soil', depthCm, statistic: 'max' },
    ]),
  ).flat(),
];
const dailyArchive = {
  ...none,
  names: ['date', 'element', 'temperature in tenths of °C', 'quality flag'],
  units: ['', '', '0.1 °C'],
  timeColumns: [0],
  labelColumn: 1,
  labels: dailyLabels,
  quality: { column: 3, good: /^$/ },
};

/** GHCN-Daily .dly: a line is an element's month, 31 values of 8 characters from character 22 (NOAA NCEI, readme). */
const dailyArchiveMonths: FixedForm = {
  ...dailyArchive,
  delimiter: '|',
  unfold([line = '']) {
    const element = line.slice(17, 21);
    return Array.from({ length: 31 }, (_, i) => {
      const at = 21 + 8 * i;
      const day = String(i + 1).padStart(2, '0');
      return [
        `${line.slice(11, 15)}-${line.slice(15, 17)}-${day}`,
        element,
        line.slice(at, at + 5).trim(),
        line.slice(at + 6, at + 7).trim(),
      ];
    }).filter(([, , value]) => value !== '-9999' && value !== '');
  },
};

/** GHCN-Daily by station: ID, date, element, value, three flags, time; no header (NOAA NCEI, readme). */
const dailyArchiveRows: FixedForm = {
  ...dailyArchive,
  delimiter: ',',
  names: [
    'station',
    'date',
    'element',
    'temperature in tenths of °C',
    'measurement flag',
    'quality flag',
    'source flag',
    'time of observation',
  ],
  units: ['', '', '', '0.1 °C'],
  timeColumns: [1],
  labelColumn: 2,
  quality: { column: 5, good: /^$/ },
};

/** The published format that a file's first lines are of, if any. */
export function fixedFormOf(head: string): FixedForm | null {
  const [first = '', second = ''] = head.split('\n', 2);
  const fields = first.trim().split(/\s+/);
  if (/^\d{5}\s+\d{8}\s+\S+\s+-?\d+\.\d+\s+-?\d+\.\d+\s/.test(first) && fields.length === 28)
    return referenceNetworkDaily;
  if (/^\d{5}\s+\d{8}\s+\d{4}\s+\d{8}\s+\d{4}\s/.test(first) && fields.length === 38) return referenceNetworkHourly;
  if (/^\d{4} \d{2} \d{2} \d{2}\s+-?\d+\s/.test(first) && fields.length === 12) return surfaceHours;
  if (/^[A-Z]{2}[A-Z0-9_-]{9}\d{6}[A-Z]{2}[A-Z0-9]{2}[ -]?/.test(first) && first.length > 200)
    return dailyArchiveMonths;
  if (/^[A-Z]{2}[A-Z0-9_-]{9},\d{8},[A-Z]{2}[A-Z0-9]{2},-?\d+,/.test(first)) return dailyArchiveRows;
  if (/^\d{4}\/\d{2}\/\d{2}\s+\d{2}:\d{2}\s+\S+\s+\S/.test(second) && fields.length >= 9) {
    const depthsM = fields.slice(6, 8).map(Number);
    const [fromM, toM] = depthsM as [number, number];
    if (Number.isFinite(fromM) && Number.isFinite(toM)) return soilNetwork(Math.round((fromM + toM) * 5000) / 100);
  }
  return null;
}

function unitsAt(width: number, columns: readonly number[]): string[] {
  return Array.from({ length: width }, (_, i) => (columns.includes(i + 1) ? '°C' : ''));
}
