/**
 * A text for a picture: it begins with a capital, and the full stop of an abbreviated date also ends the sentence, as
 * in "bis 8. Aug.".
 */
export const pictureText = (said: string, locale: string): string =>
  said.charAt(0).toLocaleUpperCase(locale) + said.slice(1).replaceAll('..', '.');
