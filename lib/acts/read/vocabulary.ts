/**
 * The words that set-ups are told in, as tables: the class of a word, then its words. Another studio's words go here.
 * Common practice, no source.
 */
import type { Facing, Move } from "#lib/plan/schema.ts";

/** Spellings that are read as another word. */
export const SAME_WORDS: ReadonlyMap<string, string> = new Map([
  ...[
    ["upon", "on"],
    ["em", "them"],
    ["carr", "carriage"],
    ["hdl", "handle"],
    ["hdls", "handles"],
    ["spr", "springs"],
    ["sprs", "springs"],
    ["pltfm", "platform"],
    ["ya", "your"],
    ["yer", "your"],
    ["left-hand", "left"],
    ["right-hand", "right"],
    ["lefty", "left"],
    ["lefts", "left"],
    ["lefties", "left"],
    ["righty", "right"],
    ["righties", "right"],
    ["rights", "right"],
  ],
] as [string, string][]);

/** A pattern of the grammar names a class as `@class`. A word may be of several. */
export const CLASSES: Readonly<Record<string, string>> = {
  /** Passed over anywhere inside a pattern. */
  fill:
    "the a an your our my his her their its this that these those please just now nice nicely gently slowly carefully " +
    "quickly softly safely simply really again everyone everybody guys folks team lovely we i you they it's i'll we'll " +
    "you'll we're you're yourself yourselves kindly let's lets im i'm id i'd want like need going gonna want you to'll will can could should must may shall " +
    "so ok okay well still also too some today comes come's goes go is are be being been been're got 've gets get have has " +
    "there here straight nicely",
  number: "zero one two three four five six seven eight nine ten eleven twelve",
  not: "don't dont not never no without didn't won't needn't nobody avoid cannot can't cant isn't aren't",
  hedge: "if or unless maybe perhaps optionally option might optional otherwise",
  during: "while whilst as throughout whenever",
  later: "next later soon eventually tomorrow afterwards yesterday earlier",
  way: "all way right fully inside back gently slowly in's completely over down close up",
  home: "home in inside closed shut parked docked returned",
  bring:
    "bring bringing take taking walk guide guiding let slide sliding draw ease easing roll rolling send push pull get getting " +
    "return float glide move moving control controlling land rest ride come coming",
  ride:
    "ride riding rides glide gliding float floating drift drifting coast coasting sail sailing roll rolling slide sliding " +
    "tuck tucking cruise carry carrying ease easing settle lower come coming get getting walk stop",
  park: "close closing closes park parking parks shut shuts shutting dock docks docking home return returning",
  dock: "dock docks docking docked park parks parking parked",
  close: "close closes closing shut shuts shutting",
  stopper: "stop stops stopper stoppers bumper bumpers buffer buffers",
  carriage: "carriage carriages carriage's",
  go: "step stepping climb climbing hop hopping come coming go going move moving walk walking head heading jump get getting crawl make shift slide scoot travel shuffle roll rolling back",
  into: "to onto on into in over up down towards toward",
  face: "face facing faces faced",
  turn: "turn turning turned turns spin spins swing swinging spinning swivel pivot pivoting rotate rotating flip",
  round: "round around about 180 one-eighty",
  towards: "towards toward to at",
  spot: "mirror mirrors window windows wall walls door doors anchor anchors instructor me coach clock pulleys teacher partner stage logo screen springs",
  lie: "lie lying lies lay laying laid recline",
  sit: "sit perch perches perching sitting sits seated seat",
  stand: "stand standing stands upright",
  kneel: "kneel kneeling kneels",
  limb: "hand hands arm arms leg legs foot feet knee knees elbow elbows forearm forearms heel heels toe toes palm palms fist fists ankle ankles hip hips shoulder shoulders ball balls thumb thumbs finger fingers",
  body:
    "hand hands arm arms leg legs foot feet knee knees elbow elbows forearm forearms heel heels toe toes palm palms fist fists " +
    "ankle ankles hip hips shoulder shoulders chest head core spine belly rib ribs neck chin thigh thighs glute glutes bottom " +
    "bum seat waist tailbone body torso gaze eyes nose blade blades muscle muscles breath breaths bend cheek ear",
  aim: "chest chests head heads hip hips nose noses toes shoulders pelvis eyes eye gaze body bodies",
  hands: "hand hands palm palms forearm forearms fist fists elbow elbows",
  feet: "foot feet leg legs ankle ankles heel heels toe toes",
  handle: "handle handles grip grips cable cables rope ropes",
  strap: "strap straps loop loops cuff cuffs sling slings",
  take: "take taking grab grabbing grasp pick picking get getting collect find catch reach reaching fetch clasp hold holding lift have gather gathering scoop seize",
  put: "put putting place placing lay laying set setting hang hanging drop dropping rest return leave leaving take pop park lower pass",
  down: "down away back aside",
  free: "store stow release releasing free unhook unclip unhooking remove removing loosen slip slipping ditch lose losing drop undo wriggle wiggle withdraw",
  wear: "feed tuck slot insert secure strap get getting put putting place placing slip slide hook hooking loop pop bring step stick get thread take set",
  on: "on in into through inside",
  off: "off out",
  add: "chuck toss snap tack click clamp latch add adding added attach attaching hook load connect engage gain gaining increase clip adds pop slap place whack sling stack bolt introduce include",
  added: "added attached hooked loaded clipped joined put",
  removed: "retired removed detached unhooked unclipped dropped unloaded lost subtracted taken",
  swapped: "swapped exchanged replaced changed traded",
  comes: "comes come goes go coming going came went",
  reach: "reach help grab get take treat fetch find need want have pick bring give",
  remove:
    "dump scrap cut retire pull remove removing drop dropping lose losing unhook unhooking unclip detach strip ditch disconnect subtract minus release " +
    "unload clear clearing shed losing whip yank kick lift pluck",
  set: "put putting take taking get getting pop popping bring bringing hook hooking clip clipping throw pile fit fitting slot bang stick whip pull pulling give giving slip",
  swap: "swap swapping swapped changed exchanged traded replaced change changing exchange trade trading replace replacing switch switching upgrade downgrade",
  springs: "spring springs coil coils spring's",
  load: "spring's tension resistance weight load springs spring weights setting settings coils",
  same: "same identical unchanged",
  stay: "stay staying stays keep keeping keeps remain remains remaining hold holding leave leaving leaves",
  put_on: "put pop place",
  everything: "everything all nothing",
  setup: "set-up setup position everything",
  flank: "side sides",
  seat_of: "bottom bottoms bum bums seat seats backside behind",
  belly: "belly bellies stomach stomachs tummy tummies",
  be: "is are be stays stay goes comes go come going coming",
};

