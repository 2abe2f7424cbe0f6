/**
 * Parts of a page that it does not need to start: each is fetched once, while the page is idle or when it is needed.
 * All of them are fetched early, so that a page that loses its network can go on.
 */
export interface LoadedLater<T> {
  /** The part, once it has been fetched. */
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

/** The same for parts that come together: answers what gives each of them by its name. */
export const loadLaterOf =
  <T>(load: () => Promise<T>) =>
  <K extends keyof T>(name: K): LoadedLater<T[K]> =>
    loadLater(() => load().then((all) => all[name]));

/**
 * Fetches the missing parts one after the other, each when `whenIdle` says so. A part that fails is left until it is
 * needed. Returns a function that stops it.
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
