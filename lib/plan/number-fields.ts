/** Schemas of numbers within bounds, both inclusive. */
import * as z from "zod/mini";

export const numberFrom = (least: number, most: number) => z.number().check(z.minimum(least), z.maximum(most));
export const wholeFrom = (least: number, most: number) => z.int().check(z.minimum(least), z.maximum(most));
