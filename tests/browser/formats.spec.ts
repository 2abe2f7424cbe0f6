/** A person reads American dates, a 12-hour clock, weeks from Sunday, pounds and inches; who works beside them keeps theirs. */
import AxeBuilder from "@axe-core/playwright";
