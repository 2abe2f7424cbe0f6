"use client";
/**
 * The sign-off: the lead reads the plan as the server has it, with its findings and what prevents a sign-off, and signs
 * exactly that. When the plan has changed meanwhile, the changes are shown, and it has to be read again before it is signed.
 */
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { useChangesShown } from "#app/_session/changes-shown.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useTyped } from "#app/_session/typed/use-typed.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { type Sent, send } from "../_parts/send.ts";
import { goToPlace, OPEN_THREADS } from "../_session/threads/go-to-place.ts";
import { LEFT_OPEN_ID, LeftOpen } from "./left-open.tsx";
import { NoteForm } from "./note-form.tsx";
import { OTHER_READER_ID, OtherReader, otherReader } from "./other-reader.tsx";
import { type ReadingToSign, readingToSignSchema, refusalOf, sinceRead } from "./reading-to-sign.ts";
import { ROUND_OVER_ID, RoundOver, useRoundHere } from "./round-over.tsx";
import { SignOffReadingView } from "./sign-off-reading-view.tsx";
import { SIGN_OFF, signedWords, unreadWords } from "./sign-off-words.ts";
import { StateDialog } from "./state-dialog.tsx";

type Shown =
  | { readonly t: "asking" }
  | { readonly t: "failed"; readonly message: string }
  | { readonly t: "read"; readonly reading: ReadingToSign };
type Refused = ReturnType<typeof refusalOf>;

export function ReviewDialog({ session, onClosed }: { readonly session: PlanSession; readonly onClosed: () => void }) {
  const closer = useRef<(() => void) | null>(null);
  const top = useRef<HTMLDivElement>(null);
  const { shown, refused, setRefusal, isAgain, readAgain } = useReading(session);
  const goToThreads = () => leaveFor(OPEN_THREADS, closer.current);
  const again = () => {
    readAgain();
    top.current?.focus();
  };
  return (
    <StateDialog title="Review and sign" onClosed={onClosed} closer={closer} wide>
      <div ref={top} data-first="" tabIndex={-1} aria-live="polite">
        {shown.t === "asking" && <p>{SIGN_OFF.loading}</p>}
        {shown.t === "failed" && <p className="problem">{shown.message}</p>}
        {shown.t === "read" && (
          <SignOffReadingView reading={shown.reading} me={session.me.id} onGo={goToThreads} onReadAgain={again} />
        )}
      </div>
      {shown.t === "read" && (
        <ChangedSince session={session} reading={shown.reading} refused={refused} onReadAgain={again} />
      )}
      {shown.t === "read" && !refused?.changes && (
        <SignForm
          {...{ session, isAgain, closer }}
          reading={shown.reading}
          onRefused={(what) => setRefusal({ of: shown.reading, what })}
        />
      )}
      {shown.t === "failed" && <ReadAgain onPress={again} />}
    </StateDialog>
  );
}

/** The server's own reading, asked for when the dialog opens and whenever it is read again. */
function useReading({ planId }: PlanSession) {
  const [shown, setShown] = useState<Shown>({ t: "asking" });
  // An answer that comes after the plan was read again is about the reading before.
  const [refusal, setRefusal] = useState<{ readonly of: ReadingToSign; readonly what: Refused | null } | null>(null);
  const [isAgain, setIsAgain] = useState(false);
  const read = useCallback(async () => {
    setShown({ t: "asking" });
    setShown(shownOf(await send("POST", `/api/plans/${planId}/read`, {}, { reads: readingToSignSchema })));
  }, [planId]);
  useEffect(() => {
    void read();
  }, [read]);
  const readAgain = () => {
    setIsAgain(true);
    void read();
  };
  const refused = shown.t === "read" && refusal?.of === shown.reading ? refusal.what : null;
  return { shown, refused, setRefusal, isAgain, readAgain };
}

const ReadAgain = ({ onPress }: { readonly onPress: () => void }) => (
  <button type="button" className="button" onClick={onPress}>
    {SIGN_OFF.readAgain}
  </button>
);

function leaveFor(place: string, close: (() => void) | null): void {
  close?.();
  goToPlace(place);
}

const shownOf = (sent: Sent<ReadingToSign>): Shown =>
  sent.ok ? { t: "read", reading: sent.value } : { t: "failed", message: sent.message };

interface SignProps {
  readonly session: PlanSession;
  readonly reading: ReadingToSign;
  /** It was read before in this dialog: what was ticked then is asked again. */
  readonly isAgain: boolean;
  readonly closer: { readonly current: (() => void) | null };
  readonly onRefused: (refused: Refused | null) => void;
}

