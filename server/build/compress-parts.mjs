/** Writes a brotli and a gzip copy beside every script and style of a build, at maximum compression. */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

const brotli = promisify(brotliCompress);
const zip = promisify(gzip);
/** Smaller files (bytes) are not worth compressing: the headers of an answer take more. */
const WORTH_IT = 1024;

/** @param folder Next's `static` folder */
export async function compressParts(folder) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile() && /\.(js|css)$/.test(entry.name));
  await Promise.all(files.map((entry) => compress(join(entry.parentPath, entry.name))));
}

async function compress(path) {
  const bytes = await readFile(path);
  if (bytes.length < WORTH_IT) return;
  const params = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
  await Promise.all([
    brotli(bytes, { params }).then((small) => writeFile(`${path}.br`, small)),
    zip(bytes, { level: 9 }).then((small) => writeFile(`${path}.gz`, small)),
  ]);
}
