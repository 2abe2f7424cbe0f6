/** Where a month stands: signed off or not, and the way to sign it and to look back on it. For the month's page. */
import Link from "next/link";
import type { SignedMonth } from "#lib/protocol/messages.ts";
import { LocalTime } from "../_parts/local-time.tsx";

interface SignMonthProps {
  /** 'YYYY-MM' */
  readonly month: string;
  /** The newest edition; null while there is none. */
  readonly signed: SignedMonth | null;
  /** What differs from it now, "2 classes and 1 name"; empty for nothing. */
  readonly different: string;
  /** Leads alone. */
  readonly maySign: boolean;
  readonly mayLookBack: boolean;
}

export function SignMonth({ month, signed, different, maySign, mayLookBack }: SignMonthProps) {
  return (
    <p>
      {signed ? (
        <>
          Edition {signed.number}, signed by {signed.byName}, <LocalTime at={signed.at} />
          {different && `; different now: ${different}`}.{" "}
        </>
      ) : (
        "Not signed off yet. "
      )}
      {maySign && <Link href={`/programme/${month}/sign`}>Sign the month off</Link>}
      {maySign && mayLookBack ? " · " : ""}
      {mayLookBack && <Link href={`/programme/${month}/looking-back`}>Looking back</Link>}
    </p>
  );
}