/** Nothing is signed in silence: what stays open, and who else is reading, is said and asked about. */
function SignForm({ session, reading, isAgain, closer, onRefused }: SignProps) {
  const { state } = useSnapshot(session);
  const [leaves, setLeaves] = useState(false);
  const [sure, setSure] = useState(false);
  const round = useRoundHere(state, session.me.id);
  const note = useTyped(session, { place: PLACE.signing, label: SIGN_OFF.note, items: [], round: round.number });
  const unread = useUnread(session);
  const { hash, lookAgain, blockers } = reading;
  const [other, leftOpen] = [otherReader(state, session.me.id), lookAgain.length];
  const leave = () => closer.current?.();
  const done = () => {
    session.say([signedWords(reading.nextEdition), unread].filter(Boolean).join(" "));
    leave();
  };
  const body = (words: string) => ({ hash, leftOpen, ...round.sent, ...(words === "" ? {} : { note: words }) });
  const blockedBy = firstOf([
    [ROUND_OVER_ID, round.isOver],
    ["sign-off-blockers", blockers.length > 0],
    [LEFT_OPEN_ID, leftOpen > 0 && !leaves],
    [OTHER_READER_ID, other !== null && !sure],
  ]);
  return (
    <NoteForm
      note={note}
      label={SIGN_OFF.note}
      verb={`Sign off edition ${reading.nextEdition}`}
      submit={(words) => send("POST", `/api/plans/${session.planId}/sign`, body(words))}
      {...(blockedBy === undefined ? {} : { blockedBy })}
      onDone={done}
      onLeave={leave}
      onRefused={(sent) => onRefused(refusalOf(sent.details))}
    >
      <RoundOver state={state} round={round} />
      {unread !== null && <p>{unread}</p>}
      {leftOpen > 0 && <LeftOpen isAgain={isAgain} findings={lookAgain} leaves={leaves} onLeaves={setLeaves} />}
      {other && <OtherReader reader={other} act={SIGN_OFF.allTheSame} sure={sure} onSure={setSure} />}
    </NoteForm>
  );
}

/** The id of the first that holds: what says why the plan cannot be signed yet. */
const firstOf = (why: readonly (readonly [id: string, holds: boolean])[]): string | undefined =>
  why.find(([, holds]) => holds)?.[0];

/** Of the changed plates, how many this lead has not marked as read. Information only; null where none is. */
function useUnread(session: PlanSession): string | null {
  const { order, marks, setRead } = useChangesShown(session.changes);
  return setRead ? unreadWords(order.filter((id) => marks.get(id)?.read !== true).length, order.length) : null;
}

interface ChangedProps {
  readonly session: PlanSession;
  readonly reading: ReadingToSign;
  readonly refused: Refused | null;
  readonly onReadAgain: () => void;
}

/** What has changed since the plan was loaded here, as it goes on changing; after a refusal what the server said, too. */
function ChangedSince({ session, reading, refused, onReadAgain }: ChangedProps) {
  const plan = useDeferredValue(useSnapshot(session).plan);
  const changes = useMemo(() => sinceRead(reading.plan, plan, session.formats), [reading.plan, plan, session]);
  const seen = useRef(false);
  seen.current ||= changes.length > 0;
  if (refused) {
    // What this page cannot see, such as a move of the library, only the server can tell.
    const now = refused.changes && seen.current ? { ...refused, changes } : refused;
    return <RefusedView refused={now} onReadAgain={onReadAgain} />;
  }
  if (changes.length === 0) return null;
  return (
    <div role="status" className="notice">
      <p>{SIGN_OFF.changedMeanwhile}</p>
      <ChangeList lines={changes} />
      <button type="button" className="button" onClick={onReadAgain}>
        {SIGN_OFF.readAgain}
      </button>
    </div>
  );
}

const ChangeList = ({ lines }: { readonly lines: readonly { readonly message: string }[] }) => (
  <ul>
    {lines.map(({ message }) => (
      <li key={message}>{message}</li>
    ))}
  </ul>
);

function RefusedView({ refused, onReadAgain }: { readonly refused: Refused; readonly onReadAgain: () => void }) {
  const { changes, blockers } = refused;
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  if (!changes && !blockers) return null;
  return (
    <div role="alert" className="notice">
      {changes && <p>{changes.length > 0 ? SIGN_OFF.changedMeanwhile : SIGN_OFF.asReadAgain}</p>}
      <ChangeList lines={[...(changes ?? []), ...(blockers ?? [])]} />
      <button ref={button} type="button" className="button" onClick={onReadAgain}>
        {SIGN_OFF.readAgain}
      </button>
    </div>
  );
}
