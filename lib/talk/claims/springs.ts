/** How many springs there are: "two springs on", "one heavy". */
import { SPOKEN_NUMBER, spokenNumberOf } from "./number-phrases.ts";
import type { SpokenClause } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { ClaimReading } from "./types.ts";

/** Springs are added or taken off, so the number is not how many there are. */
const CHANGES =
  /\b(?:add|adding|take|taking|drop|dropping|remove|lose|swap|change|put|another|more|extra|less|fewer|off|down|up|per|each|if|or|maybe|try|for the)\b/;
const ALL_SPRINGS = spoken(
  `\\b(?:(?<n>a single|${SPOKEN_NUMBER})|(?<none>no)) (?<label>(?:[a-z]+ ){0,2})springs?\\b(?! (?:less|more|off|lighter|heavier|from|back|clean))`,
);
/** "The middle spring holds you": there is one at least. */
const THE_SPRING = spoken(
  /(?:^|\b(?:a|an|the|your|our|this|that) )(?!(?:no|on|only|just|exactly|with|and|two|three|four|five|six|one|both|all|more) )(?<label>(?:[a-z]+ )?[a-z]+) springs?\b/,
);
const OTHER_SPRINGS =
  /\b(?:than|like|would|could|instead|later|next|want|wish|need|add|adding|take|taking|drop|dropping|remove|lose|swap|change|put|another|more|extra|less|fewer|off|each|if|or|maybe|try|not|no|never|without|was|were)\b/;
const TERM = `(?:(?:${SPOKEN_NUMBER}|an?|the|one) )(?!and |plus |with |last |first )[a-z]+(?: (?!and |plus |with |is\\b|are\\b|on\\b|only\\b|for\\b|here\\b|holding\\b|under\\b|today\\b)[a-z]+)?`;
const ON_SPRINGS =
  "(?:(?:you|we) (?:are|should be|work) (?:working |going )?on |(?:you|we) are (?:pulling|pushing|pressing|moving|lifting|working with|working against) |(?:you|we) (?:are |will be )?(?:using|use|have|need|want)(?: got)? |you should have |there (?:is|are) |this is (?:on )?|that is |it is |you have got )";
/** "You're on two lights and a heavy", "only the light on": all of the springs, one by one. */
const LISTED = spoken(
  `^(?:and |so |now |okay |with )*(?<head>${ON_SPRINGS}|check (?:that )?you have (?:got )?)?(?<only>just |only )?(?<terms>${TERM}(?: (?:and|plus|with) ${TERM})*)(?<on>(?: is| are)? on)?(?<tail> only| (?:holding|under|beneath) (?:you|us)| today| and nothing (?:else|more)| on this(?: one| move)?| is all (?:that )?(?:you|we|there) (?:have|need|is)(?: [a-z]+){0,4}| here| now| for (?:this|these|it)(?: one| move)?| on your (?:machine|carriage)| please| is plenty)*$`,
);
const ONE_TERM = new RegExp(`^(?<n>${SPOKEN_NUMBER}|an?|the) (?<label>.+)$`);
const BARE = spoken(
  `^(?:you have got |you have |we have |it is |just |and |on |with )*(?<n>${SPOKEN_NUMBER}) (?<label>[a-z]+(?: [a-z]+)?)(?<on> on)?$`,
);

/** "Two mediums will hold you up." */
const HOLDING = new RegExp(
  `^(?:and |so |your |those |these )*(?<n>${SPOKEN_NUMBER}) (?<label>[a-z]+)(?: springs?)? (?:will |should |can )?(?:hold|carry|support|catch|help|keep|pull|do|are|is) (?:you|us|it|that|this|the|enough|plenty|all)\\b`,
);
/** Said outright of the springs that are on, and by their names, which whoever knows the room compares. */
function listed({ words, at }: SpokenClause): ClaimReading[] {
  const found = LISTED.exec(words);
  const { head, only, terms = "", on, tail } = found?.groups ?? {};
  const parts = terms.split(/ (?:and|plus|with) /);
  if (!found || (head === undefined && on === undefined && parts.length < 2 && tail === undefined)) return [];
  return parts.flatMap((part): ClaimReading[] => {
    const { n = "", label = "" } = ONE_TERM.exec(part)?.groups ?? {};
    const count = /^(?:an?|the)$/.test(n) ? 1 : spokenNumberOf(n);
    const name = label.replace(/^(?:single|sole|lone) | (?:ones?|springs?)$/g, "");
    return [
      {
        fact: {
          says: "springs",
          count,
          label: name,
          ...((only ||
            / (?:only|and nothing (?:else|more))\b/.test(words.slice(words.indexOf(part))) ||
            / on $/.test(head ?? "")) &&
          parts.length === 1
            ? { only: true }
            : {}),
        },
        at: at + words.indexOf(part),
        length: part.length,
      },
    ];
  });
}

export function springsIn(clause: SpokenClause): ClaimReading[] {
  const { words, at } = clause;
  const list = /\bsprings?\b/.test(words) || OTHER_SPRINGS.test(words.replace(/^you need /, "")) ? [] : listed(clause);
  if (list.length > 0) return list;
  const some = OTHER_SPRINGS.test(words) ? null : THE_SPRING.exec(words);
  if (some) {
    const fact = { says: "springs", count: undefined, label: (some.groups?.label ?? "").trim() } as const;
    return [{ fact, at: at + some.index, length: some[0].length, sure: false }];
  }
  const holding = OTHER_SPRINGS.test(words) ? null : HOLDING.exec(words);
  if (holding) {
    const { n, label = "" } = holding.groups ?? {};
    return [{ fact: { says: "springs", count: spokenNumberOf(n), label }, at, length: holding[0].length }];
  }
  if (CHANGES.test(words)) return [];
  const named = ALL_SPRINGS.exec(words);
  if (named) {
    const { n, label = "" } = named.groups ?? {};
    const fact = {
      says: "springs",
      count: n === undefined ? 0 : n === "a single" ? 1 : spokenNumberOf(n),
      label: label.trim().replace(/^(?:single|sole)$/, ""),
    } as const;
    return [{ fact, at: at + named.index, length: named[0].length }];
  }
  const { n, label } = BARE.exec(words)?.groups ?? {};
  if (n === undefined || label === undefined) return [];
  const fact = { says: "springs", count: spokenNumberOf(n), label: label.replace(/ on$/, "") } as const;
  return [{ fact, at, length: words.length, sure: false }];
}
