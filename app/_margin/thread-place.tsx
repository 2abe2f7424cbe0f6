"use client";
/** What a thread is about: the plan, a change, a finding, or words, with what has become of it. */
import { useMemo } from "react";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import { formerPlace } from "#lib/margin/former-place.ts";
import { pinOf, type WordsAnchor } from "#lib/margin/pin.ts";
import { clockTime } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { Pieces, QuoteWords } from "../_session/threads/quote-words.tsx";
import styles from "./margin.module.css";
import { CHECK_BROKE } from "./margin-words.ts";
import { onChangeWords, onFindingWords, THREAD, takenOutPlace } from "./thread-words.ts";

interface PlaceProps {
  readonly session: PlanSession;
  readonly anchor: Anchor;
}

export function ThreadPlace({ session, anchor }: PlaceProps) {
  const snap = useSnapshot(session);
  return (
    <>
      {anchor.kind === "words" && <PinWords session={session} snap={snap} anchor={anchor} />}
      {anchor.kind === "plan" && <p className={styles.pin}>{THREAD.onPlan}</p>}
      {anchor.kind === "change" && <p className={styles.pin}>{onChangeWords(nameIn(snap, anchor.itemId))}</p>}
      {anchor.kind === "finding" && <p className={styles.pin}>{findingWords(snap, anchor)}</p>}
      <TakenOut session={session} snap={snap} anchor={anchor} />
    </>
  );
}

type OnSnap<A> = { readonly session: PlanSession; readonly snap: SessionSnapshot; readonly anchor: A };

/** The quote, and whether its words are still in the script. */
function PinWords({ session, snap, anchor }: OnSnap<WordsAnchor>) {
  const { plan } = snap;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan is new whenever the document has changed
  const pin = useMemo(() => pinOf(session.doc, anchor), [session, anchor, plan]);
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

/** Name and time of a plate that is not in the plan any more. */
function TakenOut({ session, snap, anchor }: OnSnap<Anchor>) {
  const id = itemOfAnchor(anchor);
  if (id === null || itemById(snap.plan, id)) return null;
  const before = formerPlace(session.doc, id);
  const at = before ? snap.rows.find(({ item }) => item === before)?.transitionFrom : snap.rows.at(-1)?.end;
  const time = before === undefined || at === undefined ? null : clockTime(at);
  return <p className={styles.pin}>{takenOutPlace(nameIn(snap, id), time)}</p>;
}

/** Also of an item that was taken out; null for one that nobody knows any more. */
function nameIn({ plan, deleted }: SessionSnapshot, id: string): string | null {
  const item = itemById(plan, id) ?? deleted.find((gone) => gone.id === id)?.item;
  return item ? nameOf(plan, item) : null;
}

function findingWords(snap: SessionSnapshot, { rule, key }: Extract<Anchor, { kind: "finding" }>): string {
  const stands = snap.findings.some((finding) => finding.key === key);
  return onFindingWords(ruleTitle(rule) ?? CHECK_BROKE, stands ? "stands" : snap.moreToCheck ? "unknown" : "gone");
}
