"use client";
/** How much the rule weighs in this house. */
import { useId } from "react";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS, STANDARD_LEVELS } from "#lib/rules/level-words.ts";
import styles from "./rules.module.css";
import type { DraftLevel } from "./standard-draft.ts";

interface LevelFieldProps {
  readonly rule: AnyRule;
  readonly level: DraftLevel;
  readonly onChoose: (level: DraftLevel) => void;
}

export function LevelField({ rule, level, onChoose }: LevelFieldProps) {
  const name = useId();
  const options: readonly (readonly [DraftLevel, string])[] = [
    ["own", `as the rule has it: ${LEVEL_WORDS[rule.level]}`],
    ...STANDARD_LEVELS.map((house) => [house, LEVEL_WORDS[house]] as const),
  ];
  const milder = rule.level === "must" && level !== "own" && level !== "must";
  return (
    <fieldset className={styles.levels}>
      <legend>What it weighs</legend>
      {options.map(([value, words]) => (
        <label key={value} className="check">
          <input type="radio" name={name} checked={value === level} onChange={() => onChoose(value)} />
          {words}
        </label>
      ))}
      {milder && (
        <p className="notice" role="status">
          A plan can then be signed off with this in it. {rule.why}
        </p>
      )}
    </fieldset>
  );
}
