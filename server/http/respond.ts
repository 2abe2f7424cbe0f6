/**
 * The edge between HTTP and commands. A route handler is one expression:
 *
 *   export const POST = guarded({ body: newPlanSchema }, ({ app, actor, body }) => createPlan(app, actor, body));
 *   export const GET = guarded({}, ({ app, actor, params }) => readPlanFile(app, actor, params.id ?? ""));
 *
 * `guarded` requires a signed-in person, `guardedDevice` the token of a paired device, `unguarded` nobody. All three check
 * the Origin on every method that changes something, check rights before the body is read, read at most 256 kB of JSON
 * (5 MB when `large`), check it with the given zod schema, and turn a `Result` into a response. A handler may also return
 * a `Response` of its own, such as a file.
 * What is `costly` is done in a person's turn, as what their sockets send (`LiveDocuments.inTurn`): somebody who asks for it in a
 * loop waits, and nobody else does.
 * Errors are `{error: {code, message, details?}}` with a message that can be shown to a person.
 */
import type { z } from "zod";
import { can, type Device, type Person, type StudioAction } from "#lib/policy/can.ts";
import { wrongAddressWords } from "#lib/protocol/address.ts";
import { DEVICES_WORDS } from "#lib/protocol/places.ts";
import { freshenSession, type SignedIn, sessionAccess } from "#server/auth/actor.ts";
import { deviceFromHeaders } from "#server/auth/device.ts";
import { type AppError, fail, NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { type Springline, springline } from "#server/context/springline.ts";
import { ConcurrencyLimit } from "#server/limits/concurrency-limit.ts";
import { FORM_BODY_BYTES, MAX_BODY_BYTES, readBody } from "./body.ts";
import { faultToError, refuseWrites } from "./fault.ts";
import { noteOtherOrigin } from "./proxy-signs.ts";

export interface RouteCall<B> {
  readonly app: Springline;
  readonly request: Request;
  /** The parameters of the path, such as `params.id`. */
  readonly params: Readonly<Record<string, string | undefined>>;
  /** The request's JSON, parsed by `options.body`; undefined without a schema. */
  readonly body: B;
}
export interface PersonCall<B> extends RouteCall<B> {
  readonly actor: Person;
  readonly who: SignedIn;
}
export interface DeviceCall<B> extends RouteCall<B> {
  readonly device: Device;
}

/** A call before its body has been read. */
export type Asking = Omit<RouteCall<undefined>, "body">;

export interface Options<B, A = Asking> {
  readonly body?: z.core.$ZodType<B>;
  /** The body may be a file of up to 5 MB. */
  readonly large?: boolean;
  /** Checks rights before the body is read, so that nobody without them can send megabytes. Undefined lets it through. */
  readonly first?: (asking: A) => Result<unknown> | undefined;
  /** Status of a success; 200 when left out. */
  readonly status?: number;
  /** Takes tens of milliseconds or more, and may be asked for again and again. */
  readonly costly?: boolean;
}

type Answer = Result<unknown> | Response;
type Handler<C> = (call: C) => Answer | Promise<Answer>;
interface RouteContext {
  readonly params: Promise<Record<string, string | string[] | undefined>>;
}
type Route = (request: Request, context?: RouteContext) => Promise<Response>;

/** A route for signed-in people. Extends their session. */
export function guarded<B = undefined>(
  options: Options<B, Asking & { readonly actor: Person }>,
  handler: Handler<PersonCall<B>>,
): Route {
  return route(async (app, request, context) => {
    const origin = checkOrigin(app, request);
    if (!origin.ok) return respond(origin);
    const { who, cookies } = await freshenSession(request.headers, app);
    if (!who) return withCookies(respond(NOT_SIGNED_IN), cookies);
    const call = await readCall(app, request, context, withActor(options, who.actor));
    if (!call.ok) return withCookies(respond(call), cookies);
    const work = () => {
      const still = stillSignedIn(app, who);
      const answer = still ? handler({ ...call.value, actor: still.actor, who: still }) : NOT_SIGNED_IN;
      return answer instanceof Promise
        ? answer.then((done) => toResponse(done, options.status))
        : toResponse(answer, options.status);
    };
    return withCookies(await (options.costly ? inTurn(app, who.actor.id, work) : work()), cookies);
  });
}

async function inTurn(app: Springline, userId: string, work: () => Response | Promise<Response>): Promise<Response> {
  const leave = waiting.take(userId);
  if (!leave) return respond(TOO_MUCH_AT_ONCE);
  return app.documents.inTurn(userId, work).finally(leave);
}

/** Costly requests of one person that are worked on or wait for their turn; a page has one or two. Our own choice. */
const waiting = new ConcurrencyLimit(100);
const TOO_MUCH_AT_ONCE = fail(
  429,
  "too-much-at-once",
  "Your pages ask for more than the server can do at once. Nothing was changed: wait a moment, then try again.",
);

/** A body may take minutes to arrive: the rights that count are those of the moment when it is complete. */
function stillSignedIn(app: Springline, who: SignedIn): SignedIn | undefined {
  const now = sessionAccess(app.db, who.sessionId, app.now());
  return now?.userId === who.actor.id ? { ...who, actor: { ...who.actor, roles: now.roles } } : undefined;
}

/** A route for paired devices. It reads no cookie, so it needs no Origin check. */
export function guardedDevice<B = undefined>(options: Options<B>, handler: Handler<DeviceCall<B>>): Route {
  return route(async (app, request, context) => {
    const device = deviceFromHeaders(request.headers, app);
    if (!device) return respond(DEVICE_UNKNOWN);
    const call = await readCall(app, request, context, options);
    return toResponse(call.ok ? await handler({ ...call.value, device }) : call, options.status);
  });
}

/** A route that anybody may call; the handler itself decides. */
export function unguarded<B = undefined>(options: Options<B>, handler: Handler<RouteCall<B>>): Route {
  return route(async (app, request, context) => {
    const origin = checkOrigin(app, request);
    const call = origin.ok ? await readCall(app, request, context, options) : origin;
    return toResponse(call.ok ? await handler(call.value) : call, options.status);
  });
}

/** A command's result as JSON, never cached. */
export function respond(result: Result<unknown>, status = 200): Response {
  if (!result.ok) return Response.json({ error: publicError(result.error) }, answering(result.error.status));
  return Response.json(result.value ?? null, answering(status));
}

/** A result that also opens or renews a session. */
export function respondWithCookies(result: Result<unknown>, cookies: readonly string[], status = 200): Response {
  return withCookies(respond(result, status), cookies);
}

/** The answer to a request that would write into a damaged database; undefined when it may go on. */
export function writeRefusal(app: Pick<Springline, "db">, request: Request): Response | undefined {
  const error = refuseWrites(app, request);
  return error && respond({ ok: false, error });
}

/** Methods that change something must come from our own pages. Errors: 403 other-origin. */
export function checkOrigin(app: Pick<Springline, "env" | "log">, request: Request): Result<null> {
  if (request.method === "GET" || request.method === "HEAD") return ok(null);
  const origin = request.headers.get("origin");
  if (origin === app.env.origin) return ok(null);
  if (origin === null || origin === "null") return noOrigin(app.env.origin);
  noteOtherOrigin(app, origin);
  return fail(403, "other-origin", wrongAddressWords(app.env.origin, origin));
}

const DEVICE_UNKNOWN = fail(
  401,
  "device-unknown",
  `This device is not paired, or it was removed. Pair it with a new code from ${DEVICES_WORDS}.`,
);
/** A browser sends the Origin with every such request: without one, it came from a program or a proxy removed it. */
const noOrigin = (home: string) =>
  fail(
    403,
    "other-origin",
    `The request did not say which page it came from. Open the studio at ${home}. If you already did, a proxy removes the Origin header: the person who runs the server can check with npm run -s doctor.`,
  );

function route(run: (app: Springline, request: Request, context?: RouteContext) => Promise<Response>): Route {
  return async (request, context) => {
    const app = springline();
    try {
      return writeRefusal(app, request) ?? (await run(app, request, context));
    } catch (cause) {
      return respond({ ok: false, error: faultToError(cause, app, request) });
    }
  };
}

async function readCall<B>(
  app: Springline,
  request: Request,
  context: RouteContext | undefined,
  options: Options<B>,
): Promise<Result<RouteCall<B>>> {
  const params = await paramsOf(context);
  const refused = options.first?.({ app, request, params });
  if (refused && !refused.ok) return refused;
  if (!options.body) return ok({ app, request, params, body: undefined as B }); // without a schema B is undefined
  const body = await readBody(request, options.body, options.large ? MAX_BODY_BYTES : FORM_BODY_BYTES);
  return body.ok ? ok({ app, request, params, body: body.value }) : body;
}

function withActor<B>(options: Options<B, Asking & { readonly actor: Person }>, actor: Person): Options<B> {
  const { first, ...rest } = options;
  return first ? { ...rest, first: (asking) => first({ ...asking, actor }) } : rest;
}

async function paramsOf(context: RouteContext | undefined): Promise<RouteCall<undefined>["params"]> {
  return Object.fromEntries(
    Object.entries((await context?.params) ?? {}).map(([key, value]) => [
      key,
      Array.isArray(value) ? value.join("/") : value,
    ]),
  );
}

/** For `first`: refuses a person who may do none of these in the studio. */
export const needs =
  (...actions: readonly StudioAction[]) =>
  ({ actor }: { readonly actor: Person }): Result<never> | undefined =>
    actions.some((action) => can(actor, action)) ? undefined : NO_RIGHT;

const toResponse = (answer: Answer, status?: number): Response =>
  answer instanceof Response ? answer : respond(answer, status);

function withCookies(response: Response, cookies: readonly string[]): Response {
  for (const cookie of cookies) response.headers.append("set-cookie", cookie);
  return response;
}

const answering = (status: number): ResponseInit => ({ status, headers: { "cache-control": "no-store" } });

function publicError(error: AppError): Omit<AppError, "status"> {
  const { code, message, details } = error;
  return details === undefined ? { code, message } : { code, message, details };
}
