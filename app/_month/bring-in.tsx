"use client";
/** A month file or a spreadsheet's table brought in. What a table would add is shown before anything is taken. */
import { useState } from "react";
import { plural } from "#lib/plan/format.ts";
import { send } from "../_parts/send.ts";
import { Labelled } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { ReplaceMonth } from "./replace-month.tsx";

/** What the server answers: of a table how many classes, and of both what it could not match. */
interface BroughtIn {
  readonly added?: number;
  readonly there?: number;
  readonly notes: readonly string[];
  readonly unread?: readonly string[];
}

/** A table that was looked at and waits to be taken. */
interface ShownTable {
  readonly file: File;
  readonly would: BroughtIn;
}

/** The server reads the file, and says what it could not match. */
export function BringIn({ desk }: { readonly desk: MonthDesk }) {
  const { said, notes, shown, replacing, choose, take, leave } = useBringIn(desk);
  const [replace, setReplace] = useState(false);
  return (
    <section className={styles.form} aria-label="A month file">
      <h3>Bring a month file or a table in</h3>
      <label className="check">
        <input type="checkbox" checked={replace} onChange={(event) => setReplace(event.target.checked)} />a month file:
        in place of what is there
      </label>
      <Labelled label="File">
        {(id) => (
          <input
            id={id}
            type="file"
            accept=".json,.csv,.tsv,.txt"
            onChange={(event) => void choose(event.target, replace)}
          />
        )}
      </Labelled>
      {replacing && <ReplaceMonth key={replacing.nth} desk={desk} file={replacing.file} onLeave={leave} />}
      {said && <p className="problem">{said}</p>}
      {shown && <Shown shown={shown} onTake={() => void take(shown.file)} onLeave={leave} />}
      {notes && <Notes notes={notes} />}
    </section>
  );
}

const tableOf = (file: File, would: BroughtIn | null): ShownTable | null => would && { file, would };
const isTableFile = ({ name }: File): boolean => /\.(csv|tsv|txt)$/i.test(name);

/** Null when it was refused: then `say` gets the reason. */
async function asked(
  say: (problem: string) => void,
  method: "POST" | "PUT",
  url: string,
  file: File,
): Promise<BroughtIn | null> {
  const sent = await send<BroughtIn>(method, url, file);
  say(sent.ok ? "" : sent.message);
  return sent.ok ? sent.value : null;
}

function useBringIn({ props, session }: MonthDesk) {
  const [said, setSaid] = useState("");
  const [notes, setNotes] = useState<readonly string[] | null>(null);
  const [shown, setShown] = useState<ShownTable | null>(null);
  const [replacing, setReplacing] = useState<{ readonly file: File; readonly nth: number } | null>(null);
  const isIn = (value: BroughtIn | null) => {
    if (!value) return;
    setShown(null);
    setNotes(notesOf(value));
    session.say("The file is in.");
  };
  const ask = (method: "POST" | "PUT", path: string, file: File) =>
    asked(setSaid, method, `/api/programme/${props.month}/${path}`, file);
  const bring = async (file: File, replace: boolean) => {
    const isTable = isTableFile(file);
    if (!isTable && replace) return setReplacing((was) => ({ file, nth: (was?.nth ?? 0) + 1 }));
    setReplacing(null);
    if (!isTable) return isIn(await ask("PUT", "file", file));
    setShown(tableOf(file, await ask("POST", "csv?preview=yes", file)));
  };
  return {
    ...{ said, notes, shown, replacing },
    async choose(input: HTMLInputElement, replace: boolean) {
      const file = input.files?.[0];
      if (!file) return;
      setNotes(null);
      setShown(null);
      setSaid("");
      await bring(file, replace);
      // Emptied, so that the same file, put right, can be chosen again.
      input.value = "";
    },
    take: async (file: File) => isIn(await ask("POST", "csv?unread=leave", file)),
    leave() {
      setShown(null);
      setReplacing(null);
      session.say("Nothing was taken.");
    },
  };
}

function Shown({
  shown: { file, would },
  onTake,
  onLeave,
}: {
  readonly shown: ShownTable;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}) {
  const { added = 0, there = 0, notes, unread = [] } = would;
  return (
    <>
      <Notes notes={[`${file.name}: ${wouldWords(added, there)}`, ...unread.map(notTaken), ...notes]} />
      {added > 0 && (
        <button type="button" className="button" onClick={onTake}>
          Take {plural(added, "class", "classes")}
        </button>
      )}
      <button type="button" className="button" onClick={onLeave}>
        Leave it
      </button>
    </>
  );
}

const notTaken = (sentence: string): string => `Cannot be read. ${sentence}`;

function wouldWords(added: number, there: number): string {
  const stand =
    there > 0
      ? ` ${plural(there, "class stands", "classes stand")} there already and ${there === 1 ? "stays" : "stay"} as ${there === 1 ? "it is" : "they are"}.`
      : "";
  const news = added > 0 ? `${plural(added, "class", "classes")} to add.` : "nothing to add.";
  return `${news}${stand}`;
}

function Notes({ notes }: { readonly notes: readonly string[] }) {
  return (
    <ul className={styles.findings} role="status">
      {notes.map((note) => (
        <li key={note} className="notice">
          {note}
        </li>
      ))}
    </ul>
  );
}

function notesOf({ added, there = 0, notes, unread = [] }: BroughtIn): string[] {
  const stood = there > 0 ? ` ${plural(there, "class", "classes")} stood there already.` : "";
  const first = added === undefined ? "The file is in." : `${plural(added, "class", "classes")} added.${stood}`;
  return [first, ...unread.map(notTaken), ...notes];
}
