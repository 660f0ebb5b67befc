import { createServer, type IncomingMessage, type RequestListener, type Server, type ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { FILE_LIMIT_BYTES } from '../../contract/request/file-limit.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';

/** Limits of one connection, and of all together. */
export interface ConnectionLimits {
  /** Maximum open connections; one more is closed at once. */
  readonly maxConnections: number;
  /** Maximum connections of one address, except trusted proxies. */
  readonly maxPerAddress: number;
  /** Maximum complete requests of one connection that wait for their turn; one more closes it. */
  readonly maxWaiting: number;
  /** Time limit from the first byte of a request to the end of its headers [ms]. */
  readonly headersMs: number;
  /** Time limit from the first byte of a request to its last [ms]: a file of 256 MB takes an hour at 0.6 Mbit/s. */
  readonly requestMs: number;
  /** Time limit for a body that stands still or an answer that is not read [ms]. */
  readonly stillMs: number;
  /** Time limit for an idle connection [ms]; above the 60 s of most load balancers, so that they close first. */
  readonly keepAliveMs: number;
  /** Maximum bytes, and time [ms], of input that is read and dropped after a refusal. */
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

/** One connection: the request being answered, and those queued behind it. */
interface Connection {
  current: Exchange | undefined;
  readonly waiting: Exchange[];
  isClosing: boolean;
}

const connections = new WeakMap<Socket, Connection>();

/** True if an answer written now would be taken for the answer to the failed request. */
export function isNextToAnswer(socket: Socket): boolean {
  const { request, response } = connections.get(socket)?.current ?? {};
  return !request || !response || (!request.complete && !response.headersSent);
}

/**
 * A server on which no caller can take more than a fair share. It answers the requests of one connection one at a time,
 * in order (RFC 9112 §9.3.2): the next begins when the previous answer has been read, and nothing more is read until
 * then. A refusal reaches callers that keep sending (§9.6): the answer is sent, further input dropped, then the
 * connection closed.
 *
 * @param handler   Answers a request.
 * @param limits    See `ConnectionLimits`.
 * @param isTrusted True for the address of a trusted proxy, which many callers share.
 */
export function boundedServer(
  handler: RequestListener,
  limits: ConnectionLimits,
  isTrusted: (address: string) => boolean,
): Server {
  const server = createServer(
    {
      // The service refuses a request without a Host in its own words.
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
      if (!connection.current) return begin(connection, { request, response }, handler);
      if (connection.waiting.length >= limits.maxWaiting) return void socket.destroy();
      connection.waiting.push({ request, response });
      socket.pause();
    },
  );
  server.maxConnections = limits.maxConnections;
  server.setTimeout(limits.stillMs);

  const byAddress = new Map<string, number>();
  server.on('connection', (socket) => {
    const address = socket.remoteAddress ?? '';
    const open = (byAddress.get(address) ?? 0) + 1;
    if (open > limits.maxPerAddress && !isTrusted(address)) return socket.destroy();
    byAddress.set(address, open);
    socket.once('close', () => {
      const left = byAddress.get(address)! - 1;
      if (left === 0) byAddress.delete(address);
      else byAddress.set(address, left);
    });
    watchConnection(socket, limits);
  });
  server.on('timeout', (socket: Socket) => endStandstill(socket, limits.stillMs));
  return server;
}

/** Answers a request, and after it those that wait behind it. */
function begin(connection: Connection, exchange: Exchange, handler: RequestListener): void {
  connection.current = exchange;
  exchange.response.once('close', () => {
    const { socket } = exchange.request;
    connection.current = undefined;
    if (connection.isClosing || socket.destroyed) return;
    const next = connection.waiting.shift();
    if (connection.waiting.length === 0) socket.resume();
    if (next) begin(connection, next, handler);
  });
  handler(exchange.request, exchange.response);
}

/** Holds a new connection to its turn, and lets it end only after a refused caller has stopped sending. */
function watchConnection(socket: Socket, limits: ConnectionLimits): void {
  const connection: Connection = { current: undefined, waiting: [], isClosing: false };
  connections.set(socket, connection);
  // Reading the body of the current request wakes the socket, which must stay paused while others wait.
  socket.on('resume', () => {
    if (connection.waiting.length > 0) socket.pause();
  });
  socket.once('close', () => {
    connection.waiting.length = 0;
  });
  const destroySoon = socket.destroySoon.bind(socket);
  socket.destroySoon = () => {
    connection.isClosing = true;
    const { request } = connection.current ?? {};
    if (!request || request.complete || socket.destroyed) return destroySoon();
    dropTheRest(socket, request, limits, destroySoon);
  };
}

/** Refuses a body that stands still, and closes a connection whose answer nobody reads. */
function endStandstill(socket: Socket, stillMs: number): void {
  const connection = connections.get(socket);
  const { request, response } = connection?.current ?? {};
  if (!connection || connection.isClosing || !request || !response || response.headersSent) {
    socket.destroy();
    return;
  }
  // Work still under way has its own deadline.
  socket.setTimeout(stillMs);
  if (!request.complete && request.listenerCount('error') > 0) {
    request.emit('error', new RequestError('too-slow', tooSlow(stillMs)));
  }
}

/** Closes once a refused caller has sent everything: if closed sooner, the caller's system would discard the answer. */
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
