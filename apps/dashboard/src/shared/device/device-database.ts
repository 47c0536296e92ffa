/**
 * What this device keeps of its own: readings of the API for when there is no signal, and runs that wait to be sent.
 * One IndexedDB database; every record carries the account it belongs to.
 */
const NAME = 'loamledger';
const VERSION = 1;

const STORES = { reads: ['account', 'query'], runs: ['key'], notes: ['account', 'name'] } as const;
export type StoreName = keyof typeof STORES;

let opened: Promise<IDBDatabase> | undefined;

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      for (const [store, path] of Object.entries(STORES)) {
        request.result.createObjectStore(store, { keyPath: [...path] });
      }
    };
    request.onsuccess = () => {
      const database = request.result;
      // Another tab upgrades or clears the database: let go, and open it again when it is needed next.
      const forget = () => {
        opened = undefined;
      };
      database.onversionchange = () => {
        database.close();
        forget();
      };
      database.onclose = forget;
      resolve(database);
    };
    request.onerror = () => reject(request.error ?? new Error('IndexedDB does not open.'));
    request.onblocked = () => reject(new Error('Another tab holds an older IndexedDB.'));
  });
}

function database(): Promise<IDBDatabase> {
  opened ??= open().catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

/** Runs one transaction, and answers when what it wrote is on the disk. */
async function within<Answer>(
  store: StoreName,
  mode: IDBTransactionMode,
  work: (records: IDBObjectStore) => IDBRequest<Answer>,
): Promise<Answer> {
  // Strict: what the rider is told is saved survives the battery running empty a moment later.
  const transaction = (await database()).transaction(store, mode, { durability: 'strict' });
  const request = work(transaction.objectStore(store));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error ?? new Error('The record was not written.'));
  });
}

export const deviceRecords = {
  all: <Row>(store: StoreName): Promise<Row[]> =>
    within(store, 'readonly', (records) => records.getAll() as IDBRequest<Row[]>),
  put: async (store: StoreName, row: object): Promise<void> => {
    await within(store, 'readwrite', (records) => records.put(row));
  },
  remove: async (store: StoreName, key: IDBValidKey): Promise<void> => {
    await within(store, 'readwrite', (records) => records.delete(key));
  },
};
