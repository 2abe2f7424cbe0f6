/** Brings an older copy of a file up to date by writing only the blocks that differ. */
import { createHash } from "node:crypto";
import { type FileHandle, open } from "node:fs/promises";

/** A change of one page writes this much. Our own choice. */
const BLOCK_BYTES = 256 * 1024;

/** A hash for each block of a file. */
export async function hashBlocks(file: string): Promise<readonly string[]> {
  const handle = await open(file, "r");
  try {
    const hashes: string[] = [];
    for await (const block of blocksOf(handle)) hashes.push(hashOf(block));
    return hashes;
  } finally {
    await handle.close();
  }
}

export interface Difference {
  readonly blocks: number;
  readonly bytes: number;
}

/**
 * Makes `to` the same as `from`, which nobody writes to. `known`: the hashes of `to` as it is. What was written is read back
 * and compared, and is on the disk when this resolves; throws where the two differ.
 */
export async function writeDifference(from: string, to: string, known: readonly string[]): Promise<Difference> {
  const [source, target] = [await open(from, "r"), await open(to, "r+")];
  try {
    const written: { readonly at: number; readonly hash: string; readonly bytes: number }[] = [];
    let n = 0;
    let size = 0;
    for await (const block of blocksOf(source)) {
      const hash = hashOf(block);
      if (known[n] !== hash) {
        await target.write(block, 0, block.length, size);
        written.push({ at: size, hash, bytes: block.length });
      }
      size += block.length;
      n++;
    }
    await target.truncate(size);
    await target.sync();
    for (const { at, hash, bytes } of written) {
      const back = await target.read(Buffer.alloc(bytes), 0, bytes, at);
      if (hashOf(back.buffer.subarray(0, back.bytesRead)) !== hash)
        throw new Error(`${to} does not hold what was written into it`);
    }
    return { blocks: written.length, bytes: written.reduce((sum, { bytes }) => sum + bytes, 0) };
  } finally {
    await Promise.all([source.close(), target.close()]);
  }
}

/** The same memory each time: a block is done with before the next is asked for. */
async function* blocksOf(handle: FileHandle): AsyncGenerator<Buffer> {
  const room = Buffer.alloc(BLOCK_BYTES);
  for (let at = 0; ; at += BLOCK_BYTES) {
    const { bytesRead } = await handle.read(room, 0, BLOCK_BYTES, at);
    if (bytesRead === 0) return;
    yield room.subarray(0, bytesRead);
    if (bytesRead < BLOCK_BYTES) return;
  }
}

const hashOf = (block: Uint8Array): string => createHash("sha256").update(block).digest("base64");
