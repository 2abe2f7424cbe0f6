/** The wrist load of a pose with its range, and the pose as a line drawing. */
import { useFormats } from "#app/_parts/formats.tsx";
import { type Pose, poseJoints } from "#lib/statics/hands.ts";
import styles from "./load.module.css";
import { wristLoadWords } from "./load-words.ts";

export function HandsLoad({ pose }: { pose: Pose }) {
  const { before, share, after, holdsFor } = wristLoadWords(pose, useFormats());
  return (
    <div className={styles.hands}>
      <PoseFigure pose={pose} />
      <p>
        {before}
        <b>{share}</b>
        {after}
        <span className="quiet">{holdsFor}</span>
      </p>
    </div>
  );
}

const W = 132;
/** Pixels for the height of the person. */
const SCALE = 112;

function PoseFigure({ pose }: { pose: Pose }) {
  const j = poseJoints(pose);
  const left = Math.min(j.toe.x, j.pivot.x, j.ankle.x);
  const top = j.shoulder.y + 0.12;
  const x = (at: number) => 6 + (at - left) * SCALE;
  const y = (at: number) => 4 + (top - at) * SCALE;
  const height = y(0) + 20;
  const chain = [j.toe, j.ankle, j.knee, j.hip, j.shoulder, j.elbow, j.wrist, j.knuckles];
  const head = { x: j.shoulder.x + j.along.x * 0.118, y: j.shoulder.y + j.along.y * 0.118 };
  const grounds = [
    { at: j.pivot.x, level: j.pivot.y },
    { at: j.pressX, level: j.wrist.y - 0.02 },
  ];
  return (
    <svg className={styles.pose} viewBox={`0 0 ${W} ${height.toFixed(0)}`} width={W} aria-hidden="true">
      <path d={`M${chain.map((at) => `${x(at.x).toFixed(1)} ${y(at.y).toFixed(1)}`).join(" L")}`} />
      <circle cx={x(head.x)} cy={y(head.y)} r={0.055 * SCALE} />
      {grounds.map(({ at, level }) => (
        <g key={at} className={styles.ground}>
          <path d={`M${x(at) - 13} ${y(level)} H${x(at) + 13}`} />
          <path d={`M${x(at)} ${y(level) + 15} V${y(level) + 3} m-3.5 4 l3.5 -4 l3.5 4`} />
        </g>
      ))}
    </svg>
  );
}
