"use client";
/** Under a finding that was accepted with other values: who accepted what, and why it stands again. */
import { useFormats } from "#app/_parts/formats.tsx";
import { momentWords } from "#lib/formats/dates.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { keptFindingWords } from "#lib/rules/kept-words.ts";
import { standsAgainWords } from "./accept-words.ts";
import styles from "./margin.module.css";

export function StandsAgain({ accepted }: { readonly accepted: AcceptanceView }) {
  const f = useFormats();
  const message = keptFindingWords(accepted, f);
  return <p className={styles.pin}>{standsAgainWords({ ...accepted, message }, momentWords(accepted.at, f))}</p>;
}
