"use client";
/** Words of a remark and what it belongs to: a new one, or one that is changed. */
import { type FormEvent, useId } from "react";
import { textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import type { Sending } from "../_parts/use-send.ts";
import { linkOf, REMARKS, readLink, WORDS_MAX } from "./remark-words.ts";
import styles from "./remarks.module.css";

/** Rules and moves that a remark can belong to. */
export interface RemarkLinks {
  readonly rules: readonly { readonly id: string; readonly name: string }[];
  readonly moves: readonly { readonly id: string; readonly name: string }[];
}

export interface RemarkFields {
  readonly words: string;
  readonly ruleId: string | null;
  readonly moveId: string | null;
}

interface RemarkFormProps {
  readonly links: RemarkLinks;
  readonly from?: RemarkFields;
  readonly verb: string;
  readonly sending: Sending;
  /** Resolves with whether it was stored; a new form is emptied then. */
  readonly onSend: (fields: RemarkFields) => Promise<boolean>;
  readonly onLeave?: () => void;
}

export function RemarkForm({ links, from, verb, sending, onSend, onLeave }: RemarkFormProps) {
  const id = useId();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    if ((await onSend(fieldsOf(new FormData(element)))) && !from) element.reset();
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <div className="field">
        <label htmlFor={`${id}-words`}>{REMARKS.words}</label>
        <textarea
          id={`${id}-words`}
          name="words"
          rows={2}
          required
          maxLength={WORDS_MAX}
          defaultValue={from?.words}
          // biome-ignore lint/a11y/noAutofocus: it opens where somebody has asked to change it
          autoFocus={from !== undefined}
        />
      </div>
      <LinkField id={`${id}-link`} links={links} from={from} />
      <ProblemLine say={sending.problem} />
      <div className={styles.acts}>
        <SendButton busy={sending.busy} doing="Saving…">
          {verb}
        </SendButton>
        {onLeave && (
          <button type="button" className="button button-quiet" onClick={onLeave}>
            Cancel
          </button>
        )}
      </div>
    </form>
  );
}

const fieldsOf = (form: FormData): RemarkFields => ({
  words: textOf(form, "words").trim(),
  ...readLink(textOf(form, "link")),
});

interface LinkFieldProps extends Pick<RemarkFormProps, "links"> {
  readonly id: string;
  readonly from: RemarkFields | undefined;
}

const LinkField = ({ id, links, from }: LinkFieldProps) => (
  <div className="field">
    <label htmlFor={id}>{REMARKS.belongs}</label>
    <select id={id} name="link" defaultValue={from ? linkOf(from) : ""}>
      <option value="">{REMARKS.anywhere}</option>
      <Group label="A rule" kind="rule" some={links.rules} />
      <Group label="A move" kind="move" some={links.moves} />
    </select>
  </div>
);

interface GroupProps {
  readonly label: string;
  readonly kind: "rule" | "move";
  readonly some: RemarkLinks["rules"];
}

const Group = ({ label, kind, some }: GroupProps) => (
  <optgroup label={label}>
    {some.map(({ id, name }) => (
      <option key={id} value={`${kind}:${id}`}>
        {name}
      </option>
    ))}
  </optgroup>
);
