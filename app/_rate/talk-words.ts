/** The sentences of the class's talk on its panel, apart from the read-aloud check's: they are part of the page's first script. */
import { asideWords, type ClassTalk, talkInClass } from "#lib/cues/class-talk.ts";

/** To stand after the share of the class that is talk. */
export const classTalkWords = (talk: ClassTalk): string =>
  ` of the class is talk: ${talkInClass(talk)}, heads-ups and count-ins included. ${asideWords(talk)}`;

export const WHAT_THE_RATE_IS =
  "A line takes its syllables divided by the rate, and a pause after it. The rate is how fast you speak while you speak: English usually runs at 4 to 5 syllables a second, from 3.3 to 5.9 (secondary source). A line for which there is no time is set aside and does not count.";
