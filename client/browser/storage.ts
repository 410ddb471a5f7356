/** Small things, kept by key. A private window or a full disk must not stop the job. */
export interface Storage {
  read(key: string): unknown;
  /** False: it could not be kept. */
  write(key: string, value: unknown): boolean;
  remove(key: string): void;
}

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

const PREFIX = 'ladderline.';
/** If the browser keeps nothing, this lasts as long as the page. */
const forThisPage = memoryStorage();

export const browserStorage: Storage = {
  read(key) {
    try {
      const text = localStorage.getItem(PREFIX + key);
      if (text !== null) return JSON.parse(text);
    } catch {
      // No storage, or the text in it is not ours.
    }
    return forThisPage.read(key);
  },
  write(key, value) {
    try {
      localStorage.setItem(PREFIX + key, JSON.stringify(value));
      return true;
    } catch {
      forThisPage.write(key, value);
      return false;
    }
  },
  remove(key) {
    forThisPage.remove(key);
    try {
      localStorage.removeItem(PREFIX + key);
    } catch {
      // Nothing was kept, so there is nothing to remove.
    }
  },
};
