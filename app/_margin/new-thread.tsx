"use client";
/** Starts a thread on the selected item or on the whole plan. Words are commented on in the script itself. */
import { useRef, useState } from "react";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { CommentForm } from "../_session/threads/comment-form.tsx";
import { postThread } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { COMMENT_ON_PLAN, COMMENT_SENT, commentOnWords } from "./margin-words.ts";

interface Props {
  readonly session: PlanSession;
  /** The item that is commented on; null for the plan. */
  readonly itemId: string | null;
}

export function NewThread({ session, itemId }: Props) {
  const { plan } = useSnapshot(session);
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const item = itemId === null ? undefined : itemById(plan, itemId);
  const leave = () => {
    setOpen(false);
    button.current?.focus();
  };
  return (
    <>
      <div className={styles.acts}>
        <button
          ref={button}
          type="button"
          className="text-button text-button-low small"
          aria-expanded={open}
          data-comment
          onClick={() => setOpen(true)}
        >
          {item ? commentOnWords(nameOf(plan, item)) : COMMENT_ON_PLAN}
        </button>
      </div>
      {open && <NewComment session={session} about={item ? item.id : null} onLeave={leave} />}
    </>
  );
}

interface NewCommentProps {
  readonly session: PlanSession;
  /** An item's id, or null for the plan. */
  readonly about: string | null;
  readonly onLeave: () => void;
}

function NewComment({ session, about, onLeave }: NewCommentProps) {
  const { plan } = useSnapshot(session);
  const item = about === null ? undefined : itemById(plan, about);
  return (
    <CommentForm
      label={item ? commentOnWords(nameOf(plan, item)) : COMMENT_ON_PLAN}
      verb="Comment"
      post={(body) => postThread(session, about === null ? { kind: "plan" } : { kind: "item", itemId: about }, body)}
      onPosted={() => {
        session.say(COMMENT_SENT);
        onLeave();
      }}
      onLeave={onLeave}
    />
  );
}
