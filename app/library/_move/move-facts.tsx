/** Everything the library says about one move. */
import type { ReactNode } from "react";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./library.module.css";
import { CAUTION_WORDS, loadWords, muscleWords, setupWords, springLimits, tempoWords } from "./move-words.ts";

export function MoveFacts({ move }: { readonly move: Move }) {
  const { prime, helpers } = muscleWords(move);
  const cautions = move.cautions ?? [];
  return (
    <dl className={styles.facts}>
      <Fact name="set-up">{setupWords(move)}</Fact>
      <Fact name="trains">
        {prime.join(", ")}
        {helpers.length > 0 ? <span className="quiet">; helped by {helpers.join(", ")}</span> : null}
      </Fact>
      <Fact name="spine">{(move.spine ?? []).map((word) => word.replaceAll("-", " ")).join(", ")}</Fact>
      <Fact name="load">{[loadWords(move), springLimits(move)].filter((part) => part !== "").join("; ")}</Fact>
      <Fact name="travel">{move.travelMm ? `${move.travelMm[0] / 10} to ${move.travelMm[1] / 10} cm` : null}</Fact>
      <Fact name="tempo">{tempoWords(move)}</Fact>
      <Fact name="breath">
        {move.exhaleOn === "out"
          ? "out with the work"
          : move.exhaleOn === "back"
            ? "out on the way back"
            : "keeps flowing"}
      </Fact>
      <Fact name="time">{move.seconds ? `${move.seconds[0]} to ${move.seconds[1]} s` : null}</Fact>
      <Fact name="effort">
        {move.met ? (
          <>
            {move.met} MET{" "}
            <span className="quiet">a judgement: the Compendium of Physical Activities has no code for this</span>
          </>
        ) : null}
      </Fact>
      <Fact name="asks for care">
        {cautions.length > 0 ? cautions.map((tag) => CAUTION_WORDS[tag]).join(", ") : "nothing marked"}
      </Fact>
      <Fact name="easier">{lines(move.easier)}</Fact>
      <Fact name="harder">{lines(move.harder)}</Fact>
    </dl>
  );
}

const lines = (texts: readonly string[] | undefined): ReactNode =>
  texts && texts.length > 0 ? texts.map((text) => <p key={text}>{text}</p>) : null;

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  if (children === null || children === "") return null;
  return (
    <>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </>
  );
}
