"use client";
/** One thread: what it is about, its comments, and what can be done: reply, settle, open again. */
import { useRef, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { Sent } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { lateComment } from "#app/_session/threads/late-comment.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { CommentView, ThreadView } from "#lib/protocol/messages.ts";
import type { RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { postReply } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { SettleThread } from "./settle-thread.tsx";
import { ThreadComments } from "./thread-comments.tsx";
import { ThreadPlace } from "./thread-place.tsx";
import { THREAD, threadTitle } from "./thread-words.ts";

interface Props {
  readonly session: PlanSession;
  readonly thread: ThreadView;
}

export function ThreadSlip({ session, thread: known }: Props) {
  const { rights, plan } = useSnapshot(session);
  const [open, setOpen] = useState(false);
  const [since, setSince] = useState<readonly CommentView[]>([]);
  const opener = useRef<HTMLButtonElement>(null);
  const thread = withComments(known, since);
  const shown = open ? thread.comments : inSightClosed(thread.comments);
  const leave = () => {
    setOpen(false);
    opener.current?.focus();
  };
  const posted = (sent: Sent) => session.say(isSettled(sent) ? THREAD.replyToSettled : THREAD.replySent);
  const form = {
    ...{ session, label: "Reply", verb: "Reply", place: placeOf(known, plan), onLeave: leave, onPosted: posted },
    post: (written: Parameters<typeof postReply>[1]) => postReply(thread.id, written),
  };
  return (
    <article
      className={styles.slip}
      id={`thread-${thread.id}`}
      tabIndex={-1}
      data-level="thread"
      data-settled={thread.settled || undefined}
      aria-label={`Thread by ${thread.comments[0]?.authorName ?? "somebody"}`}
    >
      <header className={styles.slipHead}>
        <p className={styles.name}>{threadTitle(thread)}</p>
        <span className={styles.level}>{thread.settled ? "settled" : "thread"}</span>
      </header>
      <ThreadPlace session={session} anchor={thread.anchor} />
      <ThreadComments session={session} thread={thread} shown={shown} />
      <div className={styles.slipActs}>
        {(thread.comments.length > 1 || rights.comments) && (
          <button
            ref={opener}
            type="button"
            className="text-button text-button-low small"
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            {open ? "Close" : thread.comments.length > 1 ? "Open" : "Reply"}
          </button>
        )}
        {rights.comments && (
          <SettleThread
            {...{ session, thread }}
            seen={shown.length}
            onShow={(comments) => {
              setSince(comments);
              setOpen(true);
            }}
          />
        )}
      </div>
      {open && rights.comments && <LatePart part={lateComment} props={form} />}
    </article>
  );
}

/** A closed thread shows what was asked and what was said last. */
const inSightClosed = (comments: readonly CommentView[]): readonly CommentView[] =>
  comments.length <= 2 ? comments : comments.filter((_, i) => i === 0 || i === comments.length - 1);

/** Comments that came with a refusal, while the page's socket has not brought them yet. */
function withComments(thread: ThreadView, since: readonly CommentView[]): ThreadView {
  const missing = since.filter(({ id }) => !thread.comments.some((one) => one.id === id));
  return missing.length === 0 ? thread : { ...thread, comments: [...thread.comments, ...missing] };
}

const isSettled = (sent: Sent): boolean =>
  sent.ok &&
  typeof sent.value === "object" &&
  sent.value !== null &&
  "settled" in sent.value &&
  sent.value.settled === true;

/** Whose stock remarks come first in an answer. */
function placeOf({ anchor }: ThreadView, plan: Parameters<typeof itemById>[0]): RemarkPlace {
  const id = itemOfAnchor(anchor);
  const item = id === null ? undefined : itemById(plan, id);
  return {
    ...(anchor.kind === "finding" ? { ruleId: anchor.rule } : {}),
    ...(item?.kind === "move" ? { moveId: item.move } : {}),
  };
}
