"use client";
/** Over the columns somebody lies along them, head to foot; what the chosen finding is about is marked. Said in words beside. */
import { BodyMap } from "#app/_body-map/body-map.tsx";
import type { MonthFinding } from "#lib/month/types.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import styles from "./month.module.css";

/** The rules that name a muscle group after the regulars. */
const OF_A_GROUP = new Set(["short-recovery", "heavy-twice-a-day"]);

export function LyingBody({ chosen, width }: { readonly chosen: readonly MonthFinding[]; readonly width: number }) {
  const marked = chosen.flatMap(({ id, rule }): Group[] => {
    const group = GROUPS.find((one) => one === id.split(":")[2]);
    return OF_A_GROUP.has(rule) && group ? [group] : [];
  });
  return (
    <div className={styles.body} style={{ width }} aria-hidden="true">
      <BodyMap shares={{}} layout="lying" marked={marked} words={false} />
    </div>
  );
}
