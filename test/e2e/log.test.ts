import { connect } from 'node:net';
import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { addressOf, endOf, killAll, run, written } from './run-service.js';

afterEach(killAll);

const linesOf = (output: string): Record<string, unknown>[] =>
  output
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => JSON.parse(line) as Record<string, unknown>);

describe('the log of requests', () => {
  it('has one line for each, with what was asked and what came of it, and all of them when the service has ended', async () => {
    const service = run([], {});
    const address = await addressOf(service);
    const ids: unknown[] = [];
    for (let i = 0; i < 100; i++) {
      const { headers, body } = await request(`${address}/v1/crops/${i % 2 ? 'carrot' : 'nothing'}`);
      ids.push(headers['request-id']);
      await body.dump();
    }
    service.child.kill('SIGTERM');
    expect(await endOf(service)).toBe(0);
    const lines = linesOf(service.output()).filter(({ req }) => req !== undefined);
    expect(lines.map(({ reqId }) => reqId)).toEqual(ids);
    expect(lines[1]).toMatchObject({
      req: { method: 'GET', url: '/v1/crops/carrot', remoteAddress: '127.0.0.1' },
      res: { statusCode: 200 },
      responseTime: expect.any(Number),
    });
    expect(lines[2]).toMatchObject({ req: { url: '/v1/crops/nothing' }, res: { statusCode: 404 } });
  });

  it('tells soon of a request, and of one whose caller left before its answer', async () => {
    const service = run([], {});
    const address = await addressOf(service);
    await (await request(`${address}/v1/crops/carrot`)).body.dump();
    await written(service, /"url":"\/v1\/crops\/carrot"/);
    const socket = connect(Number(new URL(address).port), '127.0.0.1');
    socket.write(
      'POST /v1/forecasts HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: 9\r\n\r\n{',
    );
    setTimeout(() => socket.destroy(), 200);
    await written(service, /"url":"\/v1\/forecasts"/);
    expect(service.output()).toContain('request given up by its caller');
  });
});
