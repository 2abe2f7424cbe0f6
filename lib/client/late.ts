/**
 * Parts of a page that are not needed to begin: each fetched once, when the page has nothing better to do or when it is
 * asked for, and kept. A page that has lost its network goes on with what it has, so all of them are fetched early.
 */
export interface LoadedLater<T> {
  /** The part once it is here. */
  readonly here: T | null;
  /** Resolves when the part is here; rejects when it cannot be fetched. Asking again tries again. */
  fetch(): Promise<T>;
}

export function loadLater<T>(load: () => Promise<T>): LoadedLater<T> {
  let here: T | null = null;
  let fetching: Promise<T> | null = null;
  return {
    get here() {
      return here;
    },
    fetch() {
      fetching ??= load().then(
        (part) => {
          here = part;
          return part;
        },
        (error: unknown) => {
          fetching = null;
          throw error;
        },
      );
      return fetching;
    },
  };
}

/**
 * Fetches what is not here yet, one after the other, each when `whenIdle` says so. What fails is left: it is fetched when
 * it is asked for. Gives what ends it.
 */
export function fetchWhenIdle(parts: readonly LoadedLater<unknown>[], whenIdle: (run: () => void) => void): () => void {
  let ended = false;
  const next = (i: number) => {
    const part = parts[i];
    if (ended || !part) return;
    const on = () => next(i + 1);
    if (part.here !== null) on();
    else whenIdle(() => void (ended || part.fetch().then(on, on)));
  };
  next(0);
  return () => {
    ended = true;
  };
}
