"use client";
/** Choose a plan file, look at what its moves would add or change, bring the ones that are ticked. */
import Link from "next/link";
import { type ChangeEvent, useId } from "react";
import { moveLine } from "#lib/library/move-words.ts";
import { plural } from "#lib/plan/format.ts";
import type { BroughtMove } from "#server/library/compare-moves.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { ChangeList } from "../_move/change-list.tsx";
import styles from "./bring.module.css";
import { type Bringing, type LookedAt, useBring } from "./use-bring.ts";

export function BringMoves() {
  const bringing = useBring();
  return (
    <div className={styles.bring}>
      <FileField {...bringing} />
      <ProblemLine say={bringing.problem} />
      <Outcome {...bringing} />
      {bringing.looked ? <Choose bringing={bringing} moves={bringing.looked.moves} /> : null}
    </div>
  );
}

function FileField({ busy, look }: Pick<Bringing, "busy" | "look">) {
  const id = useId();
  const chosen = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (file) void look(file);
  };
  return (
    <div className="field">
      <label htmlFor={id}>Plan file</label>
      <input id={id} type="file" accept=".json,application/json" aria-disabled={busy} onChange={chosen} />
    </div>
  );
}

function Outcome({ busy, done, looked }: Pick<Bringing, "busy" | "done" | "looked">) {
  return (
    <div role="status">
      {busy ? <p>Reading the file…</p> : null}
      {done ? (
        <p className="done">
          {done} <Link href="/library">See the library</Link>
        </p>
      ) : null}
      {looked ? <p className="quiet">{summary(looked)}</p> : null}
    </div>
  );
}

function Choose({ bringing, moves }: { readonly bringing: Bringing; readonly moves: readonly BroughtMove[] }) {
  const { busy, ticked, tick, bring } = bringing;
  const shown = moves.filter((move) => move.kind !== "same");
  return (
    <>
      <ul className={styles.moves}>
        {shown.map((move) => (
          <MoveToBring key={move.id} move={move} ticked={ticked.has(move.id)} onTick={(on) => tick(move.id, on)} />
        ))}
      </ul>
      <button
        type="button"
        className="button button-strong"
        aria-disabled={busy}
        disabled={ticked.size === 0}
        onClick={() => void bring()}
      >
        {ticked.size === 0 ? "Nothing ticked" : `Bring ${plural(ticked.size, "move")}`}
      </button>
    </>
  );
}

function summary({ fileName, moves }: LookedAt): string {
  const count = (kind: BroughtMove["kind"]) => moves.filter((move) => move.kind === kind).length;
  const differ = count("differs");
  const parts = [
    `${count("new")} new`,
    `${plural(differ, "differs", "differ")} from the library’s`,
    `${count("same")} the same`,
  ];
  return `${fileName} has ${plural(moves.length, "move")}: ${parts.join(", ")}.`;
}

interface MoveToBringProps {
  readonly move: BroughtMove;
  readonly ticked: boolean;
  readonly onTick: (on: boolean) => void;
}

function MoveToBring({ move: brought, ticked, onTick }: MoveToBringProps) {
  const { move, kind, changes, nameOf } = brought;
  return (
    <li>
      <label className="check">
        <input type="checkbox" checked={ticked} onChange={(event) => onTick(event.target.checked)} />
        <strong>{move.name}</strong>
        <span className="quiet small">{kind === "new" ? "new" : "changes the one in the library"}</span>
      </label>
      <p className="quiet small">{moveLine(move)}</p>
      {nameOf ? (
        <p className="look">The library already has a move called this ({nameOf}). Bring it and there are two.</p>
      ) : null}
      <ChangeList changes={changes} />
    </li>
  );
}
