/** The five roles as boxes to tick, each with what it may do. */
import { ROLES, type Role } from "#lib/policy/can.ts";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import styles from "./people.module.css";

export function RoleBoxes({ chosen = [], legend }: { readonly chosen?: readonly Role[]; readonly legend: string }) {
  return (
    <fieldset>
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
    </fieldset>
  );
}
