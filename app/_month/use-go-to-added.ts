"use client";
/** The row that a button has just added, in view and ready to be typed in: a list may put it anywhere. */
import { type RefObject, useEffect, useRef } from "react";

/** What the rows stand in, each with its id as `data-row`, and what leads to one as soon as it is drawn. */
export function useGoToAdded<T extends HTMLElement>(): [RefObject<T | null>, (id: string) => void] {
  const box = useRef<T>(null);
  const wanted = useRef<string | null>(null);
  useEffect(() => {
    if (wanted.current === null) return;
    const row = box.current?.querySelector(`[data-row="${CSS.escape(wanted.current)}"]`);
    const field = row?.querySelector<HTMLElement>("input, select, textarea");
    if (!field) return;
    wanted.current = null;
    const folded = field.closest("details");
    if (folded) folded.open = true;
    field.focus();
    if (field instanceof HTMLInputElement) field.select();
  });
  const goTo = (id: string) => {
    wanted.current = id;
  };
  return [box, goTo];
}
