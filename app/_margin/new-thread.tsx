"use client";
/** Starts a thread: on an item, on the change before it, on a finding or on the plan. Words are commented on in the script itself. */
import { useRef, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { Sent } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { lateComment } from "#app/_session/threads/late-comment.ts";
import type { TypedPlace } from "#app/_session/typed/typed-words.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import type { RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { goToPlace, placeOfThread } from "../_session/threads/go-to-place.ts";
import { postThread } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { COMMENT_SENT } from "./margin-words.ts";

interface NewThreadProps {
  readonly session: PlanSession;
  readonly anchor: Anchor;
  /** Where its words are kept until they are sent; what they are called there is `words`. */
  readonly at: Omit<TypedPlace, "label">;
  /** What the button says, and what the field is called. */
  readonly words: string;
  readonly place: RemarkPlace;
  /** Where the keyboard goes when the form is left, where that is not the button. */
  readonly onLeft?: (() => void) | undefined;
}

export function NewThread(props: NewThreadProps) {
  const { session, anchor, at, words, place } = props;
  const { open, begin, button, onLeave, onPosted } = useBegun(props);
  const post = (written: Parameters<typeof postThread>[2]) => postThread(session, anchor, written);
  const form = { session, at: { ...at, label: words }, label: words, verb: "Comment", place, post, onPosted, onLeave };
  return (
    <>
      <button
        ref={button}
        type="button"
        className="text-button text-button-low small"
        aria-expanded={open !== null}
        data-comment={anchor.kind === "item" || anchor.kind === "plan" ? "" : undefined}
        onClick={begin}
      >
        {words}
      </button>
      {open && (
        <div className={styles.writes}>
          <LatePart part={lateComment} props={{ ...form, focus: open === "begun" }} />
        </div>
      )}
    </>
  );
}

/** Words that were kept open their form again, without taking the keyboard. */
function useBegun({ session, at, onLeft }: NewThreadProps) {
  const [open, setOpen] = useState<"begun" | "kept" | null>(() => (session.typed.at(at.place) ? "kept" : null));
  const button = useRef<HTMLButtonElement>(null);
  const onLeave = () => {
    setOpen(null);
    if (onLeft) onLeft();
    else button.current?.focus();
  };
  const onPosted = (sent: Sent) => {
    session.say(COMMENT_SENT);
    onLeave();
    const made = madeThread(sent);
    if (made !== null) goToPlace(placeOfThread(made));
  };
  return { open, begin: () => setOpen("begun"), button, onLeave, onPosted };
}

const madeThread = (sent: Sent): string | null =>
  sent.ok && typeof sent.value === "object" && sent.value !== null && "id" in sent.value ? String(sent.value.id) : null;