export const NUMBERS: Readonly<Record<string, number>> = {
  ...{ zero: 0, no: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10 },
  ...{ eleven: 11, twelve: 12, a: 1, an: 1, single: 1, another: 1, both: 2, double: 2 },
};

/** Words that say how many springs. */
export const QUANTITIES: readonly string[] = [
  ...Object.keys(NUMBERS),
  ...[
    "second",
    "pair",
    "couple",
    "extra",
    "further",
    "all",
    "every",
    "everything",
    "the",
    "your",
    "that",
    "my",
    "our",
    "this",
    "those",
  ],
];

export const FACING_OF_WORD: Readonly<Record<string, Facing>> = {
  ...{ front: "front", forward: "front", forwards: "front", back: "back", rear: "back", backward: "back" },
  ...{ backwards: "back", left: "left", right: "right", "left-hand": "left", "right-hand": "right" },
};

/** Nouns for where people are. "Platform" alone may be either. */
export const STATION_NOUNS: readonly (readonly [string, Move["station"]])[] = [
  ["front platform", "front"],
  ["back platform", "back"],
  ["rear platform", "back"],
  ["front end", "front"],
  ["back end", "back"],
  ["carriage", "carriage"],
  ["floor", "floor"],
  ["ground", "floor"],
  ["mat", "floor"],
];

