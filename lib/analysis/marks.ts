/**
 * Short names of what two sides hold, so that they can tell whether it is the same without sending it: of a plan, of its
 * findings. What did not change is not read again. No secret and no proof: a sign-off has its own hash.
 */
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

export class Marker {
  private readonly known = new WeakMap<object, string>();

  /** Of what is checked: not of its title, nor of its notes. Null for what no JSON can hold. */
  plan({ title: _title, notes: _notes, items, moves, equipment, standards, ...head }: Plan): string | null {
    return this.together([
      head,
      equipment,
      standards ?? {},
      ...Object.keys(moves)
        .sort()
        .map((id) => moves[id] ?? {}),
      ...items,
    ]);
  }

  /** Null for what no JSON can hold. */
  findings(findings: readonly Finding[]): string | null {
    return this.together(findings);
  }

  private together(parts: readonly object[]): string | null {
    try {
      return sha256Hex(parts.map((part) => this.part(part)).join());
    } catch {
      // What no JSON can hold has no name: nobody takes it for something else.
      return null;
    }
  }

  private part(part: object): string {
    const known = this.known.get(part) ?? sha256Hex(canonicalJson(part));
    this.known.set(part, known);
    return known;
  }
}
