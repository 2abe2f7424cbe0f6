"use client";
/**
 * The one help, on every page: `?` opens it wherever nobody is typing. A page adds its own keys with `PageKeys` as long as it
 * is shown. The list itself (`key-list.tsx`) comes late where the page is to start soon.
 */
import { type ComponentType, useEffect, useState, useSyncExternalStore } from "react";
import type { LoadedLater } from "#lib/client/late.ts";
import type { KeyPart } from "./commands/command.ts";
import { COMMON_COMMANDS } from "./commands/common.ts";
import { keyHandler } from "./commands/keys.ts";
import { LatePart } from "./late-part.tsx";

export interface PageKeysProps {
  readonly parts: readonly KeyPart[];
  /** They are the same on many pages, and stand after the page's own. */
  readonly shared?: boolean;
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

/** Opens the help, for a button. */
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

const AFTER_MS = 6000;

interface KeyListProps {
  readonly onClose: () => void;
}

/** Mounted once a document. A screen marked `data-own-keys` answers `?` itself. Give it the same `list` at every drawing. */
export function KeyHelp({ list }: { readonly list: LoadedLater<ComponentType<KeyListProps>> }) {
  // Counts how often it was asked for, 0 while closed: `?` may be pressed before the one that is just closed has said so.
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    // So that it is there without a network. What the page itself needs comes first.
    const timer = setTimeout(() => void list.fetch().catch(() => undefined), AFTER_MS);
    return () => clearTimeout(timer);
  }, [list]);
  useEffect(() => {
    const onOpen = () => setAsked((times) => times + 1);
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
  const onClose = () => setAsked((times) => (times === asked ? 0 : times));
  return asked > 0 ? <LatePart key={asked} part={list} props={{ onClose }} meanwhile={null} /> : null;
}

const watch = (tell: () => void) => {
  watchers.add(tell);
  return () => watchers.delete(tell);
};

/** What the pages that are shown have added. */
export const useShownKeys = (): readonly PageKeysProps[] =>
  useSyncExternalStore(
    watch,
    () => shown,
    () => shown,
  );
