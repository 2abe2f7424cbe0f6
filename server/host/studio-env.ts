/** The settings of one studio as its unit reads them: a file of `NAME=value` lines. What an owner adds to it stays. */

export interface StudioEnv {
  /** The public address. */
  readonly origin: string;
  readonly dataDir: string;
  /** Where it listens. */
  readonly host: string;
  readonly port: number;
}

const HEAD = (name: string) =>
  `# The settings of the studio ${name}. After a change: systemctl restart springline@${name}`;

/** The lines that a command writes; the others are the owner's. */
const ours = ({ origin, dataDir, host, port }: StudioEnv): readonly (readonly [string, string])[] => [
  ["NODE_ENV", "production"],
  ["SPRINGLINE_DATA", dataDir],
  ["SPRINGLINE_URL", origin],
  ["SPRINGLINE_TRUST_PROXY", "1"],
  ["SPRINGLINE_LAZY_PAGES", "1"],
  ["HOST", host],
  ["PORT", String(port)],
];

/** An owner's own choice stays. */
const KEPT: ReadonlySet<string> = new Set(["SPRINGLINE_TRUST_PROXY", "SPRINGLINE_LAZY_PAGES"]);

/** The text of a new file; or of `before` with our lines set to what they are now. */
export function studioEnvText(name: string, env: StudioEnv, before?: string): string {
  const lines = before === undefined ? [HEAD(name)] : before.replace(/\n$/, "").split("\n");
  for (const [key, value] of ours(env)) {
    const at = lines.findIndex((line) => line.startsWith(`${key}=`));
    if (at < 0) lines.push(`${key}=${value}`);
    else if (before === undefined || !KEPT.has(key)) lines[at] = `${key}=${value}`;
  }
  return `${lines.join("\n")}\n`;
}

/** Undefined when one of the lines that are needed is missing or no use. */
export function readStudioEnv(text: string): StudioEnv | undefined {
  const said = (key: string) => new RegExp(`^${key}=(.*)$`, "m").exec(text)?.[1]?.trim();
  const [url, dataDir, port] = [said("SPRINGLINE_URL"), said("SPRINGLINE_DATA"), Number(said("PORT"))];
  if (!url || !URL.canParse(url) || !dataDir || !Number.isInteger(port) || port < 1 || port > 65_535) return undefined;
  return { origin: new URL(url).origin, dataDir, host: said("HOST") ?? "127.0.0.1", port };
}
