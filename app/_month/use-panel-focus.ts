"use client";
/** The focus of what lies beside the sheet: on its head as it opens, never lost while it is open, and back where it came from. */
import { type RefObject, useEffect, useRef } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { PANEL_COMMANDS } from "./month-commands.ts";
import type { MonthDesk } from "./month-desk.ts";
import { useKeptFocus } from "./use-kept-focus.ts";

interface PanelFocus {
  readonly panel: RefObject<HTMLElement | null>;
  readonly head: RefObject<HTMLHeadingElement | null>;
  readonly close: () => void;
}

export function usePanelFocus({ choice, choose }: MonthDesk): PanelFocus {
  const panel = useRef<HTMLElement>(null);
  const head = useRef<HTMLHeadingElement>(null);
  const opener = useRef<Element | null>(null);
  useEffect(() => {
    opener.current = document.activeElement;
  }, []);
  const follows = choice.panel?.kind === "class" && choice.panel.follows === true;
  useEffect(() => {
    if (!follows) head.current?.focus({ preventScroll: true });
  }, [follows]);
  useKeptFocus(panel, () => head.current);
  const close = () => {
    choose({ panel: null, lit: null, proposed: {} });
    const { at } = choice;
    const name = at.slot === null ? `[data-day="${at.date}"]` : `button[data-slot="${CSS.escape(at.slot)}"]`;
    const back = document.querySelector<HTMLElement>(name) ?? opener.current;
    if (back instanceof HTMLElement) back.focus();
  };
  useCloseFromNowhere(close);
  return { panel, head, close };
}

/** The key that closes it also counts while nothing has the focus, as after a press on a button that then is switched off. */
function useCloseFromNowhere(close: () => void): void {
  const latest = useRef(close);
  latest.current = close;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.target !== document.body) return;
      keyHandler(PANEL_COMMANDS, "beside", { run: { close: () => latest.current() } })(event);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}
