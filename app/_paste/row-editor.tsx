"use client";
/** Changes any part of a row that is ready: what it is, its move, side, seconds and springs. */
import { SelectField } from "#app/_parts/choice.tsx";
import { MovePicker } from "#app/_parts/move-picker.tsx";
import { NumberField } from "#app/_parts/number-field.tsx";
import type { PasteAnswer, RowKind } from "#lib/paste/answers.ts";
import { moveAnswer } from "#lib/paste/judge-kind.ts";
import { rowSideWords } from "#lib/paste/judge-side.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import type { PasteContext, RowSide } from "#lib/paste/types.ts";
import type { Move } from "#lib/plan/schema.ts";
import { Unfolds } from "./doubts.tsx";
import styles from "./paste.module.css";
import { SpringCounts } from "./spring-counts.tsx";

interface EditorProps {
  readonly row: JudgedRow;
  readonly context: PasteContext;
  readonly answer: (answer: PasteAnswer) => void;
}

const KINDS: readonly { readonly value: RowKind; readonly label: string }[] = [
  { value: "move", label: "a move" },
  { value: "pause", label: "a pause" },
  { value: "heading", label: "a heading" },
];

export function RowEditor({ row, context, answer }: EditorProps) {
  const { kind } = row;
  const shown = kind === "other-side" ? "move" : (kind ?? "move");
  const move = row.move === undefined ? undefined : context.moves[row.move];
  return (
    <div className={`light ${styles.editor}`}>
      <SelectField label="It is" value={shown} options={KINDS} onChoose={(next) => answer({ row: { kind: next } })} />
      {kind !== "heading" && (
        <NumberField
          label="Seconds"
          value={row.seconds}
          min={kind === "pause" ? 0 : 1}
          onCommit={(seconds) => seconds !== undefined && answer({ row: { seconds } })}
        />
      )}
      {kind === "move" && move && row.side !== undefined && (
        <SelectField
          label="Side"
          value={row.side}
          options={sideOptions(move, context)}
          onChoose={(side) => answer({ row: { side } })}
        />
      )}
      {kind === "move" && <Unfolded row={row} context={context} answer={answer} />}
    </div>
  );
}

/** What takes more room: another move of the library, other springs. */
function Unfolded({ row, context, answer }: EditorProps) {
  return (
    <div className={styles.editorWide}>
      <Unfolds words="Another move">
        <MovePicker
          moves={context.moves}
          equipment={context.equipment}
          chosen={row.move ?? null}
          autoFocus
          onTake={(id) => answer(moveAnswer(row.reading, id))}
        />
      </Unfolds>
      <Unfolds words="Other springs">
        <SpringCounts
          equipment={context.equipment}
          start={row.springs ?? {}}
          onTake={(springs) => answer({ row: { springs } })}
        />
      </Unfolds>
    </div>
  );
}

function sideOptions(move: Move, context: PasteContext): { value: RowSide; label: string }[] {
  const sides = context.sidesOf(move);
  const two: RowSide[] = sides.includes("left") && sides.includes("right") ? ["left-right", "right-left"] : [];
  return [...two, ...sides].map((value) => ({ value, label: rowSideWords(value) }));
}
