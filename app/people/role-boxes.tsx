"use client";
/** The five roles as boxes to tick, each with what it may do, and the sentence of a form that was sent without one. */
import { useId, useState } from "react";
import { NO_ROLE, ROLES, type Role } from "#lib/policy/can.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import styles from "./people.module.css";

interface RoleBoxesProps {
  readonly chosen?: readonly Role[];
  readonly legend: string;
  /** From the form that was sent last. */
  readonly problem: string | null;
}

export function RoleBoxes({ chosen = [], legend, problem }: RoleBoxesProps) {
  const id = useId();
  return (
    <fieldset aria-describedby={problem === null ? undefined : id}>
      <legend>{legend}</legend>
      {ROLES.map((role) => (
        <label key={role} className={`check ${styles.role}`}>
          <input type="checkbox" name="role" value={role} defaultChecked={chosen.includes(role)} />
          <span>
            {ROLE_WORDS[role].name}
            <span className={`quiet small ${styles.may}`}>{ROLE_WORDS[role].may}</span>
          </span>
        </label>
      ))}
      <div id={id}>
        <ProblemLine say={problem} />
      </div>
    </fieldset>
  );
}

/** The chosen roles of a form; without one it keeps the sentence for beside the boxes, leads there and answers null. */
export function useRoles() {
  const [problem, setProblem] = useState<string | null>(null);
  const roles = (form: HTMLFormElement): FormDataEntryValue[] | null => {
    const chosen = new FormData(form).getAll("role");
    setProblem(chosen.length === 0 ? NO_ROLE : null);
    if (chosen.length > 0) return chosen;
    form.querySelector<HTMLElement>('[name="role"]')?.focus();
    return null;
  };
  return { problem, roles };
}
