/** Work and rest as drops down the columns, and rest that was cut short. Decoration over the table's cells. */
import { useId } from "react";
import { dropOutline } from "#lib/tide/outline.ts";
import { REGIONS, type TideCollision, type TideDrop } from "#lib/tide/types.ts";
import styles from "./sheet.module.css";
import type { SheetShown } from "./sheet-types.ts";

interface DropsProps {
  readonly shown: SheetShown;
  readonly onPoint: (slot: string | null) => void;
  readonly onOpen: (slot: string) => void;
}

/** Long because: what the picture is made of, from back to front. */
export function DropsDrawing({ shown, onPoint, onOpen }: DropsProps) {
  const { sheet, layout, tops } = shown;
  const id = useId().replaceAll(":", "");
  const foot = tops.at(-1) ?? 0;
  const width = layout.group * sheet.columns.length;
  return (
    <svg className={styles.drops} width={width} height={foot} aria-hidden="true">
      <defs>
        {REGIONS.map((region) => (
          <linearGradient
            key={region}
            id={`${id}${region}`}
            x1="0"
            y1="0"
            x2="0"
            y2="1"
            data-tide={region}
            className={styles.fade}
          >
            <stop offset="0" />
            <stop offset="0.55" />
            <stop offset="1" />
          </linearGradient>
        ))}
        <pattern id={`${id}cut`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={styles.hatchGround} width="6" height="6" />
          <rect className={styles.hatchLine} width="2.6" height="6" />
        </pattern>
      </defs>
      {sheet.columns.map(({ group, x }) => (
        <line key={group} className={styles.column} x1={x} x2={x} y1={0} y2={foot} />
      ))}
      {sheet.drops.map((drop) => (
        <Drop key={`${drop.slot} ${drop.group}`} {...{ drop, id, shown, onPoint, onOpen }} />
      ))}
      {sheet.collisions.map((collision) => (
        <Collision key={collision.finding} collision={collision} id={id} />
      ))}
    </svg>
  );
}

function Drop({ drop, id, shown, onPoint, onOpen }: DropsProps & { readonly drop: TideDrop; readonly id: string }) {
  const { slot, region, heavy, x, width, top } = drop;
  const { lit, moving, proposed } = shown;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: for a pointer; the class's own button takes the keys
    <g
      className={styles.drop}
      data-tide={region}
      data-heavy={heavy ? "" : undefined}
      data-lit={lit === slot ? "" : undefined}
      data-unlit={lit !== null && lit !== slot ? "" : undefined}
      data-outline={proposed.has(slot) || moving === slot ? "" : undefined}
      onPointerEnter={() => onPoint(slot)}
      onPointerLeave={() => onPoint(null)}
      onClick={() => onOpen(slot)}
    >
      <path d={dropOutline(drop)} fill={`url(#${id}${region})`} />
      <path className={styles.brim} d={`M${x - width / 2} ${top}h${width}`} />
    </g>
  );
}

function Collision({ collision, id }: { readonly collision: TideCollision; readonly id: string }) {
  const { x, width, top, end, hours } = collision;
  const [half, tall] = [Math.max(9.5, width / 2 + 2.5), 6.5];
  return (
    <g className={styles.collision}>
      <rect x={x - width / 2} width={width} y={top} height={Math.max(4, end - top)} fill={`url(#${id}cut)`} />
      <path d={`M${x - half} ${top}l4 ${-tall}h${2 * half - 8}l4 ${tall}l-4 ${tall}h${8 - 2 * half}Z`} />
      <text x={x} y={top + 4} textAnchor="middle">
        {hours}
      </text>
    </g>
  );
}
