"use client";
/** One thread: what it is about, its comments, and what can be done: reply, settle, open again. */
import { type RefObject, useRef, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { Sent } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { lateComment } from "#app/_session/threads/late-comment.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { CommentView, ThreadView } from "#lib/protocol/messages.ts";
import type { RemarkPlace } from "#lib/remarks/match-remarks.ts";
import { postReply, type Written } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { SettleThread } from "./settle-thread.tsx";
import { goOnFromThread } from "./show-slip.ts";
import { ThreadComments } from "./thread-comments.tsx";
import { ThreadPlace } from "./thread-place.tsx";
import { THREAD, threadTitle } from "./thread-words.ts";

interface Props {
  readonly session: PlanSession;
  readonly thread: ThreadView;
}

export function ThreadSlip({ session, thread: known }: Props) {
  const { open, onOpen, focus } = useOpenThread(session, known);
  const [since, setSince] = useState<readonly CommentView[]>([]);
  const opener = useRef<HTMLButtonElement>(null);
  const thread = withComments(known, since);
  const shown = open ? thread.comments : inSightClosed(thread.comments);
  const onShow = (comments: readonly CommentView[]) => {
    setSince(comments);
    onOpen(true);
  };
  const slip = useRef<HTMLElement>(null);
  const onLeave = () => {
    // A settled thread goes with the words that held it in sight.
    const goOn = thread.settled ? goOnFromThread(slip.current) : () => opener.current?.focus();
    onOpen(false);
    goOn();
  };
  return (
    <article
      ref={slip}
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
      <ThreadActs {...{ session, thread, open, opener, onShow }} seen={shown.length} onOpen={onOpen} />
      {open && <Reply {...{ session, thread, onLeave, focus }} />}
    </article>
  );
}

/** Words that were kept open the thread again, without taking the keyboard. */
function useOpenThread(session: PlanSession, { id }: ThreadView) {
  const [how, setHow] = useState<"kept" | "begun" | null>(() =>
    session.typed.at(PLACE.reply(id)) === undefined ? null : "kept",
  );
  const onOpen = (on: boolean) => setHow(on ? "begun" : null);
  return { open: how !== null, onOpen, focus: how === "begun" };
}

interface ActsProps extends Props {
  readonly open: boolean;
  readonly opener: RefObject<HTMLButtonElement | null>;
  /** How many comments are in sight. */
  readonly seen: number;
  readonly onOpen: (open: boolean) => void;
  readonly onShow: (since: readonly CommentView[]) => void;
}

function ThreadActs({ session, thread, open, opener, seen, onOpen, onShow }: ActsProps) {
  const { rights } = useSnapshot(session);
  // An empty answer would hold the thread in sight.
  const onTurned = () => {
    if (session.typed.wordsAt(PLACE.reply(thread.id)).trim() === "") onOpen(false);
  };
  const isLong = thread.comments.length > 1;
  return (
    <div className={styles.slipActs}>
      {(isLong || rights.comments) && (
        <button
          ref={opener}
          type="button"
          className="text-button text-button-low small"
          aria-expanded={open}
          onClick={() => onOpen(!open)}
        >
          {open ? "Fold" : isLong ? "Show all" : "Reply"}
        </button>
      )}
      {rights.comments && <SettleThread {...{ session, thread, seen, onShow, onTurned }} />}
    </div>
  );
}

interface ReplyProps extends Props {
  readonly onLeave: () => void;
  readonly focus: boolean;
}

function Reply({ session, thread, onLeave, focus }: ReplyProps) {
  const { rights, plan } = useSnapshot(session);
  if (!rights.comments) return null;
  const about = itemOfAnchor(thread.anchor);
  const form = {
    ...{ session, label: "Reply", verb: "Send the reply", place: placeOf(thread, plan), onLeave, focus },
    at: {
      place: PLACE.reply(thread.id),
      label: THREAD.replyTo(thread.comments[0]?.authorName ?? "somebody"),
      items: about === null ? [] : [about],
    },
    post: (written: Written) => postReply(thread.id, written),
    onPosted: (sent: Sent) => session.say(isSettled(sent) ? THREAD.replyToSettled : THREAD.replySent),
  };
  return (
    <>
      <SettledMeanwhile settled={thread.settled} />
      <LatePart part={lateComment} props={form} />
    </>
  );
}

/** Somebody settled it while the reply was written. One that was settled before is opened knowingly. */
function SettledMeanwhile({ settled }: { readonly settled: boolean }) {
  const [before] = useState(settled);
  const isNews = settled && !before;
  return (
    <p role="status" className={isNews ? styles.pin : "visually-hidden"}>
      {isNews && THREAD.settledMeanwhile}
    </p>
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
