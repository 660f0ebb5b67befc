import { once } from 'node:events';
import { type AddressInfo, connect } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { afterEach, describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { AT_ONCE } from '../../src/http/auth/limits.js';
import { exampleBed } from '../../src/http/question/examples.js';
import { openStore } from '../../src/storage/open-store.js';
import { askerOf, dateAfter, quillmere, startApp } from './helper.js';

const ending: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ending.splice(0).reverse()) await end();
});

/** A store whose database keeps those who ask for a bed waiting until it is let go. */
function slowly(store: Store): { readonly slow: Store; hold(): () => void } {
  let held: Promise<void> = Promise.resolve();
  const bed: Store['bed'] = async (...asked) => {
    await held;
    return store.bed(...asked);
  };
  return {
    slow: { ...store, bed },
    hold() {
      let letGo = (): void => {};
      held = new Promise((resolve) => {
        letGo = resolve;
      });
      return letGo;
    },
  };
}

describe('long work of callers who went before it was begun', () => {
  test('takes no place from those who come after', async () => {
    const store = await openStore('sqlite::memory:');
    ending.push(() => store.close());
    const { slow, hold } = slowly(store);
    const app = await startApp({ store: slow, rateLimit: 600 });
    ending.push(() => app.close());
    const daily = Array.from({ length: 4 * 365 }, (_, day) => ({
      date: dateAfter('2023-08-01', day),
      min: 6,
      max: 16,
    }));
    const ask = askerOf(app);
    await ask('PUT', '/v1/places/quillmere', { name: 'Quillmere Allotment Society', ...quillmere });
    await ask('POST', '/v1/places/quillmere/air', { medium: 'air', daily });
    await ask('PUT', '/v1/beds/north', exampleBed);
    await app.listen({ port: 0, host: '127.0.0.1' });
    const { port } = app.server.address() as AddressInfo;
    const url = (to: number): string =>
      `/v1/beds/north/sowing-windows?crop=lettuce&from=2027-08-03&to=${dateAfter('2027-08-13', to)}`;

    const letGo = hold();
    for (let i = 0; i < AT_ONCE; i++) {
      const socket = connect(port, '127.0.0.1');
      socket.write(`GET ${url(i)} HTTP/1.1\r\nHost: localhost\r\n\r\n`);
      await setTimeout(30);
      socket.destroy();
      await once(socket, 'close');
    }
    await setTimeout(100);
    letGo();
    await setTimeout(300);
    const { statusCode, body } = await app.inject({ url: url(AT_ONCE), remoteAddress: '127.0.0.1' });
    expect([statusCode, JSON.parse(body).code]).toEqual([200, undefined]);
  });
});
