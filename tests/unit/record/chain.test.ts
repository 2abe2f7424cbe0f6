/** What the hash of a row is taken over, what an entry says of a row, and which row of a chain is the first that fails. */
import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { FIRST_PREVIOUS, parseHead, type RecordRow, recordJson, rowHash } from "#lib/record/chain.ts";
import { entryOf, sourceKeyOf } from "#lib/record/entries.ts";
import { ChainProof, firstFault } from "#lib/record/verify.ts";

const sha256 = (text: string) => createHash("sha256").update(text, "utf8").digest("hex");

/** Canonical JSON of a flat object written by hand: keys in order, no spaces. */
const plainCanonical = (row: Readonly<Record<string, string | number>>): string =>
  `{${Object.keys(row)
    .sort()
    .map((key) => `"${key}":${JSON.stringify(row[key])}`)
    .join(",")}}`;

function chainOf(length: number): RecordRow[] {
  const rows: RecordRow[] = [];
  for (let seq = 1; seq <= length; seq++) {
    const bodyJson = recordJson({ note: `row ${seq}`, ä: "ü\u2028" });
    const what = { seq, at: 1000 + seq, actorId: "ines", subject: "plan/p", kind: "shared", bodyJson };
    const row = { ...what, previousHash: rows.at(-1)?.hash ?? FIRST_PREVIOUS };
    rows.push({ ...row, hash: rowHash(row) });
  }
  return rows;
}

test("[INV-26] the hash of a row is SHA-256 over canonical JSON, written here without the program's own", () => {
  for (const { hash, ...row } of chainOf(5)) expect(hash).toBe(sha256(plainCanonical({ ...row })));
  expect(chainOf(1)[0]?.bodyJson).toBe('{"note":"row 1","ä":"ü\u2028"}');
});

test("[INV-26] the first row that does not hold is named with its reason", () => {
  const rows = chainOf(6);
  const at = (n: number) => rows[n - 1] as RecordRow;
  expect(firstFault(rows)).toBeUndefined();
  const cases: readonly [RecordRow[], number, RegExp][] = [
    [rows.with(2, { ...at(3), kind: "unshared" }), 3, /Row 3 was changed/],
    [rows.toSpliced(3, 1), 4, /Row 4 is missing: row 5 follows row 3/],
    [rows.toSpliced(1, 3), 2, /Rows 2 to 4 are missing/],
    [rows.toSpliced(0, 1), 1, /Row 1 is missing: row 2 follows the beginning/],
    [rows.toSpliced(2, 0, at(2)), 2, /Row 2 stands in the wrong place/],
    [rows.with(1, at(3)).with(2, at(2)), 2, /Row 2 is missing/],
    [rows.with(3, replaced(at(4))), 5, /Row 5 does not hold: it does not continue row 4/],
    [rows.with(0, replaced(at(1))), 2, /Row 2 does not hold/],
  ];
  for (const [altered, seq, say] of cases) {
    expect(firstFault(altered)).toMatchObject({ seq, say: expect.stringMatching(say) });
  }
});

/** Written anew with a hash of its own. */
function replaced({ hash: _, ...row }: RecordRow): RecordRow {
  const other = { ...row, actorId: "somebody" };
  return { ...other, hash: rowHash(other) };
}

test("a proof goes on from any row that is known to hold", () => {
  const rows = chainOf(4);
  const third = rows[2] as RecordRow;
  const proof = new ChainProof(sha256, { seq: 3, hash: third.hash });
  expect(proof.take(rows[3] as RecordRow)).toBeUndefined();
  expect(proof.head.seq).toBe(4);
});

test("a head is read as it is printed, with a comma in the number and spaces in the hash", () => {
  const hash = sha256("x");
  expect(parseHead(`1,234:${hash}`)).toEqual({ seq: 1234, hash });
  expect(parseHead(` 12 : ${hash.slice(0, 32)} ${hash.slice(32).toUpperCase()} `)).toEqual({ seq: 12, hash });
  for (const bad of ["", "12", "12:", "12:9f3a", `0:${hash}`, `x:${hash}`, `12:${hash}0`]) {
    expect(parseHead(bad), bad).toBeNull();
  }
});

test("the entry of an edition holds its number, hash, the SHA-256 of its card, what was accepted, and the round", () => {
  const row = {
    ...{ planId: "p", number: 3, hash: "h", planJson: "{}", cardJson: '{"card":1}', findingsJson: "[]" },
    ...{ signedBy: "ines", signedAt: 5, note: null, acceptedJson: '[{"reason":"seen"}]', round: 2 },
  };
  const entry = entryOf("edition", row);
  expect(entry).toMatchObject({ at: 5, actorId: "ines", subject: "plan/p", kind: "edition" });
  expect(JSON.parse(entry.bodyJson)).toMatchObject({
    ...{ of: "edition", number: 3, hash: "h", round: 2, accepted: [{ reason: "seen" }] },
    ...{ card: sha256('{"card":1}'), plan: sha256("{}"), findings: sha256("[]") },
  });
  expect(sourceKeyOf(entry)).toMatchObject({ of: "edition", planId: "p", number: 3, row: 0, session: "" });
  expect(JSON.parse(entryOf("edition", { ...row, acceptedJson: null, round: null }).bodyJson)).toMatchObject({
    accepted: null,
    round: null,
  });
});

test("what is typed with half a surrogate pair can be recorded", () => {
  expect(recordJson({ note: "a\ud800b" })).toBe('{"note":"a\ufffdb"}');
  expect(recordJson(undefined)).toBe("null");
});
