import type { Send } from '../api.js';

/** Asks the service that the page came from. */
export const send: Send = async ({ method, path, json, file }) => {
  const response = await fetch(path, {
    method,
    ...(file
      ? { body: file as Blob, headers: { 'content-type': 'text/csv' } }
      : json === undefined
        ? {}
        : { body: JSON.stringify(json), headers: { 'content-type': 'application/json' } }),
  });
  const text = await response.text();
  return { status: response.status, body: text === '' ? undefined : JSON.parse(text) };
};
