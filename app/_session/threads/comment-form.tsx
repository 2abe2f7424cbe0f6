"use client";
/**
 * A field for a comment. What was typed stays until the server has it, also when the field leaves the page; a refusal is shown beside it. "@" offers colleagues,
 * "/" the studio's stock remarks: a list under the field, with the focus in the text.
 */
import { type FormEvent, type KeyboardEvent, type RefObject, useEffect, useId, useRef, useState } from "react";
import { namedIn } from "#lib/margin/named.ts";
import type { RemarkPlace } from "#lib/remarks/match-remarks.ts";
import type { Sent } from "../../_parts/send.ts";
import type { PlanSession } from "../session.ts";
import type { TypedPlace } from "../typed/typed-words.ts";
import { useTyped } from "../typed/use-typed.ts";
import { COMMENT_WORDS } from "./comment-words.ts";
import { OfferedList } from "./offered-list.tsx";
import { fetchReaders, type Written } from "./thread-acts.ts";
import styles from "./threads.module.css";
import { type OfferList, useOffers } from "./use-offers.ts";

export interface CommentFormProps {
  readonly session: PlanSession;
  /** Where its words are kept until they are sent. */
  readonly at: TypedPlace;
  readonly label: string;
  /** What the button does: a verb. */
  readonly verb: string;
  /** Whose stock remarks come first. */
  readonly place?: RemarkPlace;
  readonly post: (written: Written) => Promise<Sent>;
  readonly onPosted: (sent: Sent) => void;
  readonly onLeave: () => void;
  /** False for one that opens by itself, with words that were kept. */
  readonly focus?: boolean;
}

/** Letters; the server has a limit of its own. This one keeps a slip readable. */
const MAX_COMMENT = 4000;
const ANYWHERE: RemarkPlace = {};

export function CommentForm(props: CommentFormProps) {
  const { session, label, verb, place = ANYWHERE } = props;
  const { body, setBody, problem, busy, field, submit, onSubmit, leave } = useComment(props);
  const list = useOffers({ planId: session.planId, meId: session.me.id, place, field, body, setBody });
  const id = useId();
  const onKeyDown = (event: KeyboardEvent) => {
    if (list.onKey(event)) return;
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) void submit();
    if (event.key !== "Escape") return;
    event.stopPropagation();
    if (body.trim() === "") leave();
  };
  return (
    <form className={styles.form} onSubmit={onSubmit}>
      <div className={`field ${styles.offering}`}>
        <label htmlFor={id}>{label}</label>
        <CommentField {...{ id, field, body, setBody, list, onKeyDown }} isWrong={problem !== null} />
        <OfferedList id={`${id}-list`} list={list} />
      </div>
      <p id={`${id}-hint`} className="quiet small">
        {COMMENT_WORDS.hint}
      </p>
      <Problem id={`${id}-problem`} problem={problem} />
      <div className={styles.acts}>
        <button type="submit" className="button" aria-disabled={busy}>
          {busy ? "Sending…" : verb}
        </button>
        <button type="button" className="button button-quiet" onClick={leave}>
          Cancel
        </button>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly id: string;
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly body: string;
  readonly setBody: (body: string) => void;
  readonly list: OfferList;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly isWrong: boolean;
}

/** A text of several lines keeps its role: what its list offers is named by the field, as a combobox names it. */
const CommentField = ({ id, field, body, setBody, list, onKeyDown, isWrong }: FieldProps) => (
  <textarea
    ref={field}
    id={id}
    rows={3}
    maxLength={MAX_COMMENT}
    value={body}
    onChange={(event) => setBody(event.target.value)}
    onInput={list.look}
    onKeyUp={list.look}
    onClick={list.look}
    onBlur={list.close}
    onKeyDown={onKeyDown}
    aria-invalid={isWrong}
    aria-describedby={isWrong ? `${id}-problem ${id}-hint` : `${id}-hint`}
    aria-autocomplete="list"
    aria-haspopup="listbox"
    aria-controls={list.offers ? `${id}-list` : undefined}
    aria-activedescendant={list.offers && list.chosen >= 0 ? `${id}-list-${list.chosen}` : undefined}
  />
);

/** Always on the page, so that a screen reader hears it change. */
function Problem({ id, problem }: { readonly id: string; readonly problem: string | null }) {
  return (
    <p role="alert" id={id} className={problem === null ? "visually-hidden" : "problem"}>
      {problem}
    </p>
  );
}

/** What is typed, on its way to the server. */
function useComment({ session, at, post, onPosted, onLeave, focus = true }: CommentFormProps) {
  const { words: body, set: setBody, drop } = useTyped(session, at);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (focus) field.current?.focus();
  }, [focus]);

  const refuse = (message: string) => {
    setProblem(message);
    field.current?.focus();
  };
  async function submit() {
    if (busy) return;
    if (body.trim() === "") return refuse(COMMENT_WORDS.empty);
    setBusy(true);
    setProblem(null);
    const sent = await sendNamed(session.planId, body.trim(), post);
    setBusy(false);
    if (!sent.ok) return refuse(sent.message);
    drop();
    onPosted(sent);
  }
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    void submit();
  };
  const leave = () => {
    drop();
    onLeave();
  };
  return { body, setBody, problem, busy, field, submit, onSubmit, leave };
}

/** A name counts whether it was chosen from the list or typed in full; nobody is left untold because the list did not come. */
async function sendNamed(planId: string, body: string, post: CommentFormProps["post"]): Promise<Sent> {
  if (!body.includes("@")) return post({ body, mentions: [] });
  const readers = await fetchReaders(planId);
  return readers.ok ? post({ body, mentions: namedIn(body, readers.value.people) }) : readers;
}
