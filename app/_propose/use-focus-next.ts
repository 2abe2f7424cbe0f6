"use client";
/** What has the keyboard after the next drawing: the buttons that were pressed move, or are gone. */
import { type RefObject, useEffect, useRef } from "react";

/** `selector`: of an element in the list, asked for once it is drawn again. */
export function useFocusNext(list: RefObject<HTMLElement | null>): (selector: string) => void {
  const wanted = useRef<string | null>(null);
  useEffect(() => {
    const selector = wanted.current;
    wanted.current = null;
    if (selector !== null) list.current?.querySelector<HTMLElement>(selector)?.focus();
  });
  return (selector) => {
    wanted.current = selector;
  };
}
