import { createServer, type IncomingMessage, type RequestListener, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach } from 'vitest';

/** A server on a free port of this machine, and what it was asked. */
export interface LocalServer {
  readonly url: string;
  readonly asked: IncomingMessage[];
  close(): Promise<void>;
}

/** Starts one that answers so. */
export async function serve(
  answer: (request: IncomingMessage, response: ServerResponse) => void,
): Promise<LocalServer> {
  const asked: IncomingMessage[] = [];
  const listener: RequestListener = (request, response) => {
    asked.push(request);
    answer(request, response);
  };
  const server: Server = createServer(listener);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/** What a test file opens is closed after each of its tests, the last first. */
export function closedAfterEach() {
  const open: { close(): Promise<void> }[] = [];
  afterEach(async () => {
    for (const one of open.splice(0).reverse()) await one.close();
  });
  return {
    open,
    /** As `serve`. */
    async server(answer: Parameters<typeof serve>[0]): Promise<LocalServer> {
      const one = await serve(answer);
      open.push(one);
      return one;
    },
  };
}

/** An answer that goes on for as long as somebody takes it, and how much of it went out. */
export function answerWithoutEnd() {
  let sent = 0;
  return {
    sentBytes: (): number => sent,
    answer(_: IncomingMessage, response: ServerResponse): void {
      const more = (): void => {
        while (!response.destroyed && sent < 1e9) {
          sent += 65_536;
          if (!response.write('x'.repeat(65_536))) return;
        }
      };
      response.on('drain', more);
      more();
    },
  };
}
