/** What is wrong with a posed body, a sentence a fault: bones, ranges, contacts, and what it must not go through. */
import type { FigurePose } from "#lib/figure/figure.ts";
import {
  anglesAt,
  distance,
  fleshOf,
  groundUnder,
  JOINT_RANGES,
  jointOf,
  LENGTHS,
  reachOf,
  SIDES,
  STATURE_M,
  TOPS,
} from "./posed.ts";

export const lengthFaults = (pose: FigurePose): string[] =>
  LENGTHS.flatMap(([bone, share, ends]) =>
    SIDES.flatMap((side) => {
      const off = distance(pose, ...ends(side)) / (share * STATURE_M) - 1;
      return Math.abs(off) <= 0.005 ? [] : [`${bone} ${side} ${(off * 100).toFixed(2)} %`];
    }),
  );

export const rangeFaults = (pose: FigurePose): string[] =>
  SIDES.flatMap((side) =>
    Object.entries(anglesAt(pose, side)).flatMap(([name, angle]) => {
      const [least, most] = JOINT_RANGES[name] ?? [0, 0];
      const fine = name === "kneeBackwards" ? angle >= least : angle >= least && angle <= most;
      return fine ? [] : [`${name} ${side} ${angle.toFixed(0)}`];
    }),
  );

export function contactFaults(pose: FigurePose): string[] {
  return pose.contacts.flatMap(({ joint, surface }) => {
    const place = jointOf(pose, joint);
    const [from, to] = reachOf(surface, pose.travel);
    const beside = place[0] < from - 0.012 || place[0] > to + 0.012;
    const over = place[1] - (TOPS[surface] ?? Number.NaN) - fleshOf(joint);
    const lies = /^(pelvis|chest|hip)/.test(joint);
    const stacked = joint.startsWith("ankle");
    const high = lies ? over < 0 || over > 0.11 : stacked ? over < 0.02 || over > 0.06 : Math.abs(over) > 0.005;
    return beside || high
      ? [`${joint} on ${surface}: ${(over * 1000).toFixed(0)} mm${beside ? ", beside it" : ""}`]
      : [];
  });
}

/** Joints, and nine places along every bone, against what lies under them. */
export function sunkFaults(pose: FigurePose): string[] {
  const bones = [
    ...LENGTHS.map(([, , ends]) => ends),
    (side: "left" | "right") => ["chest", `shoulder-${side}`] as const,
  ];
  return bones.flatMap((ends) =>
    SIDES.flatMap((side) => {
      const [a, b] = ends(side).map((joint) => jointOf(pose, joint as keyof FigurePose["joints"]));
      if (!a || !b) return ["no joint"];
      return Array.from({ length: 9 }, (_, i) => i / 8).flatMap((t) => {
        const p = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t] as const;
        const under = groundUnder(p, pose.travel) - p[1];
        return under > 0.014 ? [`${ends(side).join(" to ")} ${(under * 1000).toFixed(0)} mm inside`] : [];
      });
    }),
  );
}
