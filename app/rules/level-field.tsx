"use client";
/** The level of the rule's findings in this studio. */
import { useId } from "react";
import type { FindingLevel } from "#lib/plan/schema.ts";
import { LEVEL_WORDS, STANDARD_LEVELS } from "#lib/rules/level-words.ts";
import styles from "./rules.module.css";
import type { DraftLevel } from "./standard-draft.ts";

interface LevelFieldProps {
  readonly rule: { readonly level: FindingLevel; readonly why: string };
  /** What is signed off with or without its findings. */
  readonly of?: "plans" | "months";
  readonly level: DraftLevel;
  readonly onChoose: (level: DraftLevel) => void;
}

export function LevelField({ rule, of = "plans", level, onChoose }: LevelFieldProps) {
  const name = useId();
  const options: readonly (readonly [DraftLevel, string])[] = [
    ["own", `as usual: ${LEVEL_WORDS[rule.level]}`],
    ...STANDARD_LEVELS.map((set) => [set, LEVEL_WORDS[set]] as const),
  ];
  const milder = rule.level === "must" && level !== "own" && level !== "must";
  return (
    <fieldset className={styles.levels}>
      <legend>Level of its findings</legend>
      {options.map(([value, words]) => (
        <label key={value} className="check">
          <input type="radio" name={name} checked={value === level} onChange={() => onChoose(value)} />
          {words}
        </label>
      ))}
      {milder && (
        <p className="notice" role="status">
          {of === "plans" ? "Plans" : "Months"} can then be signed off without fixing this. {rule.why}
        </p>
      )}
    </fieldset>
  );
}
