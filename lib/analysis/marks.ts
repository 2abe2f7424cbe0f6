/**
 * Short hashes of a plan and of its findings, so that page and server can compare without sending them. What did not change
 * is not hashed again. They prove nothing: a sign-off has its own hash.
 */
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

export class Marker {
  private readonly known = new WeakMap<object, string>();

  /** Of what is checked, without title and notes. Null for a plan that JSON cannot hold. */
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

  /** Null for findings that JSON cannot hold. */
  findings(findings: readonly Finding[]): string | null {
    return this.together(findings);
  }

  private together(parts: readonly object[]): string | null {
    try {
      return sha256Hex(parts.map((part) => this.part(part)).join());
    } catch {
      // What JSON cannot hold gets no hash, so it never equals anything.
      return null;
    }
  }

  private part(part: object): string {
    const known = this.known.get(part) ?? sha256Hex(canonicalJson(part));
    this.known.set(part, known);
    return known;
  }
}
