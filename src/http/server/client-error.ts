import { randomUUID } from 'node:crypto';
import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { plainReader } from '../../words/reader.js';
import { sayer } from '../../words/say.js';
import { problemOf } from '../problems/problems.js';
import { isNextToAnswer } from './bounded-server.js';

/** Answers input that is no request, or that came too slowly, and closes the connection. */
export function sendClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable || !isNextToAnswer(socket)) return void socket.destroy();
  const id = randomUUID();
  const problem = problemOf(asRequestError(error), `urn:uuid:${id}`, sayer(plainReader));
  const body = JSON.stringify(problem);
  socket.end(
    [
      `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}`,
      'Content-Type: application/problem+json',
      'Cache-Control: no-store',
      `Content-Language: ${plainReader.language}`,
      `Request-Id: ${id}`,
      `Content-Length: ${Buffer.byteLength(body)}`,
      'Connection: close',
      '',
      body,
    ].join('\r\n'),
    () => socket.destroy(),
  );
}

function asRequestError({ code }: NodeJS.ErrnoException): RequestError {
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') {
    return new RequestError('too-slow', requestRefusal('too-slow'));
  }
  if (code === 'HPE_HEADER_OVERFLOW') {
    return new RequestError('bad-request', requestRefusal('bad-request.headers'));
  }
  return new RequestError('bad-request', requestRefusal('bad-request.no-http'));
}
