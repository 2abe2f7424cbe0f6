/** Pages of plans and months against a real server, each on a test edge, over a connection that can die. */

import { type MonthSession, openMonth } from "#app/_month/month-session.ts";
import { PlanSession } from "#app/_session/session.ts";
import type { PlanPageProps } from "#app/_session/session-types.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { type DeadLine, deadLine } from "./dead-line.ts";
import { eventually } from "./eventually.ts";
import { EMPTY_STUDIO } from "./month-studio.ts";
import { SMALL_PLAN, startSyncServer, type TestServer } from "./sync-server.ts";
import { type TestEdge, type TestEdgeOptions, testEdge } from "./test-edge.ts";

export type AnySession = Pick<PlanSession, "saveState" | "act" | "say" | "reconnect"> & {
  getSnapshot(): {
    readonly saveState: string;
    readonly said: string;
    readonly overtaken: readonly { readonly sentence: string }[];
  };
  end(): void;
};
export interface Page<S> {
  readonly session: S;
  readonly edge: TestEdge;
}

export interface PageOptions extends Pick<TestEdgeOptions, "kept" | "notes" | "slowCopies"> {
  /** Not through the connection that can die. */
  readonly straight?: boolean;
  /** The document that comes with a plan's page. */
  readonly start?: PlanPageProps["doc"];
}

export interface DocPages {
  readonly server: TestServer;
  readonly line: DeadLine;
  generation(kind: "plan" | "month", key: string): string;
  edgeOf(user: string, options: PageOptions): TestEdge;
  page<S extends AnySession>(edge: TestEdge, session: S): Page<S>;
  /** For the plan "p". */
  openPlan(user: string, options?: PageOptions): Page<PlanSession>;
  openMonth(user: string, month: string, options?: PageOptions): Page<MonthSession>;
  stop(): Promise<void>;
}

export const person = (user: string) => ({ id: user, name: `Name of ${user}` });

/** Waits until the page shows it; a snapshot is as old as the last frame. */
export const reaches = ({ session }: Page<AnySession>, state: string, ms?: number) =>
  eventually(
    `the page is ${state} (it is ${session.saveState})`,
    () => session.saveState === state && session.getSnapshot().saveState === state,
    ms,
  );

export async function docPages(): Promise<DocPages> {
  const server = await startSyncServer();
  const line = await deadLine(server.url);
  const ends: (() => void)[] = [];
  const generation = (kind: "plan" | "month", key: string) => server.rooms.generation({ kind, key }) ?? "";
  const edgeOf = (user: string, { straight, start: _, ...options }: PageOptions) =>
    testEdge({ origin: straight ? server.url : line.url, cookie: server.host.signIn(user), ...options });
  const page = <S extends AnySession>(edge: TestEdge, session: S): Page<S> => {
    ends.push(() => session.end());
    return { edge, session };
  };
  return {
    ...{ server, line, generation, edgeOf, page },
    openPlan(user, options = {}) {
      const edge = edgeOf(user, options);
      const { start } = options;
      const props = { ...planProps(user, generation("plan", "p")), ...(start ? { doc: start } : {}) };
      return page(edge, new PlanSession(props, edge));
    },
    openMonth(user, month, options = {}) {
      server.rooms.withDoc({ kind: "month", key: month }, () => undefined);
      const edge = edgeOf(user, options);
      const props = {
        ...{ month, generation: generation("month", month), me: person(user), writes: true, formats: STANDARD_FORMATS },
        ...{ studio: EMPTY_STUDIO, plans: [], used: { plans: [], hidden: [] }, signed: null, accepted: [] },
      };
      return page(
        edge,
        openMonth(props, edge, () => "2026-11-01"),
      );
    },
    async stop() {
      for (const end of ends.splice(0)) end();
      await line.stop();
      await server.stop();
    },
  };
}

export function planProps(user: string, generation: string): ConstructorParameters<typeof PlanSession>[0] {
  return {
    ...{
      planId: "p",
      generation,
      title: "",
      outline: [],
      me: { ...person(user), roles: ["coach"] },
      formats: STANDARD_FORMATS,
    },
    studio: {
      ...{ mark: "m", roomName: "Loft", moves: SMALL_PLAN.moves, equipment: SMALL_PLAN.equipment },
    } as unknown as PlanSession["studio"],
    rights: { writes: true, comments: true },
    may: { handIn: true, handBack: false, sign: false, share: false, delete: false, propose: false },
    state: { state: "in-writing", edition: 0, editionHash: null, handedInBy: null, note: null },
  };
}
