/**
 * What the class trains, whole: left against right, push against pull, the longest work without a rest, the ways the
 * spine goes, the set-ups. Words and numbers first, bars beside them; what is uneven leads to the items it comes from.
 */
import type { ReactNode } from "react";
import type { Balance } from "#lib/balance/balance.ts";
import { plainNumber, plural, secondsWords } from "#lib/plan/format.ts";
import { type Plan, SPINE_DIRECTIONS, type SpineDirection } from "#lib/plan/schema.ts";
import styles from "./balance.module.css";
import { Longest } from "./longest.tsx";
import { MirrorBars } from "./mirror-bars.tsx";
import { SideBars } from "./side-bars.tsx";
import { UnevenList } from "./uneven-list.tsx";

interface BalanceViewProps {
  readonly plan: Plan;
  readonly balance: Balance;
  readonly nameOf: (item: string) => string;
  readonly startOf: (item: string) => number;
  /** The groups on a person. */
  readonly map: ReactNode;
  /** Goes to an item. */
  readonly onGo: (item: string) => void;
}

export function BalanceView(props: BalanceViewProps) {
  const { plan, balance, map, onGo } = props;
  if (Object.keys(balance.groups).length === 0) return null;
  return (
    <section className={styles.view} aria-labelledby="balance-title">
      <h2 id="balance-title">Balance</h2>
      <div className={styles.parts}>
        <div className={styles.part} data-map>
          <h3>Share of the work</h3>
          {map}
        </div>
        <div className={styles.part} data-wide>
          <h3>Left against right</h3>
          <UnevenList plan={plan} balance={balance} onGo={onGo} />
          <SideBars plan={plan} balance={balance} />
          <p className="small quiet">
            Seconds of work times weight: a prime mover counts whole, a helper half. Both sides at once count half and
            half. A mark on the bars is where the title's promise ends.
          </p>
        </div>
        <div className={styles.part}>
          <PushPull balance={balance} />
          <Spine spine={balance.spine} />
          <Setups setups={balance.setups} />
        </div>
        <div className={styles.part}>
          <h3>Longest without a rest</h3>
          <Longest {...props} />
        </div>
      </div>
    </section>
  );
}

function PushPull({ balance: { push, pull } }: { balance: Balance }) {
  if (push === 0 && pull === 0) return null;
  const rows = [
    {
      key: "push-pull",
      label: "seconds",
      left: push,
      right: pull,
      leftWords: secondsWords(push),
      rightWords: secondsWords(pull),
      uneven: false,
    },
  ];
  return (
    <>
      <h3>Push against pull</h3>
      <p>{pushPullWords(push, pull)}</p>
      <MirrorBars caption="Push at the left, pull at the right, seconds of work" heads={["push", "pull"]} rows={rows} />
    </>
  );
}

function pushPullWords(push: number, pull: number): string {
  if (push === pull) return `As much push as pull: ${secondsWords(push)} each.`;
  const [more, less] = push > pull ? (["push", "pull"] as const) : (["pull", "push"] as const);
  const least = Math.min(push, pull);
  if (least === 0) return `All ${more}, no ${less}.`;
  return `${secondsWords(Math.abs(push - pull))} more ${more} than ${less}: ${plainNumber(Math.max(push, pull) / least)} to 1.`;
}

const SPINE_WORDS: Readonly<Record<SpineDirection, string>> = {
  flexion: "bends forward",
  extension: "bends back",
  rotation: "turns",
  lateral: "bends to the side",
  "neutral-hold": "is held straight",
};

function Spine({ spine }: { spine: Balance["spine"] }) {
  const ways = SPINE_DIRECTIONS.map((way) => ({ way, seconds: spine[way] ?? 0 }));
  const longest = Math.max(1, ...ways.map(({ seconds }) => seconds));
  const missing = ways.filter(({ seconds }) => seconds === 0).map(({ way }) => SPINE_WORDS[way]);
  return (
    <>
      <h3>The spine</h3>
      <ul className={styles.plain}>
        {ways
          .filter(({ seconds }) => seconds > 0)
          .map(({ way, seconds }) => (
            <li key={way}>
              <span>{SPINE_WORDS[way]}</span>
              <span className={styles.number}>{secondsWords(seconds)}</span>
              <span className={styles.thread} aria-hidden="true">
                <span style={{ width: `${(seconds / longest) * 100}%` }} />
              </span>
            </li>
          ))}
      </ul>
      {missing.length > 0 && <p className="small quiet">No move in which it {missing.join(", or ")}.</p>}
    </>
  );
}

function Setups({ setups }: { setups: Balance["setups"] }) {
  const { springChanges, facingChanges, positionChanges } = setups;
  return (
    <>
      <h3>Set-ups</h3>
      <p>
        {`${plural(springChanges, "spring change")}, ${plural(facingChanges, "turn")}, ${plural(positionChanges, "change")} of position.`}
      </p>
    </>
  );
}
