"use client";
import { useState } from "react";
/** Under every view: who leads and whether they are heard, asking to lead, what this screen shows, and the way out. */
import { useFormats } from "#app/_parts/formats.tsx";
import { VIEW_WORDS } from "#lib/line/line-words.ts";
import { type FollowerView, SCREEN_VIEWS } from "#lib/protocol/line-wire.ts";
import styles from "./follow.module.css";
import { followerWords } from "./screens-words.ts";
import { isLeaderGone } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";
import { useSecond } from "./use-second.ts";

interface Props {
  readonly line: FloorLine;
  readonly view: FollowerView;
  /** Is there a class to lead: its card is here and it is not over? Called once a second. */
  canLead(): boolean;
  onView(view: FollowerView): void;
  /** The class goes on on this screen without asking the others, which cannot be reached. */
  onTakeOn(): void;
  onLeave(): void;
}

export function FollowFoot({ line, view, canLead, onView, onTakeOn, onLeave }: Props) {
  useSecond();
  return (
    <footer className={styles.foot}>
      <p role="status" data-contact={line.state.contact}>
        {followerWords(line, useFormats())}
      </p>
      <div className={styles.acts}>
        {canLead() && <Asking line={line} onTakeOn={onTakeOn} />}
        <label>
          shows
          <select value={view} onChange={(event) => onView(event.target.value as FollowerView)}>
            {SCREEN_VIEWS.filter((one) => one !== "lead").map((one) => (
              <option key={one} value={one}>
                {VIEW_WORDS[one].name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={onLeave}>
          stop following
        </button>
      </div>
    </footer>
  );
}

interface AskingProps {
  readonly line: FloorLine;
  onTakeOn(): void;
}

/** What can be done about leading: ask, cancel the request, take over from a leader who is gone, go on alone. */
function Asking({ line: floorLine, onTakeOn }: AskingProps) {
  const { state, link } = floorLine;
  const { line, you, contact, followed } = state;
  if (!link || !followed) return null;
  if (contact !== "on") return <SureButton ask="run it here" confirm="run it here alone?" onSure={onTakeOn} />;
  if (!line?.leader) return <Act words="lead from here" onAct={() => link.lead(false)} />;
  if (isLeaderGone(floorLine))
    return <SureButton ask="lead from here" confirm="lead now?" onSure={() => link.lead(true)} />;
  if (line.asked?.id === you) return <Act words="cancel request" onAct={link.withdraw} />;
  return <Act words="ask to lead" onAct={() => link.lead(false)} />;
}

const Act = ({ words, onAct }: { readonly words: string; onAct(): void }) => (
  <button type="button" onClick={onAct}>
    {words}
  </button>
);

interface SureProps {
  readonly ask: string;
  readonly confirm: string;
  onSure(): void;
}

/** Asks once more, in the same place. */
function SureButton({ ask, confirm, onSure }: SureProps) {
  const [sure, setSure] = useState(false);
  if (!sure) return <Act words={ask} onAct={() => setSure(true)} />;
  return (
    <button type="button" className={styles.sure} onClick={onSure}>
      {confirm}
    </button>
  );
}
