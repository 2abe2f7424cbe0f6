"use client";
/** The keys of the month from where no key means anything else: as soon as the page is open, and after a press beside the sheet. */
import { useEffect, useRef } from "react";
import { commandOfKey } from "#app/_parts/commands/keys.ts";
import { SHEET_COMMANDS } from "./month-commands.ts";

/** Keys that scroll the page or press what has the focus count only while nothing has it. */
const PLAIN = /^[a-z0-9]$/i;
/** What is over the sheet or beside it has keys of its own. */
const OTHER_KEYS = "dialog, aside, [data-own-keys]";

/** `handle` gets every key that the sheet itself has not. */
export function useKeysFromNowhere(handle: (event: KeyboardEvent) => void): void {
  const latest = useRef(handle);
  latest.current = handle;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      if (event.defaultPrevented || !(target instanceof HTMLElement)) return;
      if (document.querySelector("dialog[open]") || target.closest(OTHER_KEYS)) return;
      const nowhere = target === document.body || target.id === "content";
      if (nowhere || PLAIN.test(event.key)) latest.current(event);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

/**
 * Acts on the chosen class wait until it is seen which one that is; what lies beside the sheet closes by itself
 * (`use-panel-focus.ts`).
 */
export const waits = (event: KeyboardEvent, seen: boolean): boolean => {
  const command = commandOfKey(SHEET_COMMANDS, "sheet", event);
  return command === "close" || (!seen && (command === "move" || command === "take-out"));
};
