import { afterAll, expect, test } from 'vitest';
import { keepUnder } from '../../../src/page/form/keep-under.js';
import { quillmere, startApp } from '../../api/helper.js';
import { sendTo } from './page-send.js';

const app = await startApp();
afterAll(() => app.close());

test('two things that are kept under one name at once are both kept', async () => {
  const names = ['North', 'South', 'East'];
  const kept = await Promise.all(
    names.map((name) => keepUnder(sendTo(app), 'places', 'allotment', { name, ...quillmere })),
  );
  const { places } = (await app.inject('/v1/places')).json() as { places: { id: string; name: string }[] };
  expect(places.map(({ name }) => name).toSorted()).toEqual(names.toSorted());
  const ids = kept.map((got) => ('value' in got ? got.value.id : got.problem.detail));
  expect(ids.toSorted()).toEqual(['allotment', 'allotment-2', 'allotment-3']);
});
