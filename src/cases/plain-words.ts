import { headingRole } from "./table/heading-words.js";

/** Words that begin with a capital in titles and sub-headings and name nobody. */
const inTitles =
  /^(dr|doctor|mr|mrs|ms|miss|prof|professor|herr|frau|mme|nurse|sister|mister|the|and|for|with|all|new|old|final|version|copy|draft|project|study|series|cases?|patients?|children|child|paediatric|pediatric|adolescents?|humer\w*|shoulder|elbow|wrist|hip|knee|ankle|forearm|radius|tibia\w*|femor\w*|femur|fractures?|proximal|distal|upper|lower|displaced|hospital|clinic|centre|center|unit|department|university|database|registry|audit|data|sheet|list|table|group|closed|open|reduction|surgery|surgical|orthopa\w*|trauma|summary|total|excluded|exclusions?|lost|follow\w*|review|results?|outcomes?|january|february|march|april|may|june|july|august|september|october|november|december|monday|tuesday|wednesday|thursday|friday|parents?|women|men|today|consultant|registrar|fellow|surgeons?|trainee|resident|senior|junior|north\w*|south\w*|east\w*|west\w*|general|royal|city|saint|invented|example|success|failed|notes?|legend|codes?|key|retrospective|prospective|consecutive)$/i;

const ofSheets =
  /^([ivx]+|sheet|tabelle|blatt|feuil|feuille|hoja|foglio|year|jahr|visits?|readings?|raters?|log|info|readme|help|columns?|meta|archive|backup|second|third|first|part|mua|orif|wire|crpp|jan|feb|mar|apr|jun|jul|aug|sep|oct|nov|dec|adults?|boys?|girls?|left|right|main|raw|clean|definitions?|abbreviations?)\d*$/i;

/** Words of the trade and of everyday life that fill a column of a clinic's sheet and name nobody. */
const ofCells =
  /^(fall|fell|falls|football|soccer|rugby|basketball|netball|hockey|tennis|handball|volleyball|cricket|baseball|gym\w*|trampolin\w*|bicycle|bike|cycl\w*|scooter|skate\w*|ski\w*|snowboard\w*|sledg\w*|horse\w*|riding|swim\w*|judo|karate|boxing|wrestling|climb\w*|playground|slide|swing\w*|sports?|school|road|traffic|accident|vehicle|car|motor\w*|pedestrian|assault|fight\w*|direct|indirect|blow|trees?|stairs|ladder|height|ice|high|low|energy|mild|moderate|severe|good|fair|poor|excellent|bad|best|worst|better|worse|none|yes|not|unknown|other|right|left|both|male|female|sling|collar|cuff|brace|splint|cast|plaster|wires?|pins?|plates?|nails?|screws?|rods?|titanium|steel|elastic|absorbable|red|blue|green|yellow|white|black|orange|normal|abnormal|present|absent|pending|done|complete\w*|incomplete|discharged|active|healed|healing|union|united|delayed|stiff\w*|infect\w*|nerve|axillary|radial|ulnar|median|pain\w*|full|partial|limited|morning|evening|night|weekend|spring|summer|autumn|winter|local|block|regional|sedation|emergency|elective|urgent|simple|complex|isolated|multiple|medial|lateral|anterior|posterior|varus|valgus|intact|home|garden|park|street|water|door|push\w*|jump\w*|throw\w*|pitch\w*|salter|harris|kirschner|velpeau|kocher|steinmann|cannulated|intramedullary|percutaneous|conservative|operative|manipulat\w*|closed|assisted|failed|success\w*|dominant|sturz|fussball|fahrrad|trampolin|schule|verkehr|leicht|mittel|schwer|gut|schlecht|keine|links|rechts|beide|nein|geschlossen|offen|konservativ|grade|type|stage|class|caucasian|asian|african|european|english|first|second|third|early|late|ward|theatre|casualty|outpatients?|inpatients?|private|public|day|daily|weekly|never|always|sometimes|often|smoker|obese|diabetes|asthma|epilepsy|healthy|fit|well|injury|injured|displacement|anatomical|acceptable|retained|removed|buried|routine|telephone|completed|missing|blank|public|train\w*|primary|secondary|export|kopie|copia|book|mappe|sheets|liste|master|series|cohort|file|test|messy|broken|invented|demo)$/i;

/** Whether a word of a title, or of a heading, names nobody. */
export function isTitleWord(word: string): boolean {
  return inTitles.test(word);
}

/** Whether a word of a cell is known to name nobody; for any other word that is not known. */
export function isPlainWord(word: string): boolean {
  return inTitles.test(word) || ofCells.test(word) || headingRole(word) !== undefined;
}

/** Whether a name of a sheet says nothing but numbers and words of the trade, and can be shown. */
export function isPlainName(name: string): boolean {
  const words = name.match(/\p{L}{3,}/gu) ?? [];
  return words.every((word) => inTitles.test(word) || ofSheets.test(word) || headingRole(word) !== undefined);
}
