"use client";
/** One view of the person: outline, regions in their shades, the lines between. */
import type { PointerEvent } from "react";
import { groupNear } from "#lib/body-map/nearest.ts";
import type { Shade } from "#lib/body-map/shade.ts";
import type { BodyView, ViewRegion } from "#lib/body-map/views.ts";
import type { Group } from "#lib/plan/schema.ts";
import styles from "./body-map.module.css";
import { hatchOf } from "./hatches.tsx";
import type { Light } from "./use-light.ts";

interface BodyPictureProps {
  readonly view: BodyView;
  readonly shades: ReadonlyMap<Group, Shade>;
  readonly marked: readonly Group[];
  readonly light: Light;
  /** Of the hatches. */
  readonly id: string;
}

/** Half a finger, px. */
const REACH_PX = 14;

export function BodyPicture({ view, shades, marked, light, id }: BodyPictureProps) {
  const { x, y, width, height } = view.frame;
  const groupAt = (event: PointerEvent<SVGSVGElement>) =>
    groupUnder(event, view, new Set([...shades.keys(), ...marked]));
  const names = view.name === "lying" ? (["front", "back"] as const) : [view.name];
  return (
    <div className={styles.view} aria-hidden="true">
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: the whole figure has a name; by keyboard the words beside it do the same */}
      <svg
        viewBox={`${x} ${y} ${width} ${height}`}
        onPointerMove={(event) => light.point(groupAt(event))}
        onPointerLeave={() => light.point(null)}
        onPointerUp={(event) => {
          const group = groupAt(event);
          if (group) light.press(group);
        }}
      >
        <path d={view.outline} className={styles.outline} />
        {view.regions.map((region) => (
          <Region
            key={region.group}
            {...{ region, id }}
            shade={shades.get(region.group) ?? 0}
            marked={marked.includes(region.group)}
            lit={light.lit === region.group}
          />
        ))}
        <path d={view.lines.join("")} className={styles.inner} />
      </svg>
      {names.map((name) => (
        <span key={name} className={styles.name}>
          {name}
        </span>
      ))}
    </div>
  );
}

function groupUnder(event: PointerEvent<SVGSVGElement>, view: BodyView, among: ReadonlySet<Group>): Group | null {
  const { x, y, width } = view.frame;
  const box = event.currentTarget.getBoundingClientRect();
  const scale = width / box.width;
  const point = [x + (event.clientX - box.left) * scale, y + (event.clientY - box.top) * scale] as const;
  return groupNear(view, point, { reach: REACH_PX * scale, among });
}

interface RegionProps {
  readonly region: ViewRegion;
  readonly shade: Shade;
  readonly marked: boolean;
  readonly lit: boolean;
  readonly id: string;
}

function Region({ region: { group, d }, shade, marked, lit, id }: RegionProps) {
  return (
    <g
      className={styles.region}
      data-group={group}
      data-shade={shade}
      data-marked={marked || undefined}
      data-lit={lit || undefined}
    >
      <path d={d} className={styles.tone} />
      {!marked && shade > 0 && shade < 4 && <path d={d} fill={`url(#${hatchOf(id, shade)})`} />}
      {marked && <path d={d} fill={`url(#${hatchOf(id, "marked")})`} />}
    </g>
  );
}
