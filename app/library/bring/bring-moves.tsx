"use client";
/** Choose a file, look at what its moves would add or change, bring the ones that are ticked. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useId, useRef, useState } from "react";
import { moveLine } from "#lib/library/move-words.ts";
import { plural } from "#lib/plan/format.ts";
import type { BroughtMove } from "#server/library/compare-moves.ts";
import { Problem } from "../../_shell/problem.tsx";
import { send } from "../../_shell/send.ts";
import { ChangeList } from "../_move/change-list.tsx";
import styles from "./bring.module.css";

interface Looked {
  readonly text: string;
  readonly fileName: string;
  readonly moves: readonly BroughtMove[];
}

export function BringMoves() {
  const router = useRouter();
  const id = useId();
  const [looked, setLooked] = useState<Looked | null>(null);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [state, setState] = useState({ busy: false, problem: null as string | null, done: null as string | null });
  const busy = useRef(false);

  const run = async (work: () => Promise<string | null>, done: string | null = null) => {
    if (busy.current) return;
    busy.current = true;
    setState({ busy: true, problem: null, done: null });
    const problem = await work();
    busy.current = false;
    setState({ busy: false, problem, done: problem === null ? done : null });
  };
  const look = async (text: string, fileName: string): Promise<string | null> => {
    const sent = await compare(text);
    if (!sent.ok) return sent.message;
    setLooked({ text, fileName, moves: sent.moves });
    setTicked(new Set(sent.moves.filter((move) => move.kind === "new").map((move) => move.id)));
    return null;
  };
  const bring = () =>
    run(
      async () => {
        if (!looked) return null;
        const chosen = looked.moves.filter((move) => ticked.has(move.id));
        const body = {
          moves: Object.fromEntries(chosen.map((move) => [move.id, move.move])),
          seen: Object.fromEntries(chosen.map((move) => [move.id, move.seen])),
        };
        const sent = await send("PUT", "/api/library", body);
        if (!sent.ok) {
          if (sent.status === 409) await look(looked.text, looked.fileName);
          return sent.message;
        }
        setLooked(null);
        router.refresh();
        return null;
      },
      `${plural(ticked.size, "move")} brought into the library.`,
    );
  return (
    <div className={styles.bring}>
      <div className="field">
        <label htmlFor={id}>Plan file</label>
        <input
          id={id}
          type="file"
          accept=".json,application/json"
          aria-disabled={state.busy}
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file) void run(async () => look(await file.text(), file.name));
          }}
        />
      </div>
      <Problem say={state.problem} />
      <div role="status">
        {state.busy ? <p>Looking …</p> : null}
        {state.done ? (
          <p className="done">
            {state.done} <Link href="/library">See the library</Link>
          </p>
        ) : null}
        {looked ? <p className="quiet">{summary(looked)}</p> : null}
      </div>
      {looked ? (
        <>
          <Moves moves={looked.moves} ticked={ticked} onTick={setTicked} />
          <button
            type="button"
            className="button button-strong"
            aria-disabled={state.busy}
            disabled={ticked.size === 0}
            onClick={() => void bring()}
          >
            {ticked.size === 0 ? "Nothing ticked" : `Bring ${plural(ticked.size, "move")}`}
          </button>
        </>
      ) : null}
    </div>
  );
}

function summary({ fileName, moves }: Looked): string {
  const count = (kind: BroughtMove["kind"]) => moves.filter((move) => move.kind === kind).length;
  const differ = count("differs");
  const parts = [
    `${count("new")} new`,
    `${plural(differ, "differs", "differ")} from the library’s`,
    `${count("same")} the same`,
  ];
  return `${fileName} carries ${plural(moves.length, "move")}: ${parts.join(", ")}.`;
}

interface MovesProps {
  readonly moves: readonly BroughtMove[];
  readonly ticked: ReadonlySet<string>;
  readonly onTick: (ticked: ReadonlySet<string>) => void;
}

function Moves({ moves, ticked, onTick }: MovesProps) {
  const shown = moves.filter((move) => move.kind !== "same");
  const tick = (id: string, on: boolean) => onTick(new Set(on ? [...ticked, id] : [...ticked].filter((t) => t !== id)));
  return (
    <ul className={styles.moves}>
      {shown.map(({ id, move, kind, changes, nameOf }) => (
        <li key={id}>
          <label className="check">
            <input type="checkbox" checked={ticked.has(id)} onChange={(event) => tick(id, event.target.checked)} />
            <strong>{move.name}</strong>
            <span className="quiet small">{kind === "new" ? "new" : "changes the one in the library"}</span>
          </label>
          <p className="quiet small">{moveLine(move)}</p>
          {nameOf ? (
            <p className="look">The library has another move of this name ({nameOf}): then there are two.</p>
          ) : null}
          <ChangeList changes={changes} />
        </li>
      ))}
    </ul>
  );
}

type Compared =
  | { readonly ok: true; readonly moves: readonly BroughtMove[] }
  | { readonly ok: false; readonly message: string };

/** The file goes as it is, so that the server sees what stands in it. */
async function compare(text: string): Promise<Compared> {
  try {
    const response = await fetch("/api/library/compare", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: text,
    });
    const answer = await response.json(); // the route's own promise
    return response.ok ? { ok: true, moves: answer.moves } : { ok: false, message: answer.error.message };
  } catch {
    return { ok: false, message: "The server did not answer. Choose the file again when the network is back." };
  }
}
