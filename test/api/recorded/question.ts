/** Which service is asked: without keys; with them, and as few requests as a minute may have; for one host; with room for one of each; with its database closed. */
export type ServiceName = 'open' | 'keyed' | 'hasty' | 'hosted' | 'small' | 'away';

/** One request whose answer is recorded. They are asked in the order of the list: what one keeps, the next finds. */
export interface Question {
  /** Its place in the record: no two have the same. */
  readonly name: string;
  readonly service: ServiceName;
  readonly method: 'GET' | 'PUT' | 'PATCH' | 'POST' | 'DELETE';
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly payload?: object | string | Buffer;
}

export interface More {
  /** What tells it from others of the same method and address. */
  readonly as?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly service?: ServiceName;
}

const asked = (
  method: Question['method'],
  url: string,
  payload: Question['payload'],
  { as, headers = {}, service = 'open' }: More,
): Question => {
  const isFile = typeof payload === 'string' || Buffer.isBuffer(payload);
  return {
    name: `${method} ${url.slice(0, 160)}${as === undefined ? '' : `: ${as}`}`,
    service,
    method,
    url,
    headers: { ...(isFile ? { 'content-type': 'text/csv' } : {}), ...headers },
    ...(payload === undefined ? {} : { payload }),
  };
};

export const get = (url: string, more: More = {}): Question => asked('GET', url, undefined, more);
export const put = (url: string, payload: object, more: More = {}): Question => asked('PUT', url, payload, more);
export const patch = (url: string, payload: object, more: More = {}): Question => asked('PATCH', url, payload, more);
export const remove = (url: string, more: More = {}): Question => asked('DELETE', url, undefined, more);

/** Text and bytes go as a file, anything else as JSON. */
export const post = (url: string, payload: Question['payload'], more: More = {}): Question =>
  asked('POST', url, payload, more);

/** The same question about many things, each told by its name. */
export const postEach = (url: string, payloads: Readonly<Record<string, object | string>>): Question[] =>
  Object.entries(payloads).map(([as, payload]) => post(url, payload, { as }));
