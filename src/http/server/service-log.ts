import { type DestinationStream, type LevelWithSilent, type Logger, pino, stdSerializers } from 'pino';
import { logStream } from './log-stream.js';
import { loggedRequest } from './logged-request.js';

/** Headers that no line shows, even if all headers of a request are logged. */
const SECRET_HEADERS = ['authorization', 'cookie', 'set-cookie'].flatMap((name) => [
  `*.headers["${name}"]`,
  `headers["${name}"]`,
]);

/** A webhook's secret, a key or a token in a record that is logged whole. */
const SECRET_FIELDS = ['secret', 'key', 'token'].flatMap((name) => [name, `*.${name}`]);

/**
 * The log of the service: JSON lines, one clock, requests without their secrets, errors with their causes.
 *
 * @param level The lowest level written.
 * @param out   Left out: standard output, in pieces.
 */
export const serviceLog = (level: LevelWithSilent, out: DestinationStream = logStream()): Logger =>
  pino(
    {
      level,
      redact: { paths: [...SECRET_HEADERS, ...SECRET_FIELDS], censor: '[Redacted]' },
      serializers: {
        req: loggedRequest,
        res: ({ statusCode }: { readonly statusCode: number }) => ({ statusCode }),
        err: stdSerializers.errWithCause,
      },
    },
    out,
  );
