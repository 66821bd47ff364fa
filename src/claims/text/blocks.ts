/** A paragraph, or one row of a pasted table. */
export interface Block {
  readonly start: number;
  readonly end: number;
  readonly row: boolean;
}

/** Longest stretch read as one paragraph; a longer one is cut, so that no text can make the work grow faster than its length. */
const longest = 20_000;
const rowTags = new Set(["tr", "p", "div", "li", "h1", "h2", "h3", "h4", "h5", "h6", "table", "br", "ul", "ol"]);

/**
 * Cuts a text into paragraphs and table rows in one pass: blank lines, lines that hold a tab, and the tags of pasted
 * HTML separate them.
 * @param text any text
 */
export function* blocksOf(text: string): Generator<Block> {
  let start = 0;
  let tabbed = false;
  for (let i = 0; i <= text.length; i++) {
    const code = i < text.length ? text.charCodeAt(i) : 10;
    if (code === 9) tabbed = true;
    const tag = code === 60 ? tagAt(text, i) : null;
    if (tag && (tag.name === "td" || tag.name === "th")) tabbed = true;
    const ends =
      i === text.length ||
      (tag !== null && rowTags.has(tag.name)) ||
      (code === 10 && (tabbed || blankLine(text, i + 1) || lineHasTab(text, i + 1))) ||
      (i - start > longest && (code === 32 || i - start > 2 * longest));
    if (ends) {
      if (i > start) yield { start, end: i, row: tabbed };
      start = i;
      tabbed = false;
    }
    if (tag) i = tag.end - 1;
  }
}

/** Looks ahead as far as the first printed character, a few hundred characters at most. */
function blankLine(text: string, from: number): boolean {
  for (let i = from; i < text.length && i < from + 200; i++) {
    const code = text.charCodeAt(i);
    if (code === 10) return true;
    if (code !== 32 && code !== 13 && code !== 0xa0) return false;
  }
  return false;
}

function lineHasTab(text: string, from: number): boolean {
  for (let i = from; i < text.length && i < from + 300; i++) {
    const code = text.charCodeAt(i);
    if (code === 9) return true;
    if (code === 10) return false;
  }
  return false;
}

/** The HTML tag that starts at `<`, or null: the name must be a known one, and no second `<` may come before its `>`. */
export function tagAt(text: string, at: number): { name: string; end: number } | null {
  let i = at + 1;
  if (text.charCodeAt(i) === 47) i++;
  const nameStart = i;
  while (i < text.length && i < nameStart + 12 && /[a-zA-Z0-9:]/.test(text[i]!)) i++;
  const name = text.slice(nameStart, i).toLowerCase();
  if (!knownTags.has(name)) return null;
  for (; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 62) return { name, end: i + 1 };
    if (code === 60) return null;
  }
  return null;
}

const knownTags = new Set(
  (
    "a b i u p em br hr td th tr li ul ol h1 h2 h3 h4 h5 h6 sub sup div img col html head body meta link font span table thead tbody " +
    "tfoot strong script style title center colgroup caption o:p small iframe svg"
  ).split(" "),
);
