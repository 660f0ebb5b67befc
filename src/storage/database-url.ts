/** The path of the SQLite file at an address, or `:memory:`; undefined for another kind of address. */
export const sqlitePath = (databaseUrl: string): string | undefined =>
  /^sqlite:(?:\/\/(?=\/))?(.+)$/.exec(databaseUrl)?.[1];
