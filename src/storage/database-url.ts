/** The path of the SQLite file that an address names, or `:memory:`; undefined where it names none. */
export const sqlitePath = (databaseUrl: string): string | undefined =>
  /^sqlite:(?:\/\/(?=\/))?(.+)$/.exec(databaseUrl)?.[1];
