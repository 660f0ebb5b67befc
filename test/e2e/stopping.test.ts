import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, expect, it } from 'vitest';
import { bodyOf, dial, headerOf, heard, statusOf } from './raw-http.js';
import { addressOf, endOf, killAll, run } from './run-service.js';

afterEach(killAll);

it('a service that is stopping finishes what it has begun, and refuses the next as "stopping"', async () => {
  const service = run([], {});
  const address = await addressOf(service);
  const socket = await dial(address);
  const question = JSON.stringify({ crop: 'lettuce' });
  socket.write(
    `POST /v1/forecasts HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: ${question.length}\r\n\r\n`,
  );
  await wait(200);
  service.child.kill('SIGTERM');
  await wait(200);
  const answers = heard(socket, 8000);
  socket.write(`${question}GET /v1/beds HTTP/1.1\r\nHost: localhost\r\n\r\n`);
  const text = await answers;
  const second = text.slice(text.lastIndexOf('HTTP/1.1 '));
  expect(statusOf(text)).toBe(422);
  expect([statusOf(second), headerOf(second, 'Content-Type'), headerOf(second, 'Retry-After')]).toEqual([
    503,
    'application/problem+json; charset=utf-8',
    '5',
  ]);
  expect(bodyOf(second)).toMatchObject({ status: 503, code: 'stopping', retryAfterS: 5 });
  expect(headerOf(second, 'Connection')).toBe('close');
  expect(await endOf(service)).toBe(0);
});
