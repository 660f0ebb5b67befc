import type { AirDay } from '../../garden/store/store.js';
import type { Query } from '../database.js';
import { packedYears } from '../pack-air.js';
import type { Migration } from './migration.js';

/** Packs a place's year of air into one row instead of one row a day: thirty years are thirty rows, not 10,958. */
export const airYears: Migration = {
  name: '007-air-years',
  statements: (key) => [
    `create table air_years (
      owner ${key} not null,
      place ${key} not null,
      year integer not null,
      packed bytea not null,
      primary key (owner, place, year),
      foreign key (owner, place) references places (owner, id) on delete cascade
    )`,
  ],
  async carryOver(query) {
    const places = await query.all<{ owner: string; place: string }>('select distinct owner, place from air_days');
    for (const { owner, place } of places) await carryPlace(query, owner, place);
    await query.run('drop table air_days');
  },
};

async function carryPlace(query: Query, owner: string, place: string): Promise<void> {
  const days = await query.all<AirDay>(
    `select date, min_c as min, mean_c as mean, max_c as max from air_days
     where owner = $1 and place = $2 order by date`,
    [owner, place],
  );
  for (const { year, packed } of packedYears(days)) {
    await query.run('insert into air_years (owner, place, year, packed) values ($1, $2, $3, $4)', [
      owner,
      place,
      year,
      packed,
    ]);
  }
}
