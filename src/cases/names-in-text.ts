import { headingRole } from "./table/heading-words.js";

const titles = "Dr|Doctor|Mr|Mrs|Ms|Miss|Prof|Professor|Herr|Frau|Nurse|Sister|Mme|Mlle|Dra|Sra|Dott|Mister";
const surname = "\\p{Lu}[\\p{L}'’-]{2,}";
const places: readonly RegExp[] = [
  new RegExp(`\\b(?:${titles})\\.? +(?:\\p{Lu}\\.? *){0,2}(${surname}(?: ${surname})?)`, "gu"),
  new RegExp(
    `\\b(?:by|[Ss]urgeon|[Oo]perator|[Cc]onsultant|[Aa]uthor|[Cc]ontact|[Rr]egistrar|[Ff]ellow|[Ss]upervisor|(?:[Pp]atients|[Cc]ases|[Ss]eries) of|[Cc]hirurg|[Oo]pérateur)\\s*[:=-]? +(?:\\p{Lu}\\.? *){0,2}(${surname}(?: ${surname})?)`,
    "gu",
  ),
  new RegExp(
    `(${surname}(?: ${surname})?)['’]s? +(?:patients?|cases|series|list|mum|mother|mom|father|dad|parents?|brother|sister|school|sheet|data|copy|version|file|clinic|phone|gp)\\b`,
    "gu",
  ),
];
/** Words that begin with a capital in titles and sub-headings and name nobody. */
const common =
  /^(dr|doctor|mr|mrs|ms|miss|prof|professor|herr|frau|mme|nurse|sister|mister|the|and|for|with|all|new|old|final|version|copy|draft|project|study|series|cases?|patients?|children|child|paediatric|pediatric|adolescents?|humer\w*|shoulder|elbow|wrist|hip|knee|ankle|forearm|radius|tibia\w*|femor\w*|femur|fractures?|proximal|distal|upper|lower|displaced|hospital|clinic|centre|center|unit|department|university|database|registry|audit|data|sheet|list|table|group|closed|open|reduction|surgery|surgical|orthopa\w*|trauma|summary|total|excluded|exclusions?|lost|follow\w*|review|results?|outcomes?|january|february|march|april|may|june|july|august|september|october|november|december|monday|tuesday|wednesday|thursday|friday|parents?|women|men|today|consultant|registrar|fellow|surgeons?|trainee|resident|senior|junior|north\w*|south\w*|east\w*|west\w*|general|royal|city|saint|invented|example|success|failed|notes?|legend|codes?|key|retrospective|prospective|consecutive)$/i;

/** Words of names of people in free lines: after a title, before "'s patients", after "by" or "surgeon". */
export function namesInText(texts: Iterable<string>): string[] {
  const words = new Set<string>();
  for (const text of texts) {
    if (!/\p{Lu}/u.test(text)) continue;
    const plain = text.slice(0, 2000).replace(/[_|]+/g, " ");
    for (const place of places)
      for (const match of plain.matchAll(place))
        for (const word of match[1]!.split(/[ '’-]+/))
          if (word.length >= 3 && /^\p{Lu}/u.test(word) && !common.test(word) && headingRole(word) === undefined)
            words.add(word);
    for (const word of wholeName(text)) words.add(word);
  }
  return [...words];
}

/** A line that is nothing but two or three words with capitals, none of the trade: "Ann Zorvia", "Zorvia, Ann". */
function wholeName(text: string): string[] {
  if (!/^\p{Lu}[\p{Ll}'’-]+,? \p{Lu}[\p{Ll}'’-]+( \p{Lu}[\p{Ll}'’-]+)?$/u.test(text)) return [];
  const words = text.split(/[ ,]+/);
  return words.every((word) => !common.test(word) && headingRole(word) === undefined) ? words : [];
}

/** Whether a name of a sheet says nothing but numbers and words of the trade, and can be shown. */
export function isPlainName(name: string): boolean {
  const words = name.match(/\p{L}{3,}/gu) ?? [];
  return words.every((word) => common.test(word) || sheetWord.test(word) || headingRole(word) !== undefined);
}

const sheetWord =
  /^([ivx]+|sheet|tabelle|blatt|feuil|feuille|hoja|foglio|year|jahr|visits?|readings?|raters?|log|info|readme|help|columns?|meta|archive|backup|second|third|first|part|mua|orif|wire|crpp|jan|feb|mar|apr|jun|jul|aug|sep|oct|nov|dec|adults?|boys?|girls?|left|right|main|raw|clean|definitions?|abbreviations?)\d*$/i;