/** What a position may be called, each with the positions that it fits. */
export const POSITION_PHRASES: readonly (readonly [string, readonly Move["position"][]])[] = [
  ["hands and knees", ["quadruped"]],
  ["all fours", ["quadruped"]],
  ["four point kneeling", ["quadruped"]],
  ["tabletop", ["quadruped", "supine"]],
  ["table top", ["quadruped", "supine"]],
  ["quadruped", ["quadruped"]],
  ["@sit back down", ["seated"]],
  ["backs down", ["supine"]],
  ["@put_on? hands down and knees down", ["quadruped"]],
  ["kneeling", ["kneeling"]],
  ["@kneel", ["kneeling", "quadruped"]],
  ["@kneel tall|up|upright|high", ["kneeling"]],
  ["tall|high kneel|kneeling", ["kneeling"]],
  ["@put_on? on|onto|to both|two? knees", ["kneeling", "quadruped"]],
  ["@sit down|up|tall?", ["seated"]],
  ["sit hips|bottom|bottoms @way* down", ["seated"]],
  ["plop|plonk|flop down", ["seated"]],
  ["on|onto @seat_of", ["seated"]],
  ["@put|plonk|plant|plop? @seat_of @way* down", ["seated"]],
  ["@put|plonk|plant|plop @seat_of", ["seated"]],
  ["@stand up|tall?", ["standing"]],
  ["on|to|onto both|two? feet", ["standing"]],
  ["side plank", ["side-lying", "plank"]],
  ["forearm|high|low? plank|planks|planking", ["plank", "side-lying"]],
  ["push|press up position|start", ["plank"]],
  ["top of? push|press up|ups", ["plank"]],
  ["@lie @way* with? face down", ["prone"]],
  ["face down", ["prone"]],
  ["@belly down", ["prone"]],
  ["face up", ["supine"]],
  ["@lie @way* on|onto|to @belly|front|fronts", ["prone"]],
  ["over|roll|onto|on @way* on|onto|to? to? @belly", ["prone"]],
  ["over|roll|flip @way* on|onto front|fronts", ["prone"]],
  ["@lie @way* on|onto back|backs", ["supine"]],
  ["roll? on|onto back|backs", ["supine"]],
  ["turn|flip|roll|come|go @way* over? on|onto back|backs", ["supine"]],
  ["on|onto your|our|their front|fronts", ["prone"]],
  ["@lie supine", ["supine"]],
  ["supine", ["supine"]],
  ["prone", ["prone"]],
  ["@lie @way*", ["supine", "prone", "side-lying"]],
  ["hips above|over head", ["inverted"]],
  ["pike|inverted position", ["inverted", "plank"]],
];

/** Words about limbs from which a position follows, if it is the one that is planned. */
export const IMPLYING: readonly (readonly [string, readonly Move["position"][]])[] = [
  ["knees under hips", ["quadruped"]],
  ["knees come|go|drop|lower? @way* down|on|under|to|onto|find|meet|touch|land", ["quadruped", "kneeling"]],
  ["drop|lower|bring|put knees", ["quadruped", "kneeling"]],
  ["legs long|straight", ["plank", "supine", "prone"]],
  ["feet one behind other", ["side-lying"]],
  ["hips|shoulders|legs stacked", ["side-lying"]],
  ["feet wide|hip|apart", ["standing"]],
  ["find feet", ["standing"]],
  ["lift|float|raise|straighten|extend|lengthen knees|legs", ["plank"]],
  ["step|walk|send|slide feet|foot|legs back", ["plank"]],
  ["knees @way* up|off|lift", ["plank"]],
  ["lunge|lunges|squat|squats", ["standing"]],
  ["up get|come|pop", ["standing"]],
  ["get|come up", ["standing"]],
  ["come|get|roll @way* to your|our side|sides", ["side-lying"]],
  ["lay|laying @way* down", ["supine", "prone", "side-lying"]],
  ["rise|rising up?", ["standing"]],
  ["chest|chests down", ["prone"]],
];

/** Labels that are common adjectives or places: a bare one is no spring, "strong core", "the middle". */
export const COMMON_LABELS: ReadonlySet<string> = new Set(
  (
    "light heavy strong firm soft medium middle hard easy full half small big large long short thick thin stiff weak " +
    "extra super mini first second third front back top bottom left right centre center gentle solid tight loose"
  ).split(" "),
);

/** Of these, the places: "in the middle". */
export const PLACE_LABELS: ReadonlySet<string> = new Set(
  "middle half small first second third front back top bottom left right centre center".split(" "),
);

/** After a spring's name these do not make it an adjective: "one light on", but not "one light tap". */
export const AFTER_A_SPRING: ReadonlySet<string> = new Set(
  (
    "spring springs coil coils one ones on off only now please and plus with for instead to in out then off here there " +
    "this today again each total comes goes come go stays stay is are remains left before after once when while if or but " +
    "not as x more less first too back away down up into the a an so we you it let's face kneel lie sit stand turn take " +
    "put hands come everyone guys folks altogether added gone down's was until till instead rather no finish finished finishes replaces has go going coming besides alongside also from by just " +
    "still which whenever leaves alone take takes make makes give gives next beside needs any both join joins joining meets replace replaces replacing against where minus additional must may might should will become becomes finishing"
  ).split(" "),
);

/** After a bare name these say what is done with the spring, or belong to what comes next. */
export const MOVED_WORDS: ReadonlySet<string> = new Set(
  (
    "on off in out away comes come goes go is are please for no gone finish finished only again now with next beside " +
    "alongside as stays stay remains too also then top but except after " +
    "at where joins join becomes replaces both instead rather before once when while whenever until first being be to may can for this today everyone everybody guys folks team"
  ).split(" "),
);
