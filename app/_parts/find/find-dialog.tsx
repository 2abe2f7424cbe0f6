"use client";
/** Finds a thing by its words: one field, and under it what was found, by kind. The arrow keys go through the results. */
import { type KeyboardEvent, type MouseEvent, type RefObject, useEffect, useId, useRef, useState } from "react";
import { MOST_ASKED_LETTERS } from "#lib/find/words.ts";
import { plural } from "#lib/plan/format.ts";
import { keyHandler } from "../commands/keys.ts";
import { Dialog } from "../dialog.tsx";
import styles from "./find.module.css";
import { FIND_COMMANDS } from "./find-commands.ts";
import { FoundGroups } from "./found-groups.tsx";
import { type FoundGroup, groupsFound } from "./groups.ts";
import { type FindAnswers, useAnswers } from "./use-answers.ts";

export function FindDialog({ onClose }: { readonly onClose: () => void }) {
  const id = useId();
  const [text, setText] = useState("");
  const answers = useAnswers(text);
  const groups = groupsFound(answers);
  const close = useRef<(() => void) | null>(null);
  const results = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const keys = useResultKeys({ results, field, waiting: answers.waiting });
  const foot = <Status words={wordsOf(answers, groups, text)} />;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the page under the dialog does not hear its keys
    <div onKeyDown={(event) => event.nativeEvent.stopPropagation()}>
      <Dialog title="Find" size="sheet" className={styles.dialog} closer={close} onClose={onClose} foot={foot}>
        <div className={styles.field}>
          <label htmlFor={id} className="visually-hidden">
            Words to find
          </label>
          <input
            ref={field}
            data-first=""
            id={id}
            type="search"
            autoComplete="off"
            maxLength={MOST_ASKED_LETTERS}
            placeholder="A plan, a move, words of a script, a class, a page"
            value={text}
            onChange={(event) => setText(event.target.value)}
            onKeyDown={keys.inField}
          />
        </div>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the links in it are what is used */}
        <div ref={results} onKeyDown={keys.inResults} onClick={(event) => onTaken(event, close)}>
          <FoundGroups groups={groups} asked={answers.asked} />
        </div>
      </Dialog>
    </div>
  );
}

const Status = ({ words }: { readonly words: string }) => (
  <p role="status" className={styles.status}>
    {words}
  </p>
);

/** A link that stays on this page shows its place once the dialog is gone. One for another window leaves the dialog open. */
function onTaken(event: MouseEvent, close: RefObject<(() => void) | null>): void {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
  close.current?.();
  if (link.href === location.href) dispatchEvent(new Event("hashchange"));
}

interface ResultKeys {
  readonly results: RefObject<HTMLDivElement | null>;
  readonly field: RefObject<HTMLInputElement | null>;
  readonly waiting: boolean;
}

function useResultKeys({ results, field, waiting }: ResultKeys) {
  /** Enter was pressed before the answer came: the first result is opened with it. */
  const [opening, setOpening] = useState(false);
  const links = () => [...(results.current?.querySelectorAll("a") ?? [])];
  useEffect(() => {
    if (!opening || waiting) return;
    setOpening(false);
    results.current?.querySelector("a")?.click();
  }, [opening, waiting, results]);
  const go = (by: 1 | -1) => {
    const all = links();
    const at = all.indexOf(document.activeElement as HTMLAnchorElement) + by;
    if (at < 0) field.current?.focus();
    else all[at]?.focus();
  };
  const inField = (event: KeyboardEvent) => {
    setOpening(false);
    keyHandler(FIND_COMMANDS, "field", {
      run: { "into-results": () => links()[0]?.focus(), "open-first": () => setOpening(true) },
    })(event);
  };
  const inResults = keyHandler(FIND_COMMANDS, "results", {
    run: {
      "result-before": () => go(-1),
      "result-after": () => go(1),
      "first-result": () => links()[0]?.focus(),
      "last-result": () => links().at(-1)?.focus(),
    },
  });
  return { inField, inResults: (event: KeyboardEvent) => inResults(event) };
}

const TYPE_SOMETHING = "Two letters are enough. Enter opens the first result, the down arrow goes into the list.";
const LOOKING = "Looking…";

function wordsOf(answers: FindAnswers, groups: readonly FoundGroup[], text: string): string {
  const { asked, found, refused, waiting, atHand } = answers;
  if (asked.length === 0) return TYPE_SOMETHING;
  if (refused?.status === 0)
    return atHand
      ? "The server does not answer, so plans and moves cannot be looked through. What is shown comes from this page."
      : "The server does not answer: only help can be looked through. Try again when the network is back.";
  if (refused) return refused.message;
  if (waiting && groups.length === 0) return LOOKING;
  const unread =
    found && found.unread > 0 ? ` ${plural(found.unread, "plan")} still being read: look again in a moment.` : "";
  const count = groups.reduce((sum, { entries }) => sum + entries.length, 0);
  const none = `Nothing has ${asked.length > 1 ? "all of these words" : `“${text.trim()}”`}. Try fewer letters or another word.`;
  return (count === 0 ? none : plural(count, "result")) + unread;
}
