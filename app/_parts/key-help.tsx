"use client";
/**
 * The one list of keys, on every page: `?` opens it wherever nobody is typing. A page says its own keys with `PageKeys`
 * while it is shown; the rest is the same everywhere.
 */
import { Fragment, useEffect, useState, useSyncExternalStore } from "react";
import { Dialog } from "./dialog.tsx";
import styles from "./key-help.module.css";

/** A key as it is printed, and what it does. */
export type Keys = readonly (readonly [string, string])[];
export interface KeyPart {
  readonly title: string;
  readonly keys: Keys;
}
export interface PageKeysProps {
  readonly parts: readonly KeyPart[];
  /** The page can take back what one did. */
  readonly undo?: boolean;
  /** What can be done by hand, in a sentence. */
  readonly note?: string;
}

const COMMON: Keys = [
  ["Tab, Shift + Tab", "to the next thing that can be used, or the one before"],
  ["Enter", "press the chosen button, follow the chosen link"],
  ["Space", "press the chosen button, tick the chosen box"],
  ["Escape", "close what lies over the page"],
  ["?", "this list"],
];
const UNDO: Keys = [
  ["Ctrl or Cmd + Z", "undo your own last act"],
  ["Ctrl or Cmd + Shift + Z", "redo it"],
];

let shown: readonly PageKeysProps[] = [];
const openers = new Set<() => void>();
const watchers = new Set<() => void>();

function show(next: readonly PageKeysProps[]): void {
  shown = next;
  for (const tell of watchers) tell();
}

/** Opens the list, for a button. */
export function openKeyHelp(): void {
  for (const open of openers) open();
}

/** Says a page's own keys as long as it is mounted. Give it the same object at every drawing. */
export function PageKeys({ of }: { readonly of: PageKeysProps }) {
  useEffect(() => {
    show([...shown, of]);
    return () => show(shown.filter((one) => one !== of));
  }, [of]);
  return null;
}

/** Mounted once a document. What is marked `data-own-keys` answers `?` itself. */
export function KeyHelp() {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const onOpen = () => setOpen(true);
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== "?" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (document.querySelector("dialog[open], [data-own-keys]")) return;
      event.preventDefault();
      onOpen();
    };
    openers.add(onOpen);
    addEventListener("keydown", onKeyDown);
    return () => {
      openers.delete(onOpen);
      removeEventListener("keydown", onKeyDown);
    };
  }, []);
  return open ? <KeyList onClose={() => setOpen(false)} /> : null;
}

const watch = (tell: () => void) => {
  watchers.add(tell);
  return () => watchers.delete(tell);
};

function KeyList({ onClose }: { readonly onClose: () => void }) {
  const pages = useSyncExternalStore(
    watch,
    () => shown,
    () => shown,
  );
  const everywhere = pages.some(({ undo }) => undo) ? [...COMMON, ...UNDO] : COMMON;
  const parts = [...pages.flatMap((page) => page.parts), { title: "On every page", keys: everywhere }];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: no key pressed in the list is one for the page under it
    <div onKeyDown={(event) => event.nativeEvent.stopPropagation()}>
      <Dialog title="Keys" onClose={onClose}>
        {parts.map(({ title, keys }) => (
          <Fragment key={title}>
            <h3>{title}</h3>
            <dl className={styles.keys}>
              {keys.map(([key, what]) => (
                <div key={key}>
                  <dt>{key}</dt>
                  <dd>{what}</dd>
                </div>
              ))}
            </dl>
          </Fragment>
        ))}
        {pages.map(({ note }) => note && <p key={note}>{note}</p>)}
      </Dialog>
    </div>
  );
}

const NO_TEXT = new Set(["checkbox", "radio", "button", "range", "submit", "reset", "file", "color"]);

/** Whether a "?" is a letter there. */
function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !NO_TEXT.has(target.type);
  return target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
