import Papa from "papaparse";

export const separators = [",", ";", "\t", "|"] as const;
export type Separator = (typeof separators)[number];

/** The separator that cuts most records of the file's beginning into the same number of fields. */
export function findSeparator(text: string): Separator {
  const named = /^sep=([,;\t|])\s*(\n|$)/i.exec(text)?.[1];
  if (named) return named as Separator;
  let best: { separator: Separator; share: number; fields: number } = { separator: ",", share: 0, fields: 1 };
  for (const separator of separators) {
    const { share, fields } = evenness(text, separator);
    if (share > best.share || (share === best.share && fields > best.fields)) best = { separator, share, fields };
  }
  return best.separator;
}

/** Share of records with the commonest number of fields, counting only numbers above one. */
function evenness(text: string, separator: Separator): { share: number; fields: number } {
  const { data } = Papa.parse<string[]>(text.slice(0, 200_000), { delimiter: separator, newline: "\n", preview: 300 });
  const records = data.filter((record) => record.some((field) => field.trim() !== ""));
  const counts = new Map<number, number>();
  for (const { length } of records) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  let fields = 1;
  for (const [length, count] of counts) {
    const most = counts.get(fields) ?? 0;
    if (count > most || (count === most && length > fields)) fields = length;
  }
  return { share: records.length === 0 ? 0 : (counts.get(fields) ?? 0) / records.length, fields };
}
