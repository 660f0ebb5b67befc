import Fastify from 'fastify';
import { expect, test } from 'vitest';
import { loggedRequest } from '../../../src/http/server/logged-request.js';

/** The addresses that are logged of requests to these. */
async function logged(urls: readonly string[]): Promise<string[]> {
  const app = Fastify();
  app.get('/calendar.ics', async (request) => loggedRequest(request).url);
  const answers = await Promise.all(urls.map((url) => app.inject(url)));
  await app.close();
  return answers.map(({ body }) => body);
}

test('secrets in an address are not logged, however their names are written', async () => {
  expect(
    await logged([
      '/calendar.ics?token=s3cret&x=1',
      '/calendar.ics?x=1&API-Key=s3cret',
      '/calendar.ics?t%6Fken=s3cret',
      '/calendar.ics?%6bey=s3cret&%zz=1',
    ]),
  ).toEqual([
    '/calendar.ics?token=[Redacted]&x=1',
    '/calendar.ics?x=1&API-Key=[Redacted]',
    '/calendar.ics?t%6Fken=[Redacted]',
    '/calendar.ics?%6bey=[Redacted]&%zz=1',
  ]);
  expect(await logged(['/calendar.ics?monkey=1&crop=lettuce'])).toEqual(['/calendar.ics?monkey=1&crop=lettuce']);
});
