import { percentOf } from "#lib/formats/percent.ts";
import { listWords, tagWords } from "#lib/plan/format.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";
import { shortOfTheme } from "../sums/themes.ts";

export const themeNotKept = defineMonthRule({
  id: "theme-not-kept",
  of: "slot",
  title: "A plan does not keep the theme of its class",
  why: "People come for what was announced.",
  fix: "Choose a plan that works these muscles more, or change the theme.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check({ one, theme }) {
    const short = theme && one.plan ? shortOfTheme(one.plan, theme) : {};
    return Object.keys(short).length > 0 ? [oneClass(one, { short })] : [];
  },
  say({ values: { short } }, { one, theme }) {
    const groups = Object.entries(short).map(
      ([group, share]) => `${tagWords(group)} ${percentOf(share, leastOf(theme?.shares, group))}`,
    );
    return `${startWords(one)}: ${one.plan?.title} has too little for ${theme?.name}: ${listWords(groups)}. Choose another plan.`;
  },
});

const leastOf = (shares: Readonly<Record<string, number>> | undefined, group: string): number => shares?.[group] ?? 0;
