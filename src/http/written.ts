/** An answer as it goes out: all but its tag, its coding, and what every answer carries. */
export interface Written {
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

export const asJson = (content: object): Written => ({
  type: 'application/json; charset=utf-8',
  body: JSON.stringify(content),
});
