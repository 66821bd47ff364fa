import { readFileSync } from "node:fs";

export interface DocumentedMethod {
  readonly name: string;
  readonly folder: string;
  readonly what: string;
  readonly source: string;
}

const sources = import.meta.glob<string>("../../src/stats/**/*.ts", { query: "?raw", import: "default", eager: true });

/** Every exported statistic with a published source: the first sentence of its docstring and the source. */
export function documentedMethods(): DocumentedMethod[] {
  const exported = readFileSync(new URL("../../src/index.ts", import.meta.url), "utf8");
  return Object.entries(sources)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([path, source]) => {
      const file = path.split("/").at(-1)!.replace(".ts", "");
      const name = file.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
      const doc = new RegExp(`/\\*\\*((?:(?!\\*/)[^])*)\\*/\\s*export function ${name}\\b`).exec(source)?.[1];
      if (doc === undefined || !new RegExp(`\\b${name}\\b`).test(exported)) return [];
      const text = doc.replace(/\n\s*\* ?/g, "\n");
      if (!/@see/.test(text)) return [];
      return [
        {
          name,
          folder: path.split("/stats/")[1]!.split("/").slice(0, -1).join("/"),
          what: firstSentence(text),
          source: seen(text),
        },
      ];
    });
}

function firstSentence(doc: string): string {
  const flat = doc
    .split(/\n\s*@/)[0]!
    .replace(/\s+/g, " ")
    .trim();
  return (/^(.+?[.:;])(?= [A-Z(]|$)/.exec(flat)?.[1] ?? flat).replace(/[.:;]$/, "");
}

function seen(doc: string): string {
  const found = /@see ([^]*?)(?=\n\s*@|$)/.exec(doc)?.[1] ?? "";
  return found.replace(/\s+/g, " ").trim();
}

/** The table of README.md between its two marks. */
export function methodsTable(): string {
  const rows = documentedMethods().map(
    ({ name, what, source }) => `| \`${name}\` | ${escaped(what)} | ${escaped(source)} |`,
  );
  return ["| function | what it is | published source |", "| --- | --- | --- |", ...rows].join("\n");
}

function escaped(text: string): string {
  return text.replaceAll("|", "\\|");
}
