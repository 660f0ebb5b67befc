/** What went wrong on the way to a host and back, in words that go on from its name: "refused the connection". */
export function connectionFault(error: unknown, headersMs: number): string {
  const { code = '', name } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'UND_ERR_CONNECT_TIMEOUT':
    case 'ETIMEDOUT':
      return 'did not accept the connection in time';
    case 'UND_ERR_HEADERS_TIMEOUT':
      return `did not begin to answer within ${headersMs / 1000} s`;
    case 'UND_ERR_BODY_TIMEOUT':
      return 'fell silent in the middle of its answer';
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
    case 'EAI_NODATA':
      return 'has a host name that leads nowhere';
    case 'ECONNREFUSED':
      return 'refused the connection';
    case 'ECONNRESET':
    case 'EPIPE':
    case 'UND_ERR_SOCKET':
      return 'broke off the connection';
    case 'EHOSTUNREACH':
    case 'ENETUNREACH':
      return 'cannot be reached';
  }
  if (/^(?:CERT_|ERR_TLS|ERR_SSL|DEPTH_ZERO|SELF_SIGNED|UNABLE_TO)/.test(code)) {
    return 'has no certificate that can be trusted';
  }
  if (name === 'HTTPParserError' || /^(?:HPE_|UND_ERR_)/.test(code)) return 'does not answer as HTTP asks';
  return `could not be asked${code && ` (${code})`}`;
}
