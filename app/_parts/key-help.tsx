"use client";
/**
 * The one list of keys, on every page: `?` opens it wherever nobody is typing. A page adds its own keys with `PageKeys` as
 * long as it is shown; the rest is the same everywhere. The lines come from the tables of commands.
 */
import { Fragment, useEffect, useState, useSyncExternalStore } from "react";
import { type KeyPart, keyParts } from "./commands/command.ts";
import { COMMON_COMMANDS, UNDO_COMMANDS } from "./commands/common.ts";
import { keyHandler } from "./commands/keys.ts";
import { Dialog } from "./dialog.tsx";
import styles from "./key-help.module.css";

export interface PageKeysProps {
  readonly parts: readonly KeyPart[];
  /** The page has undo. */
  readonly undo?: boolean;
  /** What can be done by hand, in a sentence. */
  readonly note?: string;
}

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

/** Adds a page's own keys to the list as long as it is mounted. Give it the same object at every drawing. */
export function PageKeys({ of }: { readonly of: PageKeysProps }) {
  useEffect(() => {
    show([...shown, of]);
    return () => show(shown.filter((one) => one !== of));
  }, [of]);
  return null;
}

/** Mounted once a document. A screen marked `data-own-keys` answers `?` itself. */
export function KeyHelp() {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const onOpen = () => setOpen(true);
    const handle = keyHandler(COMMON_COMMANDS, "page", { run: { "list-keys": onOpen } });
    const onKeyDown = (event: KeyboardEvent) => {
      if (!document.querySelector("dialog[open], [data-own-keys]")) handle(event);
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
  const undo = pages.some((page) => page.undo) ? keyParts(UNDO_COMMANDS) : [];
  const parts = [...pages.flatMap((page) => page.parts), ...undo, ...keyParts(COMMON_COMMANDS)];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the page under the list does not hear its keys
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
