import type { FastifyRequest } from 'fastify';
import { callersIdOf } from './callers-id.js';

/** Query parameters in which people send keys. A calendar's token is secret too. */
export const KEY_PARAMETERS = /^(?:token|access[-_]?token|(?:api[-_]?)?key)$/i;
const PARAMETER = /([?&])([^=&]*)=[^&]*/g;
/** The format of W3C Trace Context, level 1. */
const TRACE_PARENT = /^[\da-f]{2}-[\da-f]{32}-[\da-f]{16}-[\da-f]{2}$/;

/** The log's record of a request, without the token of a calendar's address or a key in the query. */
export const loggedRequest = (request: FastifyRequest) => {
  const { method, url, host, ip, headers } = request;
  const callersId = callersIdOf(request);
  const trace = headers.traceparent;
  return {
    method,
    url: withoutSecrets(url),
    host,
    remoteAddress: ip,
    ...(callersId === undefined ? {} : { callersId }),
    ...(typeof trace === 'string' && TRACE_PARENT.test(trace) ? { traceparent: trace } : {}),
  };
};

const withoutSecrets = (url: string): string =>
  url.replaceAll(PARAMETER, (whole, mark: string, name: string) =>
    KEY_PARAMETERS.test(decoded(name)) ? `${mark}${name}=[Redacted]` : whole,
  );

/** A parameter's name as the query parser decodes it: `%6Bey` is a key as well. */
const decoded = (name: string): string => [...new URLSearchParams(`${name}=`).keys()][0] ?? '';
