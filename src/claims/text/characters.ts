/** Digits 0 to 9 only: other scripts' digits are left as letters. */
export const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** Latin, Greek and other alphabets, and the raised two of chi-square. */
export const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  code === 0xb2 ||
  (code >= 0xc0 && code <= 0x1fff && code !== 0xd7 && code !== 0xf7 && code !== 0x1680);

const spaces = new Set([9, 10, 11, 12, 13, 32, 0xa0, 0x1680, 0x2028, 0x2029, 0x202f, 0x205f, 0x3000, 0xfeff]);

/** Any white space, thin and unbreakable ones included. */
export const isSpace = (code: number): boolean => spaces.has(code) || (code >= 0x2000 && code <= 0x200b);

const thin = new Set([0x2006, 0x2008, 0x2009, 0x200a, 0x202f]);

/** A narrow space, as set between groups of three digits. */
export const isThinSpace = (code: number): boolean => thin.has(code);

const dashes = new Set([0x2d, 0xad, 0x2010, 0x2011, 0x2012, 0x2013, 0x2212, 0xfe63, 0xff0d]);

/** A hyphen, en dash or minus sign (an em dash separates clauses and is none). */
export const isDash = (code: number): boolean => dashes.has(code);

const points = new Set([0x2e, 0xb7, 0x2027, 0x22c5]);

/** A decimal point, raised ones included. */
export const isPoint = (code: number): boolean => points.has(code);

export const isApostrophe = (code: number): boolean => code === 0x27 || code === 0x2019 || code === 0x2bc;

const marks: Record<string, string> = {
  "％": "%",
  "⩽": "≤",
  "≦": "≤",
  "⩾": "≥",
  "≧": "≥",
  º: "°",
  "˚": "°",
  "∼": "~",
  "＜": "<",
  "＞": ">",
  "＝": "=",
  "／": "/",
  "∕": "/",
  "⁄": "/",
  "⟨": "[",
  "⟩": "]",
  "✕": "×",
};

/** One spelling for every mark that means the same. */
export const plainMark = (character: string): string =>
  isDash(character.charCodeAt(0)) ? "-" : (marks[character] ?? character);
