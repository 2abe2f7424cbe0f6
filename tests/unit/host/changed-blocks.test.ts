/** An older copy of a file brought up to date, for any two files. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { hashBlocks, writeDifference } from "#server/host/changed-blocks.ts";

const folder = mkdtempSync(join(tmpdir(), "springline-blocks-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const BLOCK = 256 * 1024;

/** A file of some blocks, each all of one byte, with a shorter end. */
const files = fc
  .tuple(fc.array(fc.nat(3), { maxLength: 5 }), fc.nat(3), fc.nat(1000))
  .map(([blocks, byte, rest]) =>
    Buffer.concat([...blocks.map((of) => Buffer.alloc(BLOCK, of)), Buffer.alloc(rest, byte)]),
  );

test("afterwards both are the same, longer or shorter, and no block was written that was right", async () => {
  await fc.assert(
    fc.asyncProperty(files, files, async (before, after) => {
      const [from, to] = [join(folder, "from"), join(folder, "to")];
      writeFileSync(from, after);
      writeFileSync(to, before);
      const { blocks } = await writeDifference(from, to, await hashBlocks(to));
      expect(readFileSync(to).equals(after)).toBe(true);
      const parts = (all: Buffer) =>
        Array.from({ length: Math.ceil(all.length / BLOCK) }, (_, n) => all.subarray(n * BLOCK, (n + 1) * BLOCK));
      const old = parts(before);
      expect(blocks).toBe(parts(after).filter((part, n) => old[n]?.equals(part) !== true).length);
    }),
    { numRuns: 30 },
  );
});
