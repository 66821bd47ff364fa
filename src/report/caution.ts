/** Said once a page, where a conclusion is drawn. */
export const caution =
  "Denominator describes data. It proves no cause and chooses no treatment; local protocols, ethics approval, a statistician and licensed clinical judgement come first.";
