"use client";
/** What the library can add with one press: easier and harder versions, and safety prompts for the move. */
import type { PlanSession } from "#app/_session/session.ts";
import { addScriptLine } from "#lib/doc/write.ts";
import { PROMPT_NOTE, stockLines } from "#lib/editor/stock.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import styles from "./script.module.css";
import { lineAddedWords, stockWords } from "./script-words.ts";

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
    if (session.act((w) => addScriptLine(w, item.id, line))) session.say(lineAddedWords(line.kind));
  };
  return (
    <details className={styles.stock}>
      <summary>{stockWords(lines.length, asksCare)}</summary>
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
      {asksCare && <p className="quiet small">{PROMPT_NOTE}</p>}
    </details>
  );
}
