/** The browser's own storage, or none: a private window or a full disk must not stop the job. */
export interface Storage {
  read(key: string): unknown;
  /** False when it could not be kept. */
  write(key: string, value: unknown): boolean;
  remove(key: string): void;
}

const PREFIX = 'ladderline.';

export const browserStorage: Storage = {
  read(key) {
    try {
      const text = localStorage.getItem(PREFIX + key);
      return text === null ? undefined : JSON.parse(text);
    } catch {
      return undefined;
    }
  },
  write(key, value) {
    try {
      localStorage.setItem(PREFIX + key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  },
  remove(key) {
    try {
      localStorage.removeItem(PREFIX + key);
    } catch {
      // Nothing was kept, nothing is to be removed.
    }
  },
};

export const memoryStorage = (): Storage => {
  const kept = new Map<string, string>();
  return {
    read(key) {
      const text = kept.get(key);
      return text === undefined ? undefined : JSON.parse(text);
    },
    write(key, value) {
      kept.set(key, JSON.stringify(value));
      return true;
    },
    remove(key) {
      kept.delete(key);
    },
  };
};
