import { writeForm, type FormColumn } from "./reading/write-workbook.js";

const techniques = ["closed", "assisted", "open"];
const share = { low: 0, high: 200 };
const degrees = { low: 0, high: 180 };

/** The columns of a sheet that needs no questions, in the order in which a case happens. */
const columns: readonly FormColumn[] = [
  { heading: "ID", help: "study number of the limb, such as H001; no name and no hospital number" },
  {
    heading: "Child",
    help: "study number of the child, such as C001; the same in both rows of a child with both sides",
  },
  { heading: "Side", entries: ["left", "right"], help: "one row a limb; both sides of a child are two rows" },
  { heading: "Sex", entries: ["female", "male"], help: "" },
  { heading: "Age (years)", number: { low: 0, high: 120 }, help: "age at injury in years, 12.5 for twelve and a half" },
  { heading: "Date of injury", date: true, help: "no birth date is needed anywhere" },
  { heading: "Date of treatment", date: true, help: "first treatment" },
  { heading: "Excluded because", help: "reason, or none" },
  { heading: "Displacement (% of width)", number: share, help: "before treatment, in per cent of the shaft width" },
  { heading: "Grade", entries: ["I", "II", "III", "IV"], help: "one grade; write doubts into the notes" },
  { heading: "First technique", entries: techniques, help: "what was attempted first" },
  {
    heading: "Final technique",
    entries: techniques,
    help: "what ended it; a closed attempt that was opened has closed first and open final",
  },
  { heading: "Last review", entries: ["seen", "lost", "died"], help: "whether the case was seen at the last review" },
  { heading: "Follow-up (months)", number: { low: 0, high: 600 }, help: "months from treatment to the last review" },
  { heading: "Displacement at union (%)", number: share, help: "in per cent of the shaft width" },
  { heading: "Elevation (degrees)", number: degrees, help: "at the last review" },
  { heading: "Elevation other side (degrees)", number: degrees, help: "blank when both sides were injured" },
  { heading: "Reason for failure", help: "in a few words, for cases that failed" },
  {
    heading: "Complications",
    help: "none when looked for and not found; several with a semicolon between; blank when nobody looked",
  },
  { heading: "Operator", help: "a letter, not a name" },
  { heading: "Notes", help: "no names" },
];

/** An empty workbook for the next series, with lists of entries and limits that are checked while typing. */
export function templateSheet(): Promise<Uint8Array> {
  return writeForm("Cases", columns);
}
