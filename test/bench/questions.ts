/** The questions without a garden: bodies that POST sends. */
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import { airOf, site, today } from './test-garden.js';

const place = { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };

/** A week of daily minima and maxima at the seed. */
export const coolWeek = {
  crop: 'lettuce',
  where: { place },
  sowing: { date: '2027-04-12', seeds: 200 },
  temperatures: [
    {
      medium: 'soil',
      daily: [9.1, 9.6, 8.8, 10.2, 10.9, 10.4, 11.1].map((min, day) => ({
        date: addDays('2027-04-12' as PlainDate, day),
        min,
        max: min + 6.3,
      })),
    },
  ],
};

/** A fortnight by the hour, with four hot days. */
export const hotFortnight = {
  crop: 'lettuce',
  where: { place },
  sowing: { date: '2027-07-28', seeds: 200 },
  temperatures: [
    {
      medium: 'soil',
      readings: Array.from({ length: 14 * 24 }, (_, hour) => {
        const isHot = hour >= 5 * 24 && hour < 9 * 24;
        const value = (isHot ? 28 : 20) + (isHot ? 8 : 5) * Math.sin((2 * Math.PI * (hour - 8)) / 24);
        return {
          at: new Date(Date.UTC(2027, 6, 25, 2) + hour * 3_600_000).toISOString(),
          value: Math.round(value * 10) / 10,
        };
      }),
    },
  ],
};

/** Soil of thirty years by the day; each number makes a record that was never sent before, other by a tenth in one old day. */
export function thirtyYearsOfSoil(number: number): object {
  const air = airOf(30);
  const daily = air.map((day, i) => (i === 400 ? { ...day, max: day.max + 0.1 * (number + 1) } : day));
  return {
    where: { place: site, bed: { kind: 'open-ground', moisture: 'moist' } },
    depthCm: 5,
    from: addDays(today, -30 * 365),
    to: addDays(today, -1),
    temperatures: [{ medium: 'air', daily }],
  };
}

/** A year of one-minute rows as a logger writes them, in one of two ways, and how pandas is told to read them. */
export const minuteFiles = [
  {
    name: 'ISO stamps, commas',
    header: 'time,soil temperature 5 cm (°C)\n',
    row: (at: string, tempC: string) => `${at.slice(0, 10)} ${at.slice(11, 16)},${tempC}\n`,
    pandas: 'sep=","',
    format: '%Y-%m-%d %H:%M',
  },
  {
    name: 'day first, semicolons, decimal commas',
    header: 'time;soil temperature 5 cm (°C)\n',
    row: (at: string, tempC: string) =>
      `${at.slice(8, 10)}.${at.slice(5, 7)}.${at.slice(0, 4)} ${at.slice(11, 19)};${tempC.replace('.', ',')}\n`,
    pandas: 'sep=";", decimal=","',
    format: '%d.%m.%Y %H:%M:%S',
  },
] as const;
const MINUTES = 525_600;

export function yearOfMinutes({ header, row }: (typeof minuteFiles)[number]): Buffer {
  const rows = Array.from({ length: MINUTES }, (_, minute) => {
    const yearly = -8 * Math.cos((2 * Math.PI * minute) / MINUTES);
    const daily = 4 * Math.sin((2 * Math.PI * (minute - 540)) / 1440);
    return row(new Date(Date.UTC(2025, 0, 1) + minute * 60_000).toISOString(), (12 + yearly + daily).toFixed(2));
  });
  return Buffer.from(header + rows.join(''));
}

/** Reads and folds the file to days, prints the CPU of the middle one of three rounds [ms]. */
export const pandasScript = ({ pandas, format }: (typeof minuteFiles)[number]): string => `
import sys, time
import pandas
times = []
for _ in range(3):
    before = time.process_time()
    frame = pandas.read_csv(sys.argv[1], engine="c", ${pandas})
    frame["time"] = pandas.to_datetime(frame["time"], format="${format}")
    days = frame.set_index("time").resample("D").agg(["min", "mean", "max"])
    times.append(1000 * (time.process_time() - before))
print(sorted(times)[1])
`;
