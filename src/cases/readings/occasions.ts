import type { ReadingColumn } from "./types.js";

const anyRater = /^(rater|observer|reader|assessor|surgeon|judge|r|o|obs|doctor|dr)\.?$/i;
const numbered = /^(.*?)[\s_.(-]*(?:(?:reading|occasion|time|round|session|t)[\s_.-]*)?(\d{1,2})\)?$/i;

/**
 * Who read each column and when: "A1, A2, B1" are two raters, one of them twice; "rater 1, rater 2" are two raters.
 * A number is an occasion only when the names before it are of different people and one of them came twice.
 */
export function occasionsOf(headings: readonly string[]): { columns: ReadingColumn[]; note: string | null } {
  const parts = headings.map((name) => {
    const [, rater = "", occasion = ""] = numbered.exec(name) ?? [];
    return { name, rater: rater.trim(), occasion: Number(occasion) };
  });
  const named = parts.map(({ name, rater }) => (rater === "" ? name : rater));
  const people = new Set(named);
  const repeated = people.size < headings.length;
  if (!repeated || people.size < 2 || named.some((rater) => anyRater.test(rater)))
    return { columns: headings.map((name) => ({ name, rater: name, occasion: 1 })), note: null };
  const columns = parts.map(({ name, rater, occasion }) => ({
    name,
    rater: rater === "" ? name : rater,
    occasion: occasion === 0 ? 1 : occasion,
  }));
  const twice = [...people].filter((rater) => columns.filter((column) => column.rater === rater).length > 1);
  return {
    columns,
    note: `Numbers at the end of a heading are taken for occasions: ${twice.join(" and ")} read more than once.`,
  };
}
