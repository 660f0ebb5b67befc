/** The thermometer's file as stored in the browser, so that it outlives a reload; one at most. */
export interface KeptFile {
  readonly name: string;
  readonly body: Blob;
  readonly isPasted: boolean;
}

const KEY = 'chosen';

export const keepFile = (file: KeptFile): Promise<unknown> => inStore('readwrite', (store) => store.put(file, KEY));

export const forgetFile = (): Promise<unknown> => inStore('readwrite', (store) => store.delete(KEY));

export const keptFile = (): Promise<KeptFile | undefined> =>
  inStore<KeptFile | undefined>('readonly', (store) => store.get(KEY));

async function inStore<T>(mode: IDBTransactionMode, does: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const opening = indexedDB.open('germination-forecaster', 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore('file');
  await new Promise((done, fail) => {
    opening.onsuccess = done;
    opening.onerror = () => fail(opening.error);
  });
  const database = opening.result;
  try {
    const transaction = database.transaction('file', mode);
    const request = does(transaction.objectStore('file'));
    await new Promise((done, fail) => {
      transaction.oncomplete = done;
      transaction.onabort = () => fail(transaction.error);
    });
    return request.result;
  } finally {
    database.close();
  }
}
