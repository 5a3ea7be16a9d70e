// Faults of the storage, to be run in a page: before everything else of it, or later.
export const blockFirst = () => {
  Object.defineProperty(window, 'localStorage', {
    get() {
      throw new DOMException('blocked', 'SecurityError');
    },
  });
};

export const hideSecond = () => Object.defineProperty(window, 'indexedDB', { get: () => undefined });

export const blockBoth = `() => { (${blockFirst})(); (${hideSecond})(); }`;

// What never answers.
export const SILENT = {
  'its opening': () => {
    IDBFactory.prototype.open = () => new EventTarget();
  },
  'a reading': () => {
    const fires = EventTarget.prototype.dispatchEvent;
    IDBObjectStore.prototype.getAllKeys = () => ({ dispatchEvent: fires });
  },
  'a writing': () => {
    Object.defineProperty(IDBTransaction.prototype, 'oncomplete', { set() {} });
  },
};

// Fills what is left of localStorage, to the last character, under a key of nobody.
export const fillFirst = () => {
  let text = '';
  for (let length = 1 << 22; length >= 1; length >>= 1) {
    const longer = text + 'x'.repeat(length);
    try {
      localStorage.setItem('filler', longer);
      text = longer;
    } catch {
      // Half as much is tried next.
    }
  }
};

// Every transaction that writes to IndexedDB is refused for want of space, as the standard names it.
export const fillSecond = () => {
  const { put } = IDBObjectStore.prototype;
  window.emptySecond = () => {
    IDBObjectStore.prototype.put = put;
  };
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('full', 'QuotaExceededError');
  };
};

export const fillBoth = `() => { (${fillFirst})(); (${fillSecond})(); }`;
