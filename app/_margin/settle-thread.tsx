"use client";
/** Settles a thread with its answers in sight, or opens it again. What a lead asked, only a lead settles. */
import { useRef, useState } from "react";
import type { RefusedRequest } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { CommentView, ThreadView } from "#lib/protocol/messages.ts";
import { postSettled } from "../_session/threads/thread-acts.ts";
import { goOnFromThread } from "./show-slip.ts";
import { settledWords, THREAD } from "./thread-words.ts";

interface SettleProps {
  readonly session: PlanSession;
  readonly thread: ThreadView;
  /** How many of its comments are in sight. */
  readonly seen: number;
  /** Shows the whole thread, with comments that the page may not have yet. */
  readonly onShow: (since: readonly CommentView[]) => void;
  /** This person settled it, or opened it again. */
  readonly onTurned: () => void;
}

export function SettleThread(props: SettleProps) {
  const { session, thread } = props;
  const { problem, turn } = useSettling(props);
  if (!thread.settled && thread.leadSpoke && !session.me.roles.includes("lead"))
    return <span className="quiet small">{THREAD.forLead}</span>;
  return (
    <>
      <button
        type="button"
        className="text-button text-button-low small"
        onClick={(event) => turn(event.currentTarget.closest("article"))}
      >
        {thread.settled ? "Open again" : "Settle"}
      </button>
      {problem !== null && (
        <p role="alert" className="problem">
          {problem}
        </p>
      )}
    </>
  );
}

function useSettling({ session, thread, seen, onShow, onTurned }: SettleProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const busy = useRef(false);
  async function turn(slip: HTMLElement | null) {
    if (busy.current) return;
    if (!thread.settled && seen < thread.comments.length) {
      setProblem(THREAD.readFirst);
      return onShow([]);
    }
    busy.current = true;
    setProblem(null);
    const goOn = goOnFromThread(slip);
    const sent = await postSettled(thread.id, !thread.settled, seen);
    busy.current = false;
    if (sent.ok) {
      session.say(settledWords(!thread.settled));
      onTurned();
      return goOn();
    }
    setProblem(sent.message);
    if (sent.code === "answered-since") onShow(commentsOf(sent));
  }
  return { problem, turn };
}

/** What was said meanwhile, as the refusal brought it. */
function commentsOf({ details }: RefusedRequest): readonly CommentView[] {
  if (typeof details !== "object" || details === null || !("comments" in details)) return [];
  return Array.isArray(details.comments) ? (details.comments as readonly CommentView[]) : []; // as the server sends them
}
