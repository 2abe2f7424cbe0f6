"use client";
/** On every page of somebody who is signed in: a key, and buttons, that open the search. The search itself is fetched late. */
import { useEffect, useState } from "react";
import { loadLater } from "#lib/client/late.ts";
import { CommandButton } from "../commands/command-button.tsx";
import { keyHandler } from "../commands/keys.ts";
import { PageKeys } from "../key-help.tsx";
import { LatePart, useLateParts } from "../late-part.tsx";
import { FIND_COMMANDS, FIND_KEYS } from "./find-commands.ts";

const lateFind = loadLater(() => import("./find-dialog.tsx").then(({ FindDialog }) => FindDialog));
const LATE_FIND = [lateFind];
const openers = new Set<() => void>();

/** Mounted once a page. */
export function FindHere() {
  const [open, setOpen] = useState(false);
  useLateParts(LATE_FIND);
  useEffect(() => {
    const find = () => setOpen(true);
    const handle = keyHandler(FIND_COMMANDS, "page", { run: { find } });
    const onKeyDown = (event: KeyboardEvent) => {
      if (!document.querySelector("dialog[open], [data-own-keys]")) handle(event);
    };
    openers.add(find);
    addEventListener("keydown", onKeyDown);
    return () => {
      openers.delete(find);
      removeEventListener("keydown", onKeyDown);
    };
  }, []);
  return (
    <>
      <PageKeys of={FIND_KEYS} />
      {open && <LatePart part={lateFind} props={{ onClose: () => setOpen(false) }} />}
    </>
  );
}

export function FindButton({ className }: { readonly className?: string | undefined }) {
  return (
    <CommandButton
      command={FIND_COMMANDS.commands.find}
      place="page"
      className={className ?? ""}
      onRun={() => {
        for (const open of openers) open();
      }}
    />
  );
}
