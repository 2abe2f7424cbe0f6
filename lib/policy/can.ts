/**
 * Who may do what: pure functions that every route, command and socket asks. They answer for a person with the roles
 * the server knows, for a paired device, or for nobody.
 */
export const ROLES = ["trainee", "coach", "lead", "manager", "crew"] as const;
export type Role = (typeof ROLES)[number];
/** A person without a role could do nothing; the form and the server say so in the same words. */
export const NO_ROLE = "Choose at least one role.";

export interface Person {
  readonly kind: "person";
  readonly id: string;
  readonly roles: readonly Role[];
}
export interface Device {
  readonly kind: "device";
  readonly id: string;
  readonly roomId: string;
}
export type Actor = Person | Device | null;

/** What the policy needs to know about a plan. */
export interface PlanSubject {
  readonly ownerId: string;
  readonly sharedWith: readonly string[];
  /** Team plans are written by every coach. */
  readonly team: boolean;
}

export type PlanAction =
  | "plan.read"
  | "plan.write"
  | "plan.comment"
  | "plan.hand-in"
  | "plan.hand-back"
  | "plan.sign"
  /** To offer a change of it that its writers take or decline. */
  | "plan.propose"
  /** To accept a *look again* as it stands, with a reason. */
  | "plan.accept-finding"
  /** To set marks by the studio's rubric. */
  | "plan.mark"
  /** To take a signed edition out of use. */
  | "plan.withdraw"
  | "plan.share"
  | "plan.delete";
export type StudioAction =
  | "plan.create"
  | "edition.read"
  | "library.read"
  | "library.write"
  | "programme.read"
  | "programme.write"
  /** To sign a month off, and to accept a *look again* of it. */
  | "month.sign"
  /** What a month says of the studio: its zone, how many machines a room has, limits of its rules. */
  | "month.manage"
  /** To say who led a class, or that a log does not count. */
  | "log.remark"
  /** What was taught of a month; others' classes only as sums for those without `log.remark`. */
  | "look-back.read"
  /** One's own calendar address; the studio's and the rooms' need `feeds.manage`. */
  | "feed.own"
  | "feeds.manage"
  | "floor.run"
  | "people.manage"
  | "rooms.manage"
  | "standards.manage"
  | "devices.manage"
  /** Stock remarks, inserted by typing. */
  | "remarks.read"
  | "remarks.write"
  | "rubric.write"
  /** The mail server, and what could not be sent. */
  | "mail.manage"
  /** When and where backups are made, and one at once. */
  | "backups.manage"
  /** Everything that the studio keeps, as files. */
  | "studio.export"
  /** How the server is. */
  | "health.read"
  | "record.read";
export type DeviceAction = "card.fetch" | "log.send" | "line.join";

/** May `actor` do `action` to this plan? */
export function canPlan(actor: Actor, action: PlanAction, plan: PlanSubject): boolean {
  if (actor?.kind !== "person") return false;
  const has = (role: Role) => actor.roles.includes(role);
  const owner = plan.ownerId === actor.id;
  const mine = owner || plan.sharedWith.includes(actor.id);
  const writesPlans = has("trainee") || has("coach") || has("lead");
  const onTeam = plan.team && (has("coach") || has("lead"));
  switch (action) {
    case "plan.read":
    case "plan.comment":
      return has("lead") || (writesPlans && (mine || onTeam));
    case "plan.write":
    case "plan.hand-in":
      return writesPlans && (mine || onTeam);
    case "plan.hand-back":
    case "plan.sign":
    case "plan.propose":
    case "plan.accept-finding":
    case "plan.mark":
    case "plan.withdraw":
      return has("lead");
    case "plan.share":
      return writesPlans && (owner || has("lead"));
    case "plan.delete":
      return writesPlans && (owner || (has("lead") && plan.team));
  }
}

/**
 * May `actor` settle a thread of this plan? One in which a lead has written waits for a lead; others reply that it is
 * fixed.
 */
export function canSettle(actor: Actor, plan: PlanSubject, thread: { readonly leadSpoke: boolean }): boolean {
  if (actor?.kind !== "person" || !canPlan(actor, "plan.comment", plan)) return false;
  return !thread.leadSpoke || actor.roles.includes("lead");
}

const STUDIO_RIGHTS: Record<StudioAction, readonly Role[]> = {
  "plan.create": ["trainee", "coach", "lead"],
  "edition.read": ["trainee", "coach", "lead", "manager", "crew"],
  "library.read": ["trainee", "coach", "lead", "manager"],
  "library.write": ["lead", "manager"],
  "programme.read": ["coach", "lead", "manager", "crew"],
  "programme.write": ["coach", "lead", "manager"],
  "month.sign": ["lead"],
  "month.manage": ["manager"],
  "log.remark": ["lead", "manager"],
  "look-back.read": ["coach", "lead", "manager"],
  "feed.own": ["coach", "lead"],
  "feeds.manage": ["manager"],
  "floor.run": ["coach", "lead"],
  "people.manage": ["manager"],
  "rooms.manage": ["manager"],
  "standards.manage": ["manager"],
  "devices.manage": ["manager"],
  "remarks.read": ["trainee", "coach", "lead"],
  "remarks.write": ["lead"],
  "rubric.write": ["lead", "manager"],
  "mail.manage": ["manager"],
  "backups.manage": ["manager"],
  "studio.export": ["manager"],
  "health.read": ["manager"],
  "record.read": ["manager"],
};

/** May `actor` do `action` in the studio as a whole? `canReadEditions` decides about one plan's editions. */
export function can(actor: Actor, action: StudioAction): boolean {
  return actor?.kind === "person" && STUDIO_RIGHTS[action].some((role) => actor.roles.includes(role));
}

/**
 * A trainee reads a plan's editions only where they may read the plan; everybody else in the studio reads all of them.
 */
export function canReadEditions(actor: Actor, plan: PlanSubject): boolean {
  if (actor?.kind !== "person" || !can(actor, "edition.read")) return false;
  return actor.roles.some((role) => role !== "trainee") || canPlan(actor, "plan.read", plan);
}

/** Marks and what they rest on are private to the person they are about, leads and managers. */
export function canReadMarks(actor: Actor, userId: string): boolean {
  if (actor?.kind !== "person") return false;
  return actor.id === userId || actor.roles.includes("lead") || actor.roles.includes("manager");
}

/** A device may fetch its own room's cue cards, send its own logs and join its room's line of screens; nothing else. */
export function canDevice(actor: Actor, _action: DeviceAction, roomId: string): boolean {
  return actor?.kind === "device" && actor.roomId === roomId;
}

/** Reads the stored role list ("manager,lead"); unknown words give no right. */
export function parseRoles(stored: string): Role[] {
  return ROLES.filter((role) => stored.split(",").some((word) => word.trim() === role));
}
