/**
 * What a picture says, as it stands there: it begins with a capital, and the stop of a date cut short ends the sentence too,
 * as in "bis 8. Aug.".
 */
export const pictureText = (said: string, locale: string): string =>
  said.charAt(0).toLocaleUpperCase(locale) + said.slice(1).replaceAll('..', '.');
