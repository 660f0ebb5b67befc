/** Maximum size of a file [bytes]. */
export const FILE_LIMIT_BYTES = 256 * 1024 * 1024;
