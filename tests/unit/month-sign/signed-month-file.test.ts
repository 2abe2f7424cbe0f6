/** Whoever asks for a signed month gets the same file of it, proved by its hash. */
import { expect, test } from "vitest";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { signedMonthFile } from "#server/month-facts/signed-month-file.ts";

const row = (title: string) => {
  const fileJson = JSON.stringify({ title });
  return { fileJson, hash: sha256Hex(fileJson) };
};

test("read once for the same edition; nothing for none, and for one that is not what was signed", () => {
  const file = signedMonthFile(row("November"));
  expect(file).toEqual({ title: "November" });
  // The database gives a new text each time.
  expect(signedMonthFile({ ...row("November") })).toBe(file);
  expect(signedMonthFile(undefined)).toBeUndefined();
  expect(signedMonthFile({ ...row("November"), fileJson: '{"title":"December"}' })).toBeUndefined();
  expect(signedMonthFile(row("November"))).toBe(file);
});

test("sixteen are kept, those that were read first go", () => {
  const first = signedMonthFile(row("first"));
  for (let n = 0; n < 16; n++) signedMonthFile(row(`month ${n}`));
  expect(signedMonthFile(row("first"))).not.toBe(first);
  expect(signedMonthFile(row("first"))).toEqual(first);
});
