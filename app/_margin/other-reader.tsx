"use client";
/** Before a lead returns or signs a plan that another lead is reading: says so, and asks. */
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { RoundNews, StateNews } from "#lib/protocol/messages.ts";

type Round = RoundNews & { readonly reader: NonNullable<RoundNews["reader"]> };

/** The round, while somebody else than `me` reads it. */
export const otherReader = ({ round }: StateNews, me: string): Round | null =>
  round?.reader && round.reader.id !== me ? { ...round, reader: round.reader } : null;

/** Of the sentence that says why the step cannot be taken yet. */
export const OTHER_READER_ID = "other-reader";

interface OtherReaderProps {
  readonly reader: Round;
  /** "Return it all the same". */
  readonly act: string;
  readonly sure: boolean;
  readonly onSure: (sure: boolean) => void;
}

export function OtherReader({ reader: { reader, since }, act, sure, onSure }: OtherReaderProps) {
  return (
    <div className="notice">
      <p id={OTHER_READER_ID}>
        {reader.name} has been reading this plan{since !== null && " since "}
        {since !== null && <LocalTime at={since} />}. Talk to them first, or say that you want to go on.
      </p>
      <label className="check">
        <input type="checkbox" checked={sure} onChange={(event) => onSure(event.target.checked)} />
        {act}
      </label>
    </div>
  );
}
