"use client";
/** How tall an element is, as it changes: what sits under the band has to know. */
import { type RefObject, useEffect, useRef, useState } from "react";

export function useHeight<E extends HTMLElement>(): [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [height, setHeight] = useState(0);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => setHeight(Math.round(entry?.borderBoxSize[0]?.blockSize ?? 0)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, height];
}
