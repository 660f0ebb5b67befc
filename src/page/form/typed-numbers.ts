/** A number as it is typed, with a decimal point or a comma; null where nothing is; NaN where it is none. */
export const numberIn = (text: string): number | null => {
  const said = text.trim().replace(',', '.').replace('−', '-');
  if (said === '') return null;
  return Number.isFinite(Number(said)) ? Number(said) : Number.NaN;
};

/** A whole number as it is typed; null where nothing is; NaN where it is none. */
export const wholeIn = (text: string): number | null => (/^\s*\d*\s*$/.test(text) ? numberIn(text) : Number.NaN);

/** A number to send; what is none goes as it was typed, so that the refusal can say what it was. */
export const numberOrText = (text: string): number | string | null => {
  const value = numberIn(text);
  return Number.isNaN(value) ? text : value;
};

/** A whole number to send: `1,000` is none, for its comma may be a decimal mark. */
export const wholeOrText = (text: string): number | string | null => {
  const value = wholeIn(text);
  return Number.isNaN(value) ? text : value;
};

/** The same as a query holds it: with a decimal point. */
export const inQuery = (text: string): string => String(numberOrText(text) ?? '');
