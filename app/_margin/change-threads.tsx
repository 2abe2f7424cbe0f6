"use client";
/** Threads on the change before an item, beside the change itself. */
import { useRef } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useTypedList } from "#app/_session/typed/use-typed.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import { isTyping } from "./held-slips.ts";
import { lateThread } from "./late-thread.ts";
import styles from "./margin.module.css";
import { COMMENT_ON_CHANGE } from "./margin-words.ts";
import { NewThread } from "./new-thread.tsx";

export function ChangeThreads({ session, item }: { readonly session: PlanSession; readonly item: MoveItem }) {
  const { threads, rights } = useSnapshot(session);
  const here = threads.filter(({ anchor }) => anchor.kind === "change" && anchor.itemId === item.id);
  const typing = useTypedList(session.typed);
  const wasOpen = useRef(new Set<string>());
  for (const { id, settled } of here) if (!settled) wasOpen.current.add(id);
  // One in which somebody is writing stays where it is when another settles it.
  const isOpen = (thread: ThreadView) =>
    !thread.settled || (wasOpen.current.has(thread.id) && isTyping(typing, thread));
  const open = here.filter(isOpen);
  const settled = here.filter((thread) => !isOpen(thread));
  if (here.length === 0 && !rights.comments) return null;
  return (
    <section className={styles.list} aria-label="Threads on the change before this item">
      {open.length > 0 && <Threads session={session} threads={open} />}
      {settled.length > 0 && (
        <details>
          <summary>{settled.length} settled on the change</summary>
          <Threads session={session} threads={settled} />
        </details>
      )}
      {rights.comments && (
        <div className={styles.acts}>
          <NewThread
            session={session}
            anchor={{ kind: "change", itemId: item.id }}
            at={{ place: PLACE.change(item.id), items: [item.id] }}
            words={COMMENT_ON_CHANGE}
            place={{ moveId: item.move }}
          />
        </div>
      )}
    </section>
  );
}

interface ThreadsProps {
  readonly session: PlanSession;
  readonly threads: readonly ThreadView[];
}

const Threads = ({ session, threads }: ThreadsProps) => (
  <ul className={styles.slips} aria-label="Threads on the change">
    {threads.map((thread) => (
      <li key={thread.id}>
        <LatePart part={lateThread} props={{ session, thread }} />
      </li>
    ))}
  </ul>
);
