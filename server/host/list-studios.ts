/** Every studio of a host: where it is, and whether it answers. */
import { BUILD_HEADER } from "#lib/client/newer-build.ts";
import { databaseBytes } from "#server/backup/folder.ts";
import {
  databaseIn,
  type HostFolder,
  incomingStudios,
  type MovedStudio,
  movedStudios,
  type PlacedStudio,
  studiosOf,
} from "./host-folder.ts";
import { mapIsRight, proxyTarget } from "./hosts-map.ts";

interface ListedStudio {
  readonly name: string;
  /** Its public address. */
  readonly url: string;
  /** "127.0.0.1:4400" */
  readonly at: string;
  readonly folder: string;
  /** Of its database. */
  readonly bytes: number;
  readonly answers: "yes" | "no" | "not well";
  /** What its health says is wrong, or why it does not answer; empty where all is well. */
  readonly problems: readonly string[];
  /** The build that runs; null where none answers or it does not say. */
  readonly build: string | null;
}

export interface HostList {
  readonly studios: readonly ListedStudio[];
  readonly moved: readonly MovedStudio[];
  /** Names of studios whose move to here has not ended. */
  readonly arriving: readonly string[];
  /** Whether the proxy's map says what the folders say. */
  readonly mapIsRight: boolean;
}

const ANSWER_MS = 3_000;
/** Asked at the same time. */
const AT_ONCE = 16;

export async function listStudios(host: HostFolder): Promise<HostList> {
  const placed = [...studiosOf(host)];
  const studios: ListedStudio[] = [];
  for (let n = 0; n < placed.length; n += AT_ONCE)
    studios.push(...(await Promise.all(placed.slice(n, n + AT_ONCE).map(lookAt))));
  return {
    studios,
    moved: movedStudios(host),
    arriving: incomingStudios(host).map(({ name }) => name),
    mapIsRight: mapIsRight(host),
  };
}

async function lookAt({ name, folder, env }: PlacedStudio): Promise<ListedStudio> {
  const at = proxyTarget(env);
  const seen = { name, url: env.origin, at, folder, bytes: databaseBytes(databaseIn(folder)) };
  return { ...seen, ...(await askHealth(at)) };
}

type Answered = Pick<ListedStudio, "answers" | "problems" | "build">;

/** Never rejects. `at`: "127.0.0.1:4400". */
export async function askHealth(at: string): Promise<Answered> {
  try {
    const answer = await fetch(`http://${at}/api/health`, { signal: AbortSignal.timeout(ANSWER_MS) });
    const build = answer.headers.get(BUILD_HEADER);
    const said = (await answer.json()) as { readonly problems?: unknown };
    const problems = Array.isArray(said.problems) ? said.problems.map(String) : [];
    return { answers: answer.ok ? "yes" : "not well", problems, build };
  } catch (error) {
    const cause = error instanceof Error && error.cause instanceof Error ? error.cause : error;
    return { answers: "no", problems: [cause instanceof Error ? cause.message : String(cause)], build: null };
  }
}
