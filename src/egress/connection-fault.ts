/** A failure of a request to a host; `seconds`: the time waited, when it is known. */
export interface ConnectionFault {
  readonly fault:
    | 'unaccepted'
    | 'unanswered'
    | 'silent'
    | 'unnamed'
    | 'refused'
    | 'broken'
    | 'unreachable'
    | 'untrusted'
    | 'malformed'
    | 'slow'
    | 'other';
  readonly seconds: number | null;
  readonly errorCode: string | null;
}

/**
 * Classifies an error of a connection.
 *
 * @param headersMs Time-out for the start of the answer.
 */
export function connectionFault(error: unknown, headersMs: number): ConnectionFault {
  const { code = '', name } = error as NodeJS.ErrnoException;
  const of = (fault: ConnectionFault['fault'], seconds: number | null = null): ConnectionFault => ({
    fault,
    seconds,
    errorCode: fault === 'other' && code !== '' ? code : null,
  });
  switch (code) {
    case 'UND_ERR_CONNECT_TIMEOUT':
    case 'ETIMEDOUT':
      return of('unaccepted');
    case 'UND_ERR_HEADERS_TIMEOUT':
      return of('unanswered', headersMs / 1000);
    case 'UND_ERR_BODY_TIMEOUT':
      return of('silent');
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
    case 'EAI_NODATA':
      return of('unnamed');
    case 'ECONNREFUSED':
      return of('refused');
    case 'ECONNRESET':
    case 'EPIPE':
    case 'UND_ERR_SOCKET':
      return of('broken');
    case 'EHOSTUNREACH':
    case 'ENETUNREACH':
      return of('unreachable');
  }
  if (/^(?:CERT_|ERR_TLS|ERR_SSL|DEPTH_ZERO|SELF_SIGNED|UNABLE_TO)/.test(code)) return of('untrusted');
  return name === 'HTTPParserError' || /^(?:HPE_|UND_ERR_)/.test(code) ? of('malformed') : of('other');
}
