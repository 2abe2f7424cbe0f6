"use client";
import { useEffect } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { PlanSession } from "#app/_session/session.ts";
/** The comments of a thread, with who and when; those that name this person are marked, and told as seen. */
import { shortMoment } from "#lib/formats/dates.ts";
import type { CommentView, ThreadView } from "#lib/protocol/messages.ts";
import { postSeen } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { moreBetween, THREAD } from "./thread-words.ts";

interface CommentsProps {
  readonly session: PlanSession;
  readonly thread: ThreadView;
  readonly shown: readonly CommentView[];
}

export function ThreadComments({ session, thread, shown }: CommentsProps) {
  const between = thread.comments.length - shown.length;
  return (
    <ol className={styles.comments} aria-label="Comments">
      {shown.map((comment, i) => (
        <li key={comment.id}>
          {i > 0 && between > 0 && <p className={styles.byline}>{moreBetween(between)}</p>}
          <Comment {...{ session, comment }} threadId={thread.id} named={i > 0} />
        </li>
      ))}
    </ol>
  );
}

interface CommentProps {
  readonly session: PlanSession;
  readonly comment: CommentView;
  readonly threadId: string;
  /** The first comment's author is in the head of the slip. */
  readonly named: boolean;
}

function Comment({ session, comment, threadId, named }: CommentProps) {
  const at = new Date(comment.at);
  const namesMe = comment.names?.includes(session.me.id) ?? false;
  useEffect(() => {
    if (namesMe) void postSeen(threadId, comment.id);
  }, [namesMe, threadId, comment.id]);
  return (
    <>
      <p className={styles.byline}>
        {named && <strong>{comment.authorName} </strong>}
        <time dateTime={at.toISOString()}>{shortMoment(comment.at, useFormats())}</time>
        {namesMe && <strong> · {THREAD.namesYou}</strong>}
      </p>
      <p className={styles.words}>{comment.body}</p>
    </>
  );
}
