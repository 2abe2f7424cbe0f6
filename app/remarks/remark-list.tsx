"use client";
/** The studio's remarks: added, changed, taken out of use and brought back. */
import { useRouter } from "next/navigation";
import { type RefObject, useRef, useState } from "react";
import type { StudioRemark } from "#server/remarks/remarks.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { type Sending, useSend } from "../_parts/use-send.ts";
import { type RemarkFields, RemarkForm, type RemarkLinks } from "./remark-form.tsx";
import { REMARKS } from "./remark-words.ts";
import styles from "./remarks.module.css";

interface ListProps {
  readonly remarks: readonly StudioRemark[];
  readonly links: RemarkLinks;
}

export function RemarkList({ remarks, links }: ListProps) {
  const router = useRouter();
  const sending = useSend();
  const add = async (fields: RemarkFields) => {
    const made = await sending.run("POST", "/api/remarks", fields);
    if (made !== undefined) router.refresh();
    return made !== undefined;
  };
  const [used, unused] = [remarks.filter(({ inUse }) => inUse), remarks.filter(({ inUse }) => !inUse)];
  return (
    <>
      <section aria-labelledby="add-remark">
        <h2 id="add-remark">{REMARKS.add}</h2>
        <RemarkForm links={links} verb={REMARKS.add} sending={sending} onSend={add} />
      </section>
      <section aria-labelledby="remarks-in-use">
        <h2 id="remarks-in-use">{REMARKS.inUse}</h2>
        {used.length === 0 ? <p className="quiet">{REMARKS.none}</p> : <Rows remarks={used} links={links} />}
      </section>
      {unused.length > 0 && (
        <section aria-labelledby="remarks-out-of-use">
          <h2 id="remarks-out-of-use">{REMARKS.outOfUse}</h2>
          <Rows remarks={unused} links={links} />
        </section>
      )}
    </>
  );
}

const Rows = ({ remarks, links }: ListProps) => (
  <ul className={styles.list}>
    {remarks.map((remark) => (
      <Row key={remark.id} remark={remark} links={links} />
    ))}
  </ul>
);

interface RowProps extends Pick<ListProps, "links"> {
  readonly remark: StudioRemark;
}

function Row({ remark, links }: RowProps) {
  const router = useRouter();
  const sending = useSend();
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const leave = () => {
    setOpen(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  const change = async (fields: Partial<RemarkFields & { inUse: boolean }>) => {
    const done = await sending.run("PATCH", `/api/remarks/${remark.id}`, fields);
    if (done !== undefined) router.refresh();
    return done !== undefined;
  };
  const store = async (fields: RemarkFields) => {
    const done = await change(fields);
    if (done) leave();
    return done;
  };
  return (
    <li>
      {open ? (
        <RemarkForm {...{ links, sending }} from={remark} verb="Save" onSend={store} onLeave={leave} />
      ) : (
        <Shown {...{ remark, links, sending, button }} onOpen={() => setOpen(true)} onChange={change} />
      )}
    </li>
  );
}

interface ShownProps extends RowProps {
  readonly sending: Sending;
  readonly button: RefObject<HTMLButtonElement | null>;
  readonly onOpen: () => void;
  readonly onChange: (fields: { readonly inUse: boolean }) => void;
}

function Shown({ remark, links, sending, button, onOpen, onChange }: ShownProps) {
  const of = <span className="visually-hidden">: {remark.words}</span>;
  return (
    <>
      <p>{remark.words}</p>
      <p className="quiet small">{linkName(remark, links)}</p>
      <div className={styles.acts}>
        <button ref={button} type="button" className="act" onClick={onOpen}>
          Change{of}
        </button>
        <button
          type="button"
          className="act"
          aria-disabled={sending.busy}
          onClick={() => onChange({ inUse: !remark.inUse })}
        >
          {remark.inUse ? "Take out of use" : "Use again"}
          {of}
        </button>
      </div>
      <ProblemLine say={sending.problem} />
    </>
  );
}

function linkName({ ruleId, moveId }: StudioRemark, { rules, moves }: RemarkLinks): string {
  if (ruleId !== null) return `Rule: ${rules.find(({ id }) => id === ruleId)?.name ?? ruleId}`;
  if (moveId !== null) return `Move: ${moves.find(({ id }) => id === moveId)?.name ?? moveId}`;
  return "Anywhere";
}
