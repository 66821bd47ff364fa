import type { Findings } from "../findings/types.js";
import { caution } from "./caution.js";
import styles from "./report.css?raw";
import type { OpenNumber, Paragraph, Section, Span, TextTable } from "./text.js";

export interface ReportPage {
  readonly findings: Findings;
  readonly sections: readonly Section[];
  /** SVG of each section's figures with the caption under it, by section id. */
  readonly figures: ReadonlyMap<string, readonly { readonly svg: string; readonly caption: string }[]>;
  /** What was taken for granted when no plan was given, and how many questions are open. */
  readonly assumptions: readonly string[];
  /** Base64 SHA-256 of the style sheet, for the page's own policy. */
  readonly styleHash: string;
}

interface CaseLists {
  /** Fragment that leads to the cases of a number. */
  readonly place: (span: OpenNumber) => string;
  readonly html: (findings: Findings) => string;
}

/** The style sheet of the page, whose hash the page's policy names. */
export const reportStyles: string = styles;

/**
 * The report as one self-contained page: no script, no request; every counted number leads to the list of its cases at the end.
 * All text from the sheet is escaped.
 */
export function htmlReport(page: ReportPage): string {
  const lists = caseLists();
  const { findings, sections } = page;
  const body = sections.map((section) => sectionHtml(section, page, lists)).join("\n");
  const policy = `default-src 'none'; style-src 'sha256-${page.styleHash}'; img-src data:; base-uri 'none'; form-action 'none'`;
  const note = findings.plan.note === undefined ? "" : `${escapeHtml(findings.plan.note)} · `;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(findings.plan.title)}</title>
<style>${styles}</style>
</head>
<body>
<header><h1>${escapeHtml(findings.plan.title)}</h1><p>${note}from ${escapeHtml(findings.sheet.file)} · ${headLine(findings)}</p></header>
<main>
${assumed(page)}
${body}
<p class="caution">${escapeHtml(caution)}</p>
${lists.html(findings)}
<footer><p>denominator ${escapeHtml(findings.kit.version)} · sheet SHA-256 ${escapeHtml(findings.sheet.sha256)} · plan SHA-256 ${escapeHtml(findings.plan.sha256)} · seed ${findings.seed}</p></footer>
</main>
</body>
</html>
`;
}

/** Escapes text for HTML content and attributes. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function headLine({ who: { ladder } }: Findings): string {
  return `${ladder[0]!.cases.length} cases, ${ladder.at(-1)!.cases.length} analysed`;
}

function assumed({ assumptions, findings }: ReportPage): string {
  const items = [
    ...assumptions,
    ...(findings.openQuestions > 0
      ? [
          `${findings.openQuestions} questions about the sheet are open: run inspect to see them, and give the answers in a file`,
        ]
      : []),
  ];
  if (items.length === 0) return "";
  return `<section class="assumed"><h2>What was taken for granted</h2><ul>${items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul></section>`;
}

function sectionHtml({ id, question, answer, cautions, tables }: Section, page: ReportPage, lists: CaseLists): string {
  const figures = (page.figures.get(id) ?? []).map(
    ({ svg, caption }) => `<figure>${svg}<figcaption>${escapeHtml(caption)}</figcaption></figure>`,
  );
  return `<section id="${id}"><h2>${escapeHtml(question)}</h2>
${answer.map((paragraph) => `<p>${paragraphHtml(paragraph, lists)}</p>`).join("\n")}
${cautions.map((paragraph) => `<p class="caution">${paragraphHtml(paragraph, lists)}</p>`).join("\n")}
${figures.join("\n")}
${tables.map((table) => tableHtml(table, lists)).join("\n")}
</section>`;
}

function paragraphHtml(paragraph: Paragraph, lists: CaseLists): string {
  return paragraph.map((span) => spanHtml(span, lists)).join("");
}

function spanHtml(span: Span, lists: CaseLists): string {
  if (typeof span === "string") return escapeHtml(span);
  if (span.cases.length === 0) return `<b>${escapeHtml(span.text)}</b>`;
  return `<a class="count" href="#${lists.place(span)}">${escapeHtml(span.text)}</a>`;
}

function tableHtml({ caption, head, rows, notes }: TextTable, lists: CaseLists): string {
  const cells = (row: readonly Span[]): string =>
    row
      .map((cell, i) =>
        i === 0 ? `<th scope="row">${spanHtml(cell, lists)}</th>` : `<td>${spanHtml(cell, lists)}</td>`,
      )
      .join("");
  const body = rows.map((row) => `<tr>${cells(row)}</tr>`).join("\n");
  const foot = notes.length === 0 ? "" : `<p class="note">${notes.map(escapeHtml).join(" ")}</p>`;
  const heads = head.map((cell) => (cell === "" ? "<td></td>" : `<th scope="col">${escapeHtml(cell)}</th>`)).join("");
  return `<div class="scroll" tabindex="0" role="region" aria-label="${escapeHtml(caption)}"><table><caption>${escapeHtml(caption)}</caption>
<thead><tr>${heads}</tr></thead>
<tbody>${body}</tbody></table></div>${foot}`;
}

/** Lists of cases at the end of the page, each printed once however often a number points to it. */
function caseLists(): CaseLists {
  const places = new Map<string, { readonly place: string; readonly span: OpenNumber }>();
  return {
    place(span) {
      const key = JSON.stringify([span.title, span.cases]);
      const held = places.get(key) ?? { place: `cases-${places.size + 1}`, span };
      places.set(key, held);
      return held.place;
    },
    html: ({ cases }) => {
      const described = new Map(cases.map((one) => [one.id, describe(one)]));
      const lists = [...places.values()].map(({ place, span }) => {
        const items = span.cases.map(
          (id) => `<li><b>${escapeHtml(id)}</b> ${escapeHtml(described.get(id) ?? "")}</li>`,
        );
        return `<section id="${place}"><h3>${escapeHtml(span.title)}: ${escapeHtml(span.text)}</h3><ul>${items.join("")}</ul></section>`;
      });
      return `<section class="lists"><h2>The cases behind each number</h2>${lists.join("\n")}</section>`;
    },
  };
}

function describe({ grade, firstTechnique, outcome }: Findings["cases"][number]): string {
  return [grade ?? "no grade", firstTechnique ?? "technique not known", outcome].join(", ");
}
