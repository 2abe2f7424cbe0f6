"use client";
/**
 * The groups of muscles on a person, each shaded by its share, with the words beside: whoever points at a word or a part sees
 * the other. Shades are a tone and a hatch, so that neither colour nor tone alone says anything.
 */
import { useId } from "react";
import { bodyMapWords, type GroupShares, restWords, type ShadeOf, shadedGroups } from "#lib/body-map/shade.ts";
import { BODY_VIEWS } from "#lib/body-map/views.ts";
import type { Group } from "#lib/plan/schema.ts";
import styles from "./body-map.module.css";
import { BodyPicture } from "./body-picture.tsx";
import { GroupWords } from "./group-words.tsx";
import { Hatches } from "./hatches.tsx";
import { useLight } from "./use-light.ts";

interface BodyMapProps {
  /** By group its share of all work, or its weight in a move, 0..1. What is left out does no work. */
  readonly shares: GroupShares;
  /** Standing, from the front and the back; or lying, the front in the upper half and the back in the lower. */
  readonly layout: "standing" | "lying";
  /** Set apart, as by the finding that was chosen. */
  readonly marked?: readonly Group[];
  /** What `shares` are; shares of all work by default. */
  readonly of?: ShadeOf;
  /** Whether the groups are listed beside the figure; by default beside a standing one. Else say them near by. */
  readonly words?: boolean;
  /** What the figure shows, as its name for a screen reader. */
  readonly title?: string;
}

export function BodyMap(props: BodyMapProps) {
  const { shares, layout, marked = [], of = "share", words = layout === "standing" } = props;
  const { title = "Front and back of a person, shaded by how much each muscle works" } = props;
  const id = useId();
  const light = useLight();
  const groups = shadedGroups(shares, of);
  const shades = new Map(groups.map(({ group, shade }) => [group, shade] as const));
  return (
    <div className={styles.map} data-layout={layout} data-words={words || undefined}>
      <Hatches id={id} />
      <div className={styles.figures} role="img" aria-label={`${title}. ${bodyMapWords(shares, of)}`}>
        {BODY_VIEWS[layout].map((view) => (
          <BodyPicture key={view.name} {...{ view, shades, marked, light, id }} />
        ))}
      </div>
      {words && (
        <div className={styles.beside}>
          <GroupWords {...{ groups, light, id }} />
          {of === "share" && <p className={styles.rest}>{restWords(shares)}</p>}
        </div>
      )}
    </div>
  );
}
