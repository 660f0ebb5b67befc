import { createServer, type IncomingMessage, type RequestListener, type Server, type ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { FILE_LIMIT_BYTES } from '../../contract/file-limit.js';
import { requestRefusal } from '../../contract/refusal-facts.js';

/** What one connection, and all of them together, may take. */
export interface ConnectionLimits {
  /** Connections in all; one more is closed as it opens. */
  readonly maxConnections: number;
  /** Connections of one address that is no proxy of ours. */
  readonly maxPerAddress: number;
  /** Requests of one connection that have come whole and wait for their turn; with one more it is closed. */
  readonly maxWaiting: number;
  /** From the first byte of a request to the end of its headers [ms]. */
  readonly headersMs: number;
  /** From the first byte of a request to its last [ms]: a file of 256 MB takes an hour at 0.6 Mbit/s. */
  readonly requestMs: number;
  /** So long a body may stand still, and an answer be left unread [ms]. */
  readonly stillMs: number;
  /** So long a connection is kept open for the next request [ms]; longer than the 60 s of most load balancers, so that they close first. */
  readonly keepAliveMs: number;
  /** What a refused caller still sends is read and dropped up to here [bytes], and so long [ms]. */
  readonly maxDroppedBytes: number;
  readonly maxDroppingMs: number;
}

export const DEFAULT_CONNECTION_LIMITS: ConnectionLimits = {
  maxConnections: 2000,
  maxPerAddress: 250,
  maxWaiting: 100,
  headersMs: 60_000,
  requestMs: 3_600_000,
  stillMs: 60_000,
  keepAliveMs: 72_000,
  maxDroppedBytes: 2 * FILE_LIMIT_BYTES,
  maxDroppingMs: 600_000,
};

interface Exchange {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
}

/** One connection: the request that is being answered, and those that came behind it. */
interface Connection {
  current: Exchange | undefined;
  readonly waiting: Exchange[];
  isClosing: boolean;
}

const connections = new WeakMap<Socket, Connection>();

/** Would an answer that is written now be taken for that to the request which went wrong? */
export function isNextToAnswer(socket: Socket): boolean {
  const { request, response } = connections.get(socket)?.current ?? {};
  return !request || !response || (!request.complete && !response.headersSent);
}

/**
 * A server of which no caller can have more than its share. The requests of one connection are answered one at a time, in
 * their order (RFC 9112 §9.3.2): the next is begun when the answer before it has been taken, and nothing more is read until
 * then. A refusal reaches callers that go on sending (§9.6): the answer goes out, what still comes is dropped, then it closes.
 *
 * @param handler   Answers a request.
 * @param limits    See there.
 * @param isTrusted Is this the address of a proxy of ours, which many callers share?
 */
export function boundedServer(
  handler: RequestListener,
  limits: ConnectionLimits,
  isTrusted: (address: string) => boolean,
): Server {
  const byAddress = new Map<string, number>();

  const begin = (connection: Connection, exchange: Exchange): void => {
    connection.current = exchange;
    exchange.response.once('close', () => goOn(connection, exchange.request.socket));
    handler(exchange.request, exchange.response);
  };

  function goOn(connection: Connection, socket: Socket): void {
    connection.current = undefined;
    if (connection.isClosing || socket.destroyed) return;
    const next = connection.waiting.shift();
    if (connection.waiting.length === 0) socket.resume();
    if (next) begin(connection, next);
  }

  const server = createServer(
    {
      // A request without a Host is refused in our own words.
      requireHostHeader: false,
      headersTimeout: limits.headersMs,
      requestTimeout: limits.requestMs,
      keepAliveTimeout: limits.keepAliveMs,
      connectionsCheckingInterval: Math.min(5000, limits.headersMs / 2),
    },
    (request, response) => {
      const { socket } = request;
      const connection = connections.get(socket)!;
      if (connection.isClosing) return;
      if (!connection.current) return begin(connection, { request, response });
      if (connection.waiting.length >= limits.maxWaiting) return void socket.destroy();
      connection.waiting.push({ request, response });
      socket.pause();
    },
  );
  server.maxConnections = limits.maxConnections;
  server.setTimeout(limits.stillMs);

  server.on('connection', (socket) => {
    const address = socket.remoteAddress ?? '';
    const open = (byAddress.get(address) ?? 0) + 1;
    if (open > limits.maxPerAddress && !isTrusted(address)) return socket.destroy();
    byAddress.set(address, open);
    const connection: Connection = { current: undefined, waiting: [], isClosing: false };
    connections.set(socket, connection);
    // Reading the body of the request that is answered wakes the socket, which is to sleep while others wait.
    socket.on('resume', () => {
      if (connection.waiting.length > 0) socket.pause();
    });
    socket.once('close', () => {
      connection.waiting.length = 0;
      const left = byAddress.get(address)! - 1;
      if (left === 0) byAddress.delete(address);
      else byAddress.set(address, left);
    });
    const destroySoon = socket.destroySoon.bind(socket);
    socket.destroySoon = () => {
      connection.isClosing = true;
      const { request } = connection.current ?? {};
      if (!request || request.complete || socket.destroyed) return destroySoon();
      dropTheRest(socket, request, limits, destroySoon);
    };
  });

  server.on('timeout', (socket: Socket) => {
    const connection = connections.get(socket);
    const { request, response } = connection?.current ?? {};
    if (!connection || connection.isClosing || !request || !response || response.headersSent) return socket.destroy();
    // What is still being worked out has its own deadline.
    socket.setTimeout(limits.stillMs);
    if (!request.complete && request.listenerCount('error') > 0) {
      request.emit('error', new RequestError('too-slow', tooSlow(limits.stillMs)));
    }
  });
  return server;
}

/** Closes once a refused caller has sent all that it wanted to: closed sooner, its system would throw the answer away. */
function dropTheRest(socket: Socket, request: IncomingMessage, limits: ConnectionLimits, close: () => void): void {
  const fromByte = socket.bytesRead;
  const ending = setTimeout(() => socket.destroy(), limits.maxDroppingMs).unref();
  socket.once('close', () => clearTimeout(ending));
  socket.end();
  request.on('data', () => {
    if (socket.bytesRead - fromByte > limits.maxDroppedBytes) socket.destroy();
  });
  request.once('end', close);
  request.resume();
}

const tooSlow = (stillMs: number): Fact => requestRefusal('too-slow.still', { seconds: Math.round(stillMs / 1000) });
