"use client";
/** What the library can add at one touch: easier and harder ways, and prompts for what the move asks of a body. */
import type { PlanSession } from "#app/_plan/session.ts";
import { addScriptLine } from "#lib/doc/write.ts";
import { PROMPT_NOTE, stockLines } from "#lib/editor/stock.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { agree } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import styles from "./script.module.css";

interface Props {
  readonly session: PlanSession;
  readonly plan: Plan;
  readonly item: MoveItem;
}

export function StockLines({ session, plan, item }: Props) {
  const lines = stockLines(moveOf(plan, item), item.script ?? []);
  if (lines.length === 0) return null;
  const asksCare = lines.some((line) => line.kind === "safety");
  const add = (line: ScriptLine) => {
    if (session.act((w) => addScriptLine(w, item.id, line)))
      session.say(`${KIND_WORDS[line.kind]} line added at the end.`);
  };
  return (
    <details className={styles.stock}>
      <summary>
        {agree(lines.length, "One line", `${lines.length} lines`)} to add from the library
        {asksCare && ", care for the room among them"}
      </summary>
      <ul>
        {lines.map((line) => (
          <li key={`${line.kind} ${line.text}`}>
            <button type="button" className={styles.stockLine} onClick={() => add(line)}>
              <span className={styles.stockKind}>{KIND_WORDS[line.kind]}</span>
              <span>{line.text.replaceAll("{{", "{")}</span>
              <span className={styles.stockAdd}>add</span>
            </button>
          </li>
        ))}
      </ul>
      {asksCare && <p className={styles.hint}>{PROMPT_NOTE}</p>}
    </details>
  );
}
