/** For every command: the reader of its output may close the pipe (`| head -1`). The command still does its work. */
export function endQuietly(): void {
  for (const stream of [process.stdout, process.stderr]) stream.on("error", () => undefined);
}
