import Fastify, { type FastifyRequest } from 'fastify';
import { describe, expect, it } from 'vitest';
import { serviceLog } from '../../../src/http/server/service-log.js';

/** A log, and the lines that it has written. */
function logged(level: 'info' | 'warn' = 'info') {
  const lines: Record<string, unknown>[] = [];
  const log = serviceLog(level, { write: (line) => lines.push(JSON.parse(line)) });
  return { log, lines };
}

describe('the log', () => {
  it('shows no secret of a request, of a record or of headers, however they come into a line', () => {
    const { log, lines } = logged();
    const headers = { authorization: 'Bearer hidden', cookie: 'session=hidden', accept: '*/*' };
    log.info({ headers }, 'headers');
    log.info({ source: { headers, url: 'https://archive.example/' } }, 'a record with headers');
    log.info({ subscription: { id: 'shed', secret: 'hidden' }, token: 'hidden', key: 'hidden' }, 'a record');
    expect(JSON.stringify(lines)).not.toContain('hidden');
    expect(lines[2]).toMatchObject({ subscription: { id: 'shed', secret: '[Redacted]' }, token: '[Redacted]' });
    expect(lines[1]).toMatchObject({ source: { url: 'https://archive.example/', headers: { accept: '*/*' } } });
  });

  it('tells of a fault its kind, its stack and what caused it', () => {
    const { log, lines } = logged();
    log.error({ err: new Error('cannot keep it', { cause: new TypeError('no disk') }) }, 'request failed');
    const { err } = lines[0] as { err: Record<string, unknown> };
    expect(err).toMatchObject({ type: 'Error', message: 'cannot keep it' });
    expect(err.stack).toContain('service-log.test.ts');
    expect(err.cause).toMatchObject({ type: 'TypeError', message: 'no disk' });
  });

  it('writes nothing that is less grave than it is told to', () => {
    const { log, lines } = logged('warn');
    log.info('started');
    log.warn('a source failed');
    expect(lines.map(({ msg }) => msg)).toEqual(['a source failed']);
  });

  it('is that of fastify too: of a request its method and address, of an answer its status', async () => {
    const { log, lines } = logged();
    const app = Fastify({ loggerInstance: log });
    app.get('/', async (request: FastifyRequest) => {
      request.log.info({ req: request }, 'asked');
      return 'alive';
    });
    await app.inject('/?token=hidden&bed=north');
    await app.close();
    expect(lines.find(({ msg }) => msg === 'asked')).toMatchObject({
      req: { method: 'GET', url: '/?token=[Redacted]&bed=north' },
    });
    expect(lines.find(({ res }) => res)).toMatchObject({ res: { statusCode: 200 } });
  });
});
