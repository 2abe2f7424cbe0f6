"use client";
/** Measures how tall the words in each segment of the rail are, so that the layout never clips one. */
import { type RefObject, useCallback, useLayoutEffect, useRef, useState } from "react";

export interface Needs {
  readonly needs: Readonly<Record<string, number>>;
  /** A ref for the element whose natural height the segment `key` needs. */
  readonly measure: (key: string) => (element: HTMLElement | null) => void;
}

export function useNeeds(): Needs {
  const [needs, setNeeds] = useState<Readonly<Record<string, number>>>({});
  const keys = useRef(new Map<Element, string>());
  const observer = useRef<ResizeObserver | null>(null);

  useLayoutEffect(() => {
    const own = new ResizeObserver((entries) => setNeeds((now) => withEntries(now, entries, keys.current)));
    observer.current = own;
    // Before anything is painted: an observer tells only afterwards, and everything would move once.
    setNeeds(Object.fromEntries([...keys.current].map(([element, key]) => [key, heightOf(element)])));
    for (const element of keys.current.keys()) own.observe(element);
    return () => {
      own.disconnect();
      observer.current = null;
    };
  }, []);

  // What comes later is measured as it is put into the page, for the same reason.
  const come = useCallback((key: string, element: Element) => {
    if (observer.current === null) return;
    setNeeds((now) => (now[key] === heightOf(element) ? now : { ...now, [key]: heightOf(element) }));
  }, []);
  return { needs, measure: useMeasure(keys, observer, come) };
}

/** One ref a key, the same at every drawing: React would let go of the element and take it again otherwise. */
function useMeasure(
  keys: RefObject<Map<Element, string>>,
  observer: RefObject<ResizeObserver | null>,
  come: (key: string, element: Element) => void,
) {
  const refs = useRef(new Map<string, (element: HTMLElement | null) => void>());
  return useCallback(
    (key: string) => {
      const known = refs.current.get(key);
      if (known) return known;
      let held: HTMLElement | null = null;
      const ref = (element: HTMLElement | null) => {
        if (held !== null && held !== element) {
          observer.current?.unobserve(held);
          keys.current.delete(held);
        }
        held = element;
        if (element === null) return;
        keys.current.set(element, key);
        observer.current?.observe(element);
        come(key, element);
      };
      refs.current.set(key, ref);
      return ref;
    },
    [keys, observer, come],
  );
}

function withEntries(
  now: Readonly<Record<string, number>>,
  entries: readonly ResizeObserverEntry[],
  keys: ReadonlyMap<Element, string>,
): Readonly<Record<string, number>> {
  const next: Record<string, number> = { ...now };
  for (const entry of entries) {
    const key = keys.get(entry.target);
    if (key !== undefined) next[key] = Math.ceil(entry.borderBoxSize[0]?.blockSize ?? 0);
  }
  return Object.keys(next).every((key) => next[key] === now[key]) ? now : next;
}

const heightOf = (element: Element): number => Math.ceil(element.getBoundingClientRect().height);
