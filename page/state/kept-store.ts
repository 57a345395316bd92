/** Does one thing in a store of a database of this browser. */
export type InStore = <T>(
  store: string,
  mode: IDBTransactionMode,
  does: (store: IDBObjectStore) => IDBRequest<T>,
) => Promise<T>;

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/**
 * A database of this browser, in its first version. It is opened for each thing that is done and closed again, so that no tab
 * keeps another waiting.
 *
 * @param make its stores, where it is not there yet
 */
export function keptIn(name: string, make: (database: IDBDatabase) => void): InStore {
  const opened = (): Promise<IDBDatabase> => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => make(request.result);
    return settled(request);
  };
  return async (store, mode, does) => {
    const database = await opened();
    try {
      return await settled(does(database.transaction(store, mode).objectStore(store)));
    } finally {
      database.close();
    }
  };
}
