"use client";
/** Over the columns somebody lies along them, head to foot; what the chosen finding is about is hatched. Said in words beside. */
import { useId } from "react";
import type { MonthFinding } from "#lib/month/types.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { FIGURE_HEIGHT, lyingFigure } from "#lib/tide/lying-figure.ts";
import styles from "./month.module.css";

/** The rules that name a muscle group after the regulars. */
const OF_A_GROUP = new Set(["short-recovery", "heavy-twice-a-day"]);

export function LyingBody({ chosen, width }: { readonly chosen: readonly MonthFinding[]; readonly width: number }) {
  const id = useId().replaceAll(":", "");
  const marked = chosen.flatMap(({ id: of, rule }): Group[] => {
    const group = GROUPS.find((one) => one === of.split(":")[2]);
    return OF_A_GROUP.has(rule) && group ? [group] : [];
  });
  const { head, arms, trunk, legs, spans } = lyingFigure(width, marked);
  const hatched = (on: "middle" | "arms") =>
    spans
      .filter((span) => span.on === on)
      .map(({ x, width: wide }) => (
        <rect key={x} x={x} width={wide} y={0} height={FIGURE_HEIGHT} fill={`url(#${id}hatch)`} />
      ));
  return (
    <svg className={styles.body} width={width} height={FIGURE_HEIGHT} aria-hidden="true">
      <defs>
        <clipPath id={`${id}trunk`}>
          <path d={trunk} />
        </clipPath>
        <clipPath id={`${id}arms`}>
          <path d={arms} />
        </clipPath>
        <pattern id={`${id}hatch`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={styles.hatchGround} width="6" height="6" />
          <rect className={styles.hatchLine} width="2.6" height="6" />
        </pattern>
      </defs>
      <path className={styles.flesh} d={arms} />
      <g clipPath={`url(#${id}arms)`}>{hatched("arms")}</g>
      <path className={styles.outline} d={arms} />
      <path className={styles.flesh} d={trunk} />
      <g clipPath={`url(#${id}trunk)`}>{hatched("middle")}</g>
      <path className={styles.outline} d={trunk} />
      <path className={styles.outline} d={legs} />
      <ellipse className={`${styles.flesh} ${styles.outline}`} cx={head.x} cy={head.y} rx={head.rx} ry={head.ry} />
    </svg>
  );
}
