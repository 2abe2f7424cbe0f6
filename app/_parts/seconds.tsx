/** A length of time: numerals of even width, the unit in running type so that the gap between them stays narrow. */
import { secondsWords } from "#lib/plan/format.ts";

export function Seconds({ value, className }: { value: number; className?: string | undefined }) {
  const [number, unit] = secondsWords(value).split(" ");
  return (
    <span className={className}>
      <span className="mono">{number}</span> {unit}
    </span>
  );
}
