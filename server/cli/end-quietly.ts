/** For every command: whoever reads the output may close it (`| head -1`). What was to be done is done all the same. */
export function endQuietly(): void {
  for (const stream of [process.stdout, process.stderr]) stream.on("error", () => undefined);
}
