/** The wrist load of a pose with its range, and the pose as a line drawing. */
import { handsNPerKg } from "#lib/load/load.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { handsShare, type Pose, poseJoints } from "#lib/statics/hands.ts";
import styles from "./load.module.css";

const POSE_WORDS: Readonly<Record<Pose, string>> = {
  "high-plank": "in a plank on straight arms",
  "forearm-plank": "in a plank on the forearms",
  knees: "on the knees, feet off the ground or down",
  "hands-raised": "in a plank with the hands 30 cm up",
  "feet-raised": "in a plank with the feet 30 cm up",
  "push-up-low": "at the bottom of a push-up",
};

export function HandsLoad({ pose }: { pose: Pose }) {
  const { share, low, high } = handsShare(pose);
  const force = handsNPerKg(pose);
  const carriers = pose === "forearm-plank" ? "forearms" : "hands";
  return (
    <div className={styles.hands}>
      <PoseFigure pose={pose} />
      <p>
        {`The ${carriers} carry about `}
        <b>{`${whole(share)}%`}</b>
        {` of the body's weight (${whole(low)} to ${whole(high)}%): ${plainNumber(force.newtons)} N for each kilogram of the person.`}
        <span className="quiet">
          {` For holding still ${POSE_WORDS[pose]} on firm ground. Calculated, not measured.`}
        </span>
      </p>
    </div>
  );
}

const whole = (share: number): number => Math.round(share * 100);

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
