"use client";
/** Begins a thread on the selected item or on the whole plan. Words are commented on from the script itself. */
import { useRef, useState } from "react";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { CommentForm } from "../_session/threads/comment-form.tsx";
import { postThread } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";

interface Props {
  readonly session: PlanSession;
  /** The item that can be commented on, if there is one. */
  readonly itemId: string | null;
}

export function NewThread({ session, itemId }: Props) {
  const { plan } = useSnapshot(session);
  /** What the form that is open is about: an item's id, or null for the plan. Undefined: no form. */
  const [about, setAbout] = useState<string | null | undefined>(undefined);
  const button = useRef<HTMLButtonElement>(null);
  const item = itemId === null ? undefined : itemById(plan, itemId);
  const aboutItem = about === null || about === undefined ? undefined : itemById(plan, about);

  function leave() {
    setAbout(undefined);
    button.current?.focus();
  }
  return (
    <>
      <div className={styles.acts}>
        {item && (
          <button
            ref={button}
            type="button"
            className="text-button text-button-low small"
            onClick={() => setAbout(item.id)}
          >
            comment on {nameOf(plan, item)}
          </button>
        )}
        <button
          ref={item ? null : button}
          type="button"
          className="text-button text-button-low small"
          onClick={() => setAbout(null)}
        >
          comment on the plan
        </button>
      </div>
      {about !== undefined && (
        <CommentForm
          label={aboutItem ? `Comment on ${nameOf(plan, aboutItem)}` : "Comment on the plan"}
          verb="Comment"
          post={(body) =>
            postThread(session, about === null ? { kind: "plan" } : { kind: "item", itemId: about }, body)
          }
          onPosted={() => {
            session.say("Comment sent.");
            leave();
          }}
          onLeave={leave}
        />
      )}
    </>
  );
}
