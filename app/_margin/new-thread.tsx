"use client";
/** Starts a thread: on an item, on the change before it, on a finding or on the plan. Words are commented on in the script itself. */
import { useRef, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { lateComment } from "#app/_session/threads/late-comment.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import type { RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { goToPlace, placeOfThread } from "../_session/threads/go-to-place.ts";
import { postThread } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { COMMENT_SENT } from "./margin-words.ts";

interface NewThreadProps {
  readonly session: PlanSession;
  readonly anchor: Anchor;
  /** What the button says, and what the field is called. */
  readonly words: string;
  readonly place: RemarkPlace;
}

export function NewThread({ session, anchor, words, place }: NewThreadProps) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const onLeave = () => {
    setOpen(false);
    button.current?.focus();
  };
  const made = useRef<string | null>(null);
  const onPosted = () => {
    session.say(COMMENT_SENT);
    onLeave();
    goToMade(made.current);
  };
  const post = (written: Parameters<typeof postThread>[2]) => posted(postThread(session, anchor, written), made);
  return (
    <>
      <button
        ref={button}
        type="button"
        className="text-button text-button-low small"
        aria-expanded={open}
        data-comment={anchor.kind === "item" || anchor.kind === "plan" ? "" : undefined}
        onClick={() => setOpen(true)}
      >
        {words}
      </button>
      {open && (
        <div className={styles.writes}>
          <LatePart
            part={lateComment}
            props={{ session, label: words, verb: "Comment", place, post, onPosted, onLeave }}
          />
        </div>
      )}
    </>
  );
}

async function posted(sending: ReturnType<typeof postThread>, made: { current: string | null }) {
  const sent = await sending;
  made.current = sent.ok ? sent.value.id : null;
  return sent;
}

const goToMade = (threadId: string | null): void => {
  if (threadId !== null) goToPlace(placeOfThread(threadId));
};
