/** One file of an export: its path, with "/" between folders, and what it holds, made piece by piece as it is written. */
export interface ExportedFile {
  readonly path: string;
  chunks(): Iterable<string>;
}

export const textFile = (path: string, text: string): ExportedFile => ({ path, chunks: () => [text] });

export const jsonFile = (path: string, value: unknown): ExportedFile =>
  textFile(path, `${JSON.stringify(value, null, 2)}\n`);

/** "upper-body-and-trunk.3f2a...": a title to be read, an id to be found by. */
export const idName = (stem: string, id: string): string => `${stem}.${id}`;
