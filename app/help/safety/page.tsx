/** What Springline does not do, and to whom it defers. */
import type { Metadata } from "next";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { HELP_SAFETY } from "#lib/help/safety.ts";
import styles from "../help.module.css";
import { BackToHelp, HelpFrame } from "../help-frame.tsx";

export const metadata: Metadata = { title: "Help: Safety" };

export default function SafetyPage() {
  return (
    <HelpFrame>
      <BackToHelp />
      <article className={styles.text}>
        <h1>Safety: what Springline does not do</h1>
        <p className={styles.about}>{HELP_SAFETY.lead}</p>
        <h2>Who comes first</h2>
        <ul>
          {SAFETY_NOTE.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <h2>What it does not do</h2>
        <ul>
          {HELP_SAFETY.not.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <h2>What it does</h2>
        <ul>
          {HELP_SAFETY.does.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </article>
    </HelpFrame>
  );
}
