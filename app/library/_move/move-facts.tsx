"use client";
import type { ReactNode } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
/** Everything the library says about one move. */
import { distanceRange } from "#lib/formats/units.ts";
import { correctionIn, correctionWords } from "#lib/library/correction-words.ts";
import { type KnownSpring, springNames } from "#lib/library/known-springs.ts";
import {
  breathWords,
  CAUTION_WORDS,
  fromToWords,
  loadWords,
  MET_NOTE,
  muscleWords,
  POSE_WORDS,
  repWords,
  SIDES_WORDS,
  STATION_WORDS,
  springLimitWords,
  tempoWords,
} from "#lib/library/move-words.ts";
import { tagWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./move.module.css";

interface MoveFactsProps {
  readonly move: Move;
  readonly springs: readonly KnownSpring[];
}

export function MoveFactList({ move, springs }: MoveFactsProps) {
  const f = useFormats();
  return (
    <dl className={styles.facts}>
      <Fact name="position">{`${tagWords(move.position)} ${STATION_WORDS[move.station]}, facing ${move.facing}`}</Fact>
      <Fact name="hands">{held(move.hands)}</Fact>
      <Fact name="feet">{held(move.feet)}</Fact>
      <Fact name="sides">{SIDES_WORDS[move.sides]}</Fact>
      <Fact name="pattern">{move.pattern}</Fact>
      <Fact name="trains">
        <Muscles move={move} />
      </Fact>
      <Fact name="spine">{(move.spine ?? []).map(tagWords).join(", ")}</Fact>
      <Fact name="load">{loadWords(move, f)}</Fact>
      <Fact name="springs">{springLimitWords(move, springNames(springs))}</Fact>
      <Fact name="travel">{move.travelMm ? distanceRange(move.travelMm, f) : null}</Fact>
      <Fact name="tempo">{tempoWords(move)}</Fact>
      <Fact name="breath">{breathWords(move)}</Fact>
      <Fact name="time">{move.seconds ? repWords(move) || `${fromToWords(move.seconds)} s` : null}</Fact>
      <Fact name="effort">
        {move.met === undefined ? null : (
          <>
            {move.met} MET <span className="quiet small">{MET_NOTE}</span>
          </>
        )}
      </Fact>
      <Fact name="on the hands">{move.handsShare ? `as in ${POSE_WORDS[move.handsShare.pose]}` : null}</Fact>
      <Fact name="figure">{move.figure ? `corrected by hand; ${correctionIn(correctionWords(move), f)}` : null}</Fact>
      <Fact name="cautions">{cautions(move)}</Fact>
      <Fact name="easier">{lines(move.easier)}</Fact>
      <Fact name="harder">{lines(move.harder)}</Fact>
    </dl>
  );
}

function Muscles({ move }: { readonly move: Move }) {
  const { prime, helpers } = muscleWords(move);
  if (prime.length + helpers.length === 0) return "no muscles named";
  return (
    <>
      {prime.length > 0 ? <strong>{prime.join(", ")}</strong> : null}
      {helpers.length > 0 ? ` ${prime.length > 0 ? "with help from" : "helpers:"} ${helpers.join(", ")}` : null}
    </>
  );
}

const held = (place: Move["hands"] | Move["feet"]) => (place === "free" ? "free" : tagWords(place));

const cautions = (move: Move): string =>
  (move.cautions ?? []).map((tag) => CAUTION_WORDS[tag]).join(", ") || "none marked";

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
