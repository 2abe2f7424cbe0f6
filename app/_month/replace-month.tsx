"use client";
/** A month file in place of what is there: asked before, and put back after, since no undo of the page reaches what the server did. */
import { useEffect, useState } from "react";
import type { MonthFile } from "#lib/month/types.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { send } from "../_parts/send.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { replaceWords } from "./replace-words.ts";

interface Replaced {
  readonly notes: readonly string[];
  /** The month as it was. */
  readonly before: MonthFile;
}

interface ReplaceMonthProps {
  readonly desk: MonthDesk;
  /** That was chosen; another one is another component, by its key. */
  readonly file: File;
  readonly onLeave: () => void;
}

export function ReplaceMonth({ desk, file, onLeave }: ReplaceMonthProps) {
  const replace = useReplace(desk, file);
  const { brought, done, say } = replace;
  return (
    <div className={styles.form}>
      <ProblemLine say={say} />
      {brought && !done && (
        <>
          <p role="status">{replaceWords(brought, desk.month.file)}</p>
          <div className={styles.acts}>
            <button type="button" className="button button-strong" aria-disabled={replace.busy} onClick={replace.send}>
              Replace the month
            </button>
            <button type="button" className="button" onClick={onLeave}>
              Leave it as it is
            </button>
          </div>
        </>
      )}
      {done && <Done done={done} busy={replace.busy} putBack={replace.putBack} />}
    </div>
  );
}

type Done = Replaced | "back";

function Done({ done, busy, putBack }: { done: Done; busy: boolean; putBack: (before: MonthFile) => void }) {
  if (done === "back") return <p role="status">What was there before is back.</p>;
  return (
    <>
      <p role="status">The month was replaced.</p>
      {done.notes.length > 0 && (
        <ul className={styles.findings}>
          {done.notes.map((note) => (
            <li key={note} className="notice">
              {note}
            </li>
          ))}
        </ul>
      )}
      <p className="quiet small">
        Until you close this panel you can put back what was there. Changes made since then go.
      </p>
      <button type="button" className="button" aria-disabled={busy} onClick={() => putBack(done.before)}>
        Put back what was there
      </button>
    </>
  );
}

function useReplace({ props, session }: MonthDesk, file: File) {
  const [brought, setBrought] = useState<MonthFile | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const [say, setSay] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    let current = true;
    void readFile(file).then((read) => {
      if (!current) return;
      if (read.ok) setBrought(read.month);
      else setSay(read.say);
    });
    return () => {
      current = false;
    };
  }, [file]);
  const put = async (body: unknown, after: (sent: Replaced) => Done, said: string) => {
    if (busy) return;
    setBusy(true);
    const sent = await send<Replaced>("PUT", `/api/programme/${props.month}/file?replace=yes`, body);
    setBusy(false);
    setSay(sent.ok ? null : sent.message);
    if (!sent.ok) return;
    setDone(after(sent.value));
    session.say(said);
  };
  return {
    ...{ brought, done, say, busy },
    send: () => void put(file, (sent) => sent, "The month was replaced."),
    putBack: (before: MonthFile) => void put(before, () => "back", "What was there before is back."),
  };
}

/** The parser comes when it is needed; the server reads the file by the same one. */
async function readFile(file: File) {
  try {
    const { readMonthFile } = await import("#lib/month/file/read-month.ts");
    const read = readMonthFile(await file.text());
    return read.ok ? read : { ok: false as const, say: `This is not a month file. ${read.say}` };
  } catch {
    return { ok: false as const, say: "The file could not be read. Choose it again." };
  }
}
