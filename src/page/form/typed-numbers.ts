/** A typed number, with a decimal point or comma; null if empty; NaN if it is not a number. */
export const numberIn = (text: string): number | null => {
  const said = text.trim().replace(',', '.').replace('−', '-');
  if (said === '') return null;
  return Number.isFinite(Number(said)) ? Number(said) : Number.NaN;
};

/** A typed whole number; null if empty; NaN if it is not one. */
export const wholeIn = (text: string): number | null => (/^\s*\d*\s*$/.test(text) ? numberIn(text) : Number.NaN);

/** A number to send; other text is sent as typed, so that the refusal can quote it. */
export const numberOrText = (text: string): number | string | null => {
  const value = numberIn(text);
  return Number.isNaN(value) ? text : value;
};

/** A whole number to send: `1,000` is not one, as its comma may be a decimal mark. */
export const wholeOrText = (text: string): number | string | null => {
  const value = wholeIn(text);
  return Number.isNaN(value) ? text : value;
};

/** The same in a query: with a decimal point. */
export const inQuery = (text: string): string => String(numberOrText(text) ?? '');
