import type { Role } from "../types.js";

/** A heading in plain words: camel case opened, signs and digits' neighbours spaced, lower case, no accents. */
export function plainHeading(text: string): string {
  return text
    .slice(0, 200)
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[^\p{L}\p{N}#%]+/gu, " ")
    .trim();
}

const technique =
  "(technique|tech|treatment|method|procedure|operation|op type|type of (op|operation|surgery)|reduction|\\w*therapie|\\w*verfahren|\\w*technik|\\w*behandlung|\\w*versorgung|eingriff|traitement|intervention|tratamiento|tecnica|metodo)";
const limbWords =
  "(l|r|lt|rt|left|right|l r|r l|inj|injured|uninj\\w*|other|op|treated|affected|contra\\w*|normal|healthy|side|deg|degrees|last|final|latest|fu|at|review|passive|active|pre|post|preop|postop|\\d+|\\d* ?(m|mo|mths?|months?|w|wks?|weeks?|y|yrs?|years?))";
/** Angles of motion of a joint, in full or in the short forms of a clinic sheet. */
const motionWords = new RegExp(
  `\\b(elevation|flexion|anteversion|abduction|abduktion|adduction|adduktion|(ext|int|external|internal|aussen|innen) ?rot\\w*|rotation|aussenrotation|innenrotation|pronation|supination|range of (motion|movement)|rom|beweglichkeit|movilidad|arc of motion)\\b|^(rom )?(elev|flex|ext|extn|extension|abd|abduc|add|er|ir|ff|fwd flex\\w*|forward elev\\w*|pron|sup|dorsiflex\\w*|df|pf|motion|movement)( ${limbWords})*$`,
);
// Order matters: the first pattern that fits gives the role, so the narrow ones come first.
const patterns: readonly (readonly [Role, RegExp])[] = [
  [
    "identifier",
    /\b(surname|forename|(first|last|family|given|full|maiden|pet) ?name|initials|nickname|vorname|nachname|prenom|apellidos?|nombres?|cognome|nom|patientenname|familienname|rufname)\b|^(name|names|init|inits|pt initials|child s name|patient names?|name of .*|pt name|child name|mother.*|father.*|mum.*|dad.*)$/,
  ],
  [
    "identifier",
    /\b(mrn|nhs|ssn|pid|urn|chi|uhid|hosp(ital)? ?(no|nr|num|number|id|#)|(medical|health|hospital|case ?note|patient) ?records?|record (no|nr|num|number)|chart (no|number)|unit (no|number)|accession|passport|insurance|social security|versicherung\w*|aktenzeichen|image (no|nr|number|id)|(x ?ray|film|photo|pacs|picture) (no|nr|number|id|file)|file ?name|pacs|barcode)\b/,
  ],
  [
    "identifier",
    /\b(dob|yob|jahrgang|d o b|b day|bday|geb dat|geburtsdatum|fecha de nacimiento|date de naissance|data di nascita|born|birth(?! (weight|injur\w*|trauma|palsy|order|fracture))|birthdate|birthday|birth ?date|geburt\w*|geb ?datum|naissance|nacimiento|phone|tel|telephone|telefon|mobile|handy|whatsapp|contact (no|nr|number|details?|person|name|tel)|e ?mail|mail|address|adresse|direccion|indirizzo|anschrift|wohnort|strasse|telefono|handynummer|correo|krankenkasse|street|post ?code|postal|zip|plz|city|town|village|guardian|next of kin|nok|family doctor)\b|^(contact|parents?( names?| phone)?|school( name)?|schule|lives( in| at)?|living in|residence|home( town| address)?|district|parish|suburb|gp surgery|from where|d b|geb( am)?|geb dat)$/,
  ],
  [
    "operator",
    /^(?!.*\b(grade|level|experience|seniority|years?|volume|type|count|score|date)\b).*\b(surgeons?|operators?|consultant|operated by|performed by|treated by|done by|op by|reduced by|chirurg\w*|operateur|chirurgien|cirujano|chirurgo)\b/,
  ],
  [
    "rater",
    /\b(rater|observer|reader|assessor|rating|reading|beurteiler)\b|^(obs|r|rev|reviewer) ?\d+\b|^(grade )?[a-z] ?[12]$/,
  ],
  [
    "side",
    /^(side|laterality|l r|r l|left right|side .*|.* side|(\w+ )?(seite|cote|lado|lato|zijde|sida|strona|lateralidad|lateralite)|affected (arm|limb|shoulder|leg)|arm|limb|limb side)$/,
  ],
  ["sex", /^(sex|gender|m f|f m|geschlecht|sexe|sexo|sesso|geslacht|genre|genero|boy girl)\b/],
  [
    "note",
    /\b(notes?|comments?|remarks?|free ?text|bemerkung\w*|kommentar\w*|anmerkung\w*|notizen|notas|comentarios?|commentaires?|details?|description|history|narrative|observaciones|remarques?)\b/,
  ],
  [
    "date",
    /\b(date|\w*datum|fecha|data|doi|doa|dos|dt|unfall am|operiert am|verletzt am|accident le|when seen|seen on|operated on|op day|injured on)\b/,
  ],
  [
    "age",
    /^(age|alter|edad|eta|leeftijd|idade|alder)\b|\bage (at|in|y|yr|yrs|years?|m|months?)\b|^(patient|child) s? ?age$/,
  ],
  [
    "complication",
    /\b(compl?|complns?|complications?|komplikation\w*|complicaciones|complicanze|complicacoes|adverse( events?)?|ae|problems?)\b/,
  ],
  [
    "finalTechnique",
    new RegExp(
      `\\b(final|definitive|eventual|last|ended|end|actual|converted to) (\\w+ )?${technique}\\b|^converted to$|^final(ly)?( op| surgery)?$`,
    ),
  ],
  ["measurement", motionWords],
  [
    "followUp",
    /\b(follow ?up|f ?up|fu|f u|nachuntersuchung|nachbeobachtung|last (seen|review|visit)|review (months?|weeks?|at)|months? (of )?review|suivi|seguimiento)\b|^(months?|mths?|mo)$/,
  ],
  [
    "success",
    /^(?!.*\b(reasons?|causes?|why|dates?|time|mode|details|grund)\b).*\b(succes\w*|succeeded|reussite|outcome|result|failed|failure|fail|erfolg\w*|ergebnis|resultado|risultato|united|union|healed|\w*heilung|verheilt|geheilt|consolid\w*|satisfactory|reduced|re ?displaced|redisplacement|lost reduction|loss of reduction|reduction (ok|achieved|lost|success\w*|held)|worked|exito|resultat)\b|^(ok|good)$|\b(rom|motion|movement|function\w*|position|alignment) (ok|good|full|normal|restored|regained|acceptable)\b|^full (elevation|motion|movement|rom|function)$/,
  ],
  [
    "grade",
    /^(?!.*\b(surgeons?|operators?|staff|asa|ana?esth\w*)\b).*\b(grade|grading|gr|severity|class|classification|stage|grad|schweregrad|stade|grado|graad|grau)\b|\btype$/,
  ],
  [
    "measurement",
    /\b(displ?|displac\w*|disp|displment|dislocation|translation|shift|offset|gap|step|angul\w*|angle|tilt|slip|shortening|measure\w*|thirds?|verschieb\w*|residual|deplacement|desplazamiento)\b/,
  ],
  [
    "firstTechnique",
    new RegExp(
      `\\b${technique}\\b|^(rx|tx|(first|initial|primary|index)( op| surgery)?|attempted|closed open|open closed)$`,
    ),
  ],
  [
    "id",
    /^(id|no|nr|num|number|#|n|case|cases|case (no|nr|id|number|#)|study (id|no|nr|number|code)|subject( (id|no|number))?|serial( (no|number))?|s no|sl no|sr no|code|index|key|limb|limb (id|no)|hip|hip (id|no)|fracture|fracture (id|no)|fx( (id|no))?|record|record id|row|fall|fall (nr|nummer)|lfd nr|numero|entry|ref|reference|fall ?nummer|fallnr|caso|cas|dossier)$/,
  ],
  [
    "child",
    /^(child|children|patient|pt|pat|participant|family|kind|enfant|paciente|paziente|nino|bambino|patienten?)( (id|no|nr|number|code|#))?$/,
  ],
];
const others =
  /\b(reasons?|elev\w*|flex\w*|extension|abd\w*|adduct\w*|rotation|rom|motion|range|pain|score|height|weight|bmi|mechanism|cause|surgeon|operator|consultant|anaesth\w*|anesth\w*|time|delay|days?|weeks?|years?|pins?|wires?|implant|sling|plaster|cast|films?|x ?rays?|hospital|site|centre|center|region|nerve\w*|vascular|infection|stiffness|injury|injured|operated|treated|converted|conversion|shaft|width|open|closed|pathological|associated|dominan\w*|hand|arm|excluded|eligible|lost|died|status|visit|ward|team|scar|growth|plate|physis|bone|fracture|physio\w*|return|sport|duration|length|loss)\b/;

/** The roles that a heading's words suggest, likeliest first; "other" for a word of the trade without a role. */
export function headingRoles(text: string): readonly Role[] {
  const words = plainHeading(text);
  if (words === "") return [];
  const found = patterns.flatMap(([role, pattern]) => (pattern.test(words) ? [role] : []));
  if (found.length === 0 && others.test(words)) found.push("other");
  return [...new Set(found)];
}

/** The likeliest role, undefined for words that say nothing. */
export function headingRole(text: string): Role | undefined {
  return headingRoles(text)[0];
}

/** Whether a heading names an angle of motion; the last part of a two-row heading decides. */
export function namesMotion(name: string): boolean {
  return motionWords.test(plainHeading(name.split(": ").at(-1)!)) || motionWords.test(plainHeading(name));
}

/** Whether a heading names the width of the bone, in mm. */
export function namesWidth(name: string): boolean {
  return (
    /\b(width|diameter|breite|largeur|ancho|larghezza)\b/.test(plainHeading(name)) && !/%|percent|displ/i.test(name)
  );
}

/** The last part of a joined name that says anything decides; units ("Y/N") and groups come after. */
export function nameRoles(name: string): readonly Role[] {
  for (const part of name.split(": ").toReversed()) {
    const found = headingRoles(part);
    if (found.length > 0 && found[0] !== "other") return found;
  }
  return headingRoles(name.replaceAll(": ", " "));
}
