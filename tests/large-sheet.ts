const heading =
  "ID,Child,Name,Side,Sex,Age,Injury date,Op date,Displacement (%),Grade,First technique,Final technique,Success,Elev,Follow-up (months),Complications,Operator,Notes,Delay,Height";
const row = (i: number): string => {
  const displaced = (i * 37) % 100;
  const grade = displaced > 66 ? "IV" : displaced > 33 ? "III" : "II";
  return `H${100_000 + i},C${i},Name${i} Sur${i},${"LR"[i % 2]},${"mf"[i % 2]},${8 + (i % 9)},2019-0${1 + (i % 9)}-11,2020-0${1 + (i % 9)}-12,${displaced},${grade},closed,${i % 5 ? "closed" : "open"},${i % 4 ? "Y" : "no"},${150 + (i % 30)},${i % 40},${i % 9 ? "none" : "pin site inf; stiff"},${"ABC"[i % 3]},"note ${i} seen, well",${i % 10},${140 + (i % 40)}`;
};

/** An invented sheet of 20 columns as CSV; 100,000 rows have 12 MB. */
export function largeSheet(rows: number): string {
  return `${heading}\n${Array.from({ length: rows }, (_, i) => row(i)).join("\n")}\n`;
}
