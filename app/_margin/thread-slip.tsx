"use client";
/** One thread: the words it is about, its comments, and what can be done: reply, settle, open again. */
import { useMemo, useRef, useState } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { pinOf } from "#lib/margin/pin.ts";
import type { CommentView, ThreadView } from "#lib/protocol/messages.ts";
import { CommentForm } from "../_session/threads/comment-form.tsx";
import { Pieces, QuoteWords } from "../_session/threads/quote-words.tsx";
import { postReply, postSettled } from "../_session/threads/thread-acts.ts";
import styles from "./margin.module.css";
import { settledWords, THREAD, threadTitle } from "./margin-words.ts";

interface Props {
  readonly session: PlanSession;
  readonly thread: ThreadView;
}

export function ThreadSlip({ session, thread }: Props) {
  const { rights } = useSnapshot(session);
  const [open, setOpen] = useState(false);
  const shown = open ? thread.comments : thread.comments.slice(0, 1);
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
      <PinWords session={session} thread={thread} />
      <ol className={styles.comments} aria-label="Comments">
        {shown.map((comment, i) => (
          <Comment key={comment.id} comment={comment} named={i > 0} />
        ))}
      </ol>
      <ThreadActs session={session} thread={thread} open={open} onOpen={setOpen} />
      {open && rights.comments && (
        <CommentForm
          label="Reply"
          verb="Reply"
          post={(body) => postReply(thread.id, body)}
          onPosted={() => session.say(THREAD.replySent)}
          onLeave={() => setOpen(false)}
        />
      )}
    </article>
  );
}

interface ActsProps extends Pick<Props, "session" | "thread"> {
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** What a lead asked, only a lead settles. */
function ThreadActs({ session, thread, open, onOpen }: ActsProps) {
  const { rights } = useSnapshot(session);
  const replies = thread.comments.length - 1;
  const settles = thread.settled || !thread.leadSpoke || session.me.roles.includes("lead");
  return (
    <div className={styles.slipActs}>
      {(replies > 0 || rights.comments) && (
        <button
          type="button"
          className="text-button text-button-low small"
          aria-expanded={open}
          onClick={() => onOpen(!open)}
        >
          {open ? "Close" : replies > 0 ? "Open" : "Reply"}
        </button>
      )}
      {rights.comments && (settles ? <Settle session={session} thread={thread} /> : <ForLead />)}
    </div>
  );
}

/** The quote, and whether its words are still in the script. */
function PinWords({ session, thread }: Pick<Props, "session" | "thread">) {
  const { plan } = useSnapshot(session);
  const { anchor } = thread;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan is new whenever the document has changed
  const pin = useMemo(() => (anchor.kind === "words" ? pinOf(session.doc, anchor) : null), [session, anchor, plan]);
  if (anchor.kind === "plan") return <p className={styles.pin}>{THREAD.onPlan}</p>;
  if (anchor.kind !== "words" || pin === null) return null;
  const where = { plan, itemId: anchor.itemId };
  return (
    <>
      <QuoteWords quote={anchor.quote} {...where} />
      {pin.state === "gone" && <p className={styles.pin}>{THREAD.wordsGone}</p>}
      {pin.state === "changed" && (
        <p className={styles.pin}>
          {THREAD.wordsNow}“
          <Pieces quote={pin.now} {...where} />
          ”.
        </p>
      )}
    </>
  );
}

function Comment({ comment, named }: { readonly comment: CommentView; readonly named: boolean }) {
  const at = new Date(comment.at);
  return (
    <li>
      <p className={styles.byline}>
        {named && <strong>{comment.authorName} </strong>}
        <time dateTime={at.toISOString()}>{WHEN.format(at)}</time>
      </p>
      <p className={styles.words}>{comment.body}</p>
    </li>
  );
}

const WHEN = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });

const ForLead = () => <span className="quiet small">{THREAD.forLead}</span>;

function Settle({ session, thread }: Pick<Props, "session" | "thread">) {
  const [problem, setProblem] = useState<string | null>(null);
  const busy = useRef(false);
  async function turn() {
    if (busy.current) return;
    busy.current = true;
    setProblem(null);
    const sent = await postSettled(thread.id, !thread.settled);
    busy.current = false;
    if (sent.ok) session.say(settledWords(!thread.settled));
    else setProblem(sent.message);
  }
  return (
    <>
      <button type="button" className="text-button text-button-low small" onClick={turn}>
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
