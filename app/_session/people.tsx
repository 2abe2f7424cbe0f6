"use client";
/** Who else has the plan open, on which item, and who may only read. */
import { itemById } from "#lib/plan/lookup.ts";
import { nameOf } from "./item-words.ts";
import styles from "./people.module.css";
import type { PlanSession } from "./session.ts";
import type { SessionSnapshot } from "./session-types.ts";

export function People({ session, snap }: { session: PlanSession; snap: SessionSnapshot }) {
  const others = snap.present.filter((person) => person.userId !== session.me.id);
  if (others.length === 0) return null;
  return (
    <ul className={styles.people} aria-label="Also here">
      {others.map((person) => {
        const place = snap.places.find((p) => p.userId === person.userId && p.itemId !== null);
        const item = place?.itemId ? itemById(snap.plan, place.itemId) : undefined;
        const doing = person.writes ? (item ? ` on ${nameOf(snap.plan, item)}` : " is here") : " is here to read";
        return (
          <li key={person.userId} title={`${person.name}${doing}`}>
            <b>{person.name}</b>
            {doing}
          </li>
        );
      })}
    </ul>
  );
}

/** "Marta Lindqvist" is ML; one name gives its first two letters. */
export function initials(name: string): string {
  const words = name.trim().split(/\s+/);
  const first = [...(words[0] ?? "")];
  const last = words.length > 1 ? [...(words.at(-1) ?? "")] : [];
  return last.length > 0 ? `${first[0] ?? ""}${last[0] ?? ""}`.toUpperCase() : first.slice(0, 2).join("");
}
